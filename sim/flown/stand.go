package flown

import (
	"context"
	"math"

	"gonum.org/v1/gonum/integrate"

	"ullage/sim"
	"ullage/sim/fault"
	"ullage/sim/flown/logfile"
	"ullage/sim/rocket"
	"ullage/thrust"
)

// Mount is how a rocket or motor stands on its stand, and so how the weight of what leaves
// it counts in the reading.
type Mount string

// The mounts: nozzle down, tared, upward positive, reads F − m(t)·g + m(0)·g; nozzle up, pressing
// down positive, F + m(t)·g − m(0)·g, for motors only, since water would let its gas out first;
// lying reads F.
const (
	NozzleDown Mount = "down"
	NozzleUp   Mount = "up"
	Lying      Mount = "lying"
)

// weighs is what (m(t) − m(0))·g counts in a reading.
func (m Mount) weighs() float64 {
	switch m {
	case NozzleDown:
		return -1
	case NozzleUp:
		return 1
	}
	return 0
}

// Stand is a static test read from a log.
type Stand struct {
	*Logged
	Mount   Mount
	Flipped bool    // the cell counts the other way round
	Tare    float64 // of the cell before the burn, N
	Drift   float64 // of its zero from before to after, N
	Noise   float64 // N
	Onset   float64 // s by the log's clock: the thrust's first moment
	End     float64 // s by the log's clock: its last
	T, F    []float64

	Burn
	Expected  Burn        // the same, read alike from the rocket of the file held still
	Predicted *sim.Flight // that rocket, kept
	Start     float64     // gauge pressure of the chamber before, Pa; NaN without one in the log

	Own   bool // the log is samples of a flight of this program, which hold the thrust itself
	Begun bool // the log begins in the burn: what was before is in none of the figures
	notes fault.List
}

// weighs is as that of the mount; this program's own samples hold no weight.
func (x *Stand) weighs() float64 {
	if x.Own {
		return 0
	}
	return x.Mount.weighs()
}

// Burn sums up a course of thrust.
type Burn struct {
	Impulse  float64 // N·s
	Peak     float64 // N
	PeakTime float64 // s after onset
	Average  float64 // over the burn time, N
	BurnTime float64 // between 5 % of the peak, s
	Class    string  // of a motor; empty below the first and on water
}

// burnShare of the peak bounds the burn time (common practice, no source).
const burnShare = 0.05

// ReadStand reads a static test: where the cell rests before and after, which way it counts, and
// the thrust between, from what the mount reads. The rocket of the file, held still, says what
// leaves it on water; of a motor the impulse burnt does. The error is a fault.
func ReadStand(ctx context.Context, log *logfile.Log, r *rocket.Rocket, mount Mount, o Options) (*Stand, error) {
	water := r.Power == rocket.WaterPower
	switch {
	case mount == "" && water:
		mount = NozzleDown
	case mount == "":
		mount = Lying
	case mount != NozzleDown && water:
		return nil, fault.Fault{Key: "--nozzle", Value: string(mount), Problem: "a rocket on water stands with its nozzle down", Remedy: "otherwise its gas would leave first; give --nozzle down"}
	}
	k := log.Find(logfile.Thrust)
	if k < 0 {
		return nil, fault.Fault{File: log.Name, Problem: "no column is known to be a thrust", Remedy: "say which it is, as in --column 'thrust=2 N'"}
	}
	s := without(log.Time, log.Values[k])
	if o.To > o.From {
		s = s.between(o.From, o.To)
	}
	predicted, err := sim.Fly(ctx, r, sim.Options{Keep: true, Held: true})
	if err != nil {
		return nil, err
	}
	x := &Stand{Mount: mount, Predicted: predicted, Start: math.NaN(), Own: ours(log)}
	if err := x.find(s, log, k, x.lost(r)); err != nil {
		return nil, err
	}
	x.settle(s, r)
	x.sum()
	x.channels(log, k, s, r)
	return x, nil
}

// settle turns readings into thrust: tare, direction, the weight that has left, and what the zero
// drifted beside it, a straight line from before to after.
func (x *Stand) settle(s series, r *rocket.Rocket) {
	const margin = 0.1 // of the burn, to both sides
	long := x.End - x.Onset
	window := s.between(x.Onset-margin*long, x.End+margin*long)
	x.T, x.F = make([]float64, len(window.t)), make([]float64, len(window.t))
	gravity := newAir(r.Site).column.Gravity(0)
	told := func(v float64) float64 {
		if x.Flipped {
			return x.Tare - v
		}
		return v - x.Tare
	}
	for i, t := range window.t {
		x.T[i] = t - x.Onset
	}
	rest := s.between(x.End+margin*long, math.Inf(1))
	after := math.NaN()
	if len(rest.t) >= fewestAtRest && !x.Begun && !x.Own {
		after = told(rest.middle())
	}
	left := make([]float64, len(x.T)) // weight that has left, N
	for range 3 {
		x.gone(r, left)
		gone := 0.0
		for i := range left {
			left[i] *= gravity
			gone = math.Max(gone, left[i])
		}
		x.Drift = 0
		if !math.IsNaN(after) {
			x.Drift = after + x.weighs()*gone
		}
		for i, t := range x.T {
			share := math.Min(math.Max(t/long, 0), 1)
			x.F[i] = told(window.y[i]) + x.weighs()*left[i] - x.Drift*share
		}
	}
}

// lost is the weight of all that leaves, as the cell reads it when it counts upwards, N.
func (x *Stand) lost(r *rocket.Rocket) float64 {
	mass := 0.0
	if r.Power == rocket.WaterPower {
		mass = x.Predicted.At(0).Mass - x.Predicted.At(x.Predicted.Duration()).Mass
	} else {
		mass = r.Motor.Propellant
	}
	return -x.weighs() * mass * newAir(r.Site).column.Gravity(0)
}

// gone is the mass that has left by each sample, kg: on water as predicted, of a motor by the
// impulse burnt.
func (x *Stand) gone(r *rocket.Rocket, left []float64) {
	if r.Power == rocket.WaterPower {
		full := x.Predicted.At(0).Mass
		x.Predicted.Read(x.T, func(i int, s sim.Sample) { left[i] = full - s.Mass })
		return
	}
	burnt := make([]float64, len(x.T))
	for i := 1; i < len(x.T); i++ {
		burnt[i] = burnt[i-1] + (x.F[i]+x.F[i-1])/2*(x.T[i]-x.T[i-1])
	}
	total := 0.0
	if n := len(burnt); n > 0 {
		total = burnt[n-1]
	}
	for i := range left {
		left[i] = 0
		if total > 0 {
			left[i] = r.Motor.Propellant * math.Min(math.Max(burnt[i]/total, 0), 1)
		}
	}
}

// sum works out what is told of a burn; the expected one is sampled like the log.
func (x *Stand) sum() {
	motor := x.Predicted.Rocket.Power == rocket.MotorPower
	x.Burn = burnOf(series{x.T, x.F}, motor)
	f := make([]float64, len(x.T))
	end := x.Predicted.Duration()
	x.Predicted.Read(x.T, func(i int, s sim.Sample) {
		if x.T[i] >= 0 && x.T[i] <= end {
			f[i] = s.Thrust
		}
	})
	x.Expected = burnOf(series{x.T, f}, motor)
}

// burnOf sums up a course of thrust.
func burnOf(s series, motor bool) Burn {
	var x Burn
	from, to := -1, -1
	smooth := s.smoothed()
	for i, f := range smooth.y {
		if f > x.Peak {
			x.Peak, x.PeakTime = f, s.t[i]
		}
	}
	for i, f := range smooth.y {
		if f > burnShare*x.Peak {
			if from < 0 {
				from = i
			}
			to = i
		}
	}
	x.Impulse = integrate.Trapezoidal(s.t, s.y)
	if from < 0 {
		return x
	}
	crossing := func(i, k int) float64 { // between a sample below and one above
		if i < 0 || i >= len(s.t) || smooth.y[k] == smooth.y[i] {
			return s.t[k]
		}
		return s.t[i] + (s.t[k]-s.t[i])*(burnShare*x.Peak-smooth.y[i])/(smooth.y[k]-smooth.y[i])
	}
	x.BurnTime = crossing(to+1, to) - crossing(from-1, from)
	x.Average = x.Impulse / x.BurnTime
	if motor {
		x.Class = thrust.Class(x.Impulse)
	}
	return x
}

// channels are what a fit goes by: the cell's reading, tared and turned, and the chamber's pressure.
func (x *Stand) channels(log *logfile.Log, k int, s series, r *rocket.Rocket) {
	rd := &Reading{Log: log, Heights: MeasuredHeights, LiftOff: x.Onset, Landing: math.NaN(), Told: math.NaN(), Turned: math.NaN(), Notes: x.notes}
	long := x.End - x.Onset
	rd.From, rd.To = x.Onset-math.Max(1, long), x.End+0.2*long
	window := s.between(rd.From, rd.To)
	c := Channel{Column: log.Columns[k], T: window.t, Y: make([]float64, len(window.t)), Every: window.step(), Step: s.quantum(), Weighs: x.weighs()}
	for i, v := range window.y {
		c.Y[i] = v - x.Tare
		if x.Flipped {
			c.Y[i] = -c.Y[i]
		}
		c.Y[i] -= x.Drift * math.Min(math.Max((window.t[i]-x.Onset)/long, 0), 1)
	}
	c.PadCount = len(s.between(rd.From, x.Onset).t)
	c.Noise = math.Max(math.Max(x.Noise, c.Step/math.Sqrt(12)), 1e-6*x.Peak)
	rd.Channels = append(rd.Channels, c)
	if p := log.Find(logfile.Chamber); p >= 0 && r.Water != nil {
		rd.channel(log.Columns[p], without(log.Time, log.Values[p]).between(rd.From, rd.To), r, newAir(r.Site))
		chamber := &rd.Channels[1]
		before := series{chamber.T, chamber.Y}.between(rd.From, x.Onset).middle()
		if !chamber.Gauge {
			before -= newAir(r.Site).pad
		}
		x.Start = before
	}
	x.Logged = &Logged{Reading: rd, Rocket: r, Held: true}
}

// StandInputs are the inputs that a static test on water tells of.
func StandInputs() []string { return []string{"water.discharge", "water.exponent"} }
