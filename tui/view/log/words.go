package log

import (
	"fmt"
	"math"
	"path/filepath"
	"strings"

	"ullage/sim/quantity"
	"ullage/sim/report/measured"
	"ullage/sim/report/words"
	"ullage/sim/results"
	"ullage/sim/rocketfile"
	"ullage/tui/draw"
)

// reading says how far the log is off, what is in the window, and what looks wrong.
func (v *View) reading(h *held) []string {
	var out []string
	for _, s := range h.compared.Suspicions {
		out = append(out, s.Error())
	}
	x := v.course(h)
	if f := v.fitWord(); f != "" {
		out = append(out, f)
	}
	out = append(out, v.offBy(x), v.inWindow(h, x))
	return append(out, v.apogee(h)...)
}

// figure is a difference of a column with its unit.
func (v *View) figure(x *course, value float64) string {
	p := words.In(v.Scene.Units)
	if high(x.Channel) {
		return p.Height(value)
	}
	u := v.unit(x.Channel)
	u.Offset = 0
	return quantity.Format(value, u, 3)
}

// offBy is how far the log is off stage by stage.
func (v *View) offBy(x *course) string {
	var parts []string
	for _, s := range x.stages {
		parts = append(parts, v.figure(x, s.RMS)+" in "+s.Name)
	}
	if len(parts) == 0 {
		return "this column tells no stage of the flight"
	}
	return "off (root mean square): " + strings.Join(parts, ", ")
}

// inWindow is what the window holds.
func (v *View) inWindow(h *held, x *course) string {
	w := v.window()
	sum, n, out := 0.0, 0, 0
	for i, t := range x.t {
		if w.Has(t+h.compared.Release) && !math.IsNaN(x.off[i]) {
			sum, n = sum+x.off[i], n+1
		}
	}
	for _, t := range x.outT {
		if w.Has(t + h.compared.Release) {
			out++
		}
	}
	text := fmt.Sprintf("%g s at %.2f s: ", widths()[v.width], v.entry().window-h.compared.Release)
	switch {
	case n > 0 && out > 0:
		return text + fmt.Sprintf("%s, %s left out", v.figure(x, sum/float64(n)), samples(out))
	case n > 0:
		return text + v.figure(x, sum/float64(n)) + " over " + samples(n)
	case out > 0:
		return text + samples(out) + " left out"
	}
	return text + "no sample"
}

// apogee is the result that matters most.
func (v *View) apogee(h *held) []string {
	p := words.In(v.Scene.Units)
	for i := range h.compared.Differences {
		d := &h.compared.Differences[i]
		if d.Row.Name == "apogee.height" {
			return []string{d.Row.Label + " " + p.Row(&d.Row, d.Measured) + " measured, " + p.Row(&d.Row, d.Predicted) + " predicted"}
		}
	}
	return nil
}

// fitWord is what is to be known of a fit, in passing.
func (v *View) fitWord() string {
	b := &v.bindings
	switch f := v.fit.Result; {
	case v.fit.Busy:
		return "a fit is under way, any change calls it off"
	case !v.fit.Ready || f.fault != "" || f.found.Failed != nil:
		return ""
	case f.taken != nil && f.taken == v.Scene.File:
		return "the fit is taken"
	case f.of == v.allOf():
		return "a fit is there: " + b.Take.Help().Key + " takes it"
	}
	return ""
}

// sheetRows are the painted rows of a sheet.
func (v *View) sheetRows(s sheet, h *held, w int) []string {
	switch s {
	case readSheet:
		return v.readRows(h, w)
	case fitSheet:
		return v.fitRows(w)
	}
	return v.resultRows(h, w)
}

// resultRows are what the log tells of the flight's results, and how far it is off in each stage.
func (v *View) resultRows(h *held, w int) []string {
	theme, p := v.Scene.Theme, words.In(v.Scene.Units)
	c, spread := h.compared, v.spread.Ready && v.spread.Result.of == h
	if spread {
		c = &v.spread.Result.compared
	}
	t := draw.Table{Tight: w < 100, Columns: []draw.Column{{Left: true}, {Title: "measured"}, {Title: "predicted"}, {Title: "off", Rank: 1}, {Title: "90 % between", Rank: 2}, {Left: true}}}
	for i := range c.Differences {
		d := &c.Differences[i]
		between, word, role := "", "", draw.Plain
		if spread {
			between = p.BareRow(&d.Row, d.Low) + " to " + p.BareRow(&d.Row, d.High)
			if word = measured.Word(d); !d.Inside {
				role = draw.Caution
			}
		}
		t.Rows = append(t.Rows, draw.Row{Sign: " ", Cells: []draw.Cell{{Text: v.label(&d.Row)}, {Text: p.Row(&d.Row, d.Measured)}, {Text: p.Row(&d.Row, d.Predicted)},
			{Text: measured.Off(p, d)}, {Text: between}, {Text: word, Role: role}}})
	}
	rows := t.Draw(theme, w, len(t.Rows)+1)
	x := v.course(h)
	off := draw.Table{Tight: w < 70, Columns: []draw.Column{{Title: "off in", Left: true}, {Title: "mean"}, {Title: "root mean square"}, {Title: "samples"}}}
	for _, s := range x.stages {
		off.Rows = append(off.Rows, draw.Row{Sign: " ", Cells: draw.TextCells(s.Name, v.figure(x, s.Mean), v.figure(x, s.RMS), fmt.Sprint(s.Count))})
	}
	if len(off.Rows) > 0 {
		rows = append(rows, off.Draw(theme, w, len(off.Rows)+1)...)
	}
	return rows
}

// label is what a result is called where room may be short.
func (v *View) label(r *results.Row) string {
	const short, room = 70, 19
	text := r.Label
	if v.Columns >= short {
		return text
	}
	if parts := strings.Split(r.Name, "."); parts[0] == "canopy" && len(parts) == 3 {
		text = parts[1] + " " + parts[2]
	}
	return strings.TrimRight(v.Scene.Theme.Fit(text, min(room, draw.Width(text))), " ")
}

// readRows are how the log was read.
func (v *View) readRows(h *held, w int) []string {
	theme := v.Scene.Theme
	facts, remarks := measured.Understood(words.In(v.Scene.Units), h.compared.Logged, h.compared.Release)
	var rows []string
	const names = 13
	for _, f := range facts {
		for i, part := range draw.Wrapped(theme.Say(draw.Clean(f[1])), w-names) {
			name := ""
			if i == 0 {
				name = theme.Say(f[0])
			}
			rows = append(rows, theme.Paint(draw.Heading, draw.Padded(name, names))+draw.Padded(part, w-names))
		}
	}
	for _, text := range remarks {
		rows = append(rows, draw.Paragraph(theme, draw.Dim, text, w)...)
	}
	return append(rows, draw.Paragraph(theme, draw.Dim, v.bindings.Tell.Help().Key+" says how it is to be read instead.", w)...)
}

// fitRows are what a fit found, or that there is none.
func (v *View) fitRows(w int) []string {
	theme, b := v.Scene.Theme, &v.bindings
	f := v.fit.Result
	switch {
	case v.fit.Busy:
		return draw.Paragraph(theme, draw.Plain, "A fit to "+v.listed()+" is under way"+theme.Ellipsis+" Any change calls it off.", w)
	case !v.fit.Ready:
		return draw.Paragraph(theme, draw.Plain, "No fit yet. "+b.Fit.Help().Key+" finds the inputs with which the rocket flies as the logs on the list say.", w)
	case f.fault != "":
		return draw.Paragraph(theme, draw.Bad, "No fit: "+f.fault, w)
	}
	var rows []string
	switch {
	case f.found.Failed != nil:
		rows = append(rows, draw.Paragraph(theme, draw.Caution, measured.Failure(f.found.Failed), w)...)
	case f.taken != nil && f.taken == v.Scene.File:
		rows = append(rows, draw.Paragraph(theme, draw.Good, "Fit to "+f.logs()+": taken. "+v.shared.Undo.Help().Key+" undoes it.", w)...)
	case f.of == v.allOf():
		rows = append(rows, draw.Paragraph(theme, draw.Plain, "Fit to "+f.logs()+". "+b.Take.Help().Key+" takes it.", w)...)
	default:
		rows = append(rows, draw.Paragraph(theme, draw.Caution, "Fit to "+f.logs()+", of another state of the rocket or the logs; "+b.Fit.Help().Key+" fits this one.", w)...)
	}
	rows = append(rows, v.fitTable(f, w)...)
	for _, text := range v.fitWords(f) {
		rows = append(rows, draw.Paragraph(theme, draw.Dim, text, w)...)
	}
	return rows
}

// listed names the logs on the list.
func (v *View) listed() string {
	if n := len(v.entries); n > 1 {
		return fmt.Sprintf("%d logs", n)
	}
	return draw.Clean(filepath.Base(v.entry().Path))
}

// fitTable are the inputs before and after.
func (v *View) fitTable(f *fitted, w int) []string {
	p, found := words.In(v.Scene.Units), f.in(v.Scene.Units)
	t := draw.Table{Tight: w < 70, Columns: []draw.Column{{Left: true}, {Title: "before", Rank: 1}, {Title: "fitted"}, {Title: "learned"}, {Left: true, Rank: 2}}}
	for i := range f.found.Fitted.Inputs {
		in := &f.found.Fitted.Inputs[i]
		name, before := in.Input.Name, found.Value(p, i, in.Before, in.BeforeSD)
		if w < 70 {
			name = shortName(in.Input)
			before, _, _ = strings.Cut(before, " ±")
		}
		cells := draw.TextCells(name, before, found.Value(p, i, in.Value, in.SD), fmt.Sprintf("%.0f %%", 100*in.Learned), "")
		switch {
		case in.Kept:
			cells[2].Text, cells[4].Text = "kept", "the logs say too little"
		case in.AtBound:
			cells[4] = draw.Cell{Text: "at the end of its range", Role: draw.Caution}
		}
		t.Rows = append(t.Rows, draw.Row{Sign: " ", Cells: cells})
	}
	return t.Draw(v.Scene.Theme, w, len(t.Rows)+1)
}

// shortName is an input by its label, a canopy's with the canopy's name.
func shortName(in rocketfile.Input) string {
	if parts := strings.Split(in.Name, "."); parts[0] == "canopy" && len(parts) > 1 {
		return parts[1] + " " + in.Label
	}
	return in.Label
}

// fitWords say what the logs tell alike, and how they fit.
func (v *View) fitWords(f *fitted) []string {
	p := words.In(v.Scene.Units)
	var out []string
	for _, names := range measured.Groups(f.found.Fitted.Alike) {
		out = append(out, listed(names)+" act alike on what the logs show: what they do together is better known than each alone.")
	}
	if text := f.found.Daily(); text != "" {
		out = append(out, text)
	}
	for i := range f.found.Fitted.Logs {
		l := &f.found.Fitted.Logs[i]
		text := fmt.Sprintf("%s: lift-off %.2f s, %s", draw.Clean(filepath.Base(l.Log.Name)), l.Release, samples(l.Samples))
		if l.Best() != nil {
			text += fmt.Sprintf("; height off by %s before, %s fitted (root mean square, noise %s); apogee %s measured, %s before, %s fitted",
				p.Height(l.RMS.Before), p.Height(l.RMS.Fitted), p.Height(l.RMS.Measured), p.Height(l.Apogee.Measured), p.Height(l.Apogee.Before), p.Height(l.Apogee.Fitted))
		}
		out = append(out, text+".")
	}
	for _, text := range f.unused {
		out = append(out, "Not used: "+ended(text))
	}
	return out
}
