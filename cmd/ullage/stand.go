package main

import (
	"errors"
	"fmt"
	"io"
	"math"

	"ullage/sim/flown"
	"ullage/sim/quantity"
	"ullage/sim/report/machine"
	"ullage/sim/report/measured"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
)

// standCommand reads a static test.
type standCommand struct {
	File string `arg:"" placeholder:"FILE" help:"The rocket file; - reads standard input."`
	Log  string `arg:"" placeholder:"LOG" help:"The log of the stand: a table of time and thrust, and chamber pressure if there is one."`

	Nozzle string `enum:",down,up,lying" default:"" placeholder:"down|up|lying" help:"How it stands: down (the only way on water), up, or lying; on a motor lying if not given."`
	Fit    bool   `help:"Fit the nozzle's discharge and the exponent of the expansion to the test, on water."`
	Write  bool   `help:"With --fit, write both into the rocket file with their spreads."`
	Curve  string `placeholder:"FILE" help:"Write the thrust as a motor's curve, which [motor] reads."`
	JSON   bool   `name:"json" xor:"form" help:"The figures as one JSON object, in SI units."`
	CSV    bool   `name:"csv" xor:"form" help:"The thrust, measured and predicted, as CSV, in SI units."`

	logOptions
	spreadOptions
	studyOptions
}

// Help teaches by example.
func (standCommand) Help() string {
	return helpText(
		"Reads a static test on a thrust stand: where the cell rests, which way it counts, when it burns, impulse, peak, average, burn "+
			"time and class, beside the prediction of the rocket held still. The weight of what leaves is put right by how it stands. "+
			"--fit finds discharge and exponent of a nozzle and its gas, --curve makes a motor file's thrust curve. Everyone stays away from a stand under pressure or with a motor on it.",
		"ullage stand heron.toml stand.csv",
		"ullage stand heron.toml stand.csv --fit --write",
		"ullage stand heron.toml stand.txt --column 'time=1 ms' --column 'thrust=2 kgf' --column 'chamber=3 bar'",
		"ullage stand heron.toml burn.csv --set power=motor --nozzle up --curve own.csv")
}

// Run reads, fits and writes.
func (c *standCommand) Run(s *streams) error {
	file, err := s.open(c.File)
	if err != nil {
		return err
	}
	flies, err := c.apply(file)
	if err != nil {
		return err
	}
	r := flies.Rocket()
	if err := c.check(r, file); err != nil {
		return err
	}
	days, err := flown.OpenDays(file)
	if err != nil {
		return asInput(err)
	}
	test, err := readStand(s, days, c.Log, file, flown.Mount(c.Nozzle), c.logOptions, c.setOptions)
	if err != nil {
		return err
	}
	out := measured.Test{Stand: test, System: c.system()}
	var failed error
	if c.Fit {
		if out.Fit, failed, err = c.fit(s, file, flies, test); err != nil {
			return err
		}
	}
	if c.Curve != "" {
		if err := c.curve(s, test); err != nil {
			return err
		}
	}
	if c.CSV {
		defer tellLines(s, out.Beyond())
	}
	err = c.write(s, func(w io.Writer) error {
		switch {
		case c.JSON:
			return measured.WriteStandJSON(w, out)
		case c.CSV:
			return measured.WriteStandCSV(w, out)
		}
		return measured.WriteStandText(w, out)
	})
	if err == nil && failed != nil {
		err = failedError{failed}
	}
	return err
}

// check refuses options that do not go together.
func (c *standCommand) check(r *rocket.Rocket, file *rocketfile.File) error {
	switch {
	case c.Fit && r.Power != rocket.WaterPower:
		return badInput("--fit is for a test on water; a motor's test is its curve: --curve FILE")
	case !c.Fit && len(c.Spread) > 0:
		return badInput("--spread is for --fit, which it tells how far inputs may be turned; give both, or leave it out")
	case c.Height != string(flown.StandardHeights):
		return badInput("--height %s: a stand has no heights; leave it out", c.Height)
	case c.Write && !c.Fit:
		return badInput("--write writes what --fit finds; give both")
	case c.Write && file.Path() == "":
		return badInput("--write needs a rocket file to write to; %s has no name", file.Name())
	case c.Curve != "" && r.Power != rocket.MotorPower:
		return badInput("--curve is for a motor's test; on water the file's nozzle and gas make the thrust: --fit")
	case c.Curve != "":
		if err := c.apart("--curve", c.Curve); err != nil {
			return err
		}
		return outputOptions{Output: c.Curve, Force: c.Force}.refuse()
	}
	return nil
}

// readStand reads the log of a static test.
func readStand(s *streams, days flown.Days, path string, file *rocketfile.File, mount flown.Mount, o logOptions, set setOptions) (*flown.Stand, error) {
	test, err := waitFor(s, path, func() (*flown.Stand, error) {
		return days.OpenStand(s.ctx, path, file, mount, o.asTold(), set.apply)
	})
	s.inputs = append(s.inputs, path)
	var none flown.NoFlight
	if errors.As(err, &none) {
		return nil, badInput("%w\n%s", none, trace(none))
	}
	if err == nil && len(set.Set) > 0 {
		test.Day += ", with --set"
	}
	return test, asInput(err)
}

// fit finds discharge and exponent; failed says why that is no answer.
func (c *standCommand) fit(s *streams, file, flies *rocketfile.File, test *flown.Stand) (out *measured.Fit, failed, err error) {
	logs := []flown.Logged{*test.Logged}
	if err := flown.Refuse(file, logs); err != nil {
		return nil, nil, asInput(err)
	}
	spreads, err := c.spreads(flies, test.Rocket)
	if err != nil {
		return nil, nil, err
	}
	inputs, err := flown.Vary(test.Rocket, spreads, flown.StandInputs())
	if err != nil {
		return nil, nil, asInput(err)
	}
	fitted, err := flown.Fit(s.ctx, logs, inputs)
	if errors.Is(err, flown.ErrNothingLearned) || errors.Is(err, flown.ErrNotSettled) {
		failed, err = err, nil
	}
	if err != nil {
		return nil, nil, err
	}
	out = &measured.Fit{Fitted: fitted, Failed: failed, System: c.system(),
		Units: units(flies, inputs, func(x study.Spread) rocketfile.Input { return x.Input })}
	if c.Write && failed == nil {
		if err := keepFitted(file, fitted); err != nil {
			return nil, nil, err
		}
		out.Written = file.Name()
	}
	return out, failed, nil
}

// curve writes the thrust curve.
func (c *standCommand) curve(s *streams, test *flown.Stand) error {
	points := test.Curve()
	if len(points) == 0 {
		return badInput("%s: the burn has too few samples for a curve", c.Log)
	}
	to := outputOptions{Output: c.Curve, Force: c.Force}
	return to.write(s, func(w io.Writer) error {
		impulse := quantity.Format(test.Impulse, quantity.Usual(quantity.Impulse), 4)
		text := fmt.Sprintf("# measured on a stand, %s; %d points of %d samples\ntime_s,thrust_n\n", impulse, len(points), len(test.T))
		for _, p := range points {
			b := machine.AppendNumber([]byte(text), machine.Tidy(round(p.Time, 1e-4)))
			text = string(machine.AppendNumber(append(b, ','), machine.Tidy(round(p.Thrust, 1e-2)))) + "\n"
		}
		_, err := io.WriteString(w, text)
		return err
	})
}

// round is a number to a whole number of steps.
func round(v, step float64) float64 { return math.Round(v/step) * step }
