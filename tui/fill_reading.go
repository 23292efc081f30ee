package tui

import (
	"math"
	"slices"
	"strings"

	"ullage/atmosphere"
	"ullage/sim"
	"ullage/sim/quantity"
	"ullage/tui/plot"
)

// fillStep is how finely the best fill is taken: a tenth of a percent costs
// nothing where the curve is flat.
const fillStep = 0.001

// bestFill is the fill to take as the best: a short number, unless the best
// stands where one side of it is no flight to have.
func (c *fillCurve) bestFill() float64 {
	v := c.best.Values[0]
	if c.best.AtEdge[0] || c.best.AtBound[0] {
		return v
	}
	return math.Round(v/fillStep) * fillStep
}

// trouble says why there is no best fill.
func (c *fillCurve) trouble() string {
	if c.invalid != nil {
		return strings.TrimSuffix(faultText(c.invalid, fillInput), ".")
	}
	if slices.Contains(c.stuck, false) {
		return "at every fill it stays on the rail or lands with liquid aboard"
	}
	return "at no fill does it leave the rail"
}

// noFlights says in words where the curves are no flight to have: of one alone, or
// of each by its sign.
func noFlights(curves []drawnCurve) []string {
	tell := func(of func(c *fillCurve) []bool) string {
		var where []string
		for _, c := range curves {
			if !slices.Contains(c.stuck, false) {
				continue // that is why it has no best, which is told of
			}
			for _, s := range c.stretches(of(c.fillCurve)) {
				text := c.where(s)
				if len(curves) > 1 {
					text = string(c.sign) + " " + text
				}
				where = append(where, text)
			}
		}
		return strings.Join(where, ", ")
	}
	var out []string
	if where := tell(func(c *fillCurve) []bool { return c.left }); where != "" {
		out = append(out, string(leftSign)+" liquid stays aboard: "+where)
	}
	if where := tell(func(c *fillCurve) []bool { return c.stuck }); where != "" {
		out = append(out, "gap, it never leaves the rail: "+where)
	}
	return out
}

// where tells a stretch: "from 62 %", "to 4 %" or "from 4 % to 9 %".
func (c *fillCurve) where(s stretch) string {
	unit := unitNamed("%")
	from, to := quantity.Format(s.from, unit, 2), quantity.Format(s.to, unit, 2)
	switch first, last := c.fill[0], c.fill[len(c.fill)-1]; {
	case s.from <= first && s.to >= last:
		return "at every fill"
	case s.to >= last:
		return "from " + from
	case s.from <= first:
		return "to " + to
	}
	return "from " + from + " to " + to
}

// reading is what the curves say in words, in at most so many rows.
func (v *fillView) reading(most int) []string {
	var rows []string
	words := []string{}
	if len(v.curves.result) > 1 {
		rows = v.familyRows()
		if v.family == byPressure {
			words = append(words, "more pressure only in a chamber proved for it")
		}
	} else {
		rows = v.ownRows()
	}
	drawn := v.drawn()
	for _, c := range drawn {
		switch {
		case c.best != nil:
		case len(drawn) > 1:
			words = append(words, c.name+": "+c.trouble())
		default:
			words = append(words, "no best fill: "+c.trouble())
		}
	}
	words = append(words, noFlights(drawn)...)
	if v.scene.now.flight.Rocket.Rigid() {
		words = append(words, "flights of a point mass")
	}
	return append(rows, sentences(v.scene.look, words, v.columns, most-len(rows))...)
}

// sentences are remarks in at most so many painted rows of w cells.
func sentences(look *look, words []string, w, most int) []string {
	text := strings.Join(words, "; ")
	if text == "" || most < 1 {
		return nil
	}
	lines := wrapped(glued(look.say(clean(text))), w)
	if len(lines) > most {
		rest := strings.Join(lines[most-1:], " ")
		lines = append(lines[:most-1], look.fit(rest, w))
	}
	for i := range lines {
		lines[i] = look.in(dimText, padded(strings.ReplaceAll(lines[i], glue, " "), w))
	}
	return lines
}

// glue stands for a blank that no line is broken at. It is for private use, and
// clean lets none in.
const glue = "\ue000"

// glued keeps numbers and what follows them, such as a unit, on one line.
func glued(s string) string {
	var b strings.Builder
	digit := false
	for _, r := range s {
		if r == ' ' && digit {
			b.WriteString(glue)
		} else {
			b.WriteRune(r)
		}
		digit = '0' <= r && r <= '9'
	}
	return b.String()
}

// fillFact is something to know of a flight besides its fill, and its unit.
type fillFact struct {
	title, unit string
	of          func(fl *sim.Flight) float64
}

// fillFacts are in the order of their weight.
var fillFacts = []fillFact{
	{"fill", "%", func(fl *sim.Flight) float64 { return fl.Rocket.Water.Fill }},
	{"apogee", "m", func(fl *sim.Flight) float64 { return fl.Results.Apogee.Height }},
	{"rail exit", "m/s", railExitSpeed},
	{"water", "L", func(fl *sim.Flight) float64 { return fl.Rocket.Water.Fill * fl.Rocket.Water.Volume }},
	{"lift-off", "kg", func(fl *sim.Flight) float64 { return fl.Results.LiftOffMass }},
	{"thrust for", "s", func(fl *sim.Flight) float64 { return fl.Results.Drive.BurnTime }},
	{"g at most", "", func(fl *sim.Flight) float64 { return fl.Results.Max.Acceleration / atmosphere.StandardGravity }},
	{"to the top", "s", func(fl *sim.Flight) float64 { return fl.Results.Apogee.Time }},
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
	add(tableColumn{left: true}, "today", "best", "change")
	for i, fact := range fillFacts {
		unit := v.scene.units.Unit(unitNamed(fact.unit))
		was, is := fact.of(own), math.NaN()
		if c.best != nil {
			is = fact.of(c.best.Flight)
		}
		add(tableColumn{title: fact.title, rank: i}, quantity.Format(was, unit, 3), quantity.Format(is, unit, 3), change(was, is, unit))
		if i == 2 && c.best != nil {
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
