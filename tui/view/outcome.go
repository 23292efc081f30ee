package view

import (
	"context"
	"time"

	"ullage/sim"
	"ullage/sim/gates"
	"ullage/sim/quantity"
	"ullage/sim/report"
	"ullage/sim/results"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
)

// Outcome is one flight and what the screen shows of it, prepared in the
// command that flew it and never changed afterwards.
type Outcome struct {
	File     *rocketfile.File
	Flight   *sim.Flight
	Findings map[quantity.System][]report.Finding
	Trace    Trace
	Verdict  *gates.Verdict // in calm air and on the day; nil when it cannot be told
}

// Trace is a flight as series over time, SI, for plots.
type Trace struct {
	Time, Height, Speed, Thrust []float64
	Pressure                    []float64 // in the chamber, gauge; nil without one
}

// NewOutcome prepares what the screen shows of a flight; today is the day, for the age of a
// proof. It flies a little more itself: calm air for its verdict, and the rail.
func NewOutcome(ctx context.Context, file *rocketfile.File, fl *sim.Flight, today time.Time) *Outcome {
	o := &Outcome{File: file, Flight: fl, Findings: map[quantity.System][]report.Finding{}}
	rail, err := study.RailExitFor(ctx, fl.Rocket, gates.RailExit(fl.Rocket).Min, study.Options{})
	table := results.For(fl.Rocket)
	for _, sys := range []quantity.System{quantity.Metric, quantity.US} {
		o.Findings[sys] = report.Findings(fl, table, sys)
		if err == nil {
			report.WithRail(o.Findings[sys], rail, fl.Rocket, sys)
		}
	}
	o.Trace = NewTrace(fl)
	if v, err := gates.Judge(ctx, fl.Rocket, gates.Options{Day: fl, Today: today}); err == nil {
		o.Verdict = &v
	}
	return o
}

// NewTrace is the trace of a flight that was kept (sim.Options.Keep).
func NewTrace(fl *sim.Flight) Trace {
	samples := fl.Trace()
	n := len(samples)
	all := make([]float64, 5*n)
	series := func(i int) []float64 { return all[i*n : (i+1)*n : (i+1)*n] }
	t := Trace{Time: series(0), Height: series(1), Speed: series(2), Thrust: series(3)}
	if fl.Rocket.Power == rocket.WaterPower {
		t.Pressure = series(4)
	}
	for i, s := range samples {
		t.Time[i], t.Height[i], t.Speed[i], t.Thrust[i] = s.Time, s.Height, s.Speed, s.Thrust
		if t.Pressure != nil {
			t.Pressure[i] = s.Chamber - s.Air
		}
	}
	return t
}
