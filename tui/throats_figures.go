package tui

import (
	"ullage/atmosphere"
	"ullage/sim"
	"ullage/sim/gates"
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
	low := v.anyLow(rows)
	for _, f := range facts {
		title := f.short
		if roomy {
			title = f.name
		}
		t.columns = append(t.columns, tableColumn{title: title, unit: f.unitName(sys), rank: f.rank})
		if low && f.unit == "m/s" {
			t.columns = append(t.columns, tableColumn{left: true})
		}
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
		t.rows = append(t.rows, v.fillRow(row, r, facts, low))
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
func (v *throatsView) fillRow(row tableRow, r throatRow, facts []throatFact, low bool) tableRow {
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
		if low && fact.unit == "m/s" {
			put(v.railVerdict(f), badWord)
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

// railVerdict is the word on a rail exit speed that is not enough.
func (v *throatsView) railVerdict(f *throatFlight) string {
	if f == nil || f.flight == nil {
		return ""
	}
	return railWord(railExitSpeed(f.flight), gates.RailExit(f.flight.Rocket).Min)
}

// anyLow tells that a throat leaves the rail too slowly.
func (v *throatsView) anyLow(rows []throatRow) bool {
	for _, r := range rows {
		if v.railVerdict(v.flight(r.throat)) != "" {
			return true
		}
	}
	return false
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
