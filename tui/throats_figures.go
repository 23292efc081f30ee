package tui

import (
	"ullage/atmosphere"
	"ullage/sim"
	"ullage/sim/quantity"
)

// throatHeading is how many rows stand above the first throat.
const throatHeading = 2

// throatFact is something to know of a flight with a throat.
type throatFact struct {
	short, name string
	unit        string // "g" is that of gravity
	rank        int    // the higher, the sooner it gives way
	of          func(r *sim.Results) float64
}

// throatFacts are in the order of the columns.
var throatFacts = []throatFact{
	{"apogee", "apogee", "m", 0, func(r *sim.Results) float64 { return r.Apogee.Height }},
	{"rail", "rail exit", "m/s", 0, func(r *sim.Results) float64 { return r.RailExit.Speed }},
	{"thrust", "thrust for", "s", 0, func(r *sim.Results) float64 { return r.Drive.BurnTime }},
	{"peak", "peak thrust", "N", 4, func(r *sim.Results) float64 { return r.Max.Thrust }},
	{"mean", "mean thrust", "N", 5, func(r *sim.Results) float64 { return r.Drive.Average }},
	{"max", "acceleration", "g", 3, func(r *sim.Results) float64 { return r.Max.Acceleration / atmosphere.StandardGravity }},
	{"left", "liquid left", "kg", 2, func(r *sim.Results) float64 { return r.LiquidLeft }},
}

// text is the fact as a number, without its unit.
func (f throatFact) text(r *sim.Results, sys quantity.System) string {
	unit := f.shown(sys)
	if f.unit == "m/s" && !r.RailExit.Happened {
		return "never"
	}
	return number(quantity.Format(f.of(r), unit, 3), unit)
}

// shown is the unit the fact is shown in. Multiples of gravity have none.
func (f throatFact) shown(sys quantity.System) quantity.Unit {
	if f.unit == "g" {
		return unitNamed("")
	}
	return sys.Unit(unitNamed(f.unit))
}

// unitName is how that unit is written.
func (f throatFact) unitName(sys quantity.System) string {
	if f.unit == "g" {
		return f.unit
	}
	return f.shown(sys).Name
}

// roomyThroats is how many columns give the figures their long names.
const roomyThroats = 130

// figures is the table of the throats.
func (v *throatsView) figures(rows []throatRow) table {
	look, sys := v.scene.look, v.scene.units
	unit := sys.Unit(v.scene.file.Unit(throatInput))
	chosen, best := v.list.at(rows), v.best(rows)
	facts := v.facts(rows)
	roomy := v.columns >= roomyThroats
	t := table{tight: v.columns < 70, chosen: chosen, columns: []tableColumn{{title: "throat", unit: "  " + unit.Name, left: true}, {left: true}}}
	for _, f := range facts {
		title := f.short
		if roomy {
			title = f.name
		}
		t.columns = append(t.columns, tableColumn{title: title, unit: f.unitName(sys), rank: f.rank})
	}
	switch height := sys.Unit(unitNamed("m")).Name; {
	case v.fillsToo && roomy:
		t.columns = append(t.columns, tableColumn{title: "best fill"}, tableColumn{title: "apogee then", unit: height, rank: 1})
	case v.fillsToo:
		t.columns = append(t.columns, tableColumn{title: "best", unit: "fill"}, tableColumn{title: "then", unit: height, rank: 1})
	}
	for i, r := range rows {
		row := tableRow{sign: " ", cells: textCells(throatLetter(i)+" "+number(exact(r.throat, unit, 6), unit), v.standing(i, r, best))}
		if i == chosen {
			row.sign, row.role = look.pointer, focused
		}
		t.rows = append(t.rows, v.fillRow(row, r, facts))
	}
	return t
}

// standing is what a throat is among the others: the best, the rocket's own.
func (v *throatsView) standing(i int, r throatRow, best int) string {
	switch {
	case i == best:
		return string(bestSign) + "best"
	case r.own:
		return "today"
	}
	return ""
}

// fillRow puts a throat's figures into its row.
func (v *throatsView) fillRow(row tableRow, r throatRow, facts []throatFact) tableRow {
	look, sys := v.scene.look, v.scene.units
	put := func(text string, r role) { row.cells = append(row.cells, tableCell{text, r}) }
	f := v.flight(r.throat)
	if f != nil && f.flight == nil && f.invalid != nil {
		row.rest = tableCell{faultText(f.invalid, throatInput), badWord}
		return row
	}
	paint := plainText
	if v.flights.busy {
		paint = dimText
	}
	for _, fact := range facts {
		if f == nil || f.flight == nil {
			put(look.ellipsis, dimText)
		} else {
			put(fact.text(&f.flight.Results, sys), paint)
		}
	}
	if !v.fillsToo {
		return row
	}
	switch best := v.fill(r.throat); {
	case best == nil || v.fills.busy:
		put(look.ellipsis, dimText)
	case best.best == nil:
		put("none", dimText)
	default:
		m := sys.Unit(unitNamed("m"))
		put(quantity.Format(best.best.Values[0], unitNamed("%"), 3), plainText)
		put(number(quantity.Format(best.best.Apogee, m, 3), m), plainText)
	}
	return row
}

// facts are those worth a column: what is left, only if something is.
func (v *throatsView) facts(rows []throatRow) []throatFact {
	for _, r := range rows {
		if f := v.flight(r.throat); f != nil && f.flight != nil && f.flight.Results.LiquidLeft > 0 {
			return throatFacts
		}
	}
	return throatFacts[:len(throatFacts)-1]
}

// throatLetter names a throat on the plot and in the table.
func throatLetter(i int) string { return string(rune('A' + i)) }

// reading says of the chosen throat what the table has no room for, how it
// compares with today's, and which is best.
func (v *throatsView) reading(rows []throatRow, t *table, most int) []string {
	look, sys := v.scene.look, v.scene.units
	unit := sys.Unit(v.scene.file.Unit(throatInput))
	name := func(r throatRow) string { return exact(r.throat, unit, 6) }
	at := v.list.at(rows)
	chosen := v.flight(rows[at].throat)
	var words []string
	switch {
	case v.flights.err != nil:
		words = append(words, "no figures: "+faultText(v.flights.err, ""))
	case v.flights.busy:
		words = append(words, "figures of the rocket before; computing")
	case chosen != nil && chosen.invalid != nil:
		words = append(words, name(rows[at])+": "+faultText(chosen.invalid, throatInput))
	case chosen != nil && chosen.flight != nil:
		words = append(words, v.compared(rows, at, name)...)
	}
	if best := v.best(rows); best >= 0 && best != at {
		words = append(words, string(bestSign)+" "+name(rows[best])+" flies highest")
	} else if best < 0 && v.flights.ready {
		words = append(words, "none of these leaves the rail and empties")
	}
	if high := v.highestFilled(rows); high >= 0 {
		words = append(words, "each at its best fill: "+name(rows[high])+" flies highest")
	}
	if chosen != nil && chosen.flight != nil && !v.flights.busy {
		words = append(words, v.unseen(chosen, t)...)
	}
	if v.scene.now.flight.Rocket.Rigid() {
		words = append(words, "flights of a point mass")
	}
	return sentences(look, words, v.columns, most)
}

// compared sets the chosen throat against the rocket's own.
func (v *throatsView) compared(rows []throatRow, at int, name func(throatRow) string) []string {
	f, sys := v.flight(rows[at].throat), v.scene.units
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
		up := change(own.flight.Results.Apogee.Height, f.flight.Results.Apogee.Height, sys.Unit(unitNamed("m")))
		fast := change(railExitSpeed(own.flight), railExitSpeed(f.flight), sys.Unit(unitNamed("m/s")))
		says := name(rows[at])
		if at == v.best(rows) {
			says = string(bestSign) + " " + says + " is the best of these;"
		}
		return []string{says + " against today's: apogee " + up + ", rail exit " + fast}
	}
	return nil
}

// unseen are the chosen throat's figures that the table leaves out.
func (v *throatsView) unseen(f *throatFlight, t *table) []string {
	_, shown := t.fit(v.scene.look, v.columns)
	var out []string
	for i, fact := range v.facts(v.listed()) {
		if i+2 < len(shown) && !shown[i+2] {
			out = append(out, fact.name+" "+fact.text(&f.flight.Results, v.scene.units)+" "+fact.unitName(v.scene.units))
		}
	}
	return out
}

// highestFilled is the throat that flies highest at its own best fill; −1 when
// that is not asked for or not known.
func (v *throatsView) highestFilled(rows []throatRow) int {
	high, apogee := -1, 0.0
	if !v.fillsToo || v.fills.busy {
		return high
	}
	for i, r := range rows {
		if f := v.fill(r.throat); f != nil && f.best != nil && f.best.Apogee > apogee {
			high, apogee = i, f.best.Apogee
		}
	}
	return high
}
