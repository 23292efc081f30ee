package rocketfile

import (
	"math"
	"strings"

	"ullage/sim/airframe"
	"ullage/sim/fault"
	"ullage/sim/quantity"
	"ullage/sim/rocket"
)

// AddShape gives a rocket that has none the shape of a slender one as wide as its
// body and long enough for its chamber and motor: to be changed to what the tape
// measure says. Where it balances is for the user to find, so body.balance is
// not given.
func (f *File) AddShape() (*File, error) {
	r := f.rd.rocket
	if shaped(r) {
		return nil, fault.List{{Key: "nose", Problem: "the rocket has a shape", Remedy: "change that one"}}
	}
	d := r.Body.Diameter
	inside := 0.0
	if w := r.Water; w != nil {
		inside = w.Volume / (math.Pi / 4 * w.Bore * w.Bore)
	}
	if m := r.Motor; m != nil {
		inside = max(inside, m.Length)
	}
	nose := inWhole(3.5 * d)
	length := min(inWhole(nose+max(inside+2*d, 8*d)), 20)
	fins := usualFins(d)
	return f.steps("nose",
		func(doc *document) []splice {
			return doc.set(sectionAt("body"), sectionAt("body").field("length"), 0, inMillimetres(length))
		},
		func(doc *document) []splice {
			return []splice{doc.insertSection(sectionAt("nose"), []pair{{"shape", `"tangent ogive"`}, {"length", inMillimetres(nose)}})}
		},
		func(doc *document) []splice {
			return []splice{doc.insertSection(sectionAt("fins"), fins.pairs("tail", length-fins.root))}
		})
}

// RemoveShape takes the shape out of the text, with what only a rocket that has
// one can be told. The mass list stays.
func (f *File) RemoveShape() (*File, error) {
	if !shaped(f.rd.rocket) {
		return nil, fault.List{noShape("nose")}
	}
	var steps []func(*document) []splice
	drop := func(path ...string) {
		steps = append(steps, func(doc *document) []splice {
			if n := doc.root.find(path...); n != nil {
				return doc.remove(n)
			}
			return nil
		})
	}
	gone := map[string]bool{}
	for _, s := range schema() {
		whole := s.path == "nose" || s.path == "section" || s.path == "fins" || s.path == "flight"
		for _, row := range s.fields {
			if !whole && row.ofShape() {
				drop(s.path, row.key)
				gone[s.path+"."+row.key] = true
			}
		}
		if whole {
			drop(s.path)
			gone[s.path] = true
		}
	}
	steps = append(steps, func(doc *document) []splice {
		return doc.dropSpread(func(name string) bool {
			section, _, _ := strings.Cut(name, ".")
			return gone[name] || gone[section]
		})
	})
	return f.steps("nose", steps...)
}

// ofShape tells of a key that only a rocket with a shape has.
func (f *field) ofShape() bool {
	return f.only != nil && !f.only(&rocket.Rocket{}) && f.only(&rocket.Rocket{Shape: &airframe.Shape{}})
}

// AddFins adds a set of fins: at the tail, or ahead of those that are there. It
// returns the name of the set.
func (f *File) AddFins() (*File, string, error) {
	r := f.rd.rocket
	if !shaped(r) {
		return nil, "", fault.List{noShape("fins")}
	}
	fins := usualFins(r.Shape.Diameter)
	at := r.Shape.Length - fins.root
	var taken []string
	for i := range r.Shape.Fins {
		other := &r.Shape.Fins[i]
		at = min(at, inWhole(other.Position-fins.root-r.Shape.Diameter/2))
		taken = append(taken, other.Name)
	}
	if at < r.Shape.Nose.Length {
		return nil, "", fault.List{{Key: "fins", Problem: "there is no room for more fins ahead of those there are", Remedy: "shorten those, or move them aft"}}
	}
	name := freeName(taken, "fins", "tail", "forward")
	return f.added("fins", name, fins.pairs(name, at))
}

// RemoveFins takes a set of fins out of the text.
func (f *File) RemoveFins(name string) (*File, error) { return f.removeItem("fins", name, "fins") }

// AddSection adds a tube at the aft end, half as long as what nose and sections
// leave of the body: it changes nothing until it is given other diameters. It
// returns the name of the section.
func (f *File) AddSection() (*File, string, error) {
	const least = 2 * millimetre
	r := f.rd.rocket
	if !shaped(r) {
		return nil, "", fault.List{noShape("section")}
	}
	rest := r.Shape.Length - r.Shape.Nose.Length
	var taken []string
	for _, s := range r.Shape.Sections {
		rest -= s.Length
		taken = append(taken, s.Name)
	}
	if rest < least {
		return nil, "", fault.List{{Key: "section", Problem: "nose and sections fill the body", Remedy: "raise body.length or shorten one of them"}}
	}
	name := freeName(taken, "section", "body", "tail")
	return f.added("section", name, []pair{{"name", quoted(name, `"`)}, {"length", inMillimetres(inWhole(rest / 2))}})
}

// RemoveSection takes a section out of the text.
func (f *File) RemoveSection(name string) (*File, error) {
	return f.removeItem("section", name, "section")
}

// AddPart adds a part to the mass list. The first is the whole airframe, as it
// was weighed and balanced, so that a list begins with the rocket there is;
// those after it are small and in the middle. It returns the name of the part.
func (f *File) AddPart() (*File, string, error) {
	r := f.rd.rocket
	if !shaped(r) {
		return nil, "", fault.List{noShape("part")}
	}
	s := sectionAt("part")
	inGrams := func(v float64) string {
		return quoted(quantity.Exact(v, s.field("mass").codec.scale(nil, place{}).Unit), `"`)
	}
	if len(r.Parts) == 0 {
		const name = "airframe"
		at := r.Body.Balance
		if at == 0 {
			at = inWhole(r.Shape.Length / 2)
		}
		length := math.Floor(2*min(at, r.Shape.Length-at)/millimetre) * millimetre
		return f.added("part", name, []pair{{"name", quoted(name, `"`)}, {"mass", inGrams(r.BodyMass())},
			{"position", inMillimetres(at)}, {"length", inMillimetres(max(length, 0))}})
	}
	var taken []string
	for _, p := range r.Parts {
		taken = append(taken, p.Name)
	}
	name := freeName(taken, "part")
	return f.added("part", name, []pair{{"name", quoted(name, `"`)}, {"mass", inGrams(20 * gram)},
		{"position", inMillimetres(inWhole(r.Shape.Length / 2))}})
}

// RemovePart takes a part of the mass list out of the text.
func (f *File) RemovePart(name string) (*File, error) { return f.removeItem("part", name, "part") }

// finSize are the lengths of a set of fins, m.
type finSize struct{ root, tip, span, sweep, thickness float64 }

// usualFins suit a body of a diameter: common practice, no source.
func usualFins(d float64) finSize {
	return finSize{inWhole(1.6 * d), inWhole(0.8 * d), inWhole(1.1 * d), inWhole(0.6 * d), inWhole(min(max(d/25, 1*millimetre), 10*millimetre))}
}

// pairs are the keys of a set of four of them at a place, m from the tip.
func (s finSize) pairs(name string, at float64) []pair {
	return []pair{{"name", quoted(name, `"`)}, {"count", "4"},
		{"root", inMillimetres(s.root)}, {"tip", inMillimetres(s.tip)}, {"span", inMillimetres(s.span)},
		{"sweep", inMillimetres(s.sweep)}, {"thickness", inMillimetres(s.thickness)}, {"position", inMillimetres(at)}}
}

// inWhole is a length to the millimetre, a small one to the tenth of it.
func inWhole(v float64) float64 {
	to := 1e3 // per metre
	if math.Abs(v) < 20*millimetre {
		to = 1e4
	}
	return math.Round(v*to) / to
}

func inMillimetres(v float64) string {
	return quoted(quantity.Exact(v, quantity.Usual(quantity.Length)), `"`)
}

func noShape(key string) fault.Fault {
	return fault.Fault{Key: key, Problem: "the rocket has no shape", Remedy: "add one first: [nose], [[fins]] and body.length"}
}

// withoutShape tells a rocket that only a drag coefficient describes.
func withoutShape(r *rocket.Rocket) bool { return !shaped(r) }
