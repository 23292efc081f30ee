package main

import (
	"fmt"
	"io"
	"slices"
	"time"

	"ullage/sim/fault"
	"ullage/sim/plan"
	"ullage/sim/report"
	"ullage/sim/report/page"
	"ullage/sim/study"
)

// dayCommand plans a day at the field.
type dayCommand struct {
	File string `arg:"" placeholder:"FILE" help:"The rocket file; - reads standard input."`

	Forecast string   `placeholder:"FILE" help:"Hour by hour of a forecast: CSV with the heads time and wind, and gust, from, temperature, pressure, humidity or inputs by their names; units stand in brackets behind a head or in the cells."`
	Drive    []string `placeholder:"DRIVE" help:"Only on this drive, water or motor; without it on all that the file has."`

	printOptions
	studyOptions
}

// Help teaches by example.
func (dayCommand) Help() string {
	return helpText(
		"Plans a day at the field: go or no-go on each drive from calm air to the strongest wind that the limits allow, or hour by hour of a forecast, in the worst corner "+
			"of what is uncertain, and the one change with which it passes where it does not as it is. Where it passes in none, the exit status is 1. Never more pressure than the chamber is proved for. "+
			"The range officer and the weather of the moment decide, not a forecast.",
		"ullage day heron.toml",
		"ullage day heron.toml --forecast saturday.csv",
		"ullage day heron.toml --drive motor --html -o day.html")
}

// Run judges every slot and reports.
func (c *dayCommand) Run(s *streams) error {
	file, err := c.open(s, c.File)
	if err != nil {
		return err
	}
	r := file.Rocket()
	drives, err := drivesOf(r, c.Drive, false)
	if err != nil {
		return err
	}
	slots := plan.Winds(r.Limits.InForce().Wind)
	if c.Forecast != "" {
		if slots, err = waitFor(s, c.Forecast, func() ([]plan.Slot, error) { return plan.OpenForecast(c.Forecast, r, fault.Pipes) }); err != nil {
			return err
		}
		s.inputs = append(s.inputs, c.Forecast)
	}
	var outcomes []plan.Outcome
	err = c.stream(s, func(w io.Writer) (err error) {
		bar := c.bar(s, false)
		outcomes, err = plan.Outlook(s.ctx, r, slots, plan.OutlookOptions{Drives: drives, Spreads: study.Respread(file), Today: time.Now(), Options: c.study(bar)})
		bar.clear()
		if err != nil {
			return err
		}
		o := report.Outlook{Rocket: r, Forecast: c.Forecast, Outcomes: outcomes, System: c.system()}
		return c.print(w, func() page.Document { return report.OutlookDocument(o) },
			func(w io.Writer) error { return report.WriteOutlookJSON(w, o) })
	})
	if readEnough(err) && !slices.ContainsFunc(outcomes, func(o plan.Outcome) bool { return o.Passes() }) {
		err = failedError{fmt.Errorf("%s: no time and no wind looked at passes every check", file.Name())}
	}
	return err
}
