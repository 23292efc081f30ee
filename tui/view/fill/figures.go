package fill

import (
	"math"
	"slices"

	"ullage/sim"
	"ullage/sim/gates"
	"ullage/sim/quantity"
	"ullage/sim/results"
	"ullage/sim/study"
	"ullage/tui/draw"
	"ullage/tui/plot"
	"ullage/tui/view"
)

// exitResult is the result that has a verdict beside it.
const exitResult = "rail_exit.speed"

// fillFacts are in the order of the columns.
var fillFacts = []view.Fact{
	{Long: "fill", Unit: "%", Of: func(fl *sim.Flight) float64 { return fl.Rocket.Water.Fill }},
	{Result: "apogee.height"},
	{Result: exitResult},
	{Long: "water", Unit: "L", Rank: 2, Of: func(fl *sim.Flight) float64 { return fl.Rocket.Water.Fill * fl.Rocket.Water.Volume }},
	{Result: "lift_off.mass", Long: "lift-off", Rank: 3},
	{Result: "drive.burn", Long: "thrust for", Rank: 4},
	{Result: "max.acceleration", Long: "g at most", Rank: 5, G: true},
	{Result: "apogee.time", Long: "to apogee", Rank: 6},
}

// ownRows set today's fill, the best, and what changing costs below each other.
func (v *View) ownRows() []string {
	c, own := v.today(), v.Scene.Now.Flight
	if c == nil {
		return nil
	}
	t := draw.Table{Rows: []draw.Row{{Role: draw.Focused}}}
	if c.best != nil {
		t.Rows = append(t.Rows, draw.Row{Sign: string(draw.BestSign)}, draw.Row{Role: draw.Strong})
	}
	add := func(column draw.Column, texts ...string) {
		t.Columns = append(t.Columns, column)
		for i := range t.Rows {
			t.Rows[i].Cells = append(t.Rows[i].Cells, draw.Cell{Text: texts[i]})
		}
	}
	limit := gates.RailExit(own.Rocket).Min
	add(draw.Column{Left: true}, "today", "best", "change")
	for _, fact := range view.Of(view.WishFact(&c.wish, fillFacts), results.For(own.Rocket)) {
		unit := fact.In(v.Scene.Units)
		was, is := fact.Value(own), math.NaN()
		if c.best != nil {
			is = fact.Value(c.best.Flight)
		}
		add(draw.Column{Title: fact.Title(true), Rank: fact.Rank}, quantity.Format(was, unit, 3), quantity.Format(is, unit, 3), draw.Change(was, is, unit))
		if fact.Result == exitResult {
			low := view.RailWord(was, limit)
			if lower := view.RailWord(is, limit); low != "" || lower != "" {
				add(draw.Column{Left: true, Rank: 1}, low, lower, "") // the words say it too
			}
		}
		if fact.Result == exitResult && c.best != nil {
			within := c.best.Within[0]
			today := "no"
			if was := own.Rocket.Water.Fill; was >= within[0] && was <= within[1] {
				today = "yes"
			}
			add(draw.Column{Title: "within 1 %"}, today, percents(within), "")
		}
	}
	return t.Draw(v.Scene.Theme, v.Columns, len(t.Rows)+1)
}

// familyRows set the members below each other: the sign and the line of each, its
// best fill, and how high and how fast it flies with that.
func (v *View) familyRows() []string {
	theme := v.Scene.Theme
	speedU := v.Scene.Unit("m/s")
	row := &v.drawn()[0].wish.Row
	valueU, title := v.Scene.Units.Unit(row.Metric()), "apogee"
	if row.Name != study.UsualWish {
		title = row.Label
	}
	percent := draw.Unit("%")
	t := draw.Table{Columns: []draw.Column{
		{Left: true}, {Title: v.family.one()}, {Title: "best fill"}, {Title: title}, {Title: "rail exit", Rank: 1},
		{Title: "within 1 %", Rank: 3}, {Title: "at today's fill", Rank: 2},
	}}
	for _, c := range v.drawn() {
		row := draw.Row{Sign: string(c.sign), Cells: draw.TextCells(swatch(c.style), c.name)}
		if c.today {
			row.Role = draw.Focused
		}
		put := func(text string) { row.Cells = append(row.Cells, draw.Cell{Text: text}) }
		if c.best == nil {
			put("none")
			t.Rows = append(t.Rows, row)
			continue
		}
		put(quantity.Format(c.best.Values[0], percent, 3))
		put(quantity.Format(c.granted(), valueU, 3))
		put(quantity.Format(c.best.Flight.Results.RailExit.Speed, speedU, 3))
		put(percents(c.best.Within[0]))
		put(quantity.Format(c.at(v.Scene.Now.Flight.Rocket.Water.Fill), valueU, 3))
		t.Rows = append(t.Rows, row)
	}
	return t.Draw(theme, v.Columns, len(t.Rows)+1)
}

// percents tells a range of fills: "27 to 36 %".
func percents(within [2]float64) string {
	unit := draw.Unit("%")
	return draw.Number(quantity.Format(within[0], unit, 2), unit) + " to " + quantity.Format(within[1], unit, 2)
}

// at is what is wanted at a fill, between two points of the curve in a straight line;
// NaN where either has none.
func (c *fillCurve) at(fill float64) float64 {
	i, found := slices.BinarySearch(c.fill, fill)
	switch {
	case found:
		return c.value[i]
	case i == 0 || i == len(c.fill):
		return math.NaN()
	}
	share := (fill - c.fill[i-1]) / (c.fill[i] - c.fill[i-1])
	return c.value[i-1] + share*(c.value[i]-c.value[i-1])
}

// swatch is a short piece of a line's style.
func swatch(s plot.Style) string {
	switch s {
	case plot.Dashed:
		return "─ ─"
	case plot.Dotted:
		return "..."
	}
	return "───"
}
