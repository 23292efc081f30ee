package throats

import (
	"ullage/sim/gates"
	"ullage/sim/quantity"
	"ullage/sim/results"
	"ullage/tui/draw"
	"ullage/tui/view"
)

// reading says of the chosen throat how it compares with today's and what the table
// has no room for, and which throat is best.
func (v *View) reading(rows []throatRow, t *draw.Table, most int) []string {
	theme, sys := v.Scene.Theme, v.Scene.Units
	unit := sys.Unit(v.Scene.File.Unit(throatInput))
	name := func(r throatRow) string { return draw.Exact(r.throat, unit, 6) }
	at := v.list.at(rows)
	chosen := v.flight(rows[at].throat)
	var words []string
	switch {
	case v.flights.Err != nil:
		words = append(words, "no figures: "+view.FaultText(v.flights.Err, ""))
	case v.flights.Busy:
		words = append(words, "figures of the rocket before; computing")
	case chosen != nil && chosen.invalid != nil:
		words = append(words, name(rows[at])+": "+view.FaultText(chosen.invalid, throatInput))
	case chosen != nil && chosen.flight != nil:
		words = append(words, v.compared(rows, at, name)...)
		if word := v.railVerdict(chosen); word != "" {
			limit := quantity.Format(gates.RailExit(chosen.flight.Rocket).Min, v.Scene.Unit("m/s"), 2)
			words = append(words, "rail exit "+word+": "+limit+" asked for")
		}
	}
	if best := v.best(rows); best >= 0 && best != at {
		words = append(words, string(draw.BestSign)+" "+name(rows[best])+" flies highest")
	} else if best < 0 && v.flights.Ready {
		words = append(words, "none of these leaves the rail and empties")
	}
	if high := v.highestFilled(rows); high >= 0 {
		words = append(words, "each at its best fill: "+name(rows[high])+" flies highest")
	}
	if chosen != nil && chosen.flight != nil && !v.flights.Busy {
		words = append(words, v.unseen(chosen, t)...)
	}
	if said := view.Simpler(v.Scene.Now.Flight.Rocket); said != "" {
		words = append(words, said)
	}
	return draw.Sentences(theme, words, v.Columns, most)
}

// compared sets the chosen throat against the rocket's own.
func (v *View) compared(rows []throatRow, at int, name func(throatRow) string) []string {
	f := v.flight(rows[at].throat)
	if rows[at].own {
		if at == v.best(rows) {
			return []string{name(rows[at]) + " is today's throat and the best of these"}
		}
		return []string{name(rows[at]) + " is today's throat"}
	}
	for _, r := range rows {
		own := v.flight(r.throat)
		if !r.own || own == nil || own.flight == nil {
			continue
		}
		up := draw.Change(own.flight.Results.Apogee.Height, f.flight.Results.Apogee.Height, v.Scene.Unit("m"))
		fast := draw.Change(view.RailExitSpeed(own.flight), view.RailExitSpeed(f.flight), v.Scene.Unit("m/s"))
		says := name(rows[at])
		if at == v.best(rows) {
			says = string(draw.BestSign) + " " + says + " is the best of these;"
		}
		return []string{says + " against today's: apogee " + up + ", rail exit " + fast}
	}
	return nil
}

// unseen are the chosen throat's figures that the table leaves out.
func (v *View) unseen(f *throatFlight, t *draw.Table) []string {
	sys := v.Scene.Units
	_, shown := t.Fit(v.Scene.Theme, v.Columns)
	var out []string
	for _, fact := range view.Of(throatFacts, results.For(f.flight.Rocket)) {
		for i, c := range t.Columns {
			if !shown[i] && (c.Title == fact.Title(false) || c.Title == fact.Title(true)) {
				out = append(out, fact.Title(true)+" "+fact.Text(f.flight, sys)+" "+fact.UnitName(sys))
			}
		}
	}
	return out
}

// highestFilled is the throat that flies highest at its own best fill; −1 when
// that is not asked for or not known.
func (v *View) highestFilled(rows []throatRow) int {
	high, apogee := -1, 0.0
	if !v.fillsToo || v.fills.Busy {
		return high
	}
	for i, r := range rows {
		if f := v.fill(r.throat); f != nil && f.best != nil && f.best.Apogee > apogee {
			high, apogee = i, f.best.Apogee
		}
	}
	return high
}
