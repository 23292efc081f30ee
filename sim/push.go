package sim

import (
	"math"
	"ullage/thrust"
)

// push is what drives the rocket in a phase.
type push uint8

const (
	noPush push = iota
	tubePush
	unsteadyLiquid
	steadyLiquid
	chokedGas
	subsonicGas
	motorBurn
)

// liquid tells whether the phase's store is a liquid volume.
func (p push) liquid() bool { return p == unsteadyLiquid || p == steadyLiquid }

// pushAndMass sets thrust and mass and the rates of store and jet. Drag is along
// the axis, positive against the motion.
func (m *model) pushAndMass(t, g, drag float64, y, dy *state, f *forces) {
	f.chamber = math.NaN()
	f.liquid, f.gas, f.grain, f.leaving = 0, 0, 0, 0
	switch m.push {
	case noPush:
		if m.hasChamber {
			f.chamber = f.pressure // the nozzle is open
		}
		f.mass = m.dryMass + m.left
		f.liquid, f.gas = m.leftLiquid, m.left-m.leftLiquid*m.flow.Density()
	case tubePush:
		f.mass = m.dryMass + m.flow.Density()*y[store] + m.flow.CarriedGas()
		f.liquid, f.gas = y[store], m.flow.CarriedGas()
		f.chamber, f.thrust = m.flow.TubePush(m.travel(y), f.pressure)
	case unsteadyLiquid, steadyLiquid:
		f.mass = m.dryMass + m.flow.Density()*y[store] + m.flow.CarriedGas()
		f.liquid, f.gas = y[store], m.flow.CarriedGas()
		m.liquidPush(g, drag, y, dy, f)
		f.leaving = -m.flow.Density() * dy[store]
	case chokedGas:
		m.gasPush(m.flow.Choked(y[store], f.pressure), f)
		dy[store] = -f.leaving
	case subsonicGas:
		var flow thrust.GasFlow
		flow, dy[store] = m.flow.Subsonic(y[store], f.pressure, -f.density*g*y[vUp]/f.pressure)
		m.gasPush(flow, f)
	case motorBurn:
		a := &m.knot[0]
		dt := t - a.time
		f.thrust = a.thrust + m.slope*dt
		burnt := a.impulse + dt*(a.thrust+m.slope*dt/2)
		f.grain = m.propellant - m.perImpulse*burnt
		f.leaving = m.perImpulse * f.thrust
		f.mass = m.dryMass + f.grain
	}
}

// gasPush is the flow of the gas.
func (m *model) gasPush(flow thrust.GasFlow, f *forces) {
	f.mass = m.dryMass + flow.Mass
	f.chamber, f.thrust = flow.Pressure, flow.Thrust
	f.gas, f.leaving = flow.Mass, flow.MassRate
}

// liquidPush is the flow of the liquid, held or free, with inertia or without.
func (m *model) liquidPush(g, drag float64, y, dy *state, f *forces) {
	var j thrust.Jet
	switch {
	case m.push == unsteadyLiquid && m.held:
		j = m.flow.UnsteadyJetHeld(y[store], y[jet], f.pressure, g*m.cosTilt)
	case m.push == unsteadyLiquid:
		j = m.flow.UnsteadyJet(y[store], y[jet], f.pressure, drag, f.mass)
	case m.held:
		j, f.drive = m.flow.SteadyJetHeld(y[store], f.pressure, g*m.cosTilt)
	default:
		j, f.drive = m.flow.SteadyJet(y[store], f.pressure, drag, f.mass)
	}
	f.against = drag
	f.chamber, f.thrust, f.jetRate = j.Pressure, j.Thrust, j.Acceleration
	dy[jet] = j.Acceleration
	dy[store] = -m.flow.ThroatArea() * j.Speed
}

// stopRatio ends the gas's push.
const stopRatio = thrust.StopRatio

type curveKnot struct{ time, thrust, impulse float64 }

// loadSegment makes a segment of the thrust curve the present one.
func (m *model) loadSegment(i int) {
	m.segment = i
	for k := range m.knot {
		t, f, j := m.curve.Knot(i + k)
		m.knot[k] = curveKnot{t, f * m.factor, j * m.factor}
	}
	a, b := &m.knot[0], &m.knot[1]
	m.slope, m.perImpulse = (b.thrust-a.thrust)/(b.time-a.time), m.propellant/m.total
}

// steadySpeed is the speed of the jet at which it neither gains nor loses.
func (m *model) steadySpeed(y *state, f *forces) float64 {
	if m.held {
		j, _ := m.flow.SteadyJetHeld(y[store], f.pressure, m.column.Gravity(y[up])*m.cosTilt)
		return j.Speed
	}
	j, _ := m.flow.SteadyJet(y[store], f.pressure, f.against, f.mass)
	return j.Speed
}
