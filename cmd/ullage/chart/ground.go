package chart

import (
	"fmt"
	"math"
	"slices"

	"ullage/cmd/ullage/chart/page"
	"ullage/sim/plan"
	"ullage/sim/report"
	"ullage/sim/report/words"
	"ullage/sim/study"
)

// clearPen draws the ring within which people are not.
const clearPen = page.Pen(4)

// Ground is a page of the field: where the rocket may come down on each drive, beside each other, where the
// field ends and how far people are kept away.
func Ground(all []plan.Reach, look Look) *page.Page {
	r := all[0].Rocket
	p := &page.Page{Paper: look.Paper, Title: words.Name(r) + ": where it may come down", Rows: []page.Row{{}}}
	notes := []string{words.Direction}
	for i := range all {
		x := &all[i]
		p.Lines = append(p.Lines, "On "+string(x.Rocket.Power)+": "+look.drive(x.Rocket))
		p.Rows[0].Panels = append(p.Rows[0].Panels, look.ground(x))
		notes = append(notes, "Clear distance on "+string(x.Rocket.Power)+": "+words.In(look.System).Clear(x.Clear, x.Rocket.Power)+".")
		for _, text := range look.doubts(look.dispersion(x)) {
			if !slices.Contains(notes, text) {
				notes = append(notes, text)
			}
		}
	}
	p.Notes = notes
	p.Lines = append(p.Lines, look.day(r)+fmt.Sprintf("; %s drawn, seed %d", words.Plural(all[0].Scatter.Drawn, "flight"), all[0].Seed))
	return p
}

func (l Look) dispersion(x *plan.Reach) report.Dispersion {
	return report.Dispersion{Rocket: x.Rocket, Spreads: x.Spreads, Seed: x.Seed, Result: x.Scatter, System: l.System}
}

// ground is one drive's panel.
func (l Look) ground(x *plan.Reach) page.Panel {
	var landings Landings
	for _, at := range x.Landings {
		_ = landings.Add(at) // never fails
	}
	s := l.dispersion(x)
	p := l.above(&s, &landings)
	p.Title = "on " + string(x.Rocket.Power)
	u := l.unit("m")
	if v := x.Clear.People; v > 0 {
		east, north := ellipse(study.Ellipse{Major: v, Minor: v})
		p.Lines = append(p.Lines, page.Line{X: inUnit(east, u), Y: inUnit(north, u), Pen: clearPen, Label: "people beyond " + words.In(l.System).Farther(v), Key: true})
	}
	l.nearer(&p, x)
	for kind, k := range x.Scatter.Kinds() {
		if k.Landed == 0 {
			continue
		}
		p.Beside = append(p.Beside, "", [...]string{study.Planned: "As planned", study.DrogueOnly: "The main does not open", study.Falling: "Ballistic, no canopy opens"}[kind]+fmt.Sprintf(", %d:", k.Landed))
		e := k.Landing
		p.Beside = append(p.Beside, "mean "+l.text(math.Hypot(e.East, e.North), "m")+" towards "+bearing(e.East, e.North))
		if e.Major > 0 {
			p.Beside = append(p.Beside, "90 % "+words.In(l.System).Ellipse(e))
		}
		p.Beside = append(p.Beside, "farthest "+l.text(k.Farthest, "m"), l.outside(&s, k))
	}
	return p
}

// outside is the share of landings outside the field.
func (l Look) outside(s *report.Dispersion, k study.Fallen) string {
	if !s.Rocket.Field.Bounded() {
		return "outside: unknown, no field given"
	}
	text := fmt.Sprintf("outside the field: %d of %d", k.Outside, k.Landed)
	if k.Outside > 0 {
		text += " (" + words.Share(k.Outside, k.Landed) + ")"
	}
	return text
}

// nearer looks at what comes down alone where the field reaches so much farther that little of it
// could be told apart.
func (l Look) nearer(p *page.Panel, x *plan.Reach) {
	const small, air = 5, 1.1
	far := x.Clear.People
	for _, k := range x.Scatter.Kinds() {
		far = math.Max(far, k.Farthest)
	}
	field := &x.Rocket.Field
	edge := field.Radius
	for _, c := range field.Boundary {
		edge = math.Max(edge, math.Hypot(c.East, c.North))
	}
	if far == 0 || edge < small*far {
		return
	}
	u := l.unit("m")
	p.X.Max = u.FromSI(far * air)
	p.X.Min, p.Y.Min, p.Y.Max = -p.X.Max, -p.X.Max, p.X.Max
	for i := range p.Lines {
		if p.Lines[i].Pen == fieldPen {
			p.Lines[i].Label = "field, beyond the frame"
		}
	}
}
