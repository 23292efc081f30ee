package log

import (
	"fmt"
	"math"
	"strings"

	"ullage/sim/quantity"
	"ullage/tui/draw"
	"ullage/tui/plot"
	"ullage/tui/view"
)

// Signs of samples.
const (
	sampleSign = '+' // where they are few
	outSign    = 'x' // left out
)

// sparse is how many columns to a sample make its dots too faint.
const sparse = 2

// drawn are the charts of a comparison, kept while only the window moves.
type drawn struct {
	of     drawing
	charts []plot.Chart
	marks  []plot.VerticalMark
}

// drawing is what charts are of.
type drawing struct {
	held     *held
	channel  int
	from, to float64
	columns  int
	units    quantity.System
	theme    *draw.Theme
	busy     bool
	kept     *view.Outcome
}

// extent is the stretch of time that the plots show, s after release.
func (v *View) extent(h *held) (from, to float64) {
	const before = 0.06 // of what comes after
	c := h.compared
	to = v.span.End(c.Flight)
	if v.span == view.WholeSpan {
		t := v.course(h).t
		last := t[len(t)-1]
		if !math.IsNaN(c.Landing) {
			last = min(last, c.Landing-c.Release+1)
		}
		to = max(to, last)
	}
	return -before * to, to
}

// plots draws predicted and measured, and below them what is left between.
func (v *View) plots(h *held, rows int) []string {
	theme := v.Scene.Theme
	from, to := v.extent(h)
	of := drawing{h, v.channel, from, to, v.Columns, v.Scene.Units, theme, v.work.Busy, v.Scene.Kept}
	if v.drawn.of != of {
		v.drawn = drawn{of: of, charts: v.charts(h, from, to), marks: draw.EventMarks(h.compared.Flight, nil)}
	}
	stack := plot.Stack{
		Charset: theme.Charset, Charts: v.drawn.charts, Marks: v.drawn.marks,
		X:          plot.Axis{Title: "time", Unit: "s", Min: from, Max: to},
		ShowCursor: true, Cursor: v.entry().window - h.compared.Release,
	}
	for _, s := range h.compared.LeftOut {
		stack.Bands = append(stack.Bands, plot.Band{From: s.From - h.compared.Release, To: s.To - h.compared.Release})
	}
	w := v.window()
	if (w.To-w.From)/(to-from)*float64(v.Columns) > 3 {
		for i, x := range []float64{w.From, w.To} {
			stack.Marks = append(stack.Marks[:len(stack.Marks):len(stack.Marks)],
				plot.VerticalMark{X: x - h.compared.Release, Label: "[]"[i : i+1], Short: "[]"[i : i+1], Priority: 9})
		}
	}
	return draw.PaintStack(theme, &v.grid, &stack, v.Columns, rows)
}

// charts are predicted and measured, and what is left between them.
func (v *View) charts(h *held, from, to float64) []plot.Chart {
	theme, x := v.Scene.Theme, v.course(h)
	u := v.unit(x.Channel)
	d := u
	d.Offset = 0
	series := func(t, y []float64, u quantity.Unit) plot.Series {
		t, y = draw.Thinned(t, y, from, to, v.Columns)
		return plot.Series{X: t, Y: draw.InUnit(y, u)}
	}
	top := plot.Chart{Y: plot.Axis{Title: theme.Say(named(x.Channel)), Unit: u.Name, Zero: high(x.Channel)}, Weight: 5}
	rest := plot.Chart{Y: plot.Axis{Title: theme.Say("off by"), Unit: d.Name, Zero: true}, Weight: 3}

	measured, off := series(x.t, x.measured, u), series(x.t, x.off, d)
	few := len(measured.X)*sparse < v.Columns
	measured.Ink, measured.Style = plot.TraceB, plot.Points
	off.Ink, off.Style = plot.TraceC, plot.Points
	predicted := series(x.t, x.predicted, u)
	predicted.Ink = plot.TraceA
	if v.work.Busy {
		predicted.Ink, off.Ink = plot.Kept, plot.Kept
	}
	if kept := v.Scene.Kept; kept != nil && kept != v.Scene.Now && high(x.Channel) && h.compared.Entry == nil { // that of another day is no match
		top.Series = append(top.Series, plot.Series{X: kept.Trace.Time, Y: draw.InUnit(kept.Trace.Height, u), Ink: plot.Kept, Style: plot.Dotted})
	}
	top.Series = append(top.Series, measured, predicted)
	rest.Series = append(rest.Series, plot.Series{X: []float64{from, to}, Y: []float64{0, 0}, Ink: plot.Rule, Style: plot.Dashed}, off)
	if few {
		top.Points, rest.Points = signed(measured, sampleSign, 0), signed(off, sampleSign, 0)
	}
	out := series(x.outT, x.outY, u)
	top.Points = append(top.Points, signed(out, outSign, 2*(to-from)/float64(max(v.Columns, 1)))...)
	top.Note = "line predicted, dots measured"
	if few {
		top.Note = "line predicted, " + string(sampleSign) + " measured"
	}
	if len(x.outT) > 0 {
		top.Note += ", " + string(outSign) + " left out"
	}
	rest.Note = "measured less predicted"
	if v.work.Busy {
		rest.Note = "of the rocket before; computing" + theme.Ellipsis
	}
	return []plot.Chart{top, rest}
}

// signed are the samples of a series as signs, no closer to each other than some time.
func signed(s plot.Series, sign rune, apart float64) []plot.PointMark {
	var out []plot.PointMark
	last := math.Inf(-1)
	for i, x := range s.X {
		if x-last >= apart && !math.IsNaN(s.Y[i]) {
			out, last = append(out, plot.PointMark{X: x, Y: s.Y[i], Sign: sign}), x
		}
	}
	return out
}

// paintTrace draws a column in which no flight was found, below why.
func (v *View) paintTrace(h *held) {
	theme, b := v.Scene.Theme, &v.bindings
	v.Add(draw.Paragraph(theme, draw.Caution, ended(strings.TrimPrefix(h.fault, draw.Clean(h.entry.Path)+": "))+" Press "+b.Tell.Help().Key+" to say how it is to be read.", v.Columns)...)
	if v.Left() < 4 || len(h.none.T) < 2 {
		return
	}
	u := h.none.Column.Unit
	n := len(h.none.T)
	from, to := h.none.T[0], h.none.T[n-1]
	t, y := draw.Thinned(h.none.T, h.none.Y, from, to, v.Columns)
	v.Add(draw.PaintStack(theme, &v.grid, &plot.Stack{
		Charset: theme.Charset, X: plot.Axis{Title: "time by the log's clock", Unit: "s", Min: from, Max: to},
		Charts: []plot.Chart{{Y: plot.Axis{Title: theme.Say(string(h.none.Column.Quantity)), Unit: u.Name},
			Note:   fmt.Sprintf("column %d", h.none.Column.At),
			Series: []plot.Series{{X: t, Y: draw.InUnit(y, u), Ink: plot.TraceB}}}},
	}, v.Columns, v.Left())...)
}
