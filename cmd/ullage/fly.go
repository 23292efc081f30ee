package main

import (
	"io"

	"ullage/sim"
	"ullage/sim/gates"
	"ullage/sim/report"
	"ullage/sim/report/measured"
	"ullage/sim/results"
	"ullage/sim/study"
)

// flyCommand flies a rocket once.
type flyCommand struct {
	File string `arg:"" placeholder:"FILE" help:"The rocket file; - reads standard input."`

	JSON  bool     `name:"json" xor:"form" help:"The results as one JSON object, in SI units."`
	CSV   bool     `name:"csv" xor:"form" help:"Samples of the flight as CSV, in SI units, the landing last."`
	Held  bool     `help:"Hold the rocket still, as on a thrust stand, and tell what it would show."`
	Every *spacing `placeholder:"TIME" help:"Spacing of the samples of --csv, as in 1ms or 0.5s; 10ms if not given."`

	setOptions
	unitsOption
	outputOptions
}

// Help teaches by example.
func (flyCommand) Help() string {
	return helpText(
		"The report says what flew, what happened when, the greatest values, how it comes down, and what "+
			"to watch. Nothing is written to the rocket file.",
		"ullage fly heron.toml",
		"ullage fly heron.toml --units us",
		"ullage fly heron.toml --set water.fill=0.33 --set 'water.pressure=8 bar'",
		"ullage fly heron.toml --set power=motor --json",
		"ullage fly heron.toml --csv --every 1ms -o heron.csv",
		"ullage fly heron.toml --held --csv --every 1ms -o stand.csv",
		"ullage fly - --json < heron.toml")
}

// Run flies and writes the result in the form asked for.
func (c *flyCommand) Run(s *streams) error {
	if c.Every != nil && !c.CSV {
		return badInput("--every is the spacing of --csv's samples; give both")
	}
	file, err := c.open(s, c.File)
	if err != nil {
		return err
	}
	flight, err := sim.Fly(s.ctx, file.Rocket(), sim.Options{Keep: c.CSV, Held: c.Held})
	if err != nil {
		return err
	}
	if c.CSV {
		defer c.tellBeyond(s, flight.Rocket)
	}
	return c.write(s, func(w io.Writer) error {
		switch {
		case c.JSON && c.Held:
			return report.WriteHeldJSON(w, flight, results.For(flight.Rocket), file.Rocket())
		case c.JSON:
			return report.WriteJSON(w, flight, results.For(flight.Rocket))
		case c.CSV:
			return report.WriteCSV(w, flight, results.Over(), c.every())
		case c.Held:
			return measured.WriteHeldText(w, flight, file.Rocket(), c.system())
		}
		rail, err := study.RailExitFor(s.ctx, flight.Rocket, gates.RailExit(flight.Rocket).Min, study.Options{})
		if err != nil {
			return err
		}
		return report.WriteText(w, flight, results.For(flight.Rocket), c.system(), report.RailFindings(rail, flight.Rocket, c.system())...)
	})
}

func (c *flyCommand) every() float64 {
	if c.Every == nil {
		return report.DefaultEvery
	}
	return float64(*c.Every)
}
