package main

import (
	"errors"
	"fmt"
	"math"
	"path/filepath"

	"ullage/sim"
	"ullage/sim/flown"
	"ullage/sim/flown/logbook"
	"ullage/sim/flown/logfile"
	"ullage/sim/quantity"
	"ullage/sim/results"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
)

// fromLog enters what a log tells beside what was predicted.
func (c *recordCommand) fromLog(s *streams, e *logbook.Entry, flies *rocketfile.File, book string) error {
	// What is entered is all that is set: an older entry of the same log has no part in it.
	logs, err := c.logsBy(s, []string{c.Log}, flies, setOptions{}, flown.Days{})
	if err != nil {
		return err
	}
	compared, err := flown.Compare(s.ctx, logs[0], study.Spreads(flies), 100, study.Options{})
	if err != nil {
		return err
	}
	c.name(e, book, logs[0].Log)
	for i := range compared.Differences {
		d := &compared.Differences[i]
		enter(e, &d.Row, d.Measured, d.Predicted)
	}
	if math.IsNaN(e.Landing) {
		last := -1.0
		for i := range compared.Flight.Canopies { // the last one's settled rate is that of landing
			o := &compared.Flight.Canopies[i]
			for k := range compared.Differences {
				if compared.Differences[k].Row.Name == "canopy."+o.Name+".descent" && o.Time > last {
					last, e.Landing = o.Time, compared.Differences[k].Measured
				}
			}
		}
	}
	if !math.IsNaN(e.Landing) {
		e.Landing = round(e.Landing, 0.01)
	}
	for _, x := range compared.Suspicions {
		fmt.Fprintln(s.err, "ullage: "+x.Error())
	}
	return nil
}

// fromStand enters what the log of a static test tells beside what was predicted.
func (c *recordCommand) fromStand(s *streams, e *logbook.Entry, flies *rocketfile.File, book string) error {
	test, err := readStand(s, flown.Days{}, c.Log, flies, "", c.logOptions, setOptions{})
	if err != nil {
		return err
	}
	c.name(e, book, test.Log)
	table := results.For(test.Rocket)
	for _, x := range []struct {
		name                string
		measured, predicted float64
	}{{"drive.impulse", test.Impulse, test.Expected.Impulse}, {"max.thrust", test.Peak, test.Expected.Peak}, {"drive.average", test.Average, test.Expected.Average}, {"drive.burn", test.BurnTime, test.Expected.BurnTime}} {
		enter(e, table.Find(x.name), x.measured, x.predicted)
	}
	return nil
}

// name names the log in an entry, as seen from the book, with how it is read.
func (c *recordCommand) name(e *logbook.Entry, book string, log *logfile.Log) {
	e.Log = c.Log
	folder, err := filepath.Abs(filepath.Dir(book))
	at, bad := filepath.Abs(c.Log)
	if to, far := filepath.Rel(folder, at); errors.Join(err, bad, far) == nil {
		e.Log = filepath.ToSlash(to)
	}
	e.Columns, e.Rate = c.Column, c.Rate
	if c.Height != string(flown.StandardHeights) {
		e.Heights = c.Height
	}
	if how := c.stretch(); how.To > how.From {
		e.Part = fmt.Sprintf("%.6g s to %.6g s", max(how.From, log.Time[0]), min(how.To, log.Time[len(log.Time)-1]))
	}
	e.Predicted, e.Measured = map[string]string{}, map[string]string{}
}

// enter enters a result, measured and predicted.
func enter(e *logbook.Entry, row *results.Row, measured, predicted float64) {
	const digits = 4
	e.Measured[row.Name] = quantity.Format(measured, row.Metric(), digits)
	e.Predicted[row.Name] = quantity.Format(predicted, row.Metric(), digits)
}

// predictedResults are those of a flight that a book keeps when no log tells.
func predictedResults(fl *sim.Flight) map[string]string {
	out := map[string]string{}
	table := results.For(fl.Rocket)
	for _, name := range []string{"apogee.height", "apogee.time", "landing.vertical", "landing.time"} {
		if row := table.Find(name); row != nil {
			if v, ok := row.Defined(fl); ok {
				out[name] = quantity.Format(v, row.Metric(), 4)
			}
		}
	}
	return out
}
