package measured

import (
	"fmt"
	"strconv"

	"ullage/sim/flown"
	"ullage/sim/quantity"
	"ullage/sim/report/machine"
	"ullage/sim/report/page"
	"ullage/sim/report/words"
	"ullage/sim/results"
)

// past is what flights say of the uncertainties; none of fewer than three.
func past(p words.Printer, all *flown.Pasts) page.Section {
	x := page.Section{Name: "What these flights say of the uncertainties"}
	if all == nil {
		return page.Section{}
	}
	if n := len(all.LeftOut); n > 0 {
		x.Add(page.Prose("Left out, since values of the file were fitted to them, by which alone they agree: " + page.Printable(page.Listed(all.LeftOut)) + "."))
	}
	if all.Flights < flown.FewestFlights {
		if len(all.LeftOut) == 0 && all.Flights < 2 {
			return page.Section{}
		}
		x.Add(page.Prose(fmt.Sprintf("%s left; from %d on they tell whether the uncertainties are right.", words.Plural(all.Flights, "flight"), flown.FewestFlights)))
		return x
	}
	if len(all.Results) == 0 {
		x.Add(page.Prose(fmt.Sprintf("%s, but no result that all of them tell, or [spread] has nothing that differs from flight to flight (water.fill, water.pressure, wind.speed …).", words.Plural(all.Flights, "flight"))))
		return x
	}
	grid := page.Grid{Heads: []page.GridHead{page.Words(""), page.Figures("mean off"), page.Figures("expected"), page.Figures("scatter"), page.Figures("expected"), page.Figures("factor"), page.Words("")}}
	var narrow, wide []string
	var first *flown.Past // of the narrow
	for i := range all.Results {
		r := &all.Results[i]
		grid.Rows = append(grid.Rows, []string{r.Row.Label, p.BareRow(&r.Row, r.Offset), p.BareRow(&r.Row, r.OffsetSD), p.BareRow(&r.Row, r.Between), p.Row(&r.Row, r.BetweenSD),
			factorWords(r), r.Word()})
		switch r.Word() {
		case flown.TooNarrow:
			narrow = append(narrow, r.Row.Label)
			if first == nil || r.Row.Name == "apogee.height" {
				first = r
			}
		case flown.TooWide:
			wide = append(wide, r.Row.Label)
		}
	}
	x.Add(grid)
	if first != nil {
		x.Add(page.Alarm(tooNarrow(narrow, first)))
	}
	if len(wide) > 0 {
		x.Add(page.Prose("The uncertainties are too wide for " + page.Listed(wide) + ". Wide ones do no harm; narrow them when more flights say the same."))
	}
	x.Add(page.Prose(fmt.Sprintf("%s. Mean off is measured less predicted, and scatter how far flights are apart beside that; expected is one standard deviation of each, by what all flights share (%s) and by what is another one each time (%s). "+
		"The factor is what the uncertainties would have to be multiplied with, in brackets what 90 %% of such flights leave open: 1 in it agrees; where next to nothing differs from flight to flight it is by the mean alone. What all share is taken to move all alike; how well a log is read counts as scatter. Results of one flight hang together: they are no separate witnesses.",
		words.Plural(all.Flights, "flight"), orNothing(all.Common), orNothing(all.Daily))))
	return x
}

func orNothing(names []string) string {
	if len(names) == 0 {
		return "nothing in [spread]"
	}
	return page.Printable(page.Listed(names))
}

// tooNarrow says what to do about it, by the factor of the apogee or else the first of them.
func tooNarrow(names []string, r *flown.Past) string {
	where := "what all flights share and what is another one each time"
	switch {
	case r.InMean() && !r.InScatter():
		where = "what all flights share, of which ullage fit tells more"
	case r.InScatter() && !r.InMean():
		where = "what is another one each time"
	}
	return "The uncertainties are too narrow for " + page.Listed(names) + ". Look first whether each flight was predicted with the settings of its day; then multiply the deviations in [spread] by about " +
		figureOf(r.Factor) + " (" + r.Row.Label + "), above all those of " + where + ". Until then checks and cards are as much too sure."
}

// factorWords are a factor with what it leaves open.
func factorWords(r *flown.Past) string {
	return figureOf(r.Factor) + " (" + figureOf(r.Low) + " to " + figureOf(r.High) + ")"
}

func figureOf(v float64) string {
	const digits = 2
	return strconv.FormatFloat(quantity.Rounded(v, digits), 'f', -1, 64)
}

// pastObject is the same for programs, SI, angles in degrees; null of fewer than three flights.
func pastObject(all *flown.Pasts) any {
	if all == nil {
		return nil
	}
	var out, rows machine.Object
	for i := range all.Results {
		r := &all.Results[i]
		v := func(x float64) machine.Number {
			return machine.Number(machine.Tidy(results.Machine(r.Row.Dimension, x)))
		}
		n := func(x float64) machine.Number { return machine.Number(machine.Tidy(x)) }
		var row machine.Object
		row.Add("offset", v(r.Offset)).Add("offset_sd", v(r.OffsetSD)).Add("scatter", v(r.Between)).Add("scatter_sd", v(r.BetweenSD)).
			Add("factor", n(r.Factor)).Add("low", n(r.Low)).Add("high", n(r.High)).
			Add("scatter_factor", n(r.BetweenFactor)).Add("scatter_low", n(r.BetweenLow)).Add("scatter_high", n(r.BetweenHigh)).Add("verdict", r.Word())
		rows.Add(r.Row.Name, &row)
	}
	return out.Add("flights", all.Flights).Add("left_out", append([]string{}, all.LeftOut...)).Add("common", append([]string{}, all.Common...)).
		Add("daily", append([]string{}, all.Daily...)).Add("results", &rows)
}
