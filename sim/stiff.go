package sim

import "math"

// stiffPart is the part of the equations that a step solves exactly: a diagonal with
// few entries, frozen at the start of the step, for the jet in variables of its own.
type stiffPart struct {
	index [3]int     // components with a rate of their own
	rate  [3]float64 // 1/s
	count int
	frame *jetFrame // nil but for the jet
	jet   jetFrame
	vane  vane
}

// add gives a component its rate.
func (p *stiffPart) add(i int, rate float64) {
	p.index[p.count], p.rate[p.count] = i, rate
	p.count++
}

// stiffness sets the part of the equations that a step must solve exactly: the
// jet's relaxation, and the drag of an open canopy; and of the forces what only whole steps ask for.
func (m *model) stiffness(y, dy *state, f *forces, p *stiffPart) {
	p.count, p.frame, p.vane.on = 0, nil, false
	if m.rigid {
		f.swing = 0
		if turning := f.turn * f.axial; turning > 0 {
			f.swing = math.Sqrt(turning / f.inertia.pitch)
		}
	}
	switch {
	case m.push == unsteadyLiquid:
		p.frame = &p.jet
		p.jet.set(m, y, f)
		p.add(jet, p.jet.stiffness(y, dy))
	case m.rigid:
		p.vane.set(y, f)
	case m.open != 0 && m.open == m.full && f.airspeed > 0:
		// ∂(−k|w|w)/∂w, w the velocity through the air: −2k along it, −k across; the
		// fall is near enough to straight down for its diagonal.
		a := y[vUp] / f.airspeed
		k := 0.5 * f.density * f.area * f.airspeed / f.mass
		p.add(vEast, -k*(1.5-a*a/2))
		p.add(vNorth, -k*(1.5-a*a/2))
		p.add(vUp, -k*(1+a*a))
	}
}
