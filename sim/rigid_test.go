package sim

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/airframe"
	"ullage/thrust"

	"ullage/sim/rocket"
)

// slender is case A of the check values: diameter 40 mm, tangent ogive 120 mm, four
// fins root 100, tip 50, semi-span 60, sweep 50 mm, leading edge at 700 mm.
func slender() *airframe.Shape {
	return &airframe.Shape{
		Length: 0.8, Diameter: 0.04, Roughness: 20e-6,
		Nose: airframe.Nose{Shape: airframe.TangentOgive, Length: 0.12},
		Fins: []airframe.Fins{{Name: "1", Count: 4, Root: 0.1, Tip: 0.05, Span: 0.06, Sweep: 0.05, Thickness: 0.003,
			Section: airframe.FlatSection, Position: 0.7}},
	}
}

// rigidRocket is a small motor rocket with a shape; it balances at 470 mm when burnt out.
func rigidRocket(t testing.TB) *rocket.Rocket {
	c, err := thrust.NewCurve([]thrust.Point{{Time: 0.02, Thrust: 60}, {Time: 0.6, Thrust: 50}, {Time: 1.2, Thrust: 40}, {Time: 1.3, Thrust: 0}})
	require.NoError(t, err)
	return &rocket.Rocket{Name: "rigid test", Power: rocket.MotorPower, Shape: slender(),
		Body:  rocket.Body{Diameter: 0.04, Mass: 0.5, Drag: []rocket.MachDrag{{Mach: 0, Drag: 0.5}}, DragFactor: 1, Balance: 0.44, Inertia: 0.012, RollInertia: 2e-4},
		Motor: &rocket.Motor{Curve: c, Case: 0.05, Propellant: 0.04, Delay: 5, Diameter: 0.024, Length: 0.1},
		Rail:  rocket.Rail{Length: 1.2},
		Canopies: []rocket.Canopy{{Name: "main", Diameter: 0.6, Coefficient: 0.75, FillConstant: 8, OpeningForceCoefficient: 1.7,
			Water: rocket.Rule{Trigger: rocket.AfterApogee, Value: 1}, Motor: rocket.Rule{Trigger: rocket.AfterApogee, Value: 1}}},
	}
}

// wetRigid is the water rocket of the tests with a shape.
func wetRigid(t testing.TB) *rocket.Rocket {
	r := bottle()
	s := slender()
	s.Diameter, s.Length = 0.09, 0.9
	s.Nose.Length = 0.2
	s.Fins[0] = airframe.Fins{Name: "1", Count: 3, Root: 0.15, Tip: 0.08, Span: 0.1, Sweep: 0.07, Thickness: 0.003, Section: airframe.FlatSection, Position: 0.73}
	r.Shape, r.Body.Balance = s, 0.42
	require.NoError(t, r.Validate())
	return r
}

// With no wind, no tilt and no misalignment the rigid body flies the point mass's
// flight up to the top.
func TestRigidIsPointMassInStillAir(t *testing.T) {
	for name, r := range map[string]*rocket.Rocket{"motor": rigidRocket(t), "water": wetRigid(t)} {
		rigid := mustFly(r, 1e-8)
		r.Model = rocket.PointModel
		point := mustFly(r, 1e-8)
		require.True(t, rigid.Apogee.Happened, name)
		assert.InEpsilon(t, point.Apogee.Height, rigid.Apogee.Height, 1e-6, name)
		assert.InEpsilon(t, point.Burnout.Speed, rigid.Burnout.Speed, 1e-6, name)
		assert.InDelta(t, 0, rigid.Stability.MaxAngle, 1e-9, name)
		assert.InEpsilon(t, point.Landing.Time, rigid.Landing.Time, 1e-4, name)
	}
}

// adrift starts a rigid body in free air, its weight taken away by as much buoyancy, so
// that the closed forms, which know no gravity, can be held against its motion.
func adrift(t *testing.T, height, speed float64, change func(*rocket.Rocket)) *run {
	t.Helper()
	r := rigidRocket(t)
	r.Body.Drag = []rocket.MachDrag{{Mach: 0, Drag: 0}}
	r.Canopies = nil
	if change != nil {
		change(r)
	}
	x := newRun(r, Options{Tolerance: 1e-10, Keep: true})
	x.begin()
	x.moved, x.overTop = true, true
	x.model.push, x.model.guided, x.model.held, x.model.rigid = noPush, false, false, true
	x.y[up] = height
	x.y[vUp] = speed
	x.model.body.start(&x.y)
	x.enter()
	if x.now.density > 0.1 {
		x.model.chamber = x.now.mass / x.now.density
	}
	x.enter()
	return x
}

// until integrates to a time.
func (r *run) until(t float64) {
	for r.t < t {
		r.stop = t
		r.chooseStep()
		if r.accept() {
			r.look()
			r.keep()
			r.advance()
		}
	}
}

// Small oscillations: ω² = (C₁ + C₂L/m)/I_t, ζ = (C₂/I_t + L/m)/(2ω) with
// C₁ = qAC_Nα(x_cp − x_cg), C₂ the damping, L = ½ρvAC_Nα (derived by linearising), read
// off the simulated motion: successive peaks of the angle of attack.
func TestPitchOscillation(t *testing.T) {
	for _, mass := range []float64{1.5, 0.8, 0.5} {
		const v = 50.0
		x := adrift(t, 0, v, func(r *rocket.Rocket) {
			r.Body.Mass, r.Body.Balance, r.Body.Inertia = mass, 0.470, 0.012
			r.Motor.Case, r.Motor.Length = 0, 0
		})
		half := 0.5 * math.Pi / 180 / 2
		x.y[attitude], x.y[attitude+2] = math.Cos(half), math.Sin(half)
		x.enter()
		f := x.now
		m0, m1, m2 := x.model.body.aero.Moments(f.mach())
		area := x.model.body.refArea
		cg := f.inertia.balance
		require.InDelta(t, 0.470, cg, 1e-9)
		c1 := 0.5 * f.density * v * v * area * (m1 - m0*cg)
		c2 := 0.5 * f.density * v * area * (m2 - cg*(2*m1-cg*m0))
		lift := 0.5 * f.density * v * area * m0
		omega := math.Sqrt((c1 + c2*lift/mass) / 0.012)
		zeta := (c2/0.012 + lift/mass) / (2 * omega)

		// Weight is balanced at one height only: over half a second that is nothing.
		var times, peaks []float64
		last, rising := 0.0, false
		for _, at := range linspace(0, 0.6, 60001) {
			x.until(at)
			_, _, a := bodyAxes(&x.y)
			// The angle in the plane of the motion, signed.
			angle := math.Atan2(a.x, a.z) - math.Atan2(x.y[vEast], x.y[vUp])
			if up := angle > last; at > 0 {
				if up != rising && len(peaks) < 4 && at > 0.01 {
					times, peaks = append(times, at), append(peaks, last)
				}
				rising = up
			}
			last = angle
		}
		require.GreaterOrEqual(t, len(peaks), 3)
		period := times[2] - times[0]
		decrement := math.Log(peaks[0] / peaks[2])
		z := decrement / math.Sqrt(4*math.Pi*math.Pi+decrement*decrement)
		w := 2 * math.Pi / period / math.Sqrt(1-z*z)
		assert.InEpsilon(t, omega, w, 2e-3, mass)
		assert.InEpsilon(t, zeta, z, 1e-2, mass)
	}
}

func linspace(a, b float64, n int) []float64 {
	out := make([]float64, n)
	for i := range out {
		out[i] = a + (b-a)*float64(i)/float64(n-1)
	}
	return out
}

// No air, no moments: the angular momentum stays where it is, and the spin's axis goes
// round in the body at the closed-form rate (1 − I_a/I_t)·ω_a (Euler's equations of a
// symmetric body).
func TestTorqueFreePrecession(t *testing.T) {
	x := adrift(t, 2e6, 0, nil)
	require.Less(t, x.now.density, 1e-12)
	pitch, roll := x.now.inertia.pitch, x.now.inertia.roll
	x.y[spin], x.y[spin+1], x.y[spin+2] = 0.3*pitch, 0, 40*roll
	x.enter()
	inertial := func() vector {
		a, b, c := bodyAxes(&x.y)
		return vector{}.on(x.y[spin], a).on(x.y[spin+1], b).on(x.y[spin+2], c)
	}
	before := inertial()
	x.until(0.37)
	after := inertial()
	off := after.on(-1, before)
	assert.InDelta(t, 0, math.Sqrt(dot(off, off)), 1e-8*math.Sqrt(dot(before, before)))
	want := -(1 - roll/pitch) * 40 * 0.37
	got := math.Atan2(x.y[spin+1], x.y[spin])
	assert.InDelta(t, 0, math.Remainder(want-got, 2*math.Pi), 1e-6)
}

// Fin cant spins the rocket up to V·δ·J₁/J₂.
func TestSteadyRoll(t *testing.T) {
	x := adrift(t, 0, 100, func(r *rocket.Rocket) { r.Shape.Fins[0].Cant = 0.5 * math.Pi / 180 })
	x.until(2)
	drive, damp := x.model.body.aero.Roll()
	rate := x.y[spin+2] / x.now.inertia.roll
	v := x.now.axial // the air thins on the way up, and its buoyancy with it
	assert.InEpsilon(t, v*drive/damp, rate, 3e-4)
	assert.InEpsilon(t, 16.51*v/100, rate, 1e-3) // 100 m/s, 0.5°: computed, check values
}

// A stable rocket turns into the wind: its nose goes to where the wind comes from, and
// a motor that goes on pushing takes it there.
func TestTurnsIntoTheWind(t *testing.T) {
	for name, r := range map[string]*rocket.Rocket{"motor": rigidRocket(t), "water": wetRigid(t)} {
		r.Wind.Speed, r.Wind.Height, r.Wind.Exponent, r.Wind.From = 4, 10, 1.0/7, math.Pi*1.5 // from the west
		fl := mustFly(r, 0)
		require.NotContains(t, codes(fl), Unstable, name)
		lean := 0.0
		for i := range fl.dense.steps {
			if s := &fl.dense.steps[i]; fl.dense.phases[s.phase].rigid && s.t < fl.RailExit.Time+1 {
				_, _, a := bodyAxes(&s.y1)
				lean = math.Min(lean, a.x)
			}
		}
		assert.Less(t, lean, -0.05, name)
		if name == "motor" {
			assert.Negative(t, fl.At(fl.Apogee.Time).East, "into the wind is west")
			assert.Greater(t, fl.Stability.Least, 1.0)
		}
		// The wind at the balance point, above the tail that stands where the guide ends.
		height := fl.RailExit.Height + r.Shape.Length - fl.Stability.RailExit.Balance
		want := math.Atan2(4*math.Pow(height/10, 1.0/7), fl.RailExit.Speed)
		assert.InEpsilon(t, want, fl.Stability.RailExitAngle, 1e-9, name)
		// From there on it falls: the speed grows faster than the wind does with height.
		assert.InEpsilon(t, want, fl.Stability.MaxAngle, 1e-9, name)
		assert.Equal(t, fl.RailExit.Time, fl.Stability.MaxAngleTime, name)
	}
}

// A long slender rocket has its margin at small angles and none at the angle of a windy rail's
// end: its flight tumbles, and no calm one does.
func TestSlenderTumblesAtAnAngle(t *testing.T) {
	long := func(wind float64) *Flight {
		r := rigidRocket(t)
		r.Body.Diameter, r.Body.Balance = 0.04, 0.92
		r.Shape.Diameter, r.Shape.Length, r.Shape.Sections = 0.04, 1.3, nil
		r.Shape.Nose = airframe.Nose{Shape: airframe.TangentOgive, Length: 0.12}
		r.Shape.Fins = []airframe.Fins{{Name: "1", Count: 3, Root: 0.08, Tip: 0.04, Span: 0.045, Sweep: 0.04, Thickness: 0.002,
			Section: airframe.FlatSection, Position: 1.215}}
		r.Motor.Position = 0
		r.Wind.Speed, r.Wind.Height = wind, 10
		require.NoError(t, r.Validate())
		return mustFly(r, 0)
	}
	calm, windy := long(0), long(7)
	assert.InDelta(t, calm.Stability.RailExit.Margin, calm.Stability.AtAngle, 1e-9, "no angle")
	assert.Greater(t, windy.Stability.RailExit.Margin, 1.0)
	assert.Negative(t, windy.Stability.AtAngle)
	assert.Contains(t, codes(windy), Tumbles)
	assert.NotContains(t, codes(calm), Tumbles)
	// By hand: NACA Report 1048 with the program's own coefficients, which package airframe holds to account.
	s := &windy.Stability
	x := windy.Rocket.Shape.Aero().PressureCentre(0, s.RailExitAngle)
	assert.InDelta(t, (x-s.RailExit.Balance)/0.04, s.AtAngle, 0.02)
}

// What swings after the top counts for nothing: a canopy that comes late lets it fall fast and broadside.
func TestGreatestAngleEndsAtTheTop(t *testing.T) {
	early, late := rigidRocket(t), rigidRocket(t)
	for r, wait := range map[*rocket.Rocket]float64{early: 0, late: 6} {
		r.Wind.Speed, r.Wind.Height = 3, 10
		r.Canopies[0].Motor = rocket.Rule{Trigger: rocket.AfterApogee, Value: wait}
	}
	a, b := mustFly(early, 0), mustFly(late, 0)
	assert.Greater(t, b.Canopies[0].Airspeed, b.RailExit.Speed, "as fast again on the way down")
	assert.Equal(t, a.Stability.MaxAngle, b.Stability.MaxAngle)
	assert.LessOrEqual(t, b.Stability.MaxAngleTime, b.Apogee.Time)
}

// Without fins it is unstable, tumbles, and says so; every number stays finite.
func TestUnstableTumbles(t *testing.T) {
	for _, r := range []*rocket.Rocket{rigidRocket(t), wetRigid(t)} {
		r.Shape.Fins = nil
		r.Wind.Speed, r.Wind.Height, r.Wind.Exponent = 3, 10, 1.0/7
		fl := mustFly(r, 0)
		assert.Contains(t, codes(fl), Unstable)
		assert.Contains(t, codes(fl), Tumbles)
		assert.Negative(t, fl.Stability.Least)
		assert.True(t, fl.Landing.Happened)
		for _, s := range fl.Samples(0.05) {
			for _, v := range []float64{s.East, s.North, s.Height, s.Speed, s.Acceleration, s.Thrust, s.Drag} {
				require.False(t, math.IsNaN(v) || math.IsInf(v, 0))
			}
		}
		assert.Less(t, fl.Steps, 20000)
	}
}

// Misalignment: the rocket arcs over toward the side the thrust's moment turns it to,
// angle and offset add by their signs, and the flight is lower for it.
func TestMisalignment(t *testing.T) {
	straight := mustFly(rigidRocket(t), 1e-7)
	fly := func(angle, offset float64) *Flight {
		r := rigidRocket(t)
		r.Alignment = rocket.Alignment{Angle: angle, Offset: offset}
		return mustFly(r, 1e-7)
	}
	deg := math.Pi / 180
	a, b := fly(0.5*deg, 0), fly(-0.5*deg, 0)
	assert.Less(t, a.Apogee.Height, straight.Apogee.Height)
	assert.InEpsilon(t, a.Apogee.Height, b.Apogee.Height, 1e-5)
	assert.InDelta(t, a.Landing.North, -b.Landing.North, 1e-3)
	assert.InDelta(t, a.Landing.East, -b.Landing.East, 1e-3)
	// The arm of the angle is the way from balance point to nozzle; an offset that
	// undoes it flies straight, nearly (the sideways thrust is left).
	arm := (0.8 - a.Stability.Release.Balance) * math.Tan(0.5*deg)
	undone, doubled := fly(0.5*deg, -arm), fly(0.5*deg, arm)
	assert.Less(t, undone.Stability.MaxAngle, 0.2*a.Stability.MaxAngle)
	assert.Greater(t, doubled.Stability.MaxAngle, 1.8*a.Stability.MaxAngle)
}

// A gust above a height meets the rocket there.
func TestGust(t *testing.T) {
	r := rigidRocket(t)
	r.Gust = rocket.Gust{Speed: 6, From: math.Pi * 1.5, Height: 60}
	fl := mustFly(r, 1e-8)
	calm := mustFly(rigidRocket(t), 1e-8)
	low, high := 0.0, fl.Apogee.Time
	for range 60 {
		if mid := (low + high) / 2; fl.At(mid).Height < 60 {
			low = mid
		} else {
			high = mid
		}
	}
	assert.InDelta(t, 0, fl.At(low-1e-6).Attack, 1e-6)
	s := fl.At(high + 1e-6)
	assert.InEpsilon(t, math.Atan2(6, s.Vertical), s.Attack, 1e-3)
	assert.Less(t, fl.Apogee.Height, calm.Apogee.Height)
	point := rigidRocket(t)
	point.Gust, point.Model = r.Gust, rocket.PointModel
	assert.NotEqual(t, calm.Landing.East, mustFly(point, 0).Landing.East)
}

// The balance moves as it should: liquid aft of the middle at release, the balance
// point forward of the dry one's … whatever the case, by the moments themselves.
func TestLoading(t *testing.T) {
	r := wetRigid(t)
	l := newMassModel(r)
	w := r.Water
	area := math.Pi / 4 * w.Bore * w.Bore
	volume := w.Fill * w.Volume
	h := volume / area
	const gas = 0.015
	got := l.with(volume, gas, 0)
	dry := r.DryBody()
	liquid := 998.2 * volume
	chamber := w.Volume / area
	mass := dry.Mass + liquid + gas
	at := (dry.Mass*dry.At + liquid*(0.9-h/2) + gas*(0.9-chamber/2)) / mass
	assert.InEpsilon(t, at, got.balance, 1e-12)
	own := func(m, length float64) float64 { return m * (length*length/12 + w.Bore*w.Bore/16) }
	pitch := dry.Pitch + dry.Mass*sq(dry.At-at) + own(liquid, h) + liquid*sq(0.9-h/2-at) + own(gas, chamber) + gas*sq(0.9-chamber/2-at)
	assert.InEpsilon(t, pitch, got.pitch, 1e-12)
	assert.InEpsilon(t, dry.Roll, got.roll, 1e-12)
	fl := mustFly(r, 0)
	assert.InEpsilon(t, dry.At, fl.Stability.Dry.Balance, 1e-12)
	assert.Greater(t, fl.Stability.Release.Balance, fl.Stability.Burnout.Balance)
	assert.Less(t, fl.Stability.Release.Margin, fl.Stability.Burnout.Margin)
}

func sq(x float64) float64 { return x * x }

// Rigid flights at the default tolerance: apogee within 0.02 % of the converged value.
func TestRigidApogeeIsConverged(t *testing.T) {
	for _, r := range []*rocket.Rocket{rigidRocket(t), wetRigid(t)} {
		withWind(r)
		r.Alignment.Angle = 0.002
		exact := mustFly(r, 1e-9)
		assert.InEpsilon(t, exact.Apogee.Height, mustFly(r, 0).Apogee.Height, 2e-4)
	}
}
