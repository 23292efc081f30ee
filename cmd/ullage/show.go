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
		row, err := numbered(table, "--show", name)
		if err != nil {
			return nil, err
		}
		rows = append(rows, *row)
	}
	return rows, nil
}
