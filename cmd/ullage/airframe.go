package main

import (
	"io"

	"ullage/sim/report"
	"ullage/sim/rocket"
	"ullage/sim/study"
)

// airframeCommand tells how an airframe balances and points on each of its drives.
type airframeCommand struct {
	File string `arg:"" placeholder:"FILE" help:"The rocket file; - reads standard input."`

	JSON   bool    `name:"json" help:"The results as one JSON object, in SI units."`
	Margin float64 `default:"1.5" placeholder:"CALIBRES" help:"Least margin to size nose weight and fin span for; ${default} if not given."`

	setOptions
	unitsOption
	outputOptions
}

// Help teaches by example.
func (airframeCommand) Help() string {
	return helpText(
		"Balance point, inertia, centre of pressure and stability margin with every drive the rocket has, what each "+
			"part adds, how straight the thrust must be, and the nose weight or fins that serve all drives at once. The file must give a shape ([body] length, [nose], "+
			"[[fins]]) and a balance point or a mass list.",
		"ullage airframe heron.toml",
		"ullage airframe heron.toml --set 'fins.1.span=60 mm'",
		"ullage airframe heron.toml --margin 2",
		"ullage airframe heron.toml --json")
}

// Run flies each drive and reports.
func (c *airframeCommand) Run(s *streams) error {
	if !(c.Margin > 0 && c.Margin <= 20) {
		return badInput("--margin %g: give 0.1 to 20 calibres", c.Margin)
	}
	file, err := c.open(s, c.File)
	if err != nil {
		return everythingMissing(c.File, rocket.ForStability, err)
	}
	r := file.Rocket()
	if err := lacking(file, r.Check(rocket.ForStability)); err != nil {
		return err
	}
	frames, err := study.Airframes(s.ctx, r, c.Margin, study.Options{})
	if err != nil {
		return err
	}
	shared, err := study.Share(s.ctx, frames, study.Options{})
	if err != nil {
		return err
	}
	return c.write(s, func(w io.Writer) error {
		if c.JSON {
			return report.WriteAirframeJSON(w, frames, shared)
		}
		return report.WriteAirframeText(w, r, frames, shared, c.system())
	})
}
