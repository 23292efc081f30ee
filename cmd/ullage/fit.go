package main

import (
	"errors"
	"io"
	"time"

	"ullage/sim/flown"
	"ullage/sim/report/measured"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
)

// fitCommand finds the inputs with which the rocket flies as logs say.
type fitCommand struct {
	File string   `arg:"" placeholder:"FILE" help:"The rocket file; - reads standard input."`
	Log  []string `arg:"" placeholder:"LOG" help:"Logs of its flights: tables of numbers as text."`

	Vary  []string `placeholder:"NAME" help:"An input to turn, as in --vary body.drag_factor; those that the drive and the logs can tell if not given. Can be given again."`
	Write bool     `help:"Write values and spreads into the rocket file, with a remark of where they are from."`
	JSON  bool     `name:"json" help:"What was found as one JSON object, in SI units."`

	logOptions
	partOptions
	spreadOptions
	studyOptions
}

// Help teaches by example.
func (fitCommand) Help() string {
	return helpText(
		"Finds the values of inputs with which the rocket would have flown as the logs say, beside what was known before: value and "+
			"spread of each in the file. Each comes with its deviation and how much the logs told of it; what they do not tell keeps its "+
			"value. Several logs share the inputs. With --write the next prediction starts from there.",
		"ullage fit heron.toml flight.csv",
		"ullage fit heron.toml flight.csv --vary body.drag_factor --vary water.discharge",
		"ullage fit heron.toml may.csv june.csv --write",
		"ullage fit heron.toml flight.csv --set 'water.pressure=8 bar' --json")
}

// Run reads, fits and writes.
func (c *fitCommand) Run(s *streams) error {
	file, err := c.file(s)
	if err != nil {
		return err
	}
	flies, err := c.apply(file)
	if err != nil {
		return err
	}
	r := flies.Rocket()
	logs, err := c.logs(s, c.Log, file, c.setOptions)
	if err != nil {
		return err
	}
	if logs, err = c.of(logs); err != nil {
		return err
	}
	if err := flown.Refuse(file, logs); err != nil {
		return asInput(err)
	}
	spreads, err := c.spreads(flies, r)
	if err != nil {
		return err
	}
	var inputs []study.Spread
	if len(c.Vary) > 0 {
		inputs, err = flown.Vary(r, spreads, c.Vary)
	} else {
		inputs, err = flown.Choose(s.ctx, logs, spreads)
	}
	if err != nil {
		return asInput(err)
	}
	fitted, err := flown.Fit(s.ctx, logs, inputs)
	failed := errors.Is(err, flown.ErrNothingLearned) || errors.Is(err, flown.ErrNotSettled)
	if err != nil && !failed {
		return err
	}
	out := measured.Fit{Fitted: fitted, System: c.system(), Failed: err,
		Units: units(flies, inputs, func(x study.Spread) rocketfile.Input { return x.Input })}
	if c.Write && !failed {
		if err := keepFitted(file, fitted); err != nil {
			return err
		}
		out.Written = file.Name()
	}
	if bad := c.write(s, func(w io.Writer) error {
		if c.JSON {
			return measured.WriteFitJSON(w, out)
		}
		return measured.WriteFitText(w, out)
	}); bad != nil {
		return bad
	}
	if failed {
		return failedError{err}
	}
	return nil
}

// file reads the rocket without --set: what is written must not hold a day's settings.
func (c *fitCommand) file(s *streams) (*rocketfile.File, error) {
	file, err := s.open(c.File)
	if err == nil && c.Write && file.Path() == "" {
		return nil, badInput("--write needs a rocket file to write to; %s has no name", file.Name())
	}
	return file, err
}

// keepFitted writes what was learned into the file.
func keepFitted(file *rocketfile.File, fitted flown.Fitted) error {
	changed, err := flown.Keep(file, fitted, time.Now())
	if err != nil {
		return err
	}
	err = changed.Save()
	if errors.Is(err, rocketfile.ErrChanged) {
		return badInput("%s was changed by someone else since it was read, so that nothing is written; run it again to fit what it is now", file.Name())
	}
	return asInput(err)
}
