package study

import (
	"context"
	"math"

	"ullage/sim"
	"ullage/sim/fault"
	"ullage/sim/rocket"
	"ullage/sim/solve"
)

// WindTilt is how far to tilt the rail into one wind so that the rocket comes down nearest
// the pad.
type WindTilt struct {
	Wind    float64     // at the height of the file's, m/s
	Tilt    float64     // from vertical, rad
	Heading float64     // where the tilt points, rad: into the wind
	Drift   float64     // of the landing from the pad, m; NaN when it does not come down
	Upright float64     // the same from an upright rail
	Flight  *sim.Flight // with that tilt and its rocket
}

// Settings of the search for a tilt.
const (
	tiltScan = 13   // tilts looked at first, both ends included
	tiltTol  = 1e-4 // to which the best is found, rad
)

// WindTilts finds for each wind, m/s from where the file's comes, the tilt of the rail into
// it, 0 to most, rad, with which the rocket comes down nearest the pad; of equals the
// least. A flight that does not leave the rail or does not come down is never the best
// one; where all are such, the rail stays upright. In calm air there is no wind to tilt
// into: the rail stands upright and there is no gust. Into a wind in layers, which come from several
// directions, is against the drift from an upright rail: up to small tilts, what brings the landing back. Bad winds, a bad most, or a
// rocket that is not valid are a fault.List.
func WindTilts(ctx context.Context, r *rocket.Rocket, winds []float64, most float64, o Options) ([]WindTilt, error) {
	if err := checkWindTilts(r, winds, most); err != nil {
		return nil, err
	}
	return Collect(ctx, len(winds), o, func(ctx context.Context, i int) (WindTilt, error) {
		s := tiltSearch{ctx: ctx, base: r, wind: winds[i], options: o.flight()}
		return s.best(most)
	})
}

// checkWindTilts tells what is wrong before anything flies.
func checkWindTilts(r *rocket.Rocket, winds []float64, most float64) error {
	faults := fault.In(r.Validate())
	if !(most >= 0 && most < math.Pi/2) {
		faults = append(faults, fault.Fault{Key: "rail.tilt", Problem: "not a tilt", Remedy: "give 0 to less than 90 deg"})
	}
	for _, w := range winds {
		if !(w >= 0) || math.IsInf(w, 0) {
			faults = append(faults, fault.Fault{Key: "wind.speed", Problem: "not a speed", Remedy: "give 0 m/s or more"})
		}
	}
	return faults.Err()
}

// tiltSearch looks for the tilt in one wind.
type tiltSearch struct {
	ctx     context.Context
	base    *rocket.Rocket
	wind    float64
	options sim.Options
	heading float64 // of tilts, where given
	headed  bool
	flights int // so far
}

// try flies with a tilt.
func (s *tiltSearch) try(tilt float64) (WindTilt, error) {
	c := *s.base // only values are changed
	if s.wind == 0 {
		c.Becalm()
	} else {
		c.Wind.Blow(s.wind)
	}
	_, from := c.Wind.Surface()
	if s.headed {
		from = s.heading
	}
	c.Rail.Tilt, c.Rail.Heading = tilt, from
	l := WindTilt{Wind: s.wind, Tilt: tilt, Heading: from, Drift: math.NaN()}
	s.flights++
	fl, err := sim.Fly(s.ctx, &c, s.options)
	if err != nil {
		return l, err
	}
	l.Flight = fl
	if fl.RailExit.Happened && fl.Landing.Happened {
		l.Drift = math.Hypot(fl.Landing.East, fl.Landing.North)
	}
	return l, nil
}

// best scans the tilts up to most and closes in on the nearest landing. The drift falls
// and rises again like the sides of a V; its square is the parabola that a search likes.
func (s *tiltSearch) best(most float64) (WindTilt, error) {
	best, err := s.try(0)
	if err != nil || s.wind == 0 || most == 0 {
		best.Upright = best.Drift
		return best, err
	}
	upright := best.Drift
	if l := best.Flight.Landing; len(s.base.Wind.Layers) > 1 && upright > 0 {
		s.heading, s.headed = math.Mod(math.Atan2(-l.East, -l.North)+2*math.Pi, 2*math.Pi), true
		best.Heading = s.heading
	}
	squared := func(tilt float64) (float64, error) {
		l, err := s.try(tilt)
		if err == nil && l.nearer(best) {
			best = l
		}
		return l.Drift * l.Drift, err
	}
	known := []solve.Point{{X: 0, Y: upright * upright}}
	for i := 1; i < tiltScan && err == nil; i++ {
		p := solve.Point{X: between(0, most, i, tiltScan)}
		p.Y, err = squared(p.X)
		known = append(known, p)
	}
	if err == nil {
		_, err = solve.Least(squared, known, tiltTol)
	}
	best.Upright = upright
	return best, err
}

// nearer tells whether one lands nearer the pad than another; one that does not come
// down never does.
func (l WindTilt) nearer(other WindTilt) bool {
	return l.Drift < other.Drift || math.IsNaN(other.Drift) && !math.IsNaN(l.Drift)
}
