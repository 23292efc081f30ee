package tui

import (
	"ullage/sim"
	"ullage/sim/gates"
	"ullage/sim/quantity"
	"ullage/sim/study"
	"ullage/tui/plot"
)

// figureLines are the figures below the drawing: both drives' margins, alignment, what
// would give the margin wanted, and the drag's shares.
func (v *airframeView) figureLines() []string {
	if !v.study.ready {
		return v.wrappedLines(dimText, "The figures are being computed"+v.scene.look.ellipsis)
	}
	var out []string
	if v.study.busy {
		out = v.wrappedLines(dimText, "The figures before the last edit; computing"+v.scene.look.ellipsis)
	} else if v.study.err != nil {
		out = v.wrappedLines(badWord, faultText(v.study.err, ""))
	}
	out = append(out, v.margins()...)
	out = append(out, v.alignment()...)
	out = append(out, v.sizing()...)
	return append(out, v.shares()...)
}

// margins is a table of every drive's balance and margins.
func (v *airframeView) margins() []string {
	u := v.scene.units.Unit(unitNamed("mm"))
	t := table{columns: []tableColumn{{title: "moment", left: true}}}
	for _, f := range v.study.result {
		t.columns = append(t.columns, tableColumn{title: string(f.Power), unit: u.Name},
			tableColumn{title: "margin", unit: "calibres"}, tableColumn{left: true, rank: 1})
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
		{"burnout", func(s *sim.Stability) sim.StabilityAt { return s.Burnout }, true},
	} {
		row := tableRow{cells: textCells(m.name)}
		any := false
		for i := range v.study.result {
			at := m.of(&v.study.result[i].Flight.Stability)
			if !at.Happened {
				row.cells = append(row.cells, textCells("", "", "")...)
				continue
			}
			any = true
			word := tableCell{}
			if m.judge {
				text, lev := gates.JudgeMargin(v.study.result[i].Flight.Rocket, at.Margin)
				word = tableCell{text: text, role: level(lev)}
			}
			row.cells = append(row.cells, tableCell{text: quantity.Format(at.Balance, bare(u), 3)},
				tableCell{text: quantity.Format(at.Margin, unitNamed(""), 3)}, word)
		}
		if any {
			t.rows = append(t.rows, row)
		}
	}
	return t.draw(v.scene.look, v.columns, len(t.rows)+2)
}

// bare is a unit without its name, for columns whose heading has it.
func bare(u quantity.Unit) quantity.Unit {
	u.Name = ""
	return u
}

// flying is the study of the drive on show.
func (v *airframeView) flying() *study.Airframe {
	for i := range v.study.result {
		if f := &v.study.result[i]; f.Power == v.scene.now.flight.Rocket.Power {
			return f
		}
	}
	return nil
}

// alignment says what a crooked thrust does.
func (v *airframeView) alignment() []string {
	f := v.flying()
	if f == nil {
		return nil
	}
	deg, m := unitNamed("deg"), v.scene.units.Unit(unitNamed("m"))
	t := table{columns: []tableColumn{{title: "thrust off", unit: deg.Name}, {title: "lower", unit: m.Name},
		{title: "aside", unit: m.Name}, {title: "attack", unit: deg.Name}}}
	for _, a := range f.Alignments {
		t.rows = append(t.rows, tableRow{cells: textCells(quantity.Format(a.Angle, bare(deg), 3), quantity.Format(a.Lower, bare(m), 2),
			quantity.Format(a.Off, bare(m), 2), quantity.Format(a.MaxAngle, bare(deg), 2))})
	}
	out := t.draw(v.scene.look, v.columns, len(t.rows)+2)
	held := "Build it straight to " + quantity.Format(f.Tolerance, deg, 2)
	if f.Tolerance >= study.LargestMisalignment {
		held = "Even " + quantity.Format(f.Tolerance, deg, 2) + " off"
	}
	return append(out, v.wrappedLines(plainText, held+" keeps the angle of attack under "+
		quantity.Format(f.Attack, deg, 2)+" in calm air.")...)
}

// sizing says what would give the margin wanted.
func (v *airframeView) sizing() []string {
	f := v.flying()
	if f == nil {
		return nil
	}
	z := &f.Sizing
	g, mm := v.scene.units.Unit(unitNamed("g")), v.scene.units.Unit(unitNamed("mm"))
	text := "For a least margin of " + quantity.Format(z.Margin, unitNamed(""), 2) + " calibres on " + string(f.Power) + ": "
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
	return v.wrappedLines(plainText, text+".")
}

// shares are the parts' shares of the drag, as bars.
func (v *airframeView) shares() []string {
	f := v.flying()
	if f == nil || !(f.Drag > 0) {
		return nil
	}
	look := v.scene.look
	head := "Drag of the shape " + quantity.Format(f.Drag, unitNamed(""), 3)
	if f.Given {
		head += " (the file gives its own, and that flies)"
	}
	out := v.wrappedLines(plainText, head)
	for _, p := range f.Parts {
		if p.Drag == 0 {
			continue
		}
		share := p.Drag / f.Drag
		name := look.fit(look.say(clean(p.Name)), min(16, v.columns/3))
		figure := quantity.Format(share, unitNamed("%"), 2)
		cells := max(min(v.columns-width(name)-10, 40), 1)
		line := name + " " + plot.Bar(share, cells, look.charset) + " " + padded(figure, 8)
		out = append(out, look.in(dimText, look.fit(line, v.columns)))
	}
	return out
}
