package chamber

import (
	"math"
	"strconv"
)

// Fault is one thing wrong with a chamber or a mount.
type Fault struct {
	Name    string  // dotted name of the input: "chamber.diameter", "chamber.ply.1.cloth", "recovery.pin"
	Value   float64 // SI; NaN when there is none
	Problem string
	Mend    string
}

// checker gathers faults. Its ranges are written so that NaN and infinities fail.
type checker struct{ faults []Fault }

func (c *checker) add(name string, value float64, problem, mend string) {
	c.faults = append(c.faults, Fault{name, value, problem, mend})
}

func (c *checker) within(name string, v, low, high float64, mend string) bool {
	ok := v >= low && v <= high
	if !ok {
		c.add(name, v, "out of range", mend)
	}
	return ok
}

// optional is within, or 0 for what is not given.
func (c *checker) optional(name string, v, low, high float64, mend string) bool {
	return v == 0 || c.within(name, v, low, high, mend)
}

// mm writes a length for a message in millimetres.
func mm(v float64) string { return rounded(v*1e3) + " mm" }

// bar writes a pressure for a message.
func bar(v float64) string { return rounded(v/1e5) + " bar" }

// degrees writes an angle for a message.
func degrees(v float64) string { return rounded(v*180/math.Pi) + " deg" }

func rounded(v float64) string { return strconv.FormatFloat(v, 'g', 4, 64) }
