package fill

import (
	"math"
	"slices"
	"strings"

	"ullage/sim/gates"
	"ullage/sim/quantity"
	says "ullage/sim/report/words"
	"ullage/tui/draw"
	"ullage/tui/view"
)

// How finely the best fill is taken: a tenth of a percent costs nothing where the
// curve is flat. At an edge it is a hundredth, on the side of the flights to have.
const (
	fillStep     = 0.001
	fillEdgeStep = 0.0001
)

// bestFill is the fill to take as the best: a short number.
func (c *fillCurve) bestFill() float64 {
	v, within := c.best.Values[0], c.best.Within[0]
	switch {
	case c.best.AtBound[0]:
		return v
	case !c.best.AtEdge[0]:
		return math.Round(v/fillStep) * fillStep
	case v-within[0] > within[1]-v:
		return math.Floor(v/fillEdgeStep) * fillEdgeStep
	}
	return math.Ceil(v/fillEdgeStep) * fillEdgeStep
}

// caveats says what else the best fills are, besides the best.
func (v *View) caveats(curves []drawnCurve) []string {
	limit, unit := gates.RailExit(v.Scene.Now.Flight.Rocket).Min, v.Scene.Unit("m/s")
	var out, low []string
	for _, c := range curves {
		if c.best != nil && view.RailWord(view.RailExitSpeed(c.best.Flight), limit) != "" {
			low = append(low, string(c.sign))
		}
	}
	if len(low) > 0 {
		at := "the best"
		if len(curves) > 1 {
			at = strings.Join(low, ", ")
		}
		out = append(out, "rail exit "+gates.WordLow+" at "+at+": "+quantity.Format(limit, unit, 2)+" asked for")
	}
	if c := v.today(); len(curves) == 1 && c != nil && c.best != nil {
		switch {
		case c.best.AtEdge[0]:
			out = append(out, "right beyond the best, liquid stays aboard or it never leaves the rail")
		case c.best.AtBound[0]:
			out = append(out, "the best is at the end of the fills looked at")
		}
	}
	return out
}

// unmet says where a value that is wanted is not come to, and how near.
func (v *View) unmet(curves []drawnCurve) []string {
	var out []string
	p := says.In(v.Scene.Units)
	for _, c := range curves {
		w := &c.wish
		if c.best == nil || w.Met(c.granted()) {
			continue
		}
		text := "no fill comes to " + p.Wish(w) + ": the nearest is " + p.Row(&w.Row, c.granted())
		if len(curves) > 1 {
			text = string(c.sign) + " " + text
		}
		out = append(out, text)
	}
	return out
}

// trouble says why there is no best fill.
func (c *fillCurve) trouble() string {
	if c.invalid != nil {
		return strings.TrimSuffix(view.FaultText(c.invalid, fillInput), ".")
	}
	if c.overpressed {
		return "more pressure than the chamber is proved for"
	}
	if slices.ContainsFunc(c.stuck, func(stuck bool) bool { return !stuck }) && !slices.ContainsFunc(c.value, func(x float64) bool { return !math.IsNaN(x) }) {
		return "at no fill is there a " + c.wish.Row.Label
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
	unit := draw.Unit("%")
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
func (v *View) reading(most int) []string {
	var rows []string
	words := []string{}
	if len(v.curves.Result) > 1 {
		rows = v.familyRows()
		if v.family == byPressure {
			words = append(words, says.In(v.Scene.Units).ProvedFor(v.Scene.Now.Flight.Rocket))
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
	words = append(words, v.unmet(drawn)...)
	words = append(append(words, v.caveats(drawn)...), noFlights(drawn)...)
	if said := view.Simpler(v.Scene.Now.Flight.Rocket); said != "" {
		words = append(words, said)
	}
	return append(rows, draw.Sentences(v.Scene.Theme, words, v.Columns, most-len(rows))...)
}
