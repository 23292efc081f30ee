package rocketfile

import (
	"strconv"

	"ullage/sim/fault"
	"ullage/sim/quantity"
	"ullage/sim/rocket"
)

// place is where a field's value lives: a rocket, and for a repeated section
// which of its items.
type place struct {
	rocket *rocket.Rocket
	item   int
}

// codec is one way for a field to hold a value: how it is read from a text,
// written to one, and what number is in it.
type codec interface {
	kind(p place) Kind
	// read takes a value from the text of a file, or typed as in one.
	read(f *field, p place, n *node) *fault.Fault
	// text is the value as a file has it, without quotes.
	text(f *field, p place) string
	// number is the number in the value; given is false when the rocket does
	// not hold one, and v is then the value in force.
	number(f *field, p place) (v float64, given bool)
	setNumber(f *field, p place, v float64) *fault.Fault
	// scale tells what the number measures.
	scale(f *field, p place) scale
	// encode turns a typed value into TOML.
	encode(f *field, p place, n *node, s style) (string, *fault.Fault)
}

// scale is what a number measures and may be, and by how much it is nudged.
type scale struct {
	quantity.Range
	step   float64 // SI
	coarse float64 // SI
}

// style is how a file writes the value that is to be replaced.
type style struct {
	bare    *quantity.Unit // that a number without a unit takes; nil: none
	unit    quantity.Unit  // of the value that is there now
	hasUnit bool
	poured  quantity.Unit // of an amount that stands there by volume or mass
	quote   string        // around the text that is there now
}

// field is a row of the table of inputs: a key of a section.
type field struct {
	key      string // within its section; deploy.water is a key within a key
	label    string // on the screen
	help     string // one sentence
	codec    codec
	drive    rocket.Power // the drive that uses it, when the section serves both
	fallback string       // the value when the key is absent, as a file has it
	example  string       // of a required key, as a file has it
	needed   func(r *rocket.Rocket) bool
	inForce  func(p place) float64       // the number when nothing is given
	instead  string                      // the key that excludes this one
	unless   string                      // the key that makes this one not required
	fileOnly bool                        // a rocket does not hold it: no input
	only     func(r *rocket.Rocket) bool // which rockets it is an input of; nil: all
	late     bool                        // read when the others of its section are
	group    string                      // heading on the screen, when not the section's
}

// byDefault gives the value that holds when the key is absent.
func (f *field) byDefault(text string) *field { f.fallback = text; return f }

// required marks a key that must be there when a condition holds.
func (f *field) required(when func(r *rocket.Rocket) bool, example string) *field {
	f.needed, f.example = when, example
	return f
}

// otherwise gives the number in force when the rocket holds none.
func (f *field) otherwise(v func(p place) float64) *field { f.inForce = v; return f }

// orElse names the key that may be given instead, never beside it.
func (f *field) orElse(key string) *field { f.instead = key; return f }

// enough names a key beside which this one is not required.
func (f *field) enough(key string) *field { f.unless = key; return f }

// forDrive marks a key that only one drive uses.
func (f *field) forDrive(p rocket.Power) *field { f.drive = p; return f }

// onlyFor makes a key no input of rockets for which a condition does not hold.
func (f *field) onlyFor(holds func(r *rocket.Rocket) bool) *field { f.only = holds; return f }

// section is a table of the file, with the rows of its keys.
type section struct {
	path   string       // dotted, as in a header; empty at the top of the file
	group  string       // heading on the screen
	drive  rocket.Power // the drive it describes; empty for both
	many   bool         // an array of tables
	most   int          // items of a repeated one; 0: maxItems
	free   bool         // its keys are no rows: read once the others are
	apart  bool         // no flight depends on it
	about  string       // what it is, for who may add it: one sentence
	loose  bool         // every rocket has it, by its defaults, and a text may do without
	fields []*field

	// title is where the name of an item of a repeated section is kept, which then has a
	// row "name"; nil for rows that go by their place alone, counted from 1.
	title func(p place) *string
	// count is how many a rocket has: 0 or 1, or any number of a repeated one.
	count func(r *rocket.Rocket) int
	// quiet tells that the inputs are not worth listing, though they can be set;
	// nil: they always are.
	quiet func(r *rocket.Rocket) bool
	// make puts an empty one into the rocket; nil when a rocket always has it.
	make func(r *rocket.Rocket)
	// drop takes it out of the rocket again.
	drop func(r *rocket.Rocket)
}

// header is how a text begins the section.
func (s *section) header() string {
	if s.many {
		return "[[" + s.path + "]]"
	}
	return "[" + s.path + "]"
}

// limit is how many items the section may have.
func (s *section) limit() int {
	if s.most > 0 {
		return s.most
	}
	return maxItems
}

// field finds a row by its key; nil when there is none.
func (s *section) field(key string) *field {
	for _, f := range s.fields {
		if f.key == key {
			return f
		}
	}
	return nil
}

// label is what an item of a repeated section is called in dotted names.
func (s *section) label(p place) string {
	if s.title == nil {
		return strconv.Itoa(p.item + 1)
	}
	return *s.title(p)
}

// prefix is the dotted name of an item of the section, with the last dot.
func (s *section) prefix(p place) string {
	switch {
	case s.path == "":
		return ""
	case s.many:
		return s.path + "." + s.label(p) + "."
	}
	return s.path + "."
}

// always and the others say when a key is required.
func always(*rocket.Rocket) bool    { return true }
func onWater(r *rocket.Rocket) bool { return r.Power == rocket.WaterPower }
func onMotor(r *rocket.Rocket) bool { return r.Power == rocket.MotorPower }

// withoutTube holds when only a rail can guide the rocket.
func withoutTube(r *rocket.Rocket) bool {
	return !onWater(r) || r.Water == nil || r.Water.Tube == nil
}

// of reaches a part of a section: the section, then a field of its struct.
func of[T, V any](get func(p place) *T) func(func(*T) *V) func(place) *V {
	return func(part func(*T) *V) func(place) *V {
		return func(p place) *V {
			if t := get(p); t != nil {
				return part(t)
			}
			return nil
		}
	}
}
