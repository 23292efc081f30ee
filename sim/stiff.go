package sim

// stiffPart is the part of the equations that a step solves exactly: a diagonal with
// few entries, and one column that tells how the jet's acceleration pushes the rocket,
// both frozen at the start of the step.
type stiffPart struct {
	index [3]int     // components with a rate of their own
	rate  [3]float64 // 1/s
	drift [3]float64 // how fast the rest of the rate changes, from the step before; 0 when not known
	count int
	push  [3]float64 // ∂v̇/∂(dq/dt) on the three velocities
	kick  bool       // push is not zero
}

// add gives a component its rate.
func (p *stiffPart) add(i int, rate float64) {
	p.index[p.count], p.rate[p.count] = i, rate
	p.count++
}

// split takes the jet's push off the velocities of a state or of its rates.
func (p *stiffPart) split(y *state) {
	if p.kick {
		for i, c := range p.push {
			y[vEast+i] -= c * y[jet]
		}
	}
}

// join puts it back.
func (p *stiffPart) join(y *state) {
	if p.kick {
		for i, c := range p.push {
			y[vEast+i] += c * y[jet]
		}
	}
}

// stiffness sets the part of the equations that a step must solve exactly: the
// jet's relaxation, and the drag of an open canopy.
func (m *model) stiffness(y *state, f *forces, p *stiffPart) {
	*p = stiffPart{}
	switch {
	case m.push == unsteadyLiquid:
		relaxation, kick := m.flow.Stiffness(y[store], y[jet], f.mass, m.held)
		p.add(jet, relaxation)
		if kick == 0 {
			return
		}
		p.kick, p.push = true, m.axis
		switch {
		case m.rigid:
			p.push = m.thrustLine(y)
		case !m.guided:
			p.push = m.airAxis(y)
		}
		for i := range p.push {
			p.push[i] *= kick
		}
	case m.open != 0 && f.airspeed > 0:
		// ∂(−k|w|w)/∂w, w the velocity through the air: −2k along it, −k across; the
		// fall is near enough to straight down for its diagonal.
		a := y[vUp] / f.airspeed
		k := 0.5 * f.density * f.area * f.airspeed / f.mass
		p.add(vEast, -k*(1.5-a*a/2))
		p.add(vNorth, -k*(1.5-a*a/2))
		p.add(vUp, -k*(1+a*a))
	}
}
