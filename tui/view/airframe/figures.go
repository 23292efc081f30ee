package airframe

import (
	"cmp"
	"strings"

	"github.com/charmbracelet/x/ansi"

	"ullage/sim"
	"ullage/sim/gates"
	"ullage/sim/quantity"
	"ullage/sim/results"
	"ullage/sim/study"
	"ullage/tui/draw"
	"ullage/tui/plot"
	"ullage/tui/view"
)

// figureLines are the figures below the drawing: both drives' margins, alignment, what
// would give the margin wanted, and the drag's shares.
func (v *View) figureLines() []string {
	if !v.study.Ready {
		return v.Paragraph(draw.Dim, "The figures are being computed"+v.Scene.Theme.Ellipsis)
	}
	out := v.margins()
	if v.study.Busy {
		out = v.beside(out, "before the last edit; computing"+v.Scene.Theme.Ellipsis)
	} else if v.study.Err != nil {
		out = append(v.Paragraph(draw.Bad, view.FaultText(v.study.Err, "")), out...)
	}
	out = append(out, v.alignment()...)
	out = append(out, v.sizing()...)
	return append(out, v.shares()...)
}

// beside says something at the end of the first of some rows, where it moves nothing that
// stands below; above them where it has no room.
func (v *View) beside(rows []string, text string) []string {
	if len(rows) > 0 {
		used := draw.Width(strings.TrimRight(ansi.Strip(rows[0]), " "))
		if room := v.Columns - used - 2; draw.Width(text) <= room {
			rows[0] = draw.PadPainted(rows[0], v.Columns-draw.Width(text)) + v.Scene.Theme.Paint(draw.Dim, text)
			return rows
		}
	}
	return append(v.Paragraph(draw.Dim, text), rows...)
}

// margins is a table of every drive's balance and margins.
func (v *View) margins() []string {
	u := v.Scene.Unit("mm")
	t := draw.Table{Columns: []draw.Column{{Title: "moment", Left: true}}}
	end := ""
	for _, f := range v.study.Result {
		end = cmp.Or(end, results.EndOfThrust(f.Power)) // where both drives have the row, it has water's name
		t.Columns = append(t.Columns, draw.Column{Title: string(f.Power), Unit: u.Name},
			draw.Column{Title: "margin", Unit: "cal"}, draw.Column{Left: true, Rank: 1})
	}
	for _, m := range []struct {
		name  string
		of    func(*sim.Stability) sim.StabilityAt
		judge bool
	}{
		{"dry", func(s *sim.Stability) sim.StabilityAt { return s.Dry }, false},
		{"release", func(s *sim.Stability) sim.StabilityAt { return s.Release }, false},
		{"rail exit", func(s *sim.Stability) sim.StabilityAt { return s.RailExit }, true},
		{"liquid out", func(s *sim.Stability) sim.StabilityAt { return s.LiquidOut }, true},
		{end, func(s *sim.Stability) sim.StabilityAt { return s.Burnout }, true},
	} {
		row := draw.Row{Cells: draw.TextCells(m.name)}
		any := false
		for i := range v.study.Result {
			at := m.of(&v.study.Result[i].Flight.Stability)
			if !at.Happened {
				row.Cells = append(row.Cells, draw.TextCells("", "", "")...)
				continue
			}
			any = true
			word := draw.Cell{}
			if m.judge {
				text, lev := gates.JudgeMargin(v.study.Result[i].Flight.Rocket, at.Margin)
				word = draw.Cell{Text: text, Role: draw.Level(lev)}
			}
			row.Cells = append(row.Cells, draw.Cell{Text: quantity.Format(at.Balance, draw.Bare(u), 3)},
				draw.Cell{Text: quantity.Format(at.Margin, draw.Unit(""), 3)}, word)
		}
		if any {
			t.Rows = append(t.Rows, row)
		}
		if m.name == "rail exit" && any {
			t.Rows = append(t.Rows, v.atAngle())
		}
	}
	return t.Draw(v.Scene.Theme, v.Columns, len(t.Rows)+2)
}

// atAngle is the row of the margins at the angle of the rail exit, body cross-flow in them.
func (v *View) atAngle() draw.Row {
	row := draw.Row{Cells: draw.TextCells("at angle")}
	for i := range v.study.Result {
		fl := v.study.Result[i].Flight
		r := results.For(fl.Rocket).Must("margin.at_angle")
		margin, known := r.Defined(fl)
		if !known {
			row.Cells = append(row.Cells, draw.TextCells("", "", "")...)
			continue
		}
		text, level := gates.JudgeResult(fl.Rocket, r.Name, margin)
		row.Cells = append(row.Cells, draw.Cell{}, draw.Cell{Text: quantity.Format(margin, draw.Unit(""), 3)}, draw.Cell{Text: text, Role: draw.Level(level)})
	}
	return row
}

// flying is the study of the drive on show.
func (v *View) flying() *study.Airframe {
	for i := range v.study.Result {
		if f := &v.study.Result[i]; f.Power == v.Scene.Now.Flight.Rocket.Power {
			return f
		}
	}
	return nil
}

// alignment says what a crooked thrust does.
func (v *View) alignment() []string {
	f := v.flying()
	if f == nil {
		return nil
	}
	deg, m := draw.Unit("deg"), v.Scene.Unit("m")
	t := draw.Table{Columns: []draw.Column{{Title: "thrust off", Unit: deg.Name}, {Title: "lower", Unit: m.Name},
		{Title: "aside", Unit: m.Name}, {Title: "attack", Unit: deg.Name}}}
	for _, a := range f.Alignments {
		t.Rows = append(t.Rows, draw.Row{Cells: draw.TextCells(quantity.Format(a.Angle, draw.Bare(deg), 3), quantity.Format(a.Lower, draw.Bare(m), 2),
			quantity.Format(a.Off, draw.Bare(m), 2), quantity.Format(a.MaxAngle, draw.Bare(deg), 2))})
	}
	out := t.Draw(v.Scene.Theme, v.Columns, len(t.Rows)+2)
	held := "Building it straight to " + quantity.Format(f.Tolerance, deg, 2)
	switch {
	case f.Crooked:
		held = "No alignment"
	case f.Tolerance >= study.LargestMisalignment:
		held = "Even " + quantity.Format(f.Tolerance, deg, 2) + " off"
	}
	return append(out, v.Paragraph(draw.Plain, held+" keeps the angle of attack under "+
		quantity.Format(f.Attack, deg, 2)+" in calm air.")...)
}

// sizing says what would give the margin wanted.
func (v *View) sizing() []string {
	f := v.flying()
	if f == nil {
		return nil
	}
	z := &f.Sizing
	g, mm := v.Scene.Unit("g"), v.Scene.Unit("mm")
	text := "For a least margin of " + quantity.Format(z.Margin, draw.Unit(""), 2) + " calibres on " + string(f.Power) + ": "
	switch {
	case z.WeightOut:
		text += "no weight in the nose is enough"
	case z.Weight == 0:
		text += "no weight is needed"
	default:
		text += quantity.Format(z.Weight, g, 2) + " in the nose, " + quantity.Format(z.NoseAt, mm, 3) + " from its tip"
	}
	if !z.SpanOut {
		fins := f.Flight.Rocket.Shape.Fins
		text += "; or a fin span of " + quantity.Format(z.Span, mm, 3) + " instead of " + quantity.Format(fins[len(fins)-1].Span, mm, 3)
	}
	return v.Paragraph(draw.Plain, text+".")
}

// shares are the parts' shares of the drag, as bars.
func (v *View) shares() []string {
	f := v.flying()
	if f == nil || !(f.Drag > 0) {
		return nil
	}
	theme := v.Scene.Theme
	head := "Drag of the shape " + quantity.Format(f.Drag, draw.Unit(""), 3)
	if f.Given {
		head += " (the file gives its own, and that flies)"
	}
	out := v.Paragraph(draw.Plain, head)
	for _, p := range f.Parts {
		if p.Drag == 0 {
			continue
		}
		share := p.Drag / f.Drag
		name := theme.Fit(theme.Say(draw.Clean(p.Name)), min(16, v.Columns/3))
		figure := quantity.Format(share, draw.Unit("%"), 2)
		cells := max(min(v.Columns-draw.Width(name)-10, 40), 1)
		line := name + " " + plot.Bar(share, cells, theme.Charset) + " " + draw.Padded(figure, 8)
		out = append(out, theme.Paint(draw.Dim, theme.Fit(line, v.Columns)))
	}
	return out
}
