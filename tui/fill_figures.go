package tui

import (
	"math"
	"slices"

	"ullage/atmosphere"
	"ullage/sim"
	"ullage/sim/gates"
	"ullage/sim/quantity"
	"ullage/tui/plot"
)

// fillFact is something to know of a flight besides its fill, and its unit.
type fillFact struct {
	title, unit string
	rank        int // the higher, the sooner it gives way
	of          func(fl *sim.Flight) float64
}

// fillFacts are in the order of the columns.
var fillFacts = []fillFact{
	{"fill", "%", 0, func(fl *sim.Flight) float64 { return fl.Rocket.Water.Fill }},
	{"apogee", "m", 0, func(fl *sim.Flight) float64 { return fl.Results.Apogee.Height }},
	{"rail exit", "m/s", 0, railExitSpeed},
	{"water", "L", 2, func(fl *sim.Flight) float64 { return fl.Rocket.Water.Fill * fl.Rocket.Water.Volume }},
	{"lift-off", "kg", 3, func(fl *sim.Flight) float64 { return fl.Results.LiftOffMass }},
	{"thrust for", "s", 4, func(fl *sim.Flight) float64 { return fl.Results.Drive.BurnTime }},
	{"g at most", "", 5, func(fl *sim.Flight) float64 { return fl.Results.Max.Acceleration / atmosphere.StandardGravity }},
	{"to the top", "s", 6, func(fl *sim.Flight) float64 { return fl.Results.Apogee.Time }},
}

// railExitSpeed is NaN for a flight that never leaves its rail.
func railExitSpeed(fl *sim.Flight) float64 {
	if !fl.Results.RailExit.Happened {
		return math.NaN()
	}
	return fl.Results.RailExit.Speed
}

// ownRows set today's fill, the best, and what changing costs below each other.
func (v *fillView) ownRows() []string {
	c, own := v.today(), v.own.result
	if c == nil || own == nil {
		return nil
	}
	t := table{rows: []tableRow{{role: focused}}}
	if c.best != nil {
		t.rows = append(t.rows, tableRow{sign: string(bestSign)}, tableRow{role: strongText})
	}
	add := func(column tableColumn, texts ...string) {
		t.columns = append(t.columns, column)
		for i := range t.rows {
			t.rows[i].cells = append(t.rows[i].cells, tableCell{text: texts[i]})
		}
	}
	limit := gates.RailExit(own.Rocket).Min
	add(tableColumn{left: true}, "today", "best", "change")
	for _, fact := range fillFacts {
		unit := v.scene.units.Unit(unitNamed(fact.unit))
		was, is := fact.of(own), math.NaN()
		if c.best != nil {
			is = fact.of(c.best.Flight)
		}
		add(tableColumn{title: fact.title, rank: fact.rank}, quantity.Format(was, unit, 3), quantity.Format(is, unit, 3), change(was, is, unit))
		if fact.unit == "m/s" {
			low := railWord(was, limit)
			if lower := railWord(is, limit); low != "" || lower != "" {
				add(tableColumn{left: true, rank: 1}, low, lower, "") // the words say it too
			}
		}
		if fact.unit == "m/s" && c.best != nil {
			within := c.best.Within[0]
			today := "no"
			if was := own.Rocket.Water.Fill; was >= within[0] && was <= within[1] {
				today = "yes"
			}
			add(tableColumn{title: "within 1 %"}, today, percents(within), "")
		}
	}
	return t.draw(v.scene.look, v.columns, len(t.rows)+1)
}

// change is how far a number goes, with its sign; a dash where one is not known.
func change(was, is float64, u quantity.Unit) string {
	if math.IsNaN(was) || math.IsNaN(is) {
		return "-"
	}
	return signed(is-was, is, u)
}

// familyRows set the members below each other: the sign and the line of each, its
// best fill, and how high and how fast it flies with that.
func (v *fillView) familyRows() []string {
	look, sys := v.scene.look, v.scene.units
	heightU, speedU := sys.Unit(unitNamed("m")), sys.Unit(unitNamed("m/s"))
	percent := unitNamed("%")
	t := table{columns: []tableColumn{
		{left: true}, {title: v.family.one()}, {title: "best fill"}, {title: "apogee"}, {title: "rail exit", rank: 1},
		{title: "within 1 %", rank: 3}, {title: "at today's fill", rank: 2},
	}}
	for _, c := range v.drawn() {
		row := tableRow{sign: string(c.sign), cells: textCells(swatch(c.style), c.name)}
		if c.today {
			row.role = focused
		}
		put := func(text string) { row.cells = append(row.cells, tableCell{text: text}) }
		if c.best == nil {
			put("none")
			t.rows = append(t.rows, row)
			continue
		}
		put(quantity.Format(c.best.Values[0], percent, 3))
		put(quantity.Format(c.best.Apogee, heightU, 3))
		put(quantity.Format(c.best.Flight.Results.RailExit.Speed, speedU, 3))
		put(percents(c.best.Within[0]))
		put(quantity.Format(c.at(v.own.result.Rocket.Water.Fill), heightU, 3))
		t.rows = append(t.rows, row)
	}
	return t.draw(look, v.columns, len(t.rows)+1)
}

// percents tells a range of fills: "27 to 36 %".
func percents(within [2]float64) string {
	unit := unitNamed("%")
	return number(quantity.Format(within[0], unit, 2), unit) + " to " + quantity.Format(within[1], unit, 2)
}

// at is the apogee at a fill, between two points of the curve in a straight line;
// NaN where either has none.
func (c *fillCurve) at(fill float64) float64 {
	i, found := slices.BinarySearch(c.fill, fill)
	switch {
	case found:
		return c.apogee[i]
	case i == 0 || i == len(c.fill):
		return math.NaN()
	}
	share := (fill - c.fill[i-1]) / (c.fill[i] - c.fill[i-1])
	return c.apogee[i-1] + share*(c.apogee[i]-c.apogee[i-1])
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
