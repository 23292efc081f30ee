package rocketfile

import (
	"slices"
	"strconv"
	"strings"

	"ullage/sim/fault"
	"ullage/sim/quantity"
	"ullage/sim/rocket"
)

// Addition is a part of a description that a file may be given: a section that it does not have, or one more of a list.
type Addition struct {
	Path string // as in a header: "fins", "chamber.ply"
	Name string // what it is called: the heading on the screen
	Many bool   // there may be several
	Help string // what it is, one sentence
}

// Additions are the parts that the file may be given now, in the order of the screen.
func (f *File) Additions() []Addition {
	r := f.rd.rocket
	var out []Addition
	for _, s := range schema() {
		n := s.count(r)
		switch {
		case s.make == nil && (s.quiet == nil || !s.quiet(r) || len(f.rd.tables[s]) > 0): // it is listed
		case s.make != nil && !s.many && n > 0, s.many && n >= s.limit(), s.path == "water.tube" && r.Water == nil:
		default:
			out = append(out, Addition{s.path, s.group, s.many, s.about})
		}
	}
	return out
}

// Add gives the file a part: one that suits the rest where that can be told, else one of which all is still to be
// given, which only a draft can have. It returns the name of an input of it, to go to.
func (f *File) Add(path string) (*File, string, error) {
	s := sectionAt(path)
	if s == nil || s.make == nil && s.quiet == nil {
		return nil, "", fault.List{{Key: excerpt(path), Problem: "no part that can be added", Remedy: "add one of " + list(f.additionPaths(), "or")}}
	}
	if !slices.Contains(f.additionPaths(), path) {
		return nil, "", fault.List{{Key: path, Problem: "the rocket has as many as it can", Remedy: "change what is there"}}
	}
	if usual := suits[path]; usual != nil {
		if made, name, err := usual(f); err == nil {
			return made, s.firstOf(made, name), nil
		} else if !f.rd.draft {
			return nil, "", err
		}
	}
	made, name, err := f.addEmpty(s, "")
	if err != nil {
		return nil, "", err
	}
	return made, s.firstOf(made, name), nil
}

// suits are the sections of which one that suits the rocket can be told.
var suits = map[string]func(f *File) (*File, string, error){
	"canopy": (*File).AddCanopy, "fins": (*File).AddFins, "section": (*File).AddSection, "part": (*File).AddPart, "chamber.ply": (*File).AddPly,
	"wind.layer": (*File).AddLayer,
	"nose":       unnamed((*File).AddShape), "chamber": unnamed((*File).AddChamber), "water.tube": unnamed((*File).AddTube),
}

func unnamed(add func(f *File) (*File, error)) func(f *File) (*File, string, error) {
	return func(f *File) (*File, string, error) {
		made, err := add(f)
		return made, "", err
	}
}

// likedNames are what the items of a list are called first.
var likedNames = map[string][]string{"canopy": {"main"}, "fins": {"tail", "forward"}, "section": {"body", "tail"}, "part": {"airframe"}, "chamber.ply": {"cloth", "hoop"}}

// addEmpty gives the file a section without keys, an item of a list with its name.
func (f *File) addEmpty(s *section, name string) (*File, string, error) {
	var pairs []pair
	if s.many && s.title == nil {
		name = strconv.Itoa(s.count(f.rd.rocket) + 1)
	}
	if s.title != nil {
		var taken []string
		for i := range s.count(f.rd.rocket) {
			taken = append(taken, s.label(place{f.rd.rocket, i}))
		}
		if name == "" {
			name = freeName(taken, lastKey(s.path), likedNames[s.path]...)
		}
		pairs = []pair{{"name", quoted(name, `"`)}}
	}
	made, err := f.edit(s.path, []splice{f.rd.doc.insertSection(s, pairs)})
	return made, name, err
}

func (f *File) additionPaths() []string {
	var paths []string
	for _, a := range f.Additions() {
		paths = append(paths, a.Path)
	}
	return paths
}

// firstOf is the first input of an item of a section that is missing, or the first of all but its name.
func (s *section) firstOf(f *File, name string) string {
	prefix := s.path + "."
	if s.many {
		prefix += name + "."
	}
	if s.path == string(rocket.MotorPower) {
		return prefix + "file" // one beside the rocket is most of it
	}
	for _, m := range f.rd.missed {
		if _, row, _ := resolve(f.rd.rocket, m); strings.HasPrefix(m, prefix) && !row.fileOnly {
			return m
		}
	}
	for _, row := range s.fields {
		if !row.fileOnly && row.key != "name" {
			return prefix + row.key
		}
	}
	return prefix + "name"
}

// owner is what an input belongs to: its section, and which item of it.
func (f *File) owner(input string) (*section, place, error) {
	s, _, p := resolve(f.rd.rocket, input)
	if s == nil {
		return nil, place{}, fault.List{noInput(f.rd.rocket, input)}
	}
	return s, p, nil
}

// PartOf is how what an input belongs to is called where it can be removed: "fins tail". Empty where it cannot.
func (f *File) PartOf(input string) string {
	s, p, err := f.owner(input)
	switch {
	case err != nil || s.make == nil && !s.loose:
		return ""
	case s.many:
		return s.group + " " + s.label(p)
	}
	return s.group
}

// Remove takes what an input belongs to out of the text: an item of a list, or a section, with the sections in it
// and the uncertainties of its inputs.
func (f *File) Remove(input string) (*File, error) {
	if name, ok := strings.CutPrefix(input, "spread."); ok {
		return f.dropSpreadOf(name)
	}
	s, p, err := f.owner(input)
	switch {
	case err != nil:
		return nil, err
	case s.make == nil && !s.loose:
		return nil, fault.List{{Key: input, Problem: "belongs to what every rocket has", Remedy: "change it, or take the value out"}}
	case s.many:
		return f.removeItem(s.path, s.label(p), s.group)
	case s.path == "nose":
		return f.RemoveShape()
	}
	n := f.rd.doc.table(s, 0)
	if n == nil {
		return nil, fault.List{{Key: s.path, Problem: "is not in the file", Remedy: "add it first"}}
	}
	steps := []func(*document) []splice{func(d *document) []splice { return append(d.remove(n), d.dropSpreads(s.path)...) }}
	if power := f.rd.rocket.Power; s.path == string(power) && f.Given("power") {
		other := rocket.WaterPower
		if power == other {
			other = rocket.MotorPower
		}
		row := schema()[0].field("power")
		steps = append(steps, func(d *document) []splice {
			if d.root.member(string(other)) == nil {
				return d.remove(d.root.member("power"))
			}
			return d.set(schema()[0], row, 0, quoted(string(other), `"`))
		})
	}
	return f.steps(s.path, steps...)
}

// Move lets an item of a list change places with the one before it (by = −1) or behind it, with the comments and the
// uncertainties of both.
func (f *File) Move(input string, by int) (*File, error) {
	s, p, err := f.owner(input)
	if err != nil {
		return nil, err
	}
	to := p.item + by
	if !s.many || to < 0 || to >= s.count(f.rd.rocket) {
		problem := "is the only one of its kind"
		if s.many {
			problem = "goes no further"
		}
		return nil, fault.List{{Key: input, Problem: problem, Remedy: "choose an input of a list, such as sections or plies"}}
	}
	steps := f.respread(s, func(i int) int {
		switch i {
		case p.item:
			return to
		case to:
			return p.item
		}
		return i
	})
	return f.steps(s.path, append(steps, func(d *document) []splice {
		a, b := d.itemSpan(d.table(s, p.item)), d.itemSpan(d.table(s, to))
		return []splice{{a, string(d.text[b.start:b.end])}, {b, string(d.text[a.start:a.end])}}
	})...)
}

// itemSpan is where an item of a list stands, with its comments and without the blank lines around it.
func (d *document) itemSpan(n *node) span {
	if n.value.end > 0 {
		return n.value
	}
	at := span{len(d.text), 0}
	for _, b := range d.blocks[1:] {
		if within(b.owner, n) {
			at.start, at.end = min(at.start, d.aboveHeader(b.start, d.blocks[0].end)), max(at.end, d.belowBlock(b.end))
		}
	}
	for at.end > at.start && strings.IndexByte(" \t\r\n", d.text[at.end-1]) >= 0 {
		at.end--
	}
	return at
}

// dropSpreadOf takes the uncertainty of an input out of the text.
func (f *File) dropSpreadOf(input string) (*File, error) {
	gone := f.rd.doc.dropSpread(func(name string) bool { return name == input })
	if len(gone) == 0 {
		return nil, fault.List{{Key: "spread." + input, Problem: "is not in the file", Remedy: "state it first"}}
	}
	return f.edit("spread", gone)
}

// SetSpreadText is SetSpread of a text as a file has it; a number without a unit takes the one shown.
func (f *File) SetSpreadText(input, text string, bare quantity.Unit) (*File, error) {
	if isNumber(strings.TrimSpace(text)) && bare.Name != "" {
		text = strings.TrimSpace(text) + " " + bare.Name
	}
	s, err := ParseSpread(f.rd.rocket, input, text)
	if err != nil {
		return nil, err
	}
	return f.SetSpread(input, s.SD, "")
}
