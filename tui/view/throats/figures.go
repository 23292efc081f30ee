package throats

import (
	"ullage/sim/gates"
	"ullage/sim/quantity"
	"ullage/sim/results"
	"ullage/tui/draw"
	"ullage/tui/view"
)

// throatHeading is how many rows stand above the first throat.
const throatHeading = 2

// exitResult is the result that has a verdict beside it.
const exitResult = "rail_exit.speed"

// throatFacts are in the order of the columns.
var throatFacts = []view.Fact{
	{Result: "apogee.height"},
	{Result: exitResult, Short: "rail"},
	{Result: "drive.burn", Long: "thrust for", Short: "thrust"},
	{Result: "max.thrust", Long: "greatest thrust", Short: "peak", Rank: 4},
	{Result: "drive.average", Long: "average thrust", Short: "mean", Rank: 5},
	{Result: "max.acceleration", Long: "acceleration", Short: "max", Rank: 3, G: true},
	{Result: "liquid_out.left", Short: "left", Unit: "kg", Rank: 2},
}

// columns are the facts, what is wanted first where it is none of them.
func (v *View) columns() []view.Fact {
	wish := v.wished()
	return view.WishFact(&wish, throatFacts)
}

// roomyThroats is how many columns give the figures their long names.
const roomyThroats = 130

// figures is the table of the throats.
func (v *View) figures(rows []throatRow) draw.Table {
	theme, sys := v.Scene.Theme, v.Scene.Units
	unit := sys.Unit(v.Scene.File.Unit(throatInput))
	chosen, best := v.list.at(rows), v.best(rows)
	facts := v.facts(rows)
	roomy := v.Columns >= roomyThroats
	t := draw.Table{Tight: v.Columns < 70, Chosen: chosen, Columns: []draw.Column{{Title: "throat", Unit: "  " + unit.Name, Left: true}, {Left: true}}}
	low := v.anyLow(rows)
	for _, f := range facts {
		t.Columns = append(t.Columns, draw.Column{Title: f.Title(roomy), Unit: f.UnitName(sys), Rank: f.Rank})
		if low && f.Result == exitResult {
			t.Columns = append(t.Columns, draw.Column{Left: true})
		}
	}
	wish := v.wished()
	switch unit, label := sys.Unit(wish.Row.Metric()).Name, wish.Row.Label; {
	case v.fillsToo && roomy:
		t.Columns = append(t.Columns, draw.Column{Title: "best fill"}, draw.Column{Title: label + " then", Unit: unit, Rank: 1})
	case v.fillsToo:
		t.Columns = append(t.Columns, draw.Column{Title: "best", Unit: "fill"}, draw.Column{Title: "then", Unit: unit, Rank: 1})
	}
	for i, r := range rows {
		row := draw.Row{Sign: " ", Cells: draw.TextCells(throatLetter(i)+" "+draw.Number(draw.Exact(r.throat, unit, 6), unit), v.standing(i, r, best))}
		if i == chosen {
			row.Sign, row.Role = theme.Pointer, draw.Focused
		}
		t.Rows = append(t.Rows, v.fillRow(row, r, facts, low))
	}
	return t
}

// standing is what a throat is among the others: the best, the rocket's own.
func (v *View) standing(i int, r throatRow, best int) string {
	switch {
	case i == best:
		return string(draw.BestSign) + "best"
	case r.own:
		return "today"
	}
	return ""
}

// fillRow puts a throat's figures into its row.
func (v *View) fillRow(row draw.Row, r throatRow, facts []view.Column, low bool) draw.Row {
	theme, sys := v.Scene.Theme, v.Scene.Units
	put := func(text string, r draw.Role) { row.Cells = append(row.Cells, draw.Cell{Text: text, Role: r}) }
	f := v.flight(r.throat)
	if f != nil && f.flight == nil && f.invalid != nil {
		row.Rest = draw.Cell{Text: view.FaultText(f.invalid, throatInput), Role: draw.Bad}
		return row
	}
	paint := draw.Plain
	if v.flights.Busy {
		paint = draw.Dim
	}
	for _, fact := range facts {
		if f == nil || f.flight == nil {
			put(theme.Ellipsis, draw.Dim)
		} else {
			put(fact.Text(f.flight, sys), paint)
		}
		if low && fact.Result == exitResult {
			put(v.railVerdict(f), draw.Bad)
		}
	}
	if !v.fillsToo {
		return row
	}
	switch best := v.fill(r.throat); {
	case best == nil || v.fills.Busy:
		put(theme.Ellipsis, draw.Dim)
	case best.best == nil:
		put("none", draw.Dim)
	default:
		wish := v.wished()
		unit := sys.Unit(wish.Row.Metric())
		put(quantity.Format(best.best.Values[0], draw.Unit("%"), 3), draw.Plain)
		put(draw.Number(quantity.Format(wish.Row.Of(best.best.Flight), unit, 3), unit), draw.Plain)
	}
	return row
}

// railVerdict is the word on a rail exit speed that is not enough.
func (v *View) railVerdict(f *throatFlight) string {
	if f == nil || f.flight == nil {
		return ""
	}
	return view.RailWord(view.RailExitSpeed(f.flight), gates.RailExit(f.flight.Rocket).Min)
}

// anyLow tells that a throat leaves the rail too slowly.
func (v *View) anyLow(rows []throatRow) bool {
	for _, r := range rows {
		if v.railVerdict(v.flight(r.throat)) != "" {
			return true
		}
	}
	return false
}

// facts are those worth a column: what is left, only if something is.
func (v *View) facts(rows []throatRow) []view.Column {
	all := view.Of(v.columns(), results.For(v.Scene.File.Rocket()))
	for _, r := range rows {
		if f := v.flight(r.throat); f != nil && f.flight != nil && f.flight.Results.LiquidLeft > 0 {
			return all
		}
	}
	return all[:len(all)-1]
}

// throatLetter names a throat on the plot and in the table.
func throatLetter(i int) string { return string(rune('A' + i)) }
