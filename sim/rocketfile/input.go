package rocketfile

import (
	"strings"

	"ullage/sim/fault"
	"ullage/sim/quantity"
	"ullage/sim/rocket"
)

// Kind says how an input is edited.
type Kind int

// The kinds of input.
const (
	NumberKind Kind = iota // a number, mostly with a unit
	ChoiceKind             // one of Choices
	TextKind               // a name, a table or a list
	RuleKind               // a canopy's opening rule, with a number inside
)

// Input is one value of a rocket that a user can change. All numbers are SI.
// Every function is there whatever the kind, takes any rocket that has the
// same parts as the one the input was listed for, and may be called from
// several goroutines on rockets of their own.
type Input struct {
	Name      string // dotted, fixed: water.fill
	Group     string // heading on the screen; a canopy's has its name in it
	Label     string // on the screen, at most 12 characters
	Help      string // one sentence
	Kind      Kind
	Dimension quantity.Dimension
	Unit      quantity.Unit // to show unless the file has another
	Min, Max  float64       // of the number alone, SI, inclusive
	Step      float64       // a nudge, SI
	Coarse    float64       // a coarse nudge, SI
	Choices   []string      // the words of a choice; of a number those that may stand in its place
	Drive     rocket.Power  // the drive it belongs to; empty for both
	Apart     bool          // no flight depends on it: the chamber's structure, limits
	Path      bool          // it names a file, relative to the rocket file's folder

	// Also is the same value in other measures, each with the unit to show; nil mostly.
	Also func(r *rocket.Rocket) []quantity.Quantity

	// Get gives the number: of a choice its place in Choices, of a rule the one
	// inside. When given is false the rocket holds none, and v is the value in
	// force instead, 0 if there is none.
	Get func(r *rocket.Rocket) (v float64, given bool)
	// Set changes the number. It checks the range of this input alone; what
	// concerns several inputs is for the rocket's Validate. The error is a fault.List.
	Set func(r *rocket.Rocket, v float64) error
	// Text is the value as a file has it, without quotes; empty for none.
	Text func(r *rocket.Rocket) string
	// SetText takes a value written as in a file. The error is a fault.List.
	SetText func(r *rocket.Rocket, text string) error
}

// Takes says what an input may be set to, in its usual unit: "0 % to 98 %", "air, helium".
func (in *Input) Takes() string {
	words := strings.Join(in.Choices, ", ")
	switch in.Kind {
	case ChoiceKind:
		return words
	case RuleKind:
		return "a rule"
	case TextKind:
		return "text"
	}
	is := quantity.Range{Unit: in.Unit, Min: in.Min, Max: in.Max}
	if words != "" {
		return is.String() + ", or " + words
	}
	return is.String()
}

// Inputs lists every input that a rocket has, in the order of the screen. Those
// of shape and attitude are of a rocket that has a shape; those of a gust are not
// listed without one either, though Find has them.
func Inputs(r *rocket.Rocket) []Input {
	inputs := make([]Input, 0, mostInputs(r))
	for _, s := range schema() {
		if s.quiet != nil && s.quiet(r) {
			continue
		}
		for i := range s.count(r) {
			p := place{r, i}
			for _, f := range s.fields {
				if has(r, s, f) {
					inputs = append(inputs, input(s, f, p))
				}
			}
		}
	}
	return inputs
}

// mostInputs is how many inputs a rocket can have: rows of its sections, some of which may be for other rockets.
func mostInputs(r *rocket.Rocket) int {
	n := 0
	for _, s := range schema() {
		n += s.count(r) * len(s.fields)
	}
	return n
}

// has tells whether a rocket that has the section has an input.
func has(r *rocket.Rocket, s *section, f *field) bool {
	switch {
	case f.fileOnly || f.only != nil && !f.only(r):
		return false
	case f.drive == rocket.WaterPower:
		return r.Water != nil
	case f.drive == rocket.MotorPower:
		return r.Motor != nil
	}
	return true
}

// Find gives one input of a rocket by its dotted name. The error is a fault.List and
// suggests the nearest name.
func Find(r *rocket.Rocket, name string) (Input, error) {
	if in, ok := Lookup(r, name); ok {
		return in, nil
	}
	return Input{}, fault.List{noInput(r, name)}
}

// Lookup is Find for who only wants to know whether a rocket has an input: it looks for no other name.
func Lookup(r *rocket.Rocket, name string) (Input, bool) {
	s, f, p := resolve(r, name)
	if f != nil && p.item < s.count(r) && has(r, s, f) {
		return input(s, f, p), true
	}
	return Input{}, false
}

// noInput says that a rocket has no input of a name.
func noInput(r *rocket.Rocket, name string) fault.Fault {
	if now, ok := renamed(name); ok {
		return fault.Fault{Key: excerpt(name), Problem: formerName, Remedy: "write " + excerpt(now)}
	}
	var names []string
	for _, in := range Inputs(r) {
		names = append(names, in.Name)
	}
	remedy := "ullage inputs lists them"
	if word, ok := quantity.Nearest(name, names); ok {
		remedy = "perhaps " + word + " is meant"
	} else if group, _, dotted := strings.Cut(name, "."); dotted {
		var keys []string
		for _, n := range names {
			if strings.HasPrefix(n, group+".") {
				keys = append(keys, n)
			}
		}
		if len(keys) > 0 {
			remedy = "there are " + list(keys, "and")
		}
	}
	return fault.Fault{Key: excerpt(name), Problem: "the rocket has no such input", Remedy: remedy}
}

// resolve finds the row of a dotted name, whether or not the rocket has the
// section; nil when there is none.
func resolve(r *rocket.Rocket, name string) (*section, *field, place) {
	for _, s := range schema() {
		if !s.many {
			key := name
			if s.path != "" {
				var ok bool
				if key, ok = strings.CutPrefix(name, s.path+"."); !ok {
					continue
				}
			}
			if f := s.field(key); f != nil {
				return s, f, place{rocket: r}
			}
			continue
		}
		rest, ok := strings.CutPrefix(name, s.path+".")
		if !ok {
			continue
		}
		title, key, _ := strings.Cut(rest, ".")
		for i := range s.count(r) {
			if p := (place{r, i}); s.label(p) == title {
				return s, s.field(key), p
			}
		}
	}
	return nil, nil, place{}
}

func sectionAt(path string) *section {
	for _, s := range schema() {
		if s.path == path {
			return s
		}
	}
	return nil
}

// input binds a row to its place.
func input(s *section, f *field, p place) Input {
	is := f.codec.scale(f, p)
	name := s.prefix(p) + f.key
	in := Input{
		Name: name, Group: s.group, Label: f.label, Help: f.help, Kind: f.codec.kind(p),
		Dimension: is.Dimension, Unit: is.Unit, Min: is.Min, Max: is.Max, Step: is.step, Coarse: is.coarse,
		Drive: s.drive, Apart: s.apart,
	}
	if f.group != "" {
		in.Group = f.group
	}
	if s.many {
		in.Group += " " + s.label(p)
	}
	if f.drive != "" {
		in.Drive = f.drive
	}
	switch c := f.codec.(type) {
	case *choiceCodec:
		in.Choices = c.choices(p.rocket)
		in.Max, in.Step, in.Coarse = float64(max(len(in.Choices)-1, 0)), 1, 1
	case *eitherCodec:
		in.Choices = c.words
	case *amountCodec:
		in.Also = c.also
	case *textCodec:
		in.Path = c.path
	}
	in.Get = func(r *rocket.Rocket) (float64, bool) { return f.codec.number(f, place{r, p.item}) }
	in.Text = func(r *rocket.Rocket) string { return f.codec.text(f, place{r, p.item}) }
	in.Set = func(r *rocket.Rocket, v float64) error {
		at := place{r, p.item}
		if bad := f.codec.setNumber(f, at, v); bad != nil {
			return fault.List{bad.Of(name, quantity.Exact(v, f.codec.scale(f, at).Unit))}
		}
		s.cleared(f, at)
		return nil
	}
	in.SetText = func(r *rocket.Rocket, text string) error {
		at := place{r, p.item}
		if bad := f.codec.read(f, at, typed(text, f.codec)); bad != nil {
			return fault.List{bad.Of(name, excerpt(text))}
		}
		s.cleared(f, at)
		return nil
	}
	return in
}

// cleared takes out the number that the one just set replaces.
func (s *section) cleared(f *field, p place) {
	if f.instead != "" {
		clearNumber(s.field(f.instead), p)
	}
}

// typed makes a node of a value written as in a file: quotes are not needed
// around texts and quantities.
func typed(text string, c codec) *node {
	text = strings.TrimSpace(text)
	_, words := c.(*textCodec)
	toml := `"'[{`
	if words {
		toml = `"'`
	}
	switch {
	case text != "" && strings.IndexByte(toml, text[0]) >= 0:
		doc, faults := parse("", "", []byte("value = "+text))
		if doc != nil && len(faults.faults) == 0 && len(doc.root.members) == 1 {
			return doc.root.members[0]
		}
	case !words && isNumber(text):
		return &node{kind: numberNode, text: text}
	}
	return &node{kind: stringNode, text: text}
}
