package sim

import "math"

// guidedRates: along the guide only, no wind, no sideways force.
func (m *model) guidedRates(t, g float64, y, dy *state, f *forces) {
	speed := y[vEast]*m.axis[0] + y[vNorth]*m.axis[1] + y[vUp]*m.axis[2]
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
	for i, c := range m.axis {
		dy[east+i] = speed * c
		dy[vEast+i] = a * c
	}
	dy[airPath] = f.airspeed
}

// freeRates: thrust and drag along the air-relative velocity.
func (m *model) freeRates(t, g float64, y, dy *state, f *forces) {
	we, wn := m.wind(y[up])
	re, rn, ru := y[vEast]-we, y[vNorth]-wn, y[vUp]
	f.airspeed = math.Sqrt(re*re + rn*rn + ru*ru)
	m.bodyAndCanopies(y, f)
	k := 0.5 * f.density * f.airspeed * f.area // drag over airspeed
	f.drag = k * f.airspeed
	m.pushAndMass(t, g, f.drag, y, dy, f)
	inverse := 1 / f.mass
	along := -k * inverse
	if f.thrust != 0 && f.airspeed > 0 {
		along += f.thrust * inverse / f.airspeed
	}
	dy[east], dy[north], dy[up] = y[vEast], y[vNorth], y[vUp]
	ae, an := along*re, along*rn
	au := along*ru - g*(1-f.density*m.chamber*inverse)
	dy[vEast], dy[vNorth], dy[vUp] = ae, an, au
	f.acceleration2 = ae*ae + an*an + au*au
	dy[airPath] = f.airspeed
}

// air sets what the air around the rocket is, and how fast it goes through it.
func (m *model) air(y *state, f *forces) {
	f.pressure, f.density = m.column.At(y[up])
	if m.guided {
		f.airspeed = math.Abs(m.along(y))
		return
	}
	we, wn := m.wind(y[up])
	re, rn, ru := y[vEast]-we, y[vNorth]-wn, y[vUp]
	f.airspeed = math.Sqrt(re*re + rn*rn + ru*ru)
	if m.rigid {
		_, _, a := bodyAxes(y)
		f.axial = re*a[0] + rn*a[1] + ru*a[2]
		re, rn, ru = re-f.axial*a[0], rn-f.axial*a[1], ru-f.axial*a[2]
		f.across = math.Sqrt(re*re + rn*rn + ru*ru)
	}
}

// windFloor: the power law has an infinite slope at the ground, which no step could
// follow; below this height it is held, m.
const windFloor = 0.01

func (m *model) wind(height float64) (east, north float64) {
	if m.profile.Calm() {
		return 0, 0
	}
	return m.profile.In(m.stretch, max(height, windFloor))
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
func (m *model) airAxis(y *state) [3]float64 {
	we, wn := m.wind(y[up])
	r := [3]float64{y[vEast] - we, y[vNorth] - wn, y[vUp]}
	v := math.Sqrt(r[0]*r[0] + r[1]*r[1] + r[2]*r[2])
	if v == 0 {
		return m.axis
	}
	for i := range r {
		r[i] /= v
	}
	return r
}

// travel is the distance along the guide.
func (m *model) travel(y *state) float64 {
	return y[east]*m.axis[0] + y[north]*m.axis[1] + y[up]*m.axis[2]
}

// along is the speed along the guide.
func (m *model) along(y *state) float64 {
	return y[vEast]*m.axis[0] + y[vNorth]*m.axis[1] + y[vUp]*m.axis[2]
}
