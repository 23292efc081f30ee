package chamber

import (
	"slices"

	"ullage/sim/chamber"
	"ullage/sim/quantity"
	"ullage/tui/draw"
)

// fullSection is how many rows of a section are worth having beside all the rest.
const fullSection = 7

// weakSign marks the weakest part, in the drawing and among the bars.
const weakSign = '!'

// chamberCaution goes with every figure of a chamber; the short one where rows are few.
const (
	chamberCaution = "Strengths marked typical are unverified: test your own. Laminates age, creep and soften with heat. " +
		"Never stand by a pressurised chamber; local codes and qualified people decide."
	shortCaution = "Unverified: test your own. Never stand by it."
)

func (v *View) draw() { v.Draw(v.instead, v.paint) }

// paint draws the section, and below it the parts, the figures, or both.
func (v *View) paint() {
	parts, figures := v.partLines(), v.figureLines()
	caution := v.Paragraph(draw.Caution, chamberCaution)
	if v.Rows < 24 {
		caution = v.Paragraph(draw.Caution, shortCaution)
	}
	room := v.Rows - len(caution)
	below := parts
	switch all := append(append(slices.Clone(parts), draw.Blanks(v.Columns)), figures...); {
	case room-len(all)-len(v.sizes(fullSection)) >= fullSection:
		below = all
	case v.figures:
		below = figures
	}
	rows := v.sectionRows(room - len(below))
	if rows > 0 {
		v.section(rows)
		v.Add(v.sizes(rows)...)
	}
	v.Add(below[:max(min(len(below), room-len(v.Painted)), 0)]...)
	if spare := room - len(v.Painted); len(below) == len(parts) && spare > 3 {
		// The first of the figures are those one looks for; the key shows the others.
		v.Add(draw.Blanks(v.Columns))
		v.Add(figures[:min(spare-1, len(figures))]...)
	}
	for len(v.Painted) < room {
		v.Add(draw.Blanks(v.Columns))
	}
	v.Painted = v.Painted[:max(room, 0)]
	v.Add(caution...)
}

// sectionRows is how many of the rows left the section takes, its dimensions not counted:
// as many as leave the middle of the tube no shorter than it may be; 0 for no section.
func (v *View) sectionRows(left int) int {
	const fewest, most, shortest = 4, 15, 4
	for rows := most; rows >= fewest; rows-- {
		if rows+len(v.sizes(rows)) > left {
			continue
		}
		if rows <= 5 || newChamberSection(v.vessel, v.rocket, v.Columns, rows, v.Scene.Theme.Charset).shortened <= shortest {
			return rows
		}
	}
	return 0
}

// instead is what is said where there is nothing to draw; empty mostly.
func (v *View) instead() string {
	switch {
	case v.rocket == nil:
		return " "
	case v.vessel != nil:
		return ""
	case v.rocket.Water == nil:
		return "This rocket has neither [water] nor [chamber]: there is no pressure chamber to look at."
	}
	return "The file says nothing of the chamber's structure. Described under [chamber], plies, closures, laps and thread, its burst " +
		"pressure is estimated, the hydrostatic proof worked out that it has to pass, and go or no-go tells whether it was proved for its " +
		"pressure. Press " + v.bindings.Add.Help().Key + " to add one of typical glass cloth, to be changed to what you built."
}

// section draws the chamber in so many rows.
func (v *View) section(rows int) {
	weakest := ""
	if p := v.weakest(); p != nil {
		weakest = p.Name
	}
	stack := newChamberSection(v.vessel, v.rocket, v.Columns, rows, v.Scene.Theme.Charset).draw(weakest)
	v.Add(draw.PaintStack(v.Scene.Theme, &v.grid, &stack, v.Columns, rows)...)
}

// weakest is the weakest part; nil when none can be told.
func (v *View) weakest() *chamber.Part {
	if i := v.result.Weakest; i >= 0 && i < len(v.result.Parts) {
		return &v.result.Parts[i]
	}
	return nil
}

// sizes are the drawing's dimensions and how true to scale it is in so many rows; in
// one row where rows are few.
func (v *View) sizes(rows int) []string {
	c := v.vessel
	text := "Bore " + v.given(c.Diameter, "mm") + ", tube " + v.inUnit(c.Length, "mm", 3) + ", wall " + v.inUnit(c.WallThickness(), "mm", 3)
	if v.Rows < 24 {
		return v.Paragraph(draw.Dim, text)[:1]
	}
	for _, end := range []struct {
		name string
		e    *chamber.Closure
	}{{"forward", c.Forward}, {"aft", c.Aft}} {
		if end.e != nil {
			text += "; " + end.name + " " + string(end.e.Shape) + " with a lap of " + v.given(end.e.Overlap, "mm")
		}
	}
	text += ". Nose to the left"
	if says := newChamberSection(c, v.rocket, v.Columns, rows, v.Scene.Theme.Charset).says(); says != "" {
		text += "; " + says
	}
	return v.Paragraph(draw.Dim, text+".")
}

// given is a value as it was typed, in the unit shown for one of ours.
func (v *View) given(x float64, unit string) string {
	return draw.Exact(x, v.Scene.Unit(unit), 5)
}

// inUnit is a value in the unit shown for one of ours.
func (v *View) inUnit(x float64, unit string, digits int) string {
	return quantity.Format(x, v.Scene.Unit(unit), digits)
}
