package main

import (
	"encoding/json"
	"fmt"
	"io"
	"math"
	"strings"
	"text/tabwriter"

	"ullage/sim"
	"ullage/sim/quantity"
	"ullage/sim/results"
)

// resultsCommand lists what comes out of a flight.
type resultsCommand struct {
	File string `arg:"" optional:"" placeholder:"FILE" help:"The rocket file; - reads standard input; none flies the rocket built in."`

	JSON bool `name:"json" help:"One JSON object of names and values, in SI units with angles in degrees."`

	setOptions
	unitsOption
	outputOptions
}

// Help teaches by example.
func (resultsCommand) Help() string {
	return helpText(
		"Flies once and prints one line a result: the name that --show knows it by, its value (- when it has none), what it "+
			"is, and when it has no value. Which results there are depends on the rocket: each canopy has its own.",
		"ullage results heron.toml",
		"ullage results heron.toml | grep landing",
		"ullage results heron.toml --set power=motor --json",
		"ullage scatter heron.toml --show landing.drift,margin.least")
}

// Run flies and lists the results.
func (c *resultsCommand) Run(s *streams) error {
	file, err := s.openOrStarter(c.File)
	if err != nil {
		return err
	}
	if file, err = c.apply(file); err != nil {
		return err
	}
	flight, err := sim.Fly(s.ctx, file.Rocket(), sim.Options{})
	if err != nil {
		return err
	}
	if c.File != "" { // the one built in is no rocket that anybody fills
		defer c.tellBeyond(s, flight.Rocket)
	}
	return c.write(s, func(w io.Writer) error {
		if c.JSON {
			return resultsJSON(w, flight)
		}
		return listResults(w, flight, c.system())
	})
}

func listResults(w io.Writer, fl *sim.Flight, sys quantity.System) error {
	table := tabwriter.NewWriter(w, 0, 0, 2, ' ', 0)
	fmt.Fprintln(table, "name\tvalue\tmeaning")
	for _, g := range results.For(fl.Rocket) {
		for i := range g.Rows {
			r := &g.Rows[i]
			meaning := r.Label
			if r.Undefined != "" {
				meaning += "; none " + r.Undefined
			}
			fmt.Fprintf(table, "%s\t%s\t%s\n", r.Name, resultText(r, fl, sys), meaning)
		}
	}
	return table.Flush()
}

// resultText is a result with its unit; - when it has no value.
func resultText(r *results.Row, fl *sim.Flight, sys quantity.System) string {
	const digits = 4 // enough to tell neighbours apart; more would promise too much
	text := r.Word(fl)
	if v := r.Of(fl); !math.IsNaN(v) {
		text = quantity.Format(v, sys.Unit(r.Metric()), digits)
	}
	if text == "" {
		return "-"
	}
	return strings.TrimSpace(text + " " + r.Suffix)
}

// resultsJSON writes names and values in the order of the table.
func resultsJSON(w io.Writer, fl *sim.Flight) error {
	var b strings.Builder
	b.WriteByte('{')
	for _, g := range results.For(fl.Rocket) {
		for i := range g.Rows {
			r := &g.Rows[i]
			var v any
			if number := r.Of(fl); !math.IsNaN(number) {
				v = results.Machine(r.Dimension, number)
			} else if word := r.Word(fl); word != "" {
				v = word
			}
			name, err := json.Marshal(r.Name)
			if err != nil {
				return err
			}
			value, err := json.Marshal(v)
			if err != nil {
				return err
			}
			if b.Len() > 1 {
				b.WriteByte(',')
			}
			fmt.Fprintf(&b, "\n  %s: %s", name, value)
		}
	}
	b.WriteString("\n}\n")
	_, err := io.WriteString(w, b.String())
	return err
}
