package plan

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"math"
	"slices"
	"strings"
	"time"

	"ullage/atmosphere"
	"ullage/sim/fault"
	"ullage/sim/quantity"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
)

// Slot is one time of a day, or one wind of a table: what it makes of a rocket.
type Slot struct {
	Label  string  // the time, as it was written; empty for a wind of a table
	Wind   float64 // near the ground, m/s; NaN when the forecast does not tell it
	Gust   float64 // the wind in gusts, m/s; NaN when it is not told
	turns  bool    // the forecast tells where the wind blows from
	from   float64 // which is near the ground, rad clockwise from north
	inputs []setting
}

// setting is an input that a forecast tells, SI.
type setting struct {
	input rocketfile.Input
	value float64
}

// on is the rocket in that slot. The error is a fault.List.
func (s *Slot) on(base *rocket.Rocket) (*rocket.Rocket, error) {
	r := base.Clone()
	if s.turns {
		turn(r, s.from)
	}
	blow(r, s.Wind)
	if !math.IsNaN(s.Gust) {
		_, from := r.Wind.Surface()
		r.Gust = atmosphere.Gust{Speed: math.Max(0, s.Gust-s.Wind), From: from} // what comes on top of the wind, from the ground up
	}
	for _, x := range s.inputs {
		if err := x.input.Set(r, x.value); err != nil {
			return nil, err
		}
	}
	return r, nil
}

// Winds are slots from calm to the strongest wind that the limits of a rocket allow, m/s.
func Winds(most float64) []Slot {
	const step = 2
	var out []Slot
	for w := 0.0; w < most; w += step {
		out = append(out, Slot{Wind: w, Gust: math.NaN()})
	}
	return append(out, Slot{Wind: most, Gust: math.NaN()})
}

// The columns of a forecast that are no inputs by their own names.
const (
	timeColumn = "time"
	windColumn = "wind"
	gustColumn = "gust"
	fromColumn = "from"
)

// columns that have a short name: the input that each sets.
var shortNames = map[string]string{"temperature": "site.temperature", "pressure": "site.pressure", "humidity": "site.humidity"}

// mostForecast bounds a forecast: an hour for two days, and some.
const mostForecast = 100

// OpenForecast reads the file of a forecast, as [ReadForecast] does; it may be of these kinds. The errors are a fault.List.
func OpenForecast(path string, r *rocket.Rocket, kinds fault.Kinds) ([]Slot, error) {
	const most = 1 << 20
	text, err := fault.ReadFile(path, most, kinds)
	if err != nil {
		return nil, fault.List{{File: path, Problem: fault.Reason(err), Remedy: "name a forecast as CSV", Err: err}}
	}
	return ReadForecast(path, text, r)
}

// ReadForecast reads a table of times: CSV by commas, semicolons or tabs, one head "time", one "wind", and besides "gust", "from",
// "temperature", "pressure", "humidity" or any input by its name. A unit stands in brackets in the head or in the cell. Times rise. A cell may be
// empty: the rocket's own value holds, but a wind that is not told is not known. The errors are a fault.List.
func ReadForecast(name string, text []byte, r *rocket.Rocket) ([]Slot, error) {
	text = bytes.TrimPrefix(text, []byte("\xef\xbb\xbf"))
	f := forecast{name: name, trial: r.Clone(), unitless: map[string]bool{}}
	f.plain = r.Clone()
	f.plain.Wind.Layers = nil            // which have speeds and bearings of their own
	if bytes.IndexByte(text, '\n') < 0 { // lines as logs may have them too
		text = bytes.ReplaceAll(text, []byte{'\r'}, []byte{'\n'})
	}
	if bytes.IndexByte(text, 0) >= 0 {
		return nil, f.whole("is no text", "save the forecast as CSV")
	}
	rd := csv.NewReader(bytes.NewReader(text))
	rd.Comma, rd.Comment, rd.TrimLeadingSpace, rd.FieldsPerRecord = separatorOf(text), '#', true, -1
	for {
		row, err := rd.Read()
		if errors.Is(err, io.EOF) {
			break
		}
		if bad := new(csv.ParseError); errors.As(err, &bad) {
			return nil, fault.List{{File: name, Line: bad.Line, Problem: "this row cannot be read: " + bad.Err.Error(), Remedy: "write cells without quotation marks"}}
		}
		if err != nil {
			return nil, err
		}
		f.line, _ = rd.FieldPos(0)
		if f.heads == nil {
			f.head(row)
			if len(f.faults) > 0 {
				return nil, f.faults
			}
			continue
		}
		f.row(row)
	}
	switch {
	case len(f.faults) > 0:
		return nil, f.faults
	case f.heads == nil:
		return nil, f.whole("is empty", "write a row of heads, as in time,wind (m/s),gust (m/s)")
	case len(f.slots) == 0:
		return nil, f.whole("has no row below its heads", "write a row for each time, as in 10:00,4,7")
	case len(f.slots) > mostForecast:
		return nil, f.whole(fmt.Sprintf("has %d rows", len(f.slots)), fmt.Sprintf("keep those of the day at the field, at most %d", mostForecast))
	}
	return f.slots, nil
}

// forecast is one that is being read.
type forecast struct {
	name   string
	trial  *rocket.Rocket
	plain  *rocket.Rocket // without layers of wind
	line   int
	heads  []forecastHead
	slots  []Slot
	last   time.Time
	faults fault.List

	unitless map[string]bool // heads that have been told to want a unit
}

// forecastHead is what a column holds: a word of its own, or an input.
type forecastHead struct {
	name  string // as it was written
	word  string // of timeColumn and so on; empty for an input
	input rocketfile.Input
	unit  quantity.Unit
	bare  bool // cells need a unit
}

func (f *forecast) whole(problem, remedy string) fault.List {
	return fault.List{{File: f.name, Problem: problem, Remedy: remedy}}
}

func (f *forecast) add(key, value, problem, remedy string) {
	const most = 20
	if len(f.faults) < most {
		f.faults = append(f.faults, fault.Fault{File: f.name, Line: f.line, Key: key, Value: value, Problem: problem, Remedy: remedy})
	}
}

// separatorOf is what parts the cells of the first line that has any.
func separatorOf(text []byte) rune {
	for line := range bytes.Lines(text) {
		if t := bytes.TrimSpace(line); len(t) == 0 || t[0] == '#' {
			continue
		}
		for _, c := range ";\t" {
			if bytes.ContainsRune(line, c) {
				return c
			}
		}
		break
	}
	return ','
}

// head reads the heads.
func (f *forecast) head(row []string) {
	f.heads = make([]forecastHead, len(row))
	seen := map[string]bool{}
	for i, text := range row {
		h := &f.heads[i]
		word, unit := strings.TrimSpace(text), ""
		if at := strings.IndexAny(word, "(["); at >= 0 {
			word, unit = strings.TrimSpace(word[:at]), strings.Trim(word[at:], "()[] ")
		}
		word = strings.ToLower(word)
		h.name = word
		d := quantity.Wind
		switch {
		case seen[word]:
			f.add(word, "", "stands above two columns", "leave one of them")
			continue
		case word == timeColumn:
			h.word = word
			seen[word] = true
			continue
		case word == windColumn, word == gustColumn:
			h.word = word
		case word == fromColumn:
			h.word, d = word, quantity.Bearing
		default:
			full := word
			if short, there := shortNames[word]; there {
				full = short
			}
			in, err := rocketfile.Find(f.trial, full)
			if err != nil || in.Kind != rocketfile.NumberKind {
				f.add(word, "", "is no head of a forecast", "known are time, wind, gust, from, temperature, pressure, humidity, and inputs with a number by their names; take out what is not wanted")
				continue
			}
			if !ofTheDay(in.Name) {
				f.add(word, "", "is no matter of the day: it says what holds, or what is asked", "take the column out; the rocket file says it for every hour")
				continue
			}
			h.input, d = in, in.Dimension
		}
		seen[word] = true
		h.unit = quantity.Usual(d)
		if h.bare = unit != ""; !h.bare {
			continue
		}
		u, known := quantity.LookupIn(unit, d)
		if !known {
			f.add(word, unit, "is no unit of it", "write one such as "+h.unit.Name+" in the brackets, or a unit in every cell")
			continue
		}
		h.unit = u
	}
	for _, must := range []string{timeColumn, windColumn} {
		if !seen[must] {
			f.add(must, "", "no column has this head", "a forecast needs time and wind, as in time,wind (m/s),gust (m/s)")
		}
	}
}

// ofTheDay tells that an input may be another one from hour to hour, by its dotted name: not so what the rocket is proved for and held
// by, nor what is asked of it. How warm a chamber gets is of the hour.
func ofTheDay(name string) bool {
	switch name {
	case "chamber.temperature", "chamber.heating.temperature":
		return true
	}
	group, _, _ := strings.Cut(name, ".")
	return !slices.Contains([]string{"chamber", "recovery", "motor_mount", "field", "limits"}, group)
}

// layouts are the ways to write a time.
var layouts = []string{"15:04", "15:04:05", "2006-01-02 15:04", "2006-01-02T15:04", time.DateTime, time.RFC3339, "15"}

// row reads one time.
func (f *forecast) row(cells []string) {
	if !slices.ContainsFunc(cells, func(c string) bool { return strings.TrimSpace(c) != "" }) {
		return
	}
	if len(cells) != len(f.heads) {
		f.add("", "", fmt.Sprintf("has %d cells below %d heads", len(cells), len(f.heads)), "leave a cell empty where nothing is known")
		return
	}
	s := Slot{Wind: math.NaN(), Gust: math.NaN()}
	for i := range f.heads {
		h, text := &f.heads[i], strings.TrimSpace(cells[i])
		switch {
		case h.word == timeColumn:
			s.Label = text
			f.time(text)
		case text == "" || strings.EqualFold(text, "NaN") || text == "-":
		default:
			f.cell(h, text, &s)
		}
	}
	if s.Gust < s.Wind {
		f.add(gustColumn, quantity.Format(s.Gust, quantity.Usual(quantity.Wind), 3), "is less than the wind", "a forecast tells the wind in gusts, not what comes on top")
	}
	f.slots = append(f.slots, s)
}

// time holds a time to rise.
func (f *forecast) time(text string) {
	for _, layout := range layouts {
		t, err := time.Parse(layout, text)
		if err != nil {
			continue
		}
		if len(f.slots) > 0 && !t.After(f.last) {
			f.add(timeColumn, text, "is not after the row before", "let times rise; give the date too where a day ends, as in 2026-05-01 10:00")
		}
		f.last = t
		return
	}
	f.add(timeColumn, text, "is no time", "write 10:00 or 2026-05-01 10:00")
}

// windInput is an input of a wind that has no layers, and a rocket that has it.
func (f *forecast) windInput(name string) (rocketfile.Input, *rocket.Rocket) {
	in, _ := rocketfile.Find(f.plain, name)
	return in, f.plain
}

// cell reads a quantity and holds it to the range of its input.
func (f *forecast) cell(h *forecastHead, text string, s *Slot) {
	in, r := h.input, f.trial
	switch h.word {
	case windColumn, gustColumn: // a gust is a wind too
		in, r = f.windInput("wind.speed")
	case fromColumn:
		in, r = f.windInput("wind.from")
	}
	d := in.Dimension
	q, err := quantity.ParseAs(text, d, h.unit)
	if h.bare {
		q, err = quantity.ParseIn(text, d, h.unit)
	}
	if bad := (fault.Fault{}); errors.As(err, &bad) {
		if _, plain := quantity.ParseIn(text, d, h.unit); plain == nil { // all it lacks is a unit, as every other cell below the head may
			if f.unitless[h.name] {
				return
			}
			f.unitless[h.name] = true
			bad.Remedy = fmt.Sprintf("write %q at the head of the column, or %s in every cell", h.name+" ("+h.unit.Name+")", strings.TrimPrefix(bad.Remedy, "write "))
		}
		f.add(h.name, text, bad.Problem, bad.Remedy)
		return
	}
	for _, bad := range fault.In(in.Set(r.Clone(), q.Value)) {
		f.add(h.name, text, bad.Problem, bad.Remedy)
		return
	}
	switch h.word {
	case windColumn:
		s.Wind = q.Value
	case gustColumn:
		s.Gust = q.Value
	case fromColumn:
		s.turns, s.from = true, q.Value
	default:
		s.inputs = append(s.inputs, setting{h.input, q.Value})
	}
}
