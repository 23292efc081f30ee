package main

import (
	"fmt"
	"io"
	"strconv"
	"text/tabwriter"

	"ullage/sim/quantity"
	"ullage/sim/rocket"
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
		"One line an input: the name that --set and the rocket file know it by, its value (in brackets when "+
			"it is a default), its range or choices, and what it is. Which inputs there are depends on the "+
			"rocket: each canopy has its own.",
		"ullage inputs",
		"ullage inputs heron.toml",
		"ullage inputs heron.toml | grep water",
		"ullage fly heron.toml --set 'canopy.main.diameter=1.2 m'")
}

// Run lists the inputs.
func (c *inputsCommand) Run(s *streams) error {
	file, err := s.openOrStarter(c.File)
	if err != nil {
		return err
	}
	return c.write(s, func(w io.Writer) error { return listInputs(w, file) })
}

func listInputs(w io.Writer, file *rocketfile.File) error {
	rocket := file.Rocket()
	table := tabwriter.NewWriter(w, 0, 0, 2, ' ', 0)
	fmt.Fprintln(table, "name\tvalue\trange\tmeaning")
	for _, in := range rocketfile.Inputs(rocket) {
		value := in.Text(rocket)
		if !file.Given(in.Name) {
			value = shownDefault(in, rocket)
		}
		if rows, err := file.RowsOf(in.Name); err == nil && len(rows.Rows) > 4 { // as wide as the page
			value = fmt.Sprintf("table of %d rows", len(rows.Rows))
		}
		fmt.Fprintf(table, "%s\t%s\t%s\t%s\n", in.Name, value, in.Takes(), in.Help)
	}
	return table.Flush()
}

// shownDefault is the value in force of an input that the file does not give,
// in brackets; nothing when there is none.
func shownDefault(in rocketfile.Input, rocket *rocket.Rocket) string {
	text := in.Text(rocket)
	if text == "" {
		return ""
	}
	if in.Kind == rocketfile.NumberKind {
		v, _ := in.Get(rocket)
		// It may be computed, as the standard atmosphere's is: four digits will do.
		shown, _ := strconv.ParseFloat(strconv.FormatFloat(in.Unit.FromSI(v), 'g', 4, 64), 64)
		text = quantity.Exact(in.Unit.ToSI(shown), in.Unit)
	}
	return "(" + text + ")"
}
