package main

import (
	"cmp"
	"errors"
	"fmt"
	"io"
	"sync"
	"time"

	"ullage/sim/gates"
	"ullage/sim/plan"
	"ullage/sim/report"
	"ullage/sim/report/words"
	"ullage/sim/rocket"
	"ullage/sim/study"
)

// checkCommand tells whether a flight is within its limits.
type checkCommand struct {
	File string `arg:"" placeholder:"FILE" help:"The rocket file; - reads standard input."`

	JSON     bool `name:"json" help:"The results as one JSON object, in SI units."`
	NoCorner bool `help:"Look at calm air and the day's wind only, not at the worst corner of what is uncertain."`

	setOptions
	unitsOption
	outputOptions
}

// Help teaches by example.
func (checkCommand) Help() string {
	return helpText(
		"Go or no-go on the drive that flies: every check with its value, limit, source and word, in calm air, in the "+
			"day's wind and in the worst corner of what is uncertain ([spread] or its defaults), what would mend those "+
			"that fail, and the wind above which one would. [limits] and [field] in the file replace the limits. A check that something is not stated for is not "+
			"judged, which is no pass. The exit status is 1 when a check fails or is not judged. "+
			"Within the limits given is all it can say: local law and the range officer decide.",
		"ullage check heron.toml",
		"ullage check heron.toml --set power=motor",
		"ullage check heron.toml --set 'wind.speed=7 m/s' --json")
}

// Run judges the rocket and reports.
func (c *checkCommand) Run(s *streams) error {
	file, err := c.open(s, c.File)
	if err != nil {
		return everythingMissing(c.File, rocket.ForCard, err)
	}
	options := gates.Options{Today: time.Now()}
	if !c.NoCorner {
		options.Spreads, options.Respread = study.Spreads(file), study.Respread(file)
	}
	verdict, err := gates.Judge(s.ctx, file.Rocket(), options)
	if err != nil {
		return err
	}
	var wind plan.WindLimit
	var bad error
	var beside sync.WaitGroup // each by itself leaves a core idle at times
	beside.Go(func() {
		wind, bad = plan.MostWind(s.ctx, file.Rocket(), plan.Options{
			Spreads: options.Spreads, Respread: options.Respread, Today: options.Today, Judged: &verdict})
	})
	options.Flown, options.Remedies = &verdict, true
	mended, err := gates.Judge(s.ctx, file.Rocket(), options)
	beside.Wait()
	if err = cmp.Or(err, bad); err != nil {
		return err
	}
	err = c.write(s, func(w io.Writer) error {
		if c.JSON {
			return report.WriteVerdictJSON(w, &mended, &wind)
		}
		return report.WriteVerdictText(w, &mended, &wind, c.system())
	})
	if readEnough(err) && !verdict.Pass() {
		err = failedError{fmt.Errorf("%s: %s", file.Name(), words.Verdict(&verdict))}
	}
	return err
}

// readEnough tells that all was written that a reader wanted: one that closes its end early
// does not turn a no-go into a go.
func readEnough(err error) bool { return err == nil || readerLeft(err) }

// failedError is a check that failed: the work itself was done.
type failedError struct{ err error }

func (e failedError) Error() string { return e.err.Error() }
func (e failedError) Unwrap() error { return e.err }

// isFailedCheck tells a failed check from a failure.
func isFailedCheck(err error) bool {
	var f failedError
	return errors.As(err, &f)
}
