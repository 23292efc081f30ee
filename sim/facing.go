package sim

import "math"

// The drag along a rigid body's axis is against the way it goes through the air, head first or tail first: it jumps as the
// wind passes broadside, and what rolls the body has a kink there. So that is an event. Where either end would send the wind back
// to the other it stays broadside, as a block stays where friction can hold it, until more than the drag takes it away.

// facing is the end of a rigid body that the wind comes to. Broadside it is either, also at rest.
type facing int8

const (
	tailFirst facing = iota - 1
	broadside
	headFirst
)

// sign is that of the speed along the axis.
func (m *model) sign(axial float64) float64 {
	if m.faces == broadside {
		return math.Copysign(1, axial)
	}
	return float64(m.faces)
}

// axialSlope is the speed along the axis, as it faces, and how fast that changes: a little on along the rates. Far from
// broadside nobody asks how fast.
func (m *model) axialSlope(y, dy *state, f *forces) slope {
	const bit = 1e-6 // s
	s := slope{f.axial * float64(m.faces), 0}
	if s.value > 2*f.across {
		return s
	}
	q := *y
	for i := attitude; i < spin; i++ {
		q[i] += bit * dy[i]
	}
	_, _, a := bodyAxes(&q)
	w := m.throughAir(y[up]+bit*dy[up], velocity(y).on(bit, velocity(dy)))
	s.rate = (dot(w, a)*float64(m.faces) - s.value) / bit
	return s
}

// face takes the end that the wind comes to, where it is not the one it is taken to be or ceases to be it right now.
func (r *run) face() (changed bool) {
	m := &r.model
	if !m.rigid || float64(m.faces)*r.now.axial > 0 {
		return false
	}
	far := math.Abs(r.now.axial) > hair*r.now.airspeed
	if m.faces == broadside {
		if far {
			m.faces = facing(m.sign(r.now.axial))
		}
		return far
	}
	if !far && m.axialSlope(&r.y, &r.f, &r.now).rate >= 0 {
		return false
	}
	r.turnRound()
	return true
}

// turnRound: the wind comes to the other end, unless that sends it back as well: then it is broadside for a while.
func (r *run) turnRound() {
	m := &r.model
	m.faces = -m.faces
	m.rates(r.t, &r.y, &r.f, &r.now)
	if m.axialSlope(&r.y, &r.f, &r.now).rate < 0 && math.Abs(r.now.axial) <= hair*r.now.airspeed {
		m.faces = broadside
	}
}

// hair is the share of the airspeed along the axis below which either end may be the one it comes to.
const hair = 1e-3
