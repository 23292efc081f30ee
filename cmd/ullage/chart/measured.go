package chart

import (
	"math"
	"strings"

	"ullage/cmd/ullage/chart/page"
	"ullage/sim/flown"
	"ullage/sim/flown/logfile"
	"ullage/sim/quantity"
)

// Measured is a page of a log beside the flight that was predicted: each column with the
// prediction, the first with the difference below it.
func Measured(c *flown.Compared, look Look) *page.Page {
	p := &page.Page{
		Paper: look.Paper,
		Title: title(c.Rocket, "measured and predicted"),
		Lines: []string{look.drive(c.Rocket), look.day(c.Rocket), look.told(c)},
		Notes: append(suspicions(c), look.closing(c.Rocket)),
	}
	const most = 3 // columns that a page has room for
	end := 0.0
	for i := range c.Channels {
		ch := &c.Channels[i]
		if i == most {
			break
		}
		u := look.System.Unit(shownUnit(ch.Column))
		times, predicted, measured := c.Course(ch)
		end = math.Max(end, times[len(times)-1])
		panel := page.Panel{
			X: page.Axis{Title: "time from release", Unit: "s", Min: times[0], Max: end, Bare: true},
			Y: page.Axis{Title: quantityName(ch.Column), Unit: unitName(u)},
			Lines: []page.Line{
				{X: times, Y: inUnit(predicted, u), Label: "predicted"},
				{X: times, Y: inUnit(measured, u), Pen: 1, Label: "measured"},
			},
		}
		if i == 0 {
			for _, e := range joined(c.Flight, look) {
				if e.time <= end {
					panel.Marks = append(panel.Marks, page.Mark{At: e.time, Label: e.label})
				}
			}
		}
		p.Rows = append(p.Rows, page.Row{Weight: 3, Panels: []page.Panel{panel}})
		if i > 0 {
			continue
		}
		off := make([]float64, len(times))
		for k := range off {
			off[k] = u.FromSI(measured[k]) - u.FromSI(predicted[k])
		}
		p.Rows = append(p.Rows, page.Row{Weight: 1, Panels: []page.Panel{{
			X:     page.Axis{Title: "time from release", Unit: "s", Min: times[0], Max: end, Bare: true},
			Y:     page.Axis{Title: "off by", Unit: unitName(u), Zero: true},
			Lines: []page.Line{{X: times, Y: off}},
		}}})
	}
	p.Rows[len(p.Rows)-1].Panels[0].X.Bare = false
	return p
}

// shownUnit is the unit that a column's values are shown in.
func shownUnit(c logfile.Column) quantity.Unit {
	if c.Quantity == logfile.Pressure { // turned into heights
		u, _ := quantity.LookupIn("m", quantity.Length)
		return u
	}
	if u, ok := quantity.LookupIn(c.Unit.Name, c.Unit.Dimension); ok {
		return u
	}
	return quantity.Usual(c.Quantity.Dimension())
}

func quantityName(c logfile.Column) string {
	if c.Quantity == logfile.Pressure {
		return "height from pressure"
	}
	return string(c.Quantity)
}

// told is what the log tells in a line.
func (l Look) told(c *flown.Compared) string {
	var parts []string
	for i := range c.Differences {
		d := &c.Differences[i]
		word := "outside"
		if d.Inside {
			word = "inside"
		}
		parts = append(parts, d.Row.Label+" "+l.in(d.Measured, d.Row.Metric())+" for "+l.in(d.Predicted, d.Row.Metric())+", "+word)
	}
	if len(parts) == 0 {
		return ""
	}
	text := strings.Join(parts, "; ")
	return strings.ToUpper(text[:1]) + text[1:]
}

func suspicions(c *flown.Compared) []string {
	var out []string
	for _, s := range c.Suspicions {
		out = append(out, "! "+s.Error())
	}
	return out
}
