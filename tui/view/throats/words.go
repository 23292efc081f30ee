package throats

import (
	"ullage/sim/gates"
	"ullage/sim/quantity"
	says "ullage/sim/report/words"
	"ullage/sim/results"
	"ullage/sim/study"
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
	wish := v.wished()
	granted := says.In(sys).Granted(&wish)
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
	best := v.best(rows)
	if best >= 0 && best != at {
		words = append(words, string(draw.BestSign)+" "+name(rows[best])+" "+granted)
	} else if best < 0 && v.flights.Ready {
		why := "none of these leaves the rail and empties"
		if at, there := gates.PressureOf(v.Scene.File.Rocket()); there && at.ProvedFor > 0 && at.Beyond() {
			why = "no best throat: more pressure than the chamber is proved for"
		}
		words = append(words, why)
	}
	if best >= 0 && !v.flights.Busy {
		if x := wish.Row.Of(v.flight(rows[best].throat).flight); !wish.Met(x) {
			words = append(words, "none of these comes to "+says.In(sys).Wish(&wish)+": the nearest is "+says.In(sys).Row(&wish.Row, x))
		}
	}
	if high := v.bestFilled(rows); high >= 0 {
		words = append(words, "each at its best fill: "+name(rows[high])+" "+granted)
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
		text := name(rows[at])
		if at == v.best(rows) {
			text = string(draw.BestSign) + " " + text + " is the best of these;"
		}
		text += " against today's: "
		if wish := v.wished(); wish.Row.Name != study.UsualWish && wish.Row.Name != exitResult {
			text += wish.Row.Label + " " + draw.Change(wish.Row.Of(own.flight), wish.Row.Of(f.flight), v.Scene.Units.Unit(wish.Row.Metric())) + ", "
		}
		return []string{text + "apogee " + up + ", rail exit " + fast}
	}
	return nil
}

// unseen are the chosen throat's figures that the table leaves out.
func (v *View) unseen(f *throatFlight, t *draw.Table) []string {
	sys := v.Scene.Units
	_, shown := t.Fit(v.Scene.Theme, v.Columns)
	var out []string
	for _, fact := range view.Of(v.columns(), results.For(f.flight.Rocket)) {
		for i, c := range t.Columns {
			if !shown[i] && (c.Title == fact.Title(false) || c.Title == fact.Title(true)) {
				out = append(out, fact.Title(true)+" "+fact.Text(f.flight, sys)+" "+fact.UnitName(sys))
			}
		}
	}
	return out
}

// bestFilled is the throat that has most of what is wanted at its own best fill; −1 when
// that is not asked for or not known.
func (v *View) bestFilled(rows []throatRow) int {
	high, most := -1, 0.0
	aim := v.wished().Aim(false)
	if !v.fillsToo || v.fills.Busy {
		return high
	}
	for i, r := range rows {
		if f := v.fill(r.throat); f != nil && f.best != nil {
			if x := aim.Value(f.best.Flight); high < 0 || x > most {
				high, most = i, x
			}
		}
	}
	return high
}
