package main

import (
	"fmt"
	"io"
	"math"
	"strings"
	"text/tabwriter"

	"ullage/sim"
	"ullage/sim/quantity"
	"ullage/sim/rocketfile"
)

// inputsCommand lists what can be set.
type inputsCommand struct {
	File string `arg:"" optional:"" placeholder:"FILE" help:"The rocket file; - reads standard input; none lists the rocket built in."`
	outputOptions
}

// Help teaches by example.
func (inputsCommand) Help() string {
	return helpText(
		"One line an input: the name that --set and the rocket file know it by, its value, its range or "+
			"choices, and what it is. Which inputs there are depends on the rocket: each canopy has its own.",
		"ullage inputs",
		"ullage inputs heron.toml",
		"ullage inputs heron.toml | grep water",
		"ullage fly heron.toml --set 'canopy.main.diameter=1.2 m'")
}

// Run lists the inputs.
func (c *inputsCommand) Run(s *streams) error {
	file := rocketfile.Starter()
	if c.File != "" {
		var err error
		if file, err = s.open(c.File); err != nil {
			return err
		}
	}
	return c.write(s, func(w io.Writer) error { return listInputs(w, file) })
}

func listInputs(w io.Writer, file *rocketfile.File) error {
	rocket := file.Rocket()
	table := tabwriter.NewWriter(w, 0, 0, 2, ' ', 0)
	fmt.Fprintln(table, "name\tvalue\trange\tmeaning")
	for _, in := range rocketfile.Inputs(rocket) {
		fmt.Fprintf(table, "%s\t%s\t%s\t%s\n", in.Name, shownValue(in, rocket), shownRange(in), in.Help)
	}
	return table.Flush()
}

// shownValue is an input's value, in brackets when it is a default.
func shownValue(in rocketfile.Input, rocket *sim.Rocket) string {
	text := in.Text(rocket)
	if _, given := in.Get(rocket); !given && text != "" {
		return "(" + text + ")"
	}
	return text
}

// shownRange says what an input takes.
func shownRange(in rocketfile.Input) string {
	switch {
	case in.Kind == rocketfile.ChoiceKind:
		return strings.Join(in.Choices, ", ")
	case in.Kind == rocketfile.RuleKind:
		return "a rule"
	case in.Kind != rocketfile.NumberKind:
		return "text"
	case math.IsInf(in.Max, 1):
		return "from " + quantity.Exact(in.Min, in.Unit)
	}
	return quantity.Exact(in.Min, in.Unit) + " to " + quantity.Exact(in.Max, in.Unit)
}
