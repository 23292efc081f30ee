package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"strings"
	"time"

	"ullage/sim"
	"ullage/sim/gates"
	"ullage/sim/report"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
)

// bestCommand finds the flight that is highest, or best in what else is wished for.
type bestCommand struct {
	File   string   `arg:"" placeholder:"FILE" help:"The rocket file; - reads standard input."`
	Inputs []string `arg:"" name:"name[=from..to]" placeholder:"NAME" help:"The inputs to turn, each with the range to look in."`

	JSON          bool `name:"json" help:"What was found as one JSON object, in SI units."`
	AllowLeftover bool `help:"Let a flight be the best that ends with liquid aboard."`

	wishOption
	studyOptions
}

// Help teaches by example.
func (bestCommand) Help() string {
	return helpText(
		"Finds the values of one or more inputs for the highest apogee, the most or least of another result, or a value of it, "+
			"and how flat the top is: the range of each within 1 % of it, the others held. A flight that does not leave the rail is never the best, nor "+
			"is one that ends with liquid aboard unless it is allowed, nor one with more pressure than the chamber is proved for "+
			"(with no proof on record, than the file's own). The checks that the value found would lose are named. Without a range it looks around today's value.",
		"ullage best heron.toml water.fill",
		"ullage best heron.toml water.fill=0.2..0.5 'water.throat=9..20 mm'",
		"ullage best heron.toml water.pressure --target 'apogee.height=80 m'",
		"ullage best heron.toml 'rail.tilt=0..10 deg' --for landing.drift --least",
		"ullage best heron.toml water.fill --set 'water.pressure=8 bar' --json")
}

// Run searches and writes what was found.
func (c *bestCommand) Run(s *streams) error {
	file, err := c.open(s, c.File)
	if err != nil {
		return err
	}
	rocket := file.Rocket()
	goals, err := study.ParseGoals(rocket, c.Inputs)
	if err != nil {
		return badInput("%s", err)
	}
	wish, err := c.wish(rocket)
	if err != nil {
		return err
	}
	return c.stream(s, func(w io.Writer) error {
		bar := c.bar(s, false)
		found, err := study.FindBest(s.ctx, rocket, goals, wish.Aim(c.AllowLeftover), c.study(bar))
		bar.clear()
		var none *study.NoneAdmissible
		switch {
		case errors.As(err, &none):
			return noBest(none)
		case err != nil && (found.Flight == nil || !errors.Is(err, context.Canceled)):
			return err
		}
		best := report.Best{
			Rocket: rocket, Goals: goals, Wish: wish, Found: found, System: c.system(), Partial: err != nil,
			Units: units(file, goals, func(g study.Goal) rocketfile.Input { return g.Input }),
		}
		if loses, bad := gates.Loses(s.ctx, rocket, found.Flight.Rocket, gates.Options{Today: time.Now(), Spreads: study.Spreads(file)}); bad == nil {
			best.Loses = loses
		} else {
			best.Unjudged = bad
		}
		if c.JSON {
			return errors.Join(report.WriteBestJSON(w, best), err)
		}
		if today, bad := sim.Fly(s.ctx, rocket, sim.Options{}); bad == nil {
			best.Today = today
		}
		return errors.Join(report.WriteBestText(w, best), err)
	})
}

// noBest says why no flight of a range may be the best.
func noBest(none *study.NoneAdmissible) error {
	var why []string
	mend := ""
	for _, x := range []struct {
		n    int
		what string
	}{
		{none.NeverLeft, "did not leave the rail"},
		{none.LiquidLeft, "ended with liquid aboard"},
		{none.Overpressed, "had more pressure than the chamber is proved for"},
		{none.Leaking, "had a launch tube that leaks"},
		{none.Undefined, "did not have the result wished for"},
		{none.InvalidCount, "made no rocket"},
	} {
		if x.n > 0 {
			why = append(why, fmt.Sprintf("%d %s", x.n, x.what))
		}
	}
	if none.LiquidLeft > 0 {
		mend = ", or give --allow-leftover"
	}
	return badInput("no flight in the range may be the best: of %d, %s\nlook in another range%s",
		none.Flights, strings.Join(why, ", "), mend)
}
