package sim

import (
	"math"
	"math/bits"

	"ullage/sim/rocket"
)

// maxima keeps the greatest values of a flight. Each step is looked at in three
// places; where a parabola through them peaks inside, the peak is looked for on the
// dense output.
type maxima struct {
	best       [tracks]peak
	guide      float64 // greatest thrust on the guide
	leftGuide  bool
	start, end [tracks]float64
	mid        [tracks]float64
}

type peak struct{ value, time float64 }

// The tracks. A canopy has two, its load and its dynamic pressure while it fills.
const (
	speed2 = iota
	mach2
	acceleration2
	dynamicPressure
	thrustTrack
	surgeThrust
	surgeAcceleration2
	attackAngle
	firstCanopy
	tracks = firstCanopy + 2*rocket.MaxCanopies
)

// unseen marks a track that has no meaning in the present phase: below all values.
const unseen = -1.0

// read fills the tracks at a state.
func (m *model) read(y *state, f *forces, out *[tracks]float64) {
	q2 := f.airspeed * f.airspeed
	out[speed2] = y[vEast]*y[vEast] + y[vNorth]*y[vNorth] + y[vUp]*y[vUp]
	out[mach2] = q2 * f.density / f.pressure
	out[dynamicPressure] = 0.5 * f.density * q2
	out[acceleration2], out[thrustTrack] = unseen, unseen
	out[surgeThrust], out[surgeAcceleration2] = unseen, unseen
	if m.push == unsteadyLiquid && !m.settled {
		out[surgeThrust], out[surgeAcceleration2] = f.thrust, f.acceleration2
	} else {
		out[thrustTrack] = f.thrust
		if m.open == 0 {
			out[acceleration2] = f.acceleration2
		}
	}
	out[attackAngle] = unseen
	if m.rigid && f.airspeed >= m.fast*(1-1e-9) {
		out[attackAngle] = f.attack
	}
	for filling := m.open &^ m.full; filling != 0; filling &= filling - 1 {
		i := bits.TrailingZeros64(filling)
		out[firstCanopy+2*i] = m.canopyArea(i, y[airPath]) * out[dynamicPressure]
		out[firstCanopy+2*i+1] = out[dynamicPressure]
	}
}

// active calls visit for every track of the present phase.
func (m *model) active(visit func(track int)) {
	for k := range firstCanopy {
		visit(k)
	}
	for filling := m.open &^ m.full; filling != 0; filling &= filling - 1 {
		i := bits.TrailingZeros64(filling)
		visit(firstCanopy + 2*i)
		visit(firstCanopy + 2*i + 1)
	}
}

// enter reads the tracks as a phase begins.
func (x *maxima) enter(r *run) {
	r.model.read(&r.y, &r.now, &x.start)
	r.model.active(func(k int) { x.note(k, x.start[k], r.t) })
}

func (x *maxima) note(k int, value, time float64) {
	if value > x.best[k].value {
		x.best[k] = peak{value, time}
	}
}

// noteCanopy notes the load of a canopy that opens at once.
func (x *maxima) noteCanopy(i int, load, q, time float64) {
	x.note(firstCanopy+2*i, load, time)
	x.note(firstCanopy+2*i+1, q, time)
}

// within looks through the step just accepted.
func (x *maxima) within(r *run) {
	settles := r.model.push == unsteadyLiquid && !r.model.settled && r.then.jetRate <= 0
	if settles {
		x.settle(r)
	}
	r.model.read(&r.y1, &r.then, &x.end)
	if settles || r.nothingPeaks() {
		r.model.active(func(k int) { x.note(k, x.end[k], r.t+r.h) })
		x.start = x.end
		return
	}
	x.look(r, 0.5, &x.mid)
	r.model.active(func(k int) {
		a, b, c := x.start[k], x.mid[k], x.end[k]
		x.note(k, b, r.t+r.h/2)
		x.note(k, c, r.t+r.h)
		curve := 2 * (a - 2*b + c)
		slope := -3*a + 4*b - c
		if !(curve < 0) {
			return
		}
		vertex := -slope / (2 * curve)
		if vertex > 0 && vertex < 1 && a-slope*slope/(4*curve) > x.best[k].value {
			x.climb(r, k, vertex)
		}
	})
	x.start = x.end
}

// settle ends the surge: the jet has gathered its speed within the step, and thrust
// counts from there. The motion is smooth, so that no step needs to end there; but neither the moment
// nor the thrust is to be had from the dense output, so fast both change with the jet's acceleration.
// That relaxes like an exponential to the little it has afterwards; where it is nothing the
// jet has the speed of a steady one.
func (x *maxima) settle(r *run) {
	m := &r.model
	m.settled = true
	rate := r.stiff.rate[0]
	decay := math.Exp(rate * r.h)
	settled := (r.f1[jet] - r.f[jet]*decay) / (1 - decay)
	theta := math.Min(math.Log(settled/(settled-r.f[jet]))/(rate*r.h), 1)
	var out [tracks]float64
	x.look(r, theta, &out)
	r.in[jet] = m.steadySpeed(&r.in, &r.inner)
	m.rates(r.t+theta*r.h, &r.in, &r.dy, &r.inner)
	m.read(&r.in, &r.inner, &out)
	x.note(thrustTrack, out[thrustTrack], r.t+theta*r.h)
	x.note(acceleration2, out[acceleration2], r.t+theta*r.h)
}

// nothingPeaks tells whether no track can peak inside the step: on the way up without
// push, and in the settled descent, all of them fall.
func (r *run) nothingPeaks() bool {
	m := &r.model
	if m.push != noPush || m.open != m.full || m.rigid {
		return false
	}
	return m.open != 0 || (r.y1[vUp] > 0 && !m.guided)
}

// look reads the tracks inside the step, on the dense output.
func (x *maxima) look(r *run, theta float64, out *[tracks]float64) {
	hermite(r.stages.n, theta, r.h, &r.y, &r.f, &r.y1, &r.f1, &r.in)
	r.model.rates(r.t+theta*r.h, &r.in, &r.dy, &r.inner)
	r.model.read(&r.in, &r.inner, out)
}

// climb looks for a peak near θ: three looks around it, and a fourth where their
// parabola peaks.
func (x *maxima) climb(r *run, k int, theta float64) {
	const d = 0.1
	var out [tracks]float64
	look := func(th float64) float64 {
		x.look(r, th, &out)
		x.note(k, out[k], r.t+th*r.h)
		return out[k]
	}
	theta = math.Min(math.Max(theta, d), 1-d)
	a, b, c := look(theta-d), look(theta), look(theta+d)
	if bend := a - 2*b + c; bend < 0 {
		look(math.Min(math.Max(theta+d*(a-c)/(2*bend), 0), 1))
	}
}

// guideEnds remembers the greatest thrust up to here.
func (x *maxima) guideEnds() { x.leftGuide, x.guide = true, x.best[thrustTrack].value }

// write hands the maxima to the results.
func (x *maxima) write(fl *Flight) {
	root := func(k int) (float64, float64) { return math.Sqrt(x.best[k].value), x.best[k].time }
	top := &fl.Max
	top.Speed, top.SpeedTime = root(speed2)
	top.Mach, top.MachTime = root(mach2)
	top.Mach /= math.Sqrt(1.4)
	top.Acceleration, top.AccelerationTime = root(acceleration2)
	top.DynamicPressure, top.DynamicPressureTime = x.best[dynamicPressure].value, x.best[dynamicPressure].time
	top.Thrust, top.ThrustTime = x.best[thrustTrack].value, x.best[thrustTrack].time
	surge, _ := root(surgeAcceleration2)
	fl.Startup = Startup{x.best[surgeThrust].value, surge}
	fl.Stability.MaxAngle, fl.Stability.MaxAngleTime = x.best[attackAngle].value, x.best[attackAngle].time
	if !x.leftGuide {
		x.guide = top.Thrust
	}
	for i := range fl.Canopies {
		if c := &fl.Canopies[i]; c.Opened {
			shock := fl.Rocket.Canopies[i].OpeningForceCoefficient
			area := fl.Rocket.Canopies[i].Coefficient * fl.Rocket.Canopies[i].NominalArea()
			c.Load = x.best[firstCanopy+2*i].value
			c.LoadBound = shock * area * x.best[firstCanopy+2*i+1].value
		}
	}
}
