package sim

import (
	"math"
	"math/bits"

	"ullage/atmosphere"
	"ullage/sim/rocket"
)

// maxima keeps the greatest values of a flight. Each step is looked at in three places, its
// ends and its middle; where a parabola through them peaks inside, the peak is looked for
// on the dense output.
type maxima struct {
	best            [tracks]peak
	guide           float64 // greatest thrust on the guide
	leftGuide       bool
	start, mid, end [tracks]float64
	room            [8]float64
	surge           jetCourse
	surged          float64 // how long the surge lasted, s
}

type peak struct{ value, time float64 }

// The tracks. A canopy has two, its load and its dynamic pressure while it fills.
const (
	speed2 = iota
	mach2
	dynamicPressure
	attackAngle // sin² of half the angle of attack
	acceleration2
	thrustTrack
	surgeThrust
	surgeAcceleration2
	firstCanopy
	tracks = firstCanopy + 2*rocket.MaxCanopies
)

// needsForces tells whether a track is of more than place and motion.
func needsForces(track int) bool { return track >= acceleration2 && track < firstCanopy }

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
		// across²/(2s(s + axial)), without the difference that would cancel near 0
		out[attackAngle] = f.across * f.across / (2 * f.airspeed * (f.airspeed + math.Abs(f.axial)))
		if f.axial < 0 {
			out[attackAngle] = 1 - out[attackAngle]
		}
	}
	for filling := m.open &^ m.full; filling != 0; filling &= filling - 1 {
		i := bits.TrailingZeros64(filling)
		out[firstCanopy+2*i] = m.canopyArea(i, y[airPath]) * out[dynamicPressure]
		out[firstCanopy+2*i+1] = out[dynamicPressure]
	}
}

// enter reads the tracks as a phase begins.
func (x *maxima) enter(r *run) {
	r.model.read(&r.y, &r.now, &x.start)
	x.note(&r.model, &x.start, r.t)
}

// note takes what is greater than all before, of the tracks of the present phase.
func (x *maxima) note(m *model, values *[tracks]float64, time float64) {
	for k := range firstCanopy {
		x.one(k, values[k], time)
	}
	for filling := m.open &^ m.full; filling != 0; filling &= filling - 1 {
		k := firstCanopy + 2*bits.TrailingZeros64(filling)
		x.one(k, values[k], time)
		x.one(k+1, values[k+1], time)
	}
}

func (x *maxima) one(k int, value, time float64) {
	if p := &x.best[k]; value > p.value {
		p.value, p.time = value, time
	}
}

// noteCanopy notes the load of a canopy that opens at once.
func (x *maxima) noteCanopy(i int, load, q, time float64) {
	x.one(firstCanopy+2*i, load, time)
	x.one(firstCanopy+2*i+1, q, time)
}

// within looks through the step just accepted.
func (x *maxima) within(r *run) {
	m := &r.model
	settles := m.push == unsteadyLiquid && !m.settled && r.then.jetRate <= 0
	if settles {
		x.settle(r)
	}
	m.read(&r.y1, &r.then, &x.end)
	if !settles {
		x.inside(r)
	}
	x.note(m, &x.end, r.t+r.h)
	x.start = x.end
}

// inside looks for peaks inside the step, where there can be any.
func (x *maxima) inside(r *run) {
	m := &r.model
	if m.push != noPush && (!m.held || r.options.Held) {
		x.meanForces(r)
		for k := acceleration2; k < firstCanopy; k++ {
			x.climb(r, k, 0, 1)
		}
	}
	filling := m.open &^ m.full
	if filling == 0 && !x.turns() && (!x.high() || r.steady()) {
		return
	}
	start, end, from := x.start, x.end, 0.0
	for _, to := range x.cuts(r) {
		x.motion(r, (from+to)/2)
		m.read(&r.in, &r.inner, &x.mid)
		if x.end = end; to < 1 {
			x.motion(r, to)
			m.read(&r.in, &r.inner, &x.end)
			x.note(m, &x.end, r.t+to*r.h)
		}
		for k := range acceleration2 {
			x.climb(r, k, from, to)
		}
		for left := filling; left != 0; left &= left - 1 {
			k := firstCanopy + 2*bits.TrailingZeros64(left)
			x.climb(r, k, from, to)
			x.climb(r, k+1, from, to)
		}
		x.start, from = x.end, to
	}
	x.start, x.end = start, end
}

// cuts are the ends of the parts of a step that are looked at one by one, as a parabola through all of it
// would not tell what is there: where a rigid body becomes as fast as it was as the guide ended, or
// slower, and its angle of attack begins or ceases to count; and the halves of the way towards the ground in
// wind, which falls off there ever steeper.
func (x *maxima) cuts(r *run) []float64 {
	m := &r.model
	list := append(x.room[:0], 1)
	switch a, b := r.now.airspeed-m.fast, r.then.airspeed-m.fast; {
	case m.rigid && a*b < 0:
		at := r.airspeedReaches(m.fast, a, b)
		list = append(x.room[:0], at, 1)
	case r.nearsGround() && r.y1[up] < 0.75*r.y[up]:
		list = list[:0]
		for left := 0.5; left > 0.02; left /= 2 {
			list = append(list, 1-left)
		}
		list = append(list, 1)
	}
	return list
}

// airspeedReaches is where in the step the airspeed is that: a and b are how much more it is at the ends. Regula
// falsi after Illinois, and the side on which it is more.
func (r *run) airspeedReaches(speed, a, b float64) float64 {
	low, high, rising := 0.0, 1.0, b > 0
	for range 30 {
		theta := (a*high - b*low) / (a - b)
		r.maxima.motion(r, theta)
		at := r.inner.airspeed - speed
		if (at > 0) == (b > 0) {
			high, b = theta, at
			a /= 2
		} else {
			low, a = theta, at
			b /= 2
		}
		if high-low < 1e-9 || math.Abs(at) < 1e-9*speed {
			break
		}
	}
	if rising {
		return high
	}
	return low
}

// turns tells whether the angle of attack is at an end of the step anywhere near its greatest: a quarter of it, as it
// swings through nothing.
func (x *maxima) turns() bool {
	return 16*max(x.start[attackAngle], x.end[attackAngle]) > x.best[attackAngle].value
}

// high tells whether speed, Mach number or dynamic pressure is at an end of the step anywhere near its greatest.
func (x *maxima) high() bool {
	for k := range attackAngle {
		if 2*max(x.start[k], x.end[k]) > x.best[k].value {
			return true
		}
	}
	return false
}

// steady tells whether speed, and what goes with it, rises all through the step or falls all through it: by
// more than the thinning of the air could turn round, a few per cent a second.
func (r *run) steady() bool {
	if r.nearsGround() {
		return false
	}
	const share = 0.05 // 1/s
	growth := func(y, f *state) float64 {
		v2 := y[vEast]*y[vEast] + y[vNorth]*y[vNorth] + y[vUp]*y[vUp]
		return (y[vEast]*f[vEast] + y[vNorth]*f[vNorth] + y[vUp]*f[vUp]) / v2
	}
	a, b := growth(&r.y, &r.f), growth(&r.y1, &r.f1)
	return a > share && b > share || a < -share && b < -share
}

// settle ends the surge: the jet has gathered its speed within the step, and thrust
// counts from there. The motion is smooth, so that no step needs to end there; but the pressure may fall by
// much in the step, so that the moment is looked for: the jet's acceleration relaxes like an exponential to the
// little that it has afterwards. Where it is nothing the jet has the speed of a steady one, which tells the
// thrust better than the moment can.
func (x *maxima) settle(r *run) {
	m := &r.model
	m.settled = true
	rate := r.stiff.rate[0]
	decay := math.Exp(rate * r.h)
	settled := (r.f1[jet] - r.f[jet]*decay) / (1 - decay)
	theta := 1.0 // where it does not settle from above, but only now comes to be as good as settled
	if at := math.Log(settled/(settled-r.f[jet])) / (rate * r.h); at < 1 {
		theta = at
	}
	x.surge.take(&r.stiff, r.h, &r.y, &r.f, &r.y1, &r.f1)
	for range 8 {
		x.surge.at(theta, &r.in)
		m.rates(r.t+theta*r.h, &r.in, &r.dy, &r.inner)
		// In that time the jet would gain what it lacks of the course it settles to.
		by := math.Log1p(r.inner.jetRate/-settled) / (rate * r.h)
		if math.IsNaN(by) {
			break
		}
		if theta = min(max(theta-by, 0), 1); !(math.Abs(by) > 1e-2) {
			break
		}
	}
	x.surge.at(theta, &r.in)
	r.in[jet] = m.steadySpeed(&r.in, &r.inner)
	m.rates(r.t+theta*r.h, &r.in, &r.dy, &r.inner)
	var out [tracks]float64
	m.read(&r.in, &r.inner, &out)
	x.one(thrustTrack, out[thrustTrack], r.t+theta*r.h)
	x.one(acceleration2, out[acceleration2], r.t+theta*r.h)
	x.surged = r.t + theta*r.h - r.flight.TubeExit.Time // with a launch tube the jet begins there
}

// look is the dense output inside the step, with the forces there.
func (x *maxima) look(r *run, theta float64) {
	hermite(r.stages.n, theta, r.h, &r.y, &r.f, &r.y1, &r.f1, &r.in)
	r.model.rates(r.t+theta*r.h, &r.in, &r.dy, &r.inner)
}

// meanForces tells thrust and acceleration in the middle of the step by Simpson's rule, from
// their integrals over it and from both ends.
func (x *maxima) meanForces(r *run) {
	mid := func(i int) float64 { return (6*(r.y1[i]-r.y[i])/r.h - r.f[i] - r.f1[i]) / 4 }
	a, b, c := mid(vEast), mid(vNorth), mid(vUp)
	x.mid = [tracks]float64{acceleration2: unseen, thrustTrack: unseen, surgeThrust: unseen, surgeAcceleration2: unseen}
	if m := &r.model; m.push == unsteadyLiquid && !m.settled {
		x.mid[surgeThrust], x.mid[surgeAcceleration2] = mid(impulse), a*a+b*b+c*c
	} else {
		x.mid[thrustTrack], x.mid[acceleration2] = mid(impulse), a*a+b*b+c*c
	}
}

// motion is the dense output inside the step, with the air there.
func (x *maxima) motion(r *run, theta float64) {
	n := coastStates
	if r.model.rigid {
		n = states
	}
	hermite(n, theta, r.h, &r.y, &r.f, &r.y1, &r.f1, &r.in)
	r.model.air(&r.in, &r.inner)
}

// climb looks for a peak of a track in a part of the step: three looks around where a parabola has it,
// and a fourth where theirs does.
func (x *maxima) climb(r *run, k int, from, to float64) {
	a, b, c := x.start[k], x.mid[k], x.end[k]
	curve := 2 * (a - 2*b + c)
	slope := -3*a + 4*b - c
	if !(curve < 0 && slope > 0 && slope < -2*curve && a-slope*slope/(4*curve) > x.best[k].value) {
		return
	}
	d := 0.1 * (to - from)
	theta := from - slope/(2*curve)*(to-from)
	theta = min(max(theta, from+d), to-d)
	a, b, c = x.at(r, k, theta-d), x.at(r, k, theta), x.at(r, k, theta+d)
	if bend := a - 2*b + c; bend < 0 {
		x.at(r, k, min(max(theta+d*(a-c)/(2*bend), from), to))
	}
}

// at notes a track inside the step.
func (x *maxima) at(r *run, k int, theta float64) float64 {
	if needsForces(k) {
		x.look(r, theta)
	} else {
		x.motion(r, theta)
	}
	var out [tracks]float64
	r.model.read(&r.in, &r.inner, &out)
	x.one(k, out[k], r.t+theta*r.h)
	return out[k]
}

// guideEnds remembers the greatest thrust up to here.
func (x *maxima) guideEnds() { x.leftGuide, x.guide = true, x.best[thrustTrack].value }

// write hands the maxima to the results.
func (x *maxima) write(fl *Flight) {
	root := func(k int) (float64, float64) { return math.Sqrt(x.best[k].value), x.best[k].time }
	top := &fl.Max
	top.Speed, top.SpeedTime = root(speed2)
	top.Mach, top.MachTime = root(mach2)
	top.Mach /= math.Sqrt(atmosphere.Gamma)
	top.Acceleration, top.AccelerationTime = root(acceleration2)
	top.DynamicPressure, top.DynamicPressureTime = x.best[dynamicPressure].value, x.best[dynamicPressure].time
	top.Thrust, top.ThrustTime = x.best[thrustTrack].value, x.best[thrustTrack].time
	surge, _ := root(surgeAcceleration2)
	fl.Startup = Startup{x.best[surgeThrust].value, surge, x.surged}
	half, at := root(attackAngle)
	fl.Stability.MaxAngle, fl.Stability.MaxAngleTime = 2*math.Asin(min(half, 1)), at
	if !x.leftGuide {
		x.guide = top.Thrust
	}
	for i := range fl.Canopies {
		if c := &fl.Canopies[i]; c.Opened {
			shock := fl.Rocket.Canopies[i].OpeningForceCoefficient
			area := fl.Rocket.Canopies[i].Coefficient * fl.Rocket.Canopies[i].NominalArea()
			c.Filling = x.best[firstCanopy+2*i].value
			c.LoadBound = shock * area * x.best[firstCanopy+2*i+1].value
		}
	}
}
