package throats

import (
	"context"

	"ullage/sim"
	"ullage/sim/rocket"
	"ullage/sim/study"
	"ullage/tui/view"
)

// throatFlight is the flight with one throat, and its traces for the plot.
type throatFlight struct {
	throat  float64     // m
	flight  *sim.Flight // nil when there is none
	invalid error       // why not
	trace   view.Trace
}

// throatFill is the best fill with one throat.
type throatFill struct {
	throat float64
	best   *study.Best // nil when no fill may be a best one
}

// throatFlights flies a rocket with each of the throats.
func throatFlights(ctx context.Context, base *rocket.Rocket, throats []float64) ([]throatFlight, error) {
	compared, err := study.Compare(ctx, study.Throats(base, throats), study.CompareOptions{Options: study.Options{Keep: true}})
	if err != nil {
		return nil, err
	}
	out := make([]throatFlight, len(compared))
	for i, c := range compared {
		out[i] = throatFlight{throat: throats[i], flight: c.Flight, invalid: c.Invalid}
		if c.Flight != nil {
			out[i].trace = view.NewTrace(c.Flight)
		}
	}
	return out, nil
}

// throatFills finds the best fill with each of the throats.
func throatFills(ctx context.Context, base *rocket.Rocket, throats []float64) ([]throatFill, error) {
	compared, err := study.Compare(ctx, study.Throats(base, throats), study.CompareOptions{Fill: true})
	if err != nil {
		return nil, err
	}
	out := make([]throatFill, len(compared))
	for i, c := range compared {
		out[i] = throatFill{throats[i], c.Best}
	}
	return out, nil
}

// mayBeBest tells that a flight leaves its rail and ends with no liquid aboard.
func (f *throatFlight) mayBeBest() bool {
	return f != nil && f.flight != nil && f.flight.Results.RailExit.Happened && f.flight.Results.LiquidLeft <= 0
}
