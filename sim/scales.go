package sim

import "math"

// Errors are measured against what the flight comes to: its height, and the change of
// speed that would change the height as much. So a tolerance means the same for a bottle
// that hops over a hedge and for a rocket that leaves the clouds below.

// reach is what a rocket coming up at a speed will gain in height, with its drag as it is,
// and the speed that would gain as much again: in air of uniform density
//
//	z = ln(1 + kv²/g)/(2k),  dz/dv = v/(g + kv²),  k = ½ρ·C_D·A/m
func (m *model) reach(speed float64, f *forces, mass float64) (height, velocity float64) {
	k := 0.5 * f.density * f.area / mass
	g := m.gravity
	height = speed * speed / (2 * g)
	if x := k * speed * speed / g; x > 1e-6 {
		height = math.Log1p(x) / (2 * k)
	}
	return height, height * (g + k*speed*speed) / speed
}

// terminal is the speed of fall at which a drag area carries the weight.
func (m *model) terminal(f *forces, area float64) float64 {
	return math.Sqrt(2 * f.mass * m.gravity / (f.density * area))
}

// scale sets the weights of the errors in the present phase.
func (r *run) scale() {
	s := r.scales()
	r.hurry = 0
	if r.model.push != noPush && !r.overTop {
		r.hurry = s[vUp] / max(r.model.promise, 1)
	}
	for i := range s {
		r.weights[i] = 1 / s[i]
	}
	r.rescale()
}

// rescale follows the speed while the drive pushes: what is wrong with it then, and above all
// with its direction, is multiplied on the way up. Most of what lies level is direction. It also goes up and down as
// steps come and go from one rocket to the next, which whoever looks for the highest has to bear.
func (r *run) rescale() {
	m := &r.model
	if r.hurry > 0 {
		speed, rise := speedOf(&r.y), r.y[vUp]
		if m.guided && !m.held {
			speed = r.speedAtGuideEnd(speed) / 2 // what is wrong with it stays as it is up to there
		}
		w := trust[m.push] / (r.hurry * max(speed, 0.03*m.promise))
		if !m.guided && rise > 0 && rise < 0.9*speed {
			w *= min(0.9*speed/rise, 8) // it will not come as high as promised
		}
		r.weights[vEast], r.weights[vNorth], r.weights[vUp] = 4*w, 4*w, 2*w
	}
	if m.push == unsteadyLiquid && m.settled && !m.guided {
		// A slow jet that carries little more than the weight lasts long, and what is wrong with it as long.
		fast := m.flow.Fastest()
		r.weights[jet] = fast / (max(1, fast) * max(r.y[jet], 0.1*fast))
	}
	if r.model.rigid {
		r.rescaleTurns()
	}
}

// trust is how dark the estimate of a velocity's error looks in a phase, which is of third order: what gas there is to
// flow, choked, hardly changes its course in a step; afterwards all of it does, as it runs out.
var trust = [...]float64{1, 1, 1, 1, 0.2, 2.5, 1}

// speedAtGuideEnd is about what a speed on the guide grows to.
func (r *run) speedAtGuideEnd(speed float64) float64 {
	m := &r.model
	left := max(m.guide-m.travel(&r.y), 0)
	return math.Sqrt(speed*speed + 2*left*max(m.along(&r.f), 0))
}

// rescaleTurns follows how fast a rigid body swings, for what is wrong with its spin turns it by so much
// less, and how far: a swing forgets its errors, and what turns over and over multiplies them.
func (r *run) rescaleTurns() {
	f, turned, turns, spins := &r.now, 1.0, 1.0, 1.0
	if f.airspeed > 0 && !r.overTop {
		s := r.swings()
		turned += 600*s/(1+10*s) + 225*s*s
		turns, spins = 0.7, 0.3 // it swings back
	}
	for i := range 4 {
		r.weights[attitude+i] = turns * turned
	}
	for i := range 3 {
		if r.hurry > 0 {
			r.weights[vEast+i] *= turned
		}
		r.weights[spin+i] = spins * turned / (f.inertia.pitch * max(1, f.swing))
	}
}

// swings is how far it will swing from the wind, sin² of half that angle, by the energy that is in it: the
// same all through a swing. It is 1 for what turns over, as what is unstable soon does.
func (r *run) swings() float64 {
	f := &r.now
	now := (1 - f.axial/f.airspeed) / 2
	stiffness := f.turn * f.airspeed
	if !(stiffness > 0) {
		return min(1e4*now, 1)
	}
	turning := r.y[spin]*r.y[spin] + r.y[spin+1]*r.y[spin+1]
	return min(now+turning/(4*f.inertia.pitch*stiffness), 1)
}

// scales are what the error of each component is measured against in the present phase, but for a rigid body's turns.
func (r *run) scales() state {
	m, f := &r.model, &r.now
	height, velocity := 0.0, 0.0
	switch {
	case m.push != noPush && !r.overTop:
		height, velocity = m.reach(m.promise, f, m.dryMass)
	case !r.overTop:
		height, velocity = m.reach(max(speedOf(&r.y), 1), f, f.mass)
		height += r.y[up]
	default:
		height = max(r.flight.Apogee.Height, r.y[up])
		velocity = max(1, min(math.Sqrt(2*m.gravity*height), m.terminal(f, f.area)))
	}
	if m.open != 0 {
		area := f.bodyDrag
		for i := range m.canopies {
			if m.open&(1<<i) != 0 {
				area += m.canopies[i].area
			}
		}
		velocity = m.terminal(f, area)
		if m.open == m.full {
			// The settled descent decides where and how hard it lands, to a part in a
			// thousand; the heights that need more digits lie behind.
			velocity *= 10
		} else {
			velocity = 4 * max(velocity, f.airspeed)
		}
	}
	height = max(height, m.guide)
	if m.open != 0 {
		height /= 4
	}
	s := state{
		east: height, north: height, up: height, airPath: height,
		vEast: velocity, vNorth: velocity, vUp: velocity,
		impulse: m.dryMass * m.promise,
		store:   1, jet: 1,
	}
	if m.held && !r.options.Held {
		s[impulse] /= 4 // what comes out on the pad decides when it lifts
	}
	switch m.push {
	case unsteadyLiquid, steadyLiquid:
		switch {
		case m.held:
		case m.guided:
			s[impulse] /= 2
		default:
			s[impulse] /= 8
		}
		s[store] = m.liquid0
		s[jet] = max(1, m.flow.Fastest())
	case chokedGas:
		s[store] = m.flow.CarriedGas()
	}
	return s
}
