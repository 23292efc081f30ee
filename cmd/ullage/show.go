package main

import (
	"ullage/sim/results"
	"ullage/sim/rocket"
)

// showOption names results to tell beside the usual ones.
type showOption struct {
	Show []string `placeholder:"RESULT" help:"Results to tell beside the usual ones, as in --show landing.drift,margin.least. ullage results lists the names."`
}

// results are the results named, each of which must be a number.
func (o showOption) results(r *rocket.Rocket) ([]results.Row, error) {
	table := results.For(r)
	var rows []results.Row
	for _, name := range o.Show {
		row := table.Find(name)
		switch {
		case row == nil && table.Nearest(name) != "":
			return nil, badInput("--show %s: no flight of this rocket has a result of this name; perhaps %s is meant", name, table.Nearest(name))
		case row == nil:
			return nil, badInput("--show %s: no flight of this rocket has a result of this name; ullage results lists them", name)
		case row.IsWord():
			return nil, badInput("--show %s: it is a word, and a number is needed; ullage results lists others", name)
		}
		rows = append(rows, *row)
	}
	return rows, nil
}
