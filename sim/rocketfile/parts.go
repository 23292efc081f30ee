package rocketfile

import (
	"math"
	"slices"
	"strconv"

	"ullage/atmosphere"
	"ullage/sim/fault"
	"ullage/sim/quantity"
	"ullage/sim/rocket"
)

// AddCanopy adds a canopy and returns its name: the first is sized for the rocket to come down
// at about 5 m/s; beside one that is, a drogue that opens before it; beside smaller ones
// alone, the main that opens after them.
func (f *File) AddCanopy() (*File, string, error) {
	r := f.rd.rocket
	s := sectionAt("canopy")
	var taken []string
	for _, c := range r.Canopies {
		taken = append(taken, c.Name)
	}
	liked, diameter, opens := "main", canopyFor(r), f.usualRule()
	if main := largest(r.Canopies); main != nil {
		if d := main.NominalDiameter(); d < mainShare*diameter {
			opens = quoted(rocket.Falling.Row().Example, `"`)
		} else {
			liked, diameter, opens = "drogue", drogueFor(d), f.ruleBefore(main)
		}
	}
	name := freeName(taken, "canopy", liked)
	pairs := []pair{
		{"name", quoted(name, `"`)},
		{"diameter", quoted(quantity.Exact(diameter, s.field("diameter").codec.scale(nil, place{}).Unit), `"`)},
		{"deploy", opens},
	}
	return f.added("canopy", name, pairs)
}

// freeName is a name that is not taken: one of the liked ones, else the section
// with a number.
func freeName(taken []string, section string, liked ...string) string {
	for _, name := range liked {
		if !slices.Contains(taken, name) {
			return name
		}
	}
	n := len(taken) + 1
	for slices.Contains(taken, section+"-"+strconv.Itoa(n)) {
		n++
	}
	return section + "-" + strconv.Itoa(n)
}

// added is the file with one more item of a repeated section.
func (f *File) added(section, name string, pairs []pair) (*File, string, error) {
	made, err := f.edit(section, []splice{f.rd.doc.insertSection(sectionAt(section), pairs)})
	return made, name, err
}

// canopyFor is the diameter, m, on which a rocket comes down at 5 m/s in
// standard air: common practice, no source.
func canopyFor(r *rocket.Rocket) float64 {
	const descent, coefficient, step = 5.0, 0.75, 0.05
	extra := 0.0
	if r.Water != nil {
		extra = r.Water.Fittings
	}
	if r.Motor != nil {
		extra = max(extra, r.Motor.Fittings+r.Motor.Case)
	}
	mass := r.BodyMass() + extra
	air := atmosphere.Standard(0)
	area := mass * atmosphere.StandardGravity / (0.5 * air.Density * descent * descent * coefficient)
	return min(max(math.Ceil(math.Sqrt(4*area/math.Pi)/step), 1)*step, 50)
}

// usualRule opens a canopy near the top on every drive that the file has.
func (f *File) usualRule() string {
	const timed = `"apogee + 1 s"`
	r := f.rd.rocket
	charge := r.Motor != nil && !math.IsNaN(r.Motor.Delay)
	switch {
	case charge && r.Water == nil:
		return quoted(rocket.Ejection.Row().Words, `"`)
	case charge:
		return inBraces([]pair{{"water", timed}, {"motor", quoted(rocket.Ejection.Row().Words, `"`)}})
	}
	return timed
}

// RemoveCanopy takes a canopy out of the text.
func (f *File) RemoveCanopy(name string) (*File, error) {
	return f.removeItem("canopy", name, "canopy")
}

// removeItem takes an item of a repeated section out of the text, with its
// uncertainties. In messages it is called what.
func (f *File) removeItem(section, name, what string) (*File, error) {
	s := sectionAt(section)
	var names []string
	for i := range s.count(f.rd.rocket) {
		title := s.label(place{f.rd.rocket, i})
		if title == name {
			steps := f.respread(s, func(k int) int {
				switch {
				case k == i:
					return -1
				case k > i:
					return k - 1
				}
				return k
			})
			return f.steps(section+"."+name, append(steps, func(d *document) []splice { return d.remove(d.table(s, i)) })...)
		}
		names = append(names, title)
	}
	remedy := "there is none"
	if len(names) > 0 {
		remedy = "there is " + list(names, "and")
	}
	return nil, fault.List{{Key: excerpt(section + "." + name), Problem: "the rocket has no such " + what, Remedy: remedy}}
}

// AddTube adds a launch tube that suits the throat and reaches above the liquid.
func (f *File) AddTube() (*File, error) {
	w := f.rd.rocket.Water
	s := sectionAt("water.tube")
	switch {
	case w == nil:
		return nil, fault.List{{Key: s.path, Problem: "the rocket has no water drive", Remedy: "add [water] first"}}
	case w.Tube != nil:
		return nil, fault.List{{Key: s.path, Problem: "the rocket has a launch tube", Remedy: "change that one"}}
	}
	const tenth = 1e-4 // m
	outer := math.Floor(0.985*w.Throat/tenth) * tenth
	inner := math.Floor(0.75*outer/tenth) * tenth
	if inner <= 0 {
		outer, inner = 0.985*w.Throat, 0.75*w.Throat
	}
	bore := math.Pi / 4 * w.Bore * w.Bore
	chamber := w.Volume / bore
	liquid := w.Fill * w.Volume / (bore - math.Pi/4*outer*outer)
	length := (liquid + chamber) / 2
	if rounded := math.Round(length*1e3) / 1e3; rounded > liquid && rounded < chamber {
		length = rounded
	}
	var pairs []pair
	for _, v := range []struct {
		key string
		v   float64
	}{{"length", length}, {"outer", outer}, {"inner", inner}} {
		unit := s.field(v.key).codec.scale(nil, place{}).Unit
		pairs = append(pairs, pair{v.key, quoted(quantity.Exact(v.v, unit), `"`)})
	}
	return f.edit(s.path, []splice{f.rd.doc.insertSection(s, pairs)})
}

// RemoveTube takes the launch tube out of the text.
func (f *File) RemoveTube() (*File, error) {
	s := sectionAt("water.tube")
	n := f.rd.doc.table(s, 0)
	if n == nil {
		return nil, fault.List{{Key: s.path, Problem: "the rocket has no launch tube", Remedy: "add one first"}}
	}
	return f.edit(s.path, append(f.rd.doc.remove(n), f.rd.doc.dropSpreads(s.path)...))
}

// steps makes edits one after the other, of which only the outcome has to be a
// rocket.
func (f *File) steps(key string, steps ...func(*document) []splice) (*File, error) {
	doc := f.rd.doc
	for _, step := range steps {
		if doc = doc.edited(step(doc)); doc == nil {
			return nil, fault.List{{Key: key, Problem: "this text is too intricate to change", Remedy: "edit the file by hand"}}
		}
	}
	return f.with(doc)
}

// edit makes a file of the text with the splices done.
func (f *File) edit(key string, splices []splice) (*File, error) {
	doc := f.rd.doc.edited(splices)
	if doc == nil {
		return nil, fault.List{{Key: key, Problem: "this text is too intricate to change", Remedy: "edit the file by hand"}}
	}
	return f.with(doc)
}
