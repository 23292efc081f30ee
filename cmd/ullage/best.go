package main

import (
	"context"
	"errors"
	"io"
	"strings"
	"time"

	"ullage/sim"
	"ullage/sim/gates"
	"ullage/sim/plan"
	"ullage/sim/report"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
)

// bestCommand finds the flight that is highest, or best in what else is wished for.
type bestCommand struct {
	File   string   `arg:"" placeholder:"FILE" help:"The rocket file; - reads standard input."`
	Inputs []string `arg:"" optional:"" name:"name[=from..to]" placeholder:"NAME" help:"The inputs to turn, each with the range to look in, or with words as in water.gas=air,helium."`

	JSON          bool `name:"json" help:"What was found as one JSON object, in SI units."`
	AllowLeftover bool `help:"Let a flight be the best that ends with liquid aboard."`
	Passing       bool `help:"Search only among rockets that pass every check of their drive, in calm air, in the day's wind and in the worst corner."`

	wishOption
	motorOption
	studyOptions
}

// Help teaches by example.
func (bestCommand) Help() string {
	return helpText(
		"Finds the values of one or more inputs for the highest apogee, the most or least of another result, or a value of it, "+
			"and how flat the top is: the range of each within 1 % of it, the others held. Inputs that hold words, such as water.gas, are tried word by word, "+
			"motors file by file. A flight that does not leave the rail is never the best, nor "+
			"is one that ends with liquid aboard unless it is allowed, nor one with more pressure than the chamber is proved for "+
			"(with no proof on record, than the file's own). The checks that the value found would lose are named. Without a range it looks around today's value.",
		"ullage best heron.toml water.fill",
		"ullage best heron.toml water.fill=0.2..0.5 'water.throat=9..20 mm'",
		"ullage best heron.toml water.pressure --target 'apogee.height=80 m' --passing",
		"ullage best heron.toml 'rail.tilt=0..10 deg' --for landing.drift --least",
		"ullage best heron.toml motor.delay water.gas=air,nitrogen",
		"ullage best heron.toml motor.delay --motor h-trainer.toml --motor j.toml",
		"ullage best heron.toml water.fill --set 'water.pressure=8 bar' --json")
}

// Run searches and writes what was found.
func (c *bestCommand) Run(s *streams) error {
	file, err := c.open(s, c.File)
	if err != nil {
		return err
	}
	w, err := c.wanted(file, "best", c.Inputs)
	if err != nil {
		return err
	}
	rocket := w.rocket
	wish, err := c.wish(rocket)
	if err != nil {
		return err
	}
	aim := wish.Aim(c.AllowLeftover)
	if c.Passing {
		conditions := plan.Conditions{Spreads: study.Respread(file), Today: time.Now()}
		if bad := conditions.Unjudged(s.ctx, rocket, w.goals); len(bad) > 0 {
			return bad
		}
		aim = plan.Passing(s.ctx, aim, conditions)
	}
	return c.stream(s, func(out io.Writer) error {
		bar := c.bar(s, false)
		found, err := study.FindBestAmong(s.ctx, w.bases, w.goals, aim, c.study(bar))
		bar.clear()
		var none *study.NoneAdmissible
		switch {
		case errors.As(err, &none):
			return c.noBest(none)
		case err != nil && (found.Flight == nil || !errors.Is(err, context.Canceled)):
			return err
		}
		best := report.Best{
			Rocket: rocket, Goals: w.goals, Chosen: w.chosen[found.Of], Motor: w.motors[found.Of], Wish: wish, Found: found.Best, System: c.system(), Passing: c.Passing, Partial: err != nil,
			Units: units(file, w.goals, func(g study.Goal) rocketfile.Input { return g.Input }),
		}
		loses, verdict, bad := gates.Loses(s.ctx, rocket, found.Flight.Rocket, gates.Options{Today: time.Now(), Spreads: study.Respread(file)(found.Flight.Rocket)})
		if bad == nil {
			best.Loses, best.Verdict = loses, &verdict
		} else {
			best.Unjudged = bad
		}
		if c.JSON {
			return errors.Join(report.WriteBestJSON(out, best), err)
		}
		if today, bad := sim.Fly(s.ctx, rocket, sim.Options{}); bad == nil {
			best.Today = today
		}
		return errors.Join(report.WriteBestText(out, best), err)
	})
}

// noBest says why no flight of a range may be the best.
func (c *bestCommand) noBest(none *study.NoneAdmissible) error {
	mend := "look in another range"
	if none.Overpressed == none.Flights {
		mend = tooMuch
	}
	if none.LiquidLeft > 0 {
		mend += ", or give --allow-leftover"
	}
	if none.Failing > 0 {
		mend += "; ullage size tells which check stands in the way"
	}
	return badInput("no flight in the range may be the best: of %d, %s\n%s", none.Flights, strings.Join(none.Reasons(), ", "), mend)
}

// tooMuch is what mends a search in which nothing is within the proof.
const tooMuch = "give less water.pressure, or prove the chamber for it (ullage proof) and write chamber.proof down"
