package main

import (
	"fmt"
	"io"
	"strings"

	"ullage/sim/quantity"
	"ullage/sim/report"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
)

// openingCommand tells when a canopy should open.
type openingCommand struct {
	File string `arg:"" placeholder:"FILE" help:"The rocket file; - reads standard input."`

	Canopy  string        `placeholder:"NAME" help:"Which canopy; the first that opens on this drive if not given."`
	Landing *landingSpeed `placeholder:"SPEED" help:"Find the canopy that lands at a speed too, as in '5 m/s'."`
	JSON    bool          `name:"json" xor:"form" help:"All of it as one JSON object, in SI units."`
	CSV     bool          `name:"csv" xor:"form" help:"The table of delays as CSV, in SI units."`

	studyOptions
}

// Help teaches by example.
func (openingCommand) Help() string {
	return helpText(
		"A table over the number in the canopy's rule (a motor's delay, a timer, a height): when it opens, how "+
			"fast, how hard, how it lands, and the best one, which is never out of turn with another canopy. Then what happens if "+
			"each canopy, or all of them together, opens 1 s early or late, 20 % late (a delay's tolerance), or never; and which canopy lands at a chosen speed.",
		"ullage opening heron.toml",
		"ullage opening heron.toml --set power=motor",
		"ullage opening heron.toml --canopy main --landing '5 m/s'",
		"ullage opening heron.toml --csv -o delays.csv")
}

// landingSpeed is a vertical speed at landing, m/s.
type landingSpeed float64

// UnmarshalText reads a speed with its unit.
func (v *landingSpeed) UnmarshalText(text []byte) error {
	q, err := quantity.Parse(string(text), quantity.Speed)
	switch {
	case err != nil:
		return err
	case !(q.Value > 0):
		return fmt.Errorf("%s: a landing speed is more than 0", text)
	}
	*v = landingSpeed(q.Value)
	return nil
}

// Run flies and writes the form asked for.
func (c *openingCommand) Run(s *streams) error {
	if c.Landing != nil && c.CSV {
		return badInput("--csv has the delays alone; --landing is for the report and --json")
	}
	file, err := c.open(s, c.File)
	if err != nil {
		return err
	}
	rocket := file.Rocket()
	canopy, err := pickCanopy(rocket, c.Canopy)
	if err != nil {
		return err
	}
	if c.CSV {
		defer c.tellBeyond(s, rocket)
	}
	return c.stream(s, func(w io.Writer) error {
		bar := c.bar(s, false)
		o, err := c.fly(s, rocket, canopy, c.study(bar))
		bar.clear()
		if err != nil {
			return err
		}
		switch {
		case c.JSON:
			return report.WriteOpeningJSON(w, o)
		case c.CSV:
			return report.WriteOpeningCSV(w, o)
		}
		return report.WriteOpeningText(w, o)
	})
}

// fly makes the flights of the report.
func (c *openingCommand) fly(s *streams, r *rocket.Rocket, canopy int, options study.Options) (report.Opening, error) {
	o := report.Opening{Rocket: r, Canopy: canopy, Best: -1, System: c.system()}
	rule, err := rocketfile.Find(r, "canopy."+r.Canopies[canopy].Name+".deploy."+string(r.Power))
	if err != nil {
		return o, err
	}
	o.Rule = rule.Text(r)
	values, err := study.OpeningValues(s.ctx, r, canopy, options)
	if err != nil {
		return o, err
	}
	if o.Delays, o.Best, err = study.Opening(s.ctx, r, canopy, values, options); err != nil {
		return o, err
	}
	if c.CSV {
		return o, nil
	}
	if o.WhatIfs, err = study.WhatIfs(s.ctx, r, canopy, options); err != nil {
		return o, err
	}
	if c.Landing != nil {
		o.Speed = float64(*c.Landing)
		o.Sized, err = study.CanopyFor(s.ctx, r, canopy, o.Speed, options)
	}
	return o, err
}

// pickCanopy finds the canopy of a name, or the first that opens on the drive that flies.
func pickCanopy(r *rocket.Rocket, name string) (int, error) {
	var names []string
	for i := range r.Canopies {
		c := &r.Canopies[i]
		switch {
		case name != "" && c.Name == name:
			return i, nil
		case name == "" && c.Rule(r.Power).Trigger != rocket.Never:
			return i, nil
		}
		names = append(names, c.Name)
	}
	switch {
	case len(names) == 0:
		return 0, badInput("the rocket has no canopy; add a [[canopy]]")
	case name != "":
		return 0, badInput("--canopy %s: there is none of this name; the rocket has %s", name, strings.Join(names, ", "))
	}
	return 0, badInput("no canopy opens on %s power; give one a rule, as in --set 'canopy.%s.deploy.%s=apogee + 1 s'",
		r.Power, names[0], r.Power)
}
