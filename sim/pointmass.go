package sim

import "math"

// guidedRates: along the guide only, no wind, no sideways force.
func (m *model) guidedRates(t, g float64, y, dy *state, f *forces) {
	speed := m.along(y)
	f.airspeed = math.Abs(speed)
	m.bodyAndCanopies(y, f)
	f.drag = 0.5 * f.density * speed * speed * f.area
	drag := math.Copysign(f.drag, speed)
	m.pushAndMass(t, g, drag, y, dy, f)
	weight := f.mass * g * m.cosTilt
	if m.held {
		// Without the chamber's buoyancy: the jet's equations know f without it too,
		// and held and free must agree on the moment they change places.
		f.lift = f.thrust - weight
		f.acceleration2 = 0
		clear(dy[:impulse])
		return
	}
	f.lift = f.thrust - weight + f.density*m.chamber*g*m.cosTilt
	a := (f.lift - drag) / f.mass
	f.acceleration2 = a * a
	c := &m.axis
	dy[east], dy[north], dy[up] = speed*c.x, speed*c.y, speed*c.z
	dy[vEast], dy[vNorth], dy[vUp] = a*c.x, a*c.y, a*c.z
	dy[airPath] = f.airspeed
}

// freeRates: thrust and drag along the air-relative velocity.
func (m *model) freeRates(t, g float64, y, dy *state, f *forces) {
	w := m.throughAir(y[up], velocity(y))
	f.airspeed = math.Sqrt(dot(w, w))
	m.bodyAndCanopies(y, f)
	k := 0.5 * f.density * f.area * f.airspeed // drag over airspeed
	f.drag = k * f.airspeed
	m.pushAndMass(t, g, f.drag, y, dy, f)
	inverse := 1 / f.mass
	along := -k * inverse
	if f.thrust != 0 && f.airspeed > 0 {
		forward := f.airspeed
		if !m.fallen && w.z < 0 && w.x == 0 && w.y == 0 {
			forward = w.z // on its way over the top: the thrust does not turn round with it
		}
		along += f.thrust * inverse / forward
	}
	dy[east], dy[north], dy[up] = y[vEast], y[vNorth], y[vUp]
	a := vector{along * w.x, along * w.y, along*w.z - g*(1-f.density*m.chamber*inverse)}
	setVelocity(dy, a)
	f.acceleration2 = dot(a, a)
	dy[airPath] = f.airspeed
}

// air sets what the air around the rocket is, and how fast it goes through it.
func (m *model) air(y *state, f *forces) {
	f.pressure, f.density = m.column.At(y[up])
	if m.guided {
		f.airspeed = math.Abs(m.along(y))
		return
	}
	w := m.throughAir(y[up], velocity(y))
	f.airspeed = math.Sqrt(dot(w, w))
	if m.rigid {
		_, _, a := bodyAxes(y)
		f.axial = dot(w, a)
		across := w.on(-f.axial, a)
		f.across = math.Sqrt(dot(across, across))
	}
}

// windFloor: the power law has an infinite slope at the ground, which no step could
// follow; below this height it is held, m.
const windFloor = 0.01

// throughAir is a velocity, at a height, through the air.
func (m *model) throughAir(height float64, v vector) vector {
	if m.profile.Calm() {
		return v
	}
	if height < windFloor { // not max, which has NaN and −0 to think of
		height = windFloor
	}
	east, north := m.profile.In(m.stretch, height)
	return vector{v.x - east, v.y - north, v.z}
}

// findStretch takes the stretch of wind at a height that is not a hair's breadth from the one
// it is in.
func (m *model) findStretch(height float64) (changed bool) {
	const hair = 1e-6 // m
	if m.profile.Even() {
		m.stretch = 0
		return false
	}
	if low, high := m.profile.Ends(m.stretch); height >= low-hair && height <= high+hair {
		return false
	}
	m.stretch = m.profile.Stretch(height)
	return true
}

// airAxis is the direction of the air-relative velocity; the guide's where there is none.
func (m *model) airAxis(y *state) vector {
	w := m.throughAir(y[up], velocity(y))
	speed2 := dot(w, w)
	if speed2 == 0 {
		return m.axis
	}
	return vector{}.on(1/math.Sqrt(speed2), w)
}

// pushLine is the direction the thrust pushes in.
func (m *model) pushLine(y *state) vector {
	switch {
	case m.rigid:
		return m.thrustLine(y)
	case m.guided:
		return m.axis
	}
	return m.airAxis(y)
}

// travel is the distance along the guide.
func (m *model) travel(y *state) float64 {
	return y[east]*m.axis.x + y[north]*m.axis.y + y[up]*m.axis.z
}

// along is the speed along the guide.
func (m *model) along(y *state) float64 {
	return y[vEast]*m.axis.x + y[vNorth]*m.axis.y + y[vUp]*m.axis.z
}
