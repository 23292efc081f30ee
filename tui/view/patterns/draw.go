package patterns

import (
	"strconv"

	"ullage/sim/pattern"
	"ullage/sim/report"
	"ullage/sim/report/page"
	"ullage/sim/report/words"
	"ullage/tui/draw"
	"ullage/tui/plot"
	"ullage/tui/view"
)

// caution closes the view.
const caution = "Measure the print and the part before you cut. Local law and qualified people decide."

func (v *View) draw() { v.Draw(v.instead, v.paint) }

// instead is what is said where there is nothing to list; empty mostly.
func (v *View) instead() string {
	switch {
	case v.Scene.File == nil:
		return " "
	case len(v.set.Patterns)+len(v.set.Lacks) == 0:
		return "There is nothing to draw: the file describes no shape, no chamber, no mount and no canopy."
	}
	return ""
}

// paint shows the list, the chosen pattern below it, and what was written.
func (v *View) paint() {
	foot := append(v.status(), v.Paragraph(draw.Dim, caution)...)
	const least = 5 // rows of the list
	v.Add(v.list(min(len(v.set.Patterns)+len(v.set.Lacks)+1, max(v.Rows*2/5, least)))...)
	if p := v.pattern(); p != nil {
		v.Add(v.Paragraph(draw.Strong, p.Title)[0])
		v.Add(v.body(p, v.Left()-len(foot))...)
	} else if l := v.lack(); l != nil {
		v.Add(draw.Blanks(v.Columns))
		v.Add(v.Paragraph(draw.Caution, "Not drawn: "+l.What+": "+report.PatternLack(l)+".")...)
	}
	v.Painted = v.Painted[:min(len(v.Painted), max(v.Rows-len(foot), 0))]
	for v.Left() > len(foot) {
		v.Add(draw.Blanks(v.Columns))
	}
	v.Add(foot...)
}

// body is the chosen pattern in so many rows: drawing and sizes beside each other, or one below the other, or one of them.
func (v *View) body(p *pattern.Pattern, rows int) []string {
	const wide, words, drawn = 110, 52, 9 // columns from which both stand side by side; those of the sizes then; rows that a drawing needs
	if v.Columns >= wide && !v.text {
		left := v.Columns - words - 2
		return draw.Beside(v.side(p, left, rows), v.sizes(p, words), left, 2, v.Columns, rows)
	}
	sizes := v.sizes(p, v.Columns)
	figures := v.Paragraph(draw.Plain, v.figures(p))
	switch {
	case rows >= len(sizes)+drawn:
		return append(v.side(p, v.Columns, rows-len(sizes)), sizes...)
	case v.text:
		return sizes[:max(min(len(sizes), rows), 0)]
	case rows >= len(figures)+drawn:
		return append(v.side(p, v.Columns, rows-len(figures)), figures...)
	}
	return v.side(p, v.Columns, rows)
}

// figures are the sizes of a pattern.
func (v *View) figures(p *pattern.Pattern) string {
	return report.PatternFigures(words.In(v.Scene.Units), p)
}

// status is what came of writing.
func (v *View) status() []string {
	switch w := &v.written; {
	case w.Busy:
		return v.Paragraph(draw.Dim, "Writing"+v.Scene.Theme.Ellipsis)
	case w.Err != nil:
		return v.Paragraph(draw.Bad, "Not written: "+view.FaultText(w.Err, "")+".")
	case w.Ready:
		return v.Paragraph(draw.Good, w.Result+" "+report.PrintPatterns)
	}
	return nil
}

// list are the patterns with their sizes, and below them what is lacking, in so many rows.
func (v *View) list(rows int) []string {
	say, theme := words.In(v.Scene.Units), v.Scene.Theme
	head := words.Plural(len(v.set.Patterns), "pattern")
	if n := len(v.set.Lacks); n > 0 {
		head += ", " + strconv.Itoa(n) + " not drawn"
	}
	t := draw.Table{Chosen: v.chosen, Columns: []draw.Column{{Title: head, Left: true}, {Title: "make", Rank: 2}, {Title: "size, " + say.Unit("mm"), Rank: 1}}}
	for i := range v.set.Patterns {
		p := &v.set.Patterns[i]
		t.Rows = append(t.Rows, draw.Row{Cells: draw.TextCells(p.Name, strconv.Itoa(p.Count), report.PatternSize(say, p))})
	}
	for i := range v.set.Lacks {
		l := &v.set.Lacks[i]
		t.Rows = append(t.Rows, draw.Row{Rest: draw.Cell{Text: "no " + l.What + ": " + report.PatternLack(l), Role: draw.Caution}})
	}
	t.Rows[v.chosen].Sign, t.Rows[v.chosen].Role = theme.Pointer, draw.Focused
	return t.Draw(theme, v.Columns, rows)
}

// sizes are the figures of a pattern, what it assumes, and its radii.
func (v *View) sizes(p *pattern.Pattern, w int) []string {
	theme, say := v.Scene.Theme, words.In(v.Scene.Units)
	rows := draw.Paragraph(theme, draw.Plain, v.figures(p), w)
	if t := p.Table; t != nil {
		g := page.Grid{}
		for _, h := range t.Heads {
			g.Heads = append(g.Heads, page.Figures(h))
		}
		for _, row := range t.Rows {
			var cells []string
			for _, x := range row {
				cells = append(cells, say.Turned(x))
			}
			g.Rows = append(g.Rows, cells)
		}
		rows = append(rows, theme.Paint(draw.Strong, theme.Fit(theme.Say(t.Title+", "+say.Unit("mm")), w)))
		rows = append(rows, draw.Blocks(theme, []page.Block{g}, w)...)
	}
	for _, n := range p.Notes {
		rows = append(rows, draw.Paragraph(theme, draw.Dim, n, w)...)
	}
	return rows
}

// look is what pens look like: what is cut, what is marked, and lines to help.
func look(pen pattern.Pen) (plot.Ink, plot.Style) {
	switch pen {
	case pattern.Cut:
		return plot.TraceA, plot.Solid
	case pattern.Hole:
		return plot.TraceB, plot.Solid
	case pattern.Mark, pattern.Grain:
		return plot.TraceC, plot.Solid
	case pattern.Fold:
		return plot.TraceC, plot.Dashed
	}
	return plot.Kept, plot.Dotted
}

// side draws a pattern to scale in so many columns and rows.
func (v *View) side(p *pattern.Pattern, columns, rows int) []string {
	if rows < 3 {
		return nil
	}
	u := v.Scene.Unit("mm")
	c := plot.Chart{Equal: true}
	for _, l := range p.Lines {
		ink, style := look(l.Pen)
		s := plot.Series{Ink: ink, Style: style}
		for _, q := range l.Points {
			s.X, s.Y = append(s.X, u.FromSI(q.X)), append(s.Y, u.FromSI(q.Y))
		}
		c.Series = append(c.Series, s)
	}
	stack := plot.Stack{Charset: v.Scene.Theme.Charset, X: plot.Axis{Unit: u.Name}, Charts: []plot.Chart{c}}
	return draw.PaintStack(v.Scene.Theme, &v.grid, &stack, columns, rows)
}
