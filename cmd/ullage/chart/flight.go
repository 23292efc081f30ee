package chart

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"ullage/cmd/ullage/chart/page"
	"ullage/sim"
	"ullage/sim/quantity"
	"ullage/sim/report"
	"ullage/sim/results"
)

// Span is how much of a flight the time axis shows.
type Span string

// The spans. Without one, what pushes is shown over the time it does, angle of attack
// and margin over the ascent, and everything else over the whole flight.
const (
	NoSpan     Span = ""
	ThrustSpan Span = "thrust"
	AscentSpan Span = "ascent"
	WholeSpan  Span = "flight"
)

// Missing says that a flight has nothing to show of a quantity.
type Missing struct{ Name, Why string }

func (m Missing) Error() string { return fmt.Sprintf("%s cannot be drawn: %s", m.Name, m.Why) }

// missing says why a quantity is not known.
var missing = map[string]string{
	"chamber":  "a motor has no chamber that is modelled; draw thrust",
	"pressure": "a motor has no chamber that is modelled; draw thrust",
	"attack":   "the flight is that of a point mass; it takes the airframe's shape, and flight.model = \"rigid\"",
	"margin":   "it takes the airframe's shape and balance point",
}

// Flight is a page of one flight, flown with its record kept: quantities over time,
// height, speed and what pushes if none are named.
func Flight(fl *sim.Flight, show []Quantity, span Span, look Look) (*page.Page, error) {
	if len(show) == 0 {
		show = usual(fl.Rocket.Power)
	}
	for _, q := range show {
		if !q.Known(fl) {
			return nil, Missing{q.Name, missing[q.Name]}
		}
	}
	p := &page.Page{
		Paper: look.Paper,
		Title: title(fl.Rocket, "one flight"),
		Lines: []string{look.drive(fl.Rocket) + "; " + look.text(fl.LiftOffMass, "kg") + " at lift-off", look.day(fl.Rocket), look.outcome(fl)},
		Notes: look.notes(fl),
	}
	trace := fl.Trace()
	show, spans := grouped(show, span)
	enlarged := slices.Contains(spans, ThrustSpan)
	for i := range show {
		f := frame{fl: fl, trace: trace, look: look, span: spans[i],
			first: i == 0 || spans[i] != spans[i-1], last: i == len(show)-1 || spans[i] != spans[i+1], enlarged: enlarged}
		p.Rows = append(p.Rows, page.Row{Panels: []page.Panel{f.panel(&show[i])}})
		if f.cut(&show[i]) {
			u := show[i].shown(look)
			p.Notes = append([]string{fmt.Sprintf("The surge of the liquid's first milliseconds, at most %s for %s, is beyond the axis of %s: "+
				"it belongs to a valve that opens at once.", spelled(quantity.Format(show[i].surge(fl), u, digits)),
				look.text(fl.Startup.Duration, "s"), show[i].title())}, p.Notes...)
		}
	}
	return p, nil
}

// grouped puts quantities of one span together, the longest span first, so that they
// share a time axis.
func grouped(show []Quantity, asked Span) ([]Quantity, []Span) {
	var out []Quantity
	var spans []Span
	for _, s := range []Span{WholeSpan, AscentSpan, ThrustSpan} {
		for _, q := range show {
			if q.span(asked) == s {
				out, spans = append(out, q), append(spans, s)
			}
		}
	}
	return out, spans
}

// span is the span that a quantity is shown over.
func (q *Quantity) span(asked Span) Span {
	switch {
	case asked != NoSpan:
		return asked
	case q.Part == results.UnderThrust:
		return ThrustSpan
	case q.Part == results.WayUp:
		return AscentSpan
	}
	return WholeSpan
}

// end is the last second of a span.
func (s Span) end(fl *sim.Flight) float64 {
	switch s {
	case ThrustSpan:
		return results.UnderThrust.End(fl)
	case AscentSpan:
		return results.WayUp.End(fl)
	}
	return results.Whole.End(fl)
}

// frame is what the panels of a flight have in common.
type frame struct {
	fl          *sim.Flight
	trace       []sim.Sample
	look        Look
	span        Span
	first, last bool // among panels with this span: has the labels of events, of time
	enlarged    bool // another panel shows the thrust's time
}

// panel draws one quantity.
func (f *frame) panel(q *Quantity) page.Panel {
	u, end := q.shown(f.look), f.span.end(f.fl)
	samples := f.samples(end)
	line := page.Line{}
	for _, s := range samples {
		line.X, line.Y = append(line.X, s.Time), append(line.Y, u.FromSI(q.Of(&s)))
	}
	p := page.Panel{
		X:     page.Axis{Title: "time from release", Unit: "s", Min: 0, Max: end, Bare: !f.last},
		Y:     page.Axis{Title: q.title(), Unit: unitName(u), Zero: q.Name != "mass"},
		Lines: []page.Line{line},
		Marks: f.marks(end),
	}
	v, t := q.extreme(f.fl, samples, end)
	if f.cut(q) {
		p.Y.Max = u.FromSI(v) * 1.06
	}
	if q.Extreme != "" && !math.IsNaN(v) && (v != 0 || q.Least) {
		p.Points = []page.Point{{X: t, Y: u.FromSI(v), Sign: page.Ringlet,
			Label: q.Extreme + " " + spelled(quantity.Format(v, u, digits))}}
	}
	return p
}

// samples are those of the span up to its end, so close that the curve is smooth
// where the engine made long steps.
func (f *frame) samples(end float64) []sim.Sample {
	const parts = 300 // of the axis, at least
	apart := end / parts
	var out []sim.Sample
	last := 0.0
	fill := func(to float64) {
		n := math.Ceil((to - last) / apart)
		for i := 1.0; i < n; i++ {
			out = append(out, f.fl.At(last+(to-last)*i/n))
		}
		last = to
	}
	for _, s := range f.trace {
		if s.Time > end {
			fill(end)
			return append(out, f.fl.At(end))
		}
		fill(s.Time)
		out = append(out, s)
	}
	return out
}

// cut tells whether the surge of the first milliseconds would dwarf the rest.
func (f *frame) cut(q *Quantity) bool {
	v, _, ok := q.most(f.fl)
	return ok && v > 0 && q.surge(f.fl) > 1.12*v
}

// marks are the events of the span. Where another panel shows the time of thrust
// larger, its events but the last are left to that.
func (f *frame) marks(end float64) []page.Mark {
	var out []page.Mark
	for _, e := range joined(f.fl, f.look) {
		if e.time > end || f.enlarged && f.span != ThrustSpan && e.push {
			continue
		}
		m := page.Mark{At: e.time}
		if f.first {
			m.Label = e.label
		}
		out = append(out, m)
	}
	return out
}

// outcome is the flight in a line: its main findings and their verdicts.
func (l Look) outcome(fl *sim.Flight) string {
	var parts []string
	for _, f := range report.Findings(fl, results.For(fl.Rocket), l.System) {
		switch key := f.Key; {
		case key == "rail-exit", key == "apogee", key == "landing", key == "drift", strings.HasPrefix(key, "canopy."):
			parts = append(parts, strings.TrimSpace(f.Label+" "+strings.TrimSpace(f.Value+" "+f.Word)))
		}
	}
	if len(parts) == 0 {
		return ""
	}
	text := strings.Join(parts, "; ")
	return strings.ToUpper(text[:1]) + text[1:]
}

// notes are a flight's warnings and the cautions.
func (l Look) notes(fl *sim.Flight) []string {
	var out []string
	for _, w := range fl.Warnings {
		out = append(out, "! "+report.WarningText(w, l.System))
	}
	return append(out, l.closing(fl.Rocket))
}
