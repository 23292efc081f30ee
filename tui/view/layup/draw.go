package layup

import (
	"fmt"
	"math"
	"strconv"

	"ullage/sim/layup"
	report "ullage/sim/report/layup"
	"ullage/sim/report/words"
	"ullage/tui/draw"
)

// The caution that goes with it, and the short one where rows are few.
const (
	caution      = "Estimates of typical figures. What is laid up is no pressure chamber before it was proved with water; local law and qualified people decide."
	shortCaution = "No pressure chamber before its proof with water."
)

func (v *View) draw() { v.Draw(v.instead, v.paint) }

func (v *View) paint() {
	closing := v.Paragraph(draw.Caution, caution)
	if v.Rows < 24 {
		closing = v.Paragraph(draw.Caution, shortCaution)
	}
	below := append(v.mixLines(), v.builtLines()...)
	v.Add(v.partTable()...)
	room := v.Rows - len(v.Painted) - len(closing)
	if most := room - leastRows; len(below) > most { // pieces come first
		below = below[:max(most, 0)]
	}
	v.gap(room - len(below))
	list := v.pieceTable
	if v.pots {
		list = v.potTable
	}
	v.Add(list(v.Rows - len(v.Painted) - len(closing) - len(below))...)
	v.gap(v.Left() - len(closing) - len(below))
	v.Add(below...)
	if v.Left()-len(closing) > len(v.sheet.Plan().Parts)+3 { // both lists have room
		other := v.potTable
		if v.pots {
			other = v.pieceTable
		}
		v.Add(draw.Blanks(v.Columns))
		v.Add(other(v.Left() - len(closing))...)
	}
	for v.Left() > len(closing) {
		v.Add(draw.Blanks(v.Columns))
	}
	v.Add(closing...)
}

// leastRows is how many rows the pieces of a part have at least.
const leastRows = 4

// gap sets an empty row where there is room for more than a list.
func (v *View) gap(spare int) {
	const roomy = 10
	if spare > roomy {
		v.Add(draw.Blanks(v.Columns))
	}
}

// partTable are the parts as they are to be, and as they turned out.
func (v *View) partTable() []string {
	plan, say := v.sheet.Plan(), v.sheet
	t := draw.Table{Chosen: v.part, Columns: []draw.Column{{Title: "part", Left: true}, {Title: "layers", Rank: 3}, {Title: "wall"}, {Title: "weight"}, {Title: "resin", Rank: 4}, {Title: "weighed", Rank: 1}, {Title: "fibre", Rank: 2}}}
	for i := range plan.Parts {
		p := &plan.Parts[i]
		weighed, fibre := "-", say.Given(plan.Fibre, "%")
		if w := p.Weighed; w != nil {
			weighed, fibre = say.Mass(w.Mass), words.In(v.Scene.Units).Percent(w.ByMass)
			if math.IsNaN(w.ByMass) {
				fibre = "unknown"
			}
		}
		row := draw.Row{Cells: draw.TextCells(string(p.Name), strconv.Itoa(report.Layers(p)), say.Text(p.Wall, "mm"), say.Mass(p.Mass), say.Mass(p.Mass-p.Dry), weighed, fibre)}
		if i == v.part {
			row.Sign, row.Role = v.Scene.Theme.Pointer, draw.Focused
		}
		t.Rows = append(t.Rows, row)
	}
	return t.Draw(v.Scene.Theme, v.Columns, len(t.Rows)+1)
}

// pieceTable is the cutting list of the chosen part in so many rows.
func (v *View) pieceTable(rows int) []string {
	if rows < 2 {
		return nil
	}
	p := &v.sheet.Plan().Parts[v.part]
	t := draw.Table{Columns: []draw.Column{{Title: "layer", Left: true}, {Title: "cloth", Left: true, Rank: 1}, {Title: "pieces", Left: true}, {Title: "each cut to", Left: true}, {Title: "warp", Rank: 2}, {Title: "area", Rank: 3}}}
	for _, row := range report.Rows(v.sheet.Printer, p) {
		t.Rows = append(t.Rows, draw.Row{Cells: draw.TextCells(row[:]...)})
	}
	return v.titled("Cut for the "+string(p.Name), &t, rows)
}

// potTable are the pots of the chosen part.
func (v *View) potTable(rows int) []string {
	if rows < 2 {
		return nil
	}
	p, say := &v.sheet.Plan().Parts[v.part], v.sheet
	t := draw.Table{Columns: []draw.Column{{Title: "pot", Left: true}, {Title: "layers", Left: true}, {Title: "mixed"}, {Title: "resin", Rank: 1}, {Title: "hardener", Rank: 1}}}
	for i, q := range p.Pots {
		resin, hardener := "unknown", "unknown"
		if !math.IsNaN(q.Mixed.Hardener) {
			resin, hardener = say.Mass(q.Mixed.Resin), say.Mass(q.Mixed.Hardener)
		}
		t.Rows = append(t.Rows, draw.Row{Cells: draw.TextCells(strconv.Itoa(i+1), report.Span(q.First, q.Last), say.Mass(q.Mixed.Whole), resin, hardener)})
	}
	return v.titled("Pots for the "+string(p.Name), &t, rows)
}

// titled is a table below its title; how many rows are left out stands beside that.
func (v *View) titled(title string, t *draw.Table, rows int) []string {
	if hidden := len(t.Rows) + 2 - rows; hidden > 0 {
		title += fmt.Sprintf(", %d more rows: ullage layup", hidden)
	}
	theme := v.Scene.Theme
	return append([]string{theme.Paint(draw.Strong, draw.Padded(theme.Fit(theme.Say(title), v.Columns), v.Columns))}, t.Draw(theme, v.Columns, rows-1)...)
}

// mixLines are resin and hardener of it all.
func (v *View) mixLines() []string {
	plan, say := v.sheet.Plan(), v.sheet
	m := plan.Mixed
	pots := 0
	for i := range plan.Parts {
		pots += len(plan.Parts[i].Pots)
	}
	text := say.Mass(m.Whole) + " of resin to mix in " + words.Plural(pots, "pot")
	if math.IsNaN(m.Hardener) {
		return v.Paragraph(draw.Caution, text+": give layup.hardener, the ratio of the data sheet; none is usual.")
	}
	return v.Paragraph(draw.Plain, text+": "+say.Mass(m.Resin)+" and "+say.Mass(m.Hardener)+" of hardener.")
}

// builtLines are what follows for the strength, and what the scales hint at.
func (v *View) builtLines() []string {
	plan, say := v.sheet.Plan(), v.sheet
	var out []string
	t := &plan.Strength
	if !math.IsNaN(t.Planned) {
		text := "Burst, an estimate: planned " + say.AtMost(t.Planned)
		if t.From != layup.FromPlan {
			text += ", built " + say.AtMost(t.Built) + " by its " + string(t.From)
		}
		out = append(out, v.Paragraph(draw.Dim, text+".")...)
	}
	for i := range plan.Parts {
		for _, h := range say.Hints(&plan.Parts[i]) {
			out = append(out, v.Paragraph(draw.Caution, h)...)
		}
	}
	return out
}
