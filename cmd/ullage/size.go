package main

import (
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
	"time"

	"ullage/sim/plan"
	"ullage/sim/quantity"
	"ullage/sim/report"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
)

// sizeCommand finds values that pass every check on all drives, in all winds and corners at once.
type sizeCommand struct {
	File   string   `arg:"" placeholder:"FILE" help:"The rocket file; - reads standard input."`
	Inputs []string `arg:"" optional:"" name:"name[=from..to]" placeholder:"NAME" help:"The inputs to turn, each with the range to look in, or with words as in water.gas=air,helium."`

	JSON  bool     `name:"json" help:"What was found as one JSON object, in SI units."`
	Drive []string `placeholder:"DRIVE" help:"Only on this drive, water or motor; without it on all that the file has."`
	Wind  string   `placeholder:"SPEED" help:"In winds up to this one; without it the file's own."`

	motorOption
	studyOptions
}

// Help teaches by example.
func (sizeCommand) Help() string {
	return helpText(
		"Finds the values of one or more inputs with which the rocket passes every check at once: on all of its drives, in calm air and in winds up "+
			"to the one given, and in the worst corner of what is uncertain. Of those that pass it takes the value with the most room to the nearest limit, and tells the range that passes. "+
			"Where none does, it names the checks that stand in the way and how near they come; the exit status is then 1. "+
			"No more pressure is looked at than the chamber is proved for.",
		"ullage size heron.toml fins.tail.span",
		"ullage size heron.toml water.fill=0.2..0.5 rail.length=1.5..4m --wind '6 m/s'",
		"ullage size heron.toml motor.delay --drive motor --motor h-trainer.toml")
}

// Run searches and reports.
func (c *sizeCommand) Run(s *streams) error {
	file, err := c.open(s, c.File)
	if err != nil {
		return err
	}
	conditions, err := c.conditions(file)
	if err != nil {
		return err
	}
	w, err := c.wanted(file, "size", c.Inputs)
	if err != nil {
		return err
	}
	var sized plan.Sized
	err = c.stream(s, func(out io.Writer) error {
		bar := c.bar(s, false)
		sized, err = plan.SizeFor(s.ctx, w.bases, w.goals, conditions, c.study(bar))
		bar.clear()
		var none *study.NoneAdmissible
		switch {
		case errors.As(err, &none):
			return noSize(none)
		case err != nil:
			return err
		}
		r := report.Size{
			Rocket: w.rocket, Goals: w.goals, Chosen: w.chosen[sized.Found.Of], Motor: w.motors[sized.Found.Of], Found: sized, System: c.system(),
			Units: units(file, w.goals, func(g study.Goal) rocketfile.Input { return g.Input }),
		}
		if c.JSON {
			return report.WriteSizeJSON(out, r)
		}
		return report.WriteSizeText(out, r)
	})
	if readEnough(err) && !sized.Stand.Passes {
		err = failedError{fmt.Errorf("%s: no value looked at passes every check", file.Name())}
	}
	return err
}

// noSize says why no value of a range was looked at.
func noSize(none *study.NoneAdmissible) error {
	why, mend := strings.Join(none.Reasons(), ", "), "look in another range"
	if none.First != nil {
		why += ", the first since " + none.First.Error()
	}
	if none.Overpressed == none.Flights {
		mend = tooMuch
	}
	return badInput("no value in the range may be looked at: of %d, %s\n%s", none.Flights, why, mend)
}

// conditions are the drives and winds asked for.
func (c *sizeCommand) conditions(file *rocketfile.File) (plan.Conditions, error) {
	out := plan.Conditions{Spreads: study.Respread(file), Today: time.Now()}
	var err error
	if out.Drives, err = drivesOf(file.Rocket(), c.Drive, len(c.Motor) > 0); err != nil {
		return out, err
	}
	if c.Wind == "" {
		return out, nil
	}
	q, err := quantity.Parse(c.Wind, quantity.Wind)
	switch {
	case err != nil:
		return out, badInput("--wind: %s", err)
	case !(q.Value >= 0):
		return out, badInput("--wind %s: a wind has no speed below zero", c.Wind)
	}
	out.Winds = []float64{q.Value}
	if half := q.Value / 2; half > 0 {
		out.Winds = []float64{half, q.Value}
	}
	return out, nil
}

// drivesOf are the drives of a rocket that are asked for, all without a word; motors may be given besides.
func drivesOf(r *rocket.Rocket, asked []string, motors bool) ([]rocket.Power, error) {
	out := r.Drives()
	if motors && r.Motor == nil {
		out = append(out, rocket.MotorPower)
	}
	out = slices.DeleteFunc(out, func(d rocket.Power) bool { return len(asked) > 0 && !slices.Contains(asked, string(d)) })
	for _, d := range asked {
		if !slices.Contains(out, rocket.Power(d)) {
			return nil, badInput("--drive %s: this rocket has no such drive; name water or motor as the file has them", d)
		}
	}
	return out, nil
}
