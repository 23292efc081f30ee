package sim

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/integrate/quad"
)

// What the jet carries off: d(I ω)/dt = −ṁ l² ω, l from balance point to nozzle (Thomson,
// Introduction to Space Dynamics, chapter 8), in an empty sky. Liquid that leaves has no
// clock in it: with ṁ dt the mass that is gone, d ln(I ω) = l²/I dm, an integral over the
// depth of what is left, whatever the jet's speed. Both by hand here, masses counted from
// the nozzle's exit: the empty rocket and its gas, and on them a slug of depth h.
func TestJetDampingOnWater(t *testing.T) {
	r := wetRigid(t)
	r.Body.Inertia, r.Water.Fittings = 0.02, 0.07
	r.Canopies = nil
	x := newRun(r, Options{Tolerance: 1e-11, Keep: true})
	x.begin()
	x.moved, x.overTop = true, true
	x.model.guided, x.model.held, x.model.rigid = false, false, true
	require.Equal(t, unsteadyLiquid, x.model.push)
	x.model.body.start(&x.y)
	x.y[up] = 2e6
	const first = 1e-3 // kg·m²/s: so slow that it stays where it points
	x.y[spin+1] = first
	x.enter()
	require.Less(t, x.now.density, 1e-12)

	w := r.Water
	area := math.Pi / 4 * w.Bore * w.Bore
	own := w.Bore * w.Bore / 16 // of a cylinder about its diameter, per kg
	long, ahead := w.Volume/area, r.Shape.Length-r.Body.Balance
	gas := (w.Pressure + 101325) * w.Volume * (1 - w.Fill) / (287.05287 * 288.15)
	mass0 := r.Body.Mass + w.Fittings + gas
	first0 := r.Body.Mass*ahead + gas*long/2
	second0 := r.Body.Inertia + r.Body.Mass*ahead*ahead + gas*(long*long/3+own)
	line := 998.2 * area // of the slug, kg/m
	at := func(h float64) (arm, inertia float64) {
		mass := mass0 + line*h
		arm = (first0 + line*h*h/2) / mass
		return arm, second0 + line*h*(h*h/3+own) - mass*arm*arm
	}
	full := w.Fill * w.Volume / area
	_, inertia0 := at(full)
	require.InEpsilon(t, 1e-3/inertia0, first/x.now.inertia.pitch, 1e-9)

	left := 1.0
	for clock := 0.005; left > 0.05; clock += 0.005 {
		x.until(clock)
		left = x.y[store] / (w.Fill * w.Volume)
		h := left * full
		lost := quad.Fixed(func(h float64) float64 {
			arm, inertia := at(h)
			return arm * arm / inertia * line
		}, h, full, 40, nil, 0)
		momentum := first * math.Exp(-lost)
		assert.InEpsilon(t, momentum, x.y[spin+1], 1e-7, "%v left", left)
		var dy state
		var f forces
		x.model.rates(x.t, &x.y, &dy, &f)
		turning := 2 * math.Sqrt(sq(dy[attitude])+sq(dy[attitude+1])+sq(dy[attitude+2])+sq(dy[attitude+3]))
		_, inertia := at(h)
		assert.InEpsilon(t, momentum/inertia, turning, 1e-7, "%v left", left)
	}
	assert.Less(t, x.y[spin+1], 0.8*first, "it is no small thing")
}

// A grain at the balance point of the empty rocket leaves that where it is as it burns: with
// I = I_e + m k² the integral is closed, and the momentum goes as I^(l²/k²).
func TestJetDampingOnAMotor(t *testing.T) {
	r := rigidRocket(t)
	r.Motor.Propellant, r.Motor.Case, r.Motor.Length, r.Motor.Diameter = 0.3, 0, 0.3, 0.035
	r.Motor.Position = 0.7
	r.Body.Balance, r.Body.Inertia = 0.55, 0.004 // the grain's middle
	r.Canopies = nil
	x := newRun(r, Options{Tolerance: 1e-11, Keep: true})
	x.begin()
	x.moved, x.overTop = true, true
	x.model.guided, x.model.held, x.model.rigid = false, false, true
	require.Equal(t, motorBurn, x.model.push)
	x.model.body.start(&x.y)
	x.y[up] = 2e6
	x.y[spin+1] = 1e-3
	x.enter()
	before := x.t
	k2 := (3*0.0175*0.0175 + 0.3*0.3) / 12
	inertia := func(grain float64) float64 { return 0.004 + grain*k2 }
	for clock := before + 0.002; clock < r.Motor.Curve.End(); clock += 0.1 {
		for x.t < clock {
			x.until(math.Min(clock, x.nextStop()))
			if x.t >= x.nextStop() {
				x.atStop()
			}
		}
		grain := 0.3 * (1 - r.Motor.Curve.ImpulseAt(clock)/r.Motor.Curve.Impulse())
		want := 1e-3 * math.Pow(inertia(grain)/inertia(0.3), 0.15*0.15/k2)
		assert.InEpsilon(t, want, x.y[spin+1], 1e-7, "%v s", clock)
	}
}
