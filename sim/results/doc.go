// Package results is the table of what comes out of a flight, as the inputs of a rocket
// file are the table of what goes in. A result is one [Row]: a dotted name, a label, what
// it measures, when it has no value, and how it is got from a flight. JSON, CSV, sweeps,
// reports, findings, comparisons, plots and the screen read the table; none of them lists
// results of its own.
//
// Rows stand in a [Group]: an event (rail exit, apogee, a canopy's opening) or a subject
// (greatest values, margin). Which groups there are depends on the rocket: each canopy has
// its own. [For] gives the table of a rocket.
//
// A result is asked of a drive in a case: calm air, the day of the file, the worst corner
// of what is uncertain, the day of a log. A [Question] names all three, and [Flights]
// answers it from the flights there are.
//
// What a flight is over time is the other table, of [Series].
//
// # Adding a result
//
// A field of sim.Results, set where the flight knows it, and one row in its group in
// table.go:
//
//	{Name: "rail_exit.energy", Label: "energy at rail exit", Short: "energy", Dimension: quantity.Energy,
//		of: func(fl *sim.Flight) float64 { return fl.RailExit.Energy }},
//
// It then stands in the JSON of a flight under rail_exit as energy_j, in `ullage results`,
// behind `--show rail_exit.energy` of sweeps, scatters and plots, and in the report of a
// flight. A value there is none of is NaN; Undefined says when that is.
package results
