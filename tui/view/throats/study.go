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
func throatFills(ctx context.Context, base *rocket.Rocket, throats []float64, wish study.Wish) ([]throatFill, error) {
	compared, err := study.Compare(ctx, study.Throats(base, throats), study.CompareOptions{Fill: true, Wish: wish})
	if err != nil {
		return nil, err
	}
	out := make([]throatFill, len(compared))
	for i, c := range compared {
		out[i] = throatFill{throats[i], c.Best}
	}
	return out, nil
}

// worth is what a flight is worth to an aim, and whether it may be the best one: it leaves its rail, ends with no liquid
// aboard and has what is wanted.
func (f *throatFlight) worth(aim *study.Aim) (worth float64, may bool) {
	if f == nil || f.flight == nil {
		return 0, false
	}
	if why, _ := aim.Refuse(f.flight); why != study.Accepted {
		return 0, false
	}
	return aim.Value(f.flight), true
}
