package main

import (
	"io"

	"ullage/sim/report/bench"
	"ullage/sim/report/page"
	"ullage/sim/study"
)

// benchCommand tells seals, holes, alignment, settings and filling.
type benchCommand struct {
	File string `arg:"" placeholder:"FILE" help:"The rocket file; - reads standard input."`

	printOptions
	setOptions
	unitsOption
	outputOptions
}

// Help teaches by example.
func (benchCommand) Help() string {
	return helpText(
		"A sheet for the bench: the groove of an O-ring or a cord and whether it holds at proof ([seal]); static ports of the altimeter's bay ([bay]); "+
			"the vent of the chamber sealed beside a motor as holes to drill ([chamber.heating]); how straight the thrust has to be, as a gap at the end "+
			"of an alignment jig ([jig]), judged by where the rocket lands; what the recovery electronics are set to on each drive, from the rules of the file; gas, "+
			"strokes of a pump, drop of a bottle, what a leak costs ([filling]). What is not described is said by name. Shear pins and "+
			"charges are left out on purpose. Local law, the range officer and qualified people decide.",
		"ullage bench heron.toml",
		"ullage bench heron.toml --set 'seal.cord=2.62 mm' --set 'seal.bore=34 mm'",
		"ullage bench heron.toml --set 'bay.volume=0.4 L' --set 'jig.length=300 mm'",
		"ullage bench heron.toml --html -o bench.html",
		"ullage bench heron.toml --json")
}

// Run flies each drive and writes the form asked for.
func (c *benchCommand) Run(s *streams) error {
	file, err := c.open(s, c.File)
	if err != nil {
		return err
	}
	if err := c.refuse(); err != nil { // before flights
		return err
	}
	b, err := study.BenchOf(s.ctx, file.Rocket(), study.Options{})
	if err != nil {
		return err
	}
	return c.write(s, func(w io.Writer) error {
		return c.print(w, func() page.Document { return bench.Document(&b, c.system()) },
			func(w io.Writer) error { return bench.WriteJSON(w, &b) })
	})
}
