package main

import (
	"errors"
	"io"

	"ullage/sim/report/page"
	"ullage/sim/report/proof"
	"ullage/sim/rocket"
	"ullage/sim/study"
)

// proofCommand tells what the pressure chamber holds and how to prove it.
type proofCommand struct {
	File string `arg:"" placeholder:"FILE" help:"The rocket file; - reads standard input."`

	printOptions
	setOptions
	unitsOption
	outputOptions
}

// Help teaches by example.
func (proofCommand) Help() string {
	return helpText(
		"The pressure chamber from its lay-up: wall, mass, what to buy, strength part by part, burst estimate, the "+
			"pressure to prove it to and the steps of that with water, stored energy, what builds up in it beside a motor, "+
			"and the loads of the flight on closures, thread and recovery mount. The file must describe [chamber]. Built-in "+
			"strengths are typical, unverified. All of it is an estimate: local law and qualified people decide.",
		"ullage proof heron.toml",
		"ullage proof heron.toml --set chamber.ply.cloth.count=4",
		"ullage proof heron.toml --set 'water.pressure=8 bar' --units us",
		"ullage proof heron.toml --markdown -o proof.md",
		"ullage proof heron.toml --json")
}

// Run looks at the chamber, flies every drive and reports.
func (c *proofCommand) Run(s *streams) error {
	file, err := c.open(s, c.File)
	if err != nil {
		return everythingMissing(c.File, rocket.ForChamber, err)
	}
	structure, err := study.StructureOf(s.ctx, file.Rocket())
	if errors.Is(err, study.ErrNoChamber) {
		return badInput("%s: %w; describe it, as in\n%s", file.Name(), err, chamberExample)
	}
	if err != nil {
		return err
	}
	return c.write(s, func(w io.Writer) error {
		return c.print(w, func() page.Document { return proof.Document(&structure, c.system()) },
			func(w io.Writer) error { return proof.WriteJSON(w, &structure) })
	})
}

// chamberExample is the least that says enough of a laid-up chamber.
const chamberExample = `[chamber]
material = "E-glass/epoxy"
[[chamber.ply]]
name  = "cloth"
cloth = "200 g/m2"
count = 4
[chamber.forward]
shape   = "ellipsoid"
overlap = "30 mm"
[chamber.aft]
shape   = "ellipsoid"
overlap = "30 mm"`
