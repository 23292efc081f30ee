package main

import (
	"context"
	"errors"
	"fmt"
	"io"

	"ullage/sim/report"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
)

// sweepCommand flies over one or two inputs.
type sweepCommand struct {
	File   string   `arg:"" placeholder:"FILE" help:"The rocket file; - reads standard input."`
	Inputs []string `arg:"" name:"name=from..to/points" placeholder:"NAME=" help:"One or two inputs with their values: a range and how many points, both ends included, or a list, as in water.throat=9mm,11mm,13mm."`

	JSON  bool `name:"json" xor:"form" help:"One JSON object a line, in SI units."`
	CSV   bool `name:"csv" xor:"form" help:"A row a flight as CSV, in SI units."`
	Large bool `help:"Fly a sweep of a million flights or more."`

	showOption
	studyOptions
}

// Help teaches by example.
func (sweepCommand) Help() string {
	return helpText(
		"Flies every combination of the values and reports each flight: a table, and with two inputs a grid "+
			"when it fits. A unit on the last value serves those before it that have none. Values that make no rocket have a row that says why. "+
			"ullage inputs lists the names.",
		"ullage sweep heron.toml water.fill=0.2..0.4/21",
		"ullage sweep heron.toml water.throat=9mm,11mm,13mm",
		"ullage sweep heron.toml water.fill=0.2..0.45/11 'water.pressure=6..10 bar/5'",
		"ullage sweep heron.toml water.gas=air,helium --json",
		"ullage sweep heron.toml water.fill=0.2..0.4/21 --show landing.drift",
		"ullage sweep heron.toml water.fill=0..0.6/601 --csv -o fill.csv")
}

// manyFlights is where a sweep has to be asked for twice: a grid of a thousand by a
// thousand is mostly a slip.
const manyFlights = 1_000_000

// Run sweeps and writes the rows as they come.
func (c *sweepCommand) Run(s *streams) error {
	file, err := c.open(s, c.File)
	if err != nil {
		return err
	}
	rocket := file.Rocket()
	axes, err := study.ParseAxes(rocket, c.Inputs)
	if err != nil {
		return badInput("%s", err)
	}
	n := study.Count(axes)
	if n >= manyFlights && !c.Large {
		return badInput("that is %d flights; take fewer points, or give --large to fly them all", n)
	}
	if n >= study.LargeSweep {
		fmt.Fprintf(s.err, "%d flights; an interrupt keeps those flown\n", n)
	}
	show, err := c.results(rocket)
	if err != nil {
		return err
	}
	sweep := report.Sweep{
		Rocket: rocket, Axes: axes, System: c.system(), Show: show,
		Units: units(file, axes, func(a study.Axis) rocketfile.Input { return a.Input }),
	}
	invalid := invalidRows{}
	err = c.stream(s, func(w io.Writer) error {
		rows := c.rows(w, sweep)
		bar := c.bar(s, true)
		err := study.Sweep(s.ctx, rocket, axes, c.study(bar), func(r study.Row) error {
			invalid.count(r)
			return rows.Row(r)
		})
		bar.clear()
		if err != nil && !errors.Is(err, context.Canceled) {
			return err
		}
		return errors.Join(rows.End(), err)
	})
	if c.CSV { // the other forms say so themselves
		invalid.tell(s, n)
		c.tellBeyond(s, study.MostPressed(rocket, axes))
	}
	return err
}

func (c *sweepCommand) rows(w io.Writer, sweep report.Sweep) report.RowWriter {
	switch {
	case c.JSON:
		return report.SweepJSON(w, sweep)
	case c.CSV:
		return report.SweepCSV(w, sweep)
	}
	return report.SweepText(w, sweep)
}

// invalidRows counts the rows that make no rocket.
type invalidRows struct {
	n     int
	first error
}

func (i *invalidRows) count(r study.Row) {
	if r.Flight != nil {
		return
	}
	if i.n++; i.n == 1 {
		i.first = r.Invalid
	}
}

func (i *invalidRows) tell(s *streams, of int) {
	if i.n > 0 {
		fmt.Fprintf(s.err, "%d of %d points make no rocket; the first: %v\n", i.n, of, i.first)
	}
}
