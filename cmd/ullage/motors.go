package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"math"
	"path/filepath"
	"strings"

	"ullage/sim/fault"
	"ullage/sim/quantity"
	"ullage/sim/report"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
)

// motorsCommand compares motors.
type motorsCommand struct {
	File   string   `arg:"" placeholder:"FILE" help:"The rocket file; - reads standard input."`
	Motors []string `arg:"" optional:"" name:"motor.toml" placeholder:"FILE" help:"Motor files, which have the keys of [motor] at their top level; without any, those in the rocket's folder."`

	JSON  bool          `name:"json" xor:"form" help:"One JSON object a motor and line, in SI units."`
	CSV   bool          `name:"csv" xor:"form" help:"A row a motor as CSV, in SI units."`
	Limit *impulseLimit `placeholder:"CLASS" help:"Mark motors above a class, or above an impulse as in '500 N*s'; none marks none. Without it limits.impulse of the file, or I, US practice for a first high-power certification."`

	studyOptions
}

// Help teaches by example.
func (motorsCommand) Help() string {
	return helpText(
		"Flies the rocket on each motor and sets them side by side: class, thrust/weight and speed at rail exit, "+
			"apogee, the best delay among those that can be had, greatest speed, landing. Motors that do not fit the mount or exceed the limit are marked.",
		"ullage motors heron.toml h-trainer.toml i-steady.toml",
		"ullage motors heron.toml motors/*.toml --limit H",
		"ullage motors heron.toml --csv -o motors.csv")
}

// Run flies the rocket on each motor.
func (c *motorsCommand) Run(s *streams) error {
	file, err := c.open(s, c.File)
	if err != nil {
		return err
	}
	paths := c.Motors
	if len(paths) == 0 {
		if paths, err = file.MotorFiles(); err != nil {
			return err
		}
		if len(paths) == 0 {
			return badInput("there is no motor file in the rocket's folder\nname some, as in ullage motors %s h-trainer.toml", c.File)
		}
	}
	motors, err := readMotors(file, paths)
	if err != nil {
		return err
	}
	rocket := file.Rocket()
	limit := rocket.Limits.InForce().Impulse
	if c.Limit != nil {
		limit = float64(*c.Limit)
	}
	return c.stream(s, func(w io.Writer) error {
		bar := c.bar(s, false)
		compared, err := study.Compare(s.ctx, study.Motors(motors, limit),
			study.CompareOptions{Options: c.study(bar), Delays: true})
		bar.clear()
		if err != nil && !errors.Is(err, context.Canceled) {
			return err
		}
		return errors.Join(c.report(w, report.Motors{
			Rocket: rocket, Compared: compared, Limit: limit, System: c.system(), Partial: err != nil,
		}), err)
	})
}

func (c *motorsCommand) report(w io.Writer, m report.Motors) error {
	switch {
	case c.JSON:
		return report.WriteMotorsJSON(w, m)
	case c.CSV:
		return report.WriteMotorsCSV(w, m)
	}
	return report.WriteMotorsText(w, m)
}

// readMotors is the rocket with each of some motor files. What is wrong with any
// is told for all at once.
func readMotors(file *rocketfile.File, paths []string) ([]study.Variant, error) {
	names := motorNames(paths)
	motors := make([]study.Variant, len(paths))
	var faults fault.List
	for i, path := range paths {
		with, err := file.WithMotor(path)
		var bad fault.List
		switch {
		case errors.As(err, &bad):
			faults = append(faults, bad...)
			continue
		case err != nil:
			return nil, err
		}
		motors[i] = study.Variant{Name: names[i], Rocket: with.Rocket()}
	}
	if len(faults) > 0 {
		return nil, faults
	}
	return motors, nil
}

// motorNames are the files' names without folder and ending, or the paths when those
// do not tell them apart.
func motorNames(paths []string) []string {
	names := make([]string, len(paths))
	seen := map[string]bool{}
	for i, p := range paths {
		names[i] = strings.TrimSuffix(filepath.Base(p), filepath.Ext(p))
		if seen[names[i]] {
			return paths
		}
		seen[names[i]] = true
	}
	return names
}

// impulseLimit is the greatest impulse of a motor, N·s; 0 for no limit.
type impulseLimit float64

// UnmarshalText reads a class letter, an impulse, or none.
func (l *impulseLimit) UnmarshalText(text []byte) error {
	word := string(text)
	switch {
	case word == "none":
		*l = 0
		return nil
	case len(word) == 1 && 'A' <= word[0] && word[0] <= 'Z':
		*l = impulseLimit(classEnd(word[0]))
		return nil
	}
	q, err := quantity.Parse(word, quantity.Impulse)
	switch {
	case err != nil:
		return fmt.Errorf("%w; or a class, as in --limit I, or none", err)
	case !(q.Value > 0):
		return fmt.Errorf("%s: a limit is more than 0; none is no limit", word)
	}
	*l = impulseLimit(q.Value)
	return nil
}

// classEnd is the greatest impulse of a motor class, N·s: 2.5 for A, each letter
// doubling (NFPA 1125).
func classEnd(class byte) float64 { return math.Ldexp(2.5, int(class-'A')) }
