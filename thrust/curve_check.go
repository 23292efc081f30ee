package thrust

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode"

	"ullage/sim/fault"
)

// The limits of a table. They hold any motor that fits an airframe, and keep a
// damaged file out of the integration.
const (
	MaxPoints = 10_000
	MaxTime   = 1000.0 // s
	MaxThrust = 1e7    // N
	MinPeak   = 1e-3   // N, of the greatest thrust
	MinStep   = 1e-6   // s, from one point to the next
)

// maxFaults bounds the list for a file that is nothing like a thrust table.
const maxFaults = 50

// column describes one column of a table.
type column struct {
	name, unit string
	limit      float64
}

var (
	timeColumn   = column{"time", "s", MaxTime}
	thrustColumn = column{"thrust", "N", MaxThrust}
)

func (c column) remedy() string {
	return fmt.Sprintf("give a number of %s from 0 to %s", c.unit, plain(c.limit))
}

// reading is a value of a table with the text it was read from; not ok when it
// is no number, which has been noted then.
type reading struct {
	value float64
	text  string // empty when it was not read from any
	ok    bool
}

func (r reading) String() string {
	if r.text == "" {
		return plain(r.value)
	}
	return r.text
}

// checker gathers the points of a table and everything wrong with it.
type checker struct {
	rows   int // seen, good and bad
	points []Point
	peak   float64 // the greatest thrust so far, N
	latest float64 // the time that the next has to exceed, s
	begun  bool    // latest is a point's
	faults fault.List

	// foreign tells of a file that does not begin as a curve does, and may be any: what it
	// holds is not shown to whoever reads the faults, numbers apart.
	foreign bool
}

func (k *checker) add(line int, value, problem, remedy string) {
	if k.foreign && strings.Trim(value, "+-.,;0123456789eE \t") != "" {
		value = ""
	}
	k.faults = append(k.faults, fault.Fault{Line: line, Value: value, Problem: problem, Remedy: remedy})
}

// full tells that reading on is of no use.
func (k *checker) full() bool { return len(k.faults) >= maxFaults || k.rows > MaxPoints }

// point takes one point. A time that breaks the order does not set what the next
// is held against, so that one slip is one fault.
func (k *checker) point(line int, time, thrust reading) {
	timeOK, thrustOK := k.inRange(line, timeColumn, time), k.inRange(line, thrustColumn, thrust)
	if !timeOK {
		return
	}
	atIgnition := !k.begun && time.value == 0
	step := time.value - k.latest
	switch {
	case step <= 0 && !atIgnition:
		k.add(line, time.String(), fmt.Sprintf("the time does not rise above the %s s of an earlier row", plain(k.latest)),
			"put the rows in order of time, each time once")
		return
	case step < MinStep*(1-1e-6) && !atIgnition: // rounding of the difference aside
		k.add(line, time.String(), "the time is too close to the one before it", "leave at least "+plain(MinStep)+" s between two points")
		return
	}
	k.latest, k.begun = time.value, true
	if thrustOK {
		k.points = append(k.points, Point{time.value + 0, thrust.value + 0}) // + 0 makes −0 plain
		k.peak = max(k.peak, thrust.value)
	}
}

func (k *checker) inRange(line int, c column, r reading) bool {
	if !r.ok {
		return false
	}
	problem := ""
	switch v := r.value; {
	case math.IsNaN(v) || math.IsInf(v, 0):
		problem = "is not a finite number"
	case v < 0:
		problem = "is negative"
	case v > c.limit:
		problem = "is too large"
	default:
		return true
	}
	k.add(line, r.String(), "the "+c.name+" "+problem, c.remedy())
	return false
}

// curve closes the table: the curve, or the faults.
func (k *checker) curve() (*Curve, error) {
	switch {
	case k.rows > MaxPoints:
		k.add(0, "", fmt.Sprintf("the table has more than %d points", MaxPoints), "thin it out: a few dozen describe a motor")
	case len(k.faults) >= maxFaults:
		k.add(0, "", fmt.Sprintf("reading stopped after %d faults", len(k.faults)), "mend these first")
	case k.rows == 0:
		k.add(0, "", "the table has no points", "give at least two rows of time and thrust, such as 0.02,85.0, below the row "+curveHeader)
	case k.rows == 1:
		k.add(0, "", "the table has one point", "give at least two")
	case len(k.faults) == 0 && k.peak < MinPeak:
		k.add(0, plain(k.peak), "the greatest thrust is below "+plain(MinPeak)+" N", "give the thrust in N")
	}
	if len(k.faults) > 0 {
		return nil, k.faults
	}
	return newCurve(k.points), nil
}

// plain writes a number in digits, as a table has it; what no table would hold
// keeps its exponent.
func plain(v float64) string {
	if a := math.Abs(v); a > 1e15 || a < 1e-9 && a > 0 {
		return strconv.FormatFloat(v, 'g', -1, 64)
	}
	return strconv.FormatFloat(v, 'f', -1, 64)
}

// excerpt shortens what a file holds for a message; what does not print becomes a dot.
func excerpt(text string) string {
	const most = 40
	runes := []rune(strings.TrimSpace(text))
	short := len(runes) > most
	if short {
		runes = runes[:most]
	}
	for i, r := range runes {
		if !unicode.IsPrint(r) {
			runes[i] = '·'
		}
	}
	if short {
		return string(runes) + "…"
	}
	return string(runes)
}
