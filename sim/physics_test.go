package sim

import (
	"context"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/integrate"

	"ullage/thrust"

	"ullage/sim/chamber"
	"ullage/sim/rocket"
)

// The closed forms know no atmosphere, so they are flown scaled down: accelerations
// as they are, lengths to a ten-thousandth, drag areas up as much. Over half a
// centimetre the air of sea level, 1.2250 kg/m³, is uniform to 5e-7.
const small = 1e-4

// coasting starts a flight in free air, upward, with no push.
func coasting(t *testing.T, mass, diameter, drag, speed float64) *run {
	t.Helper()
	r := &rocket.Rocket{Power: rocket.MotorPower, Body: rocket.Body{Diameter: diameter, Mass: mass, Drag: []rocket.MachDrag{{Mach: 0, Drag: drag}}, DragFactor: 1},
		Motor: &rocket.Motor{Delay: math.NaN()}, Rail: rocket.Rail{Length: 1}}
	var err error
	r.Motor.Curve, err = thrust.NewCurve([]thrust.Point{{Time: 0, Thrust: 1}, {Time: 1, Thrust: 1}})
	require.NoError(t, err)
	x := newRun(r, Options{Tolerance: 1e-13, Keep: true})
	x.begin()
	x.over, x.moved = false, true
	x.model.push, x.model.guided, x.model.held = noPush, false, false
	x.y[vUp] = speed
	x.y[up] = 1e-12
	x.enter()
	return x
}

// toTheEnd goes on to the end of a flight already begun.
func (r *run) toTheEnd() {
	for !r.over {
		r.onward()
	}
}

// Coast and fall with quadratic drag, closed forms (computed): 0.15 kg, C_D 0.4,
// 0.11 m, ρ 1.225 constant, v₀ 50 m/s: 51.5654573 m in 2.83218134 s, back at
// 22.4573860 m/s after 3.68780085 s more.
func TestCoastAndFall(t *testing.T) {
	r := coasting(t, 0.15, 0.11, 0.4/small, 50*math.Sqrt(small))
	r.toTheEnd()
	assert.InEpsilon(t, 51.5654573*small, r.flight.Apogee.Height, 2e-6)
	assert.InEpsilon(t, 2.83218134*math.Sqrt(small), r.flight.Apogee.Time, 2e-6)
	assert.InEpsilon(t, 22.4573860*math.Sqrt(small), r.flight.Landing.Speed, 2e-6)
	assert.InEpsilon(t, 3.68780085*math.Sqrt(small), r.flight.Landing.Time-r.flight.Apogee.Time, 2e-6)
}

// Boost against quadratic drag, closed form (computed): 20 N less 4.903 N of weight,
// 0.5 kg, k 3.84845e-4, 1.5 s: 44.5168 m/s, 33.6756 m.
func TestBoost(t *testing.T) {
	r := &rocket.Rocket{Power: rocket.MotorPower, Body: rocket.Body{Diameter: math.Sqrt(4 / math.Pi), Mass: 0.5, DragFactor: 1,
		Drag: []rocket.MachDrag{{Mach: 0, Drag: 2 * 3.84845e-4 / 1.225 / small}}},
		Motor: &rocket.Motor{Delay: math.NaN(), Propellant: 1e-12}, Rail: rocket.Rail{Length: 1e-5}}
	burn := 1.5 * math.Sqrt(small)
	var err error
	r.Motor.Curve, err = thrust.NewCurve([]thrust.Point{{Time: 0, Thrust: 20}, {Time: burn, Thrust: 20}})
	require.NoError(t, err)
	x := newRun(r, Options{Tolerance: 1e-13})
	require.NoError(t, x.fly(context.Background()))
	assert.InEpsilon(t, 44.5168*math.Sqrt(small), x.flight.Burnout.Speed, 1e-5)
	assert.InEpsilon(t, 33.6756*small, x.flight.Burnout.Height, 1e-5)
}

// Tsiolkovsky: exhaust speed 2000 m/s, 1.0 to 0.9 kg: 210.721 m/s, less g·t.
func TestTsiolkovsky(t *testing.T) {
	const burn = 0.01
	r := &rocket.Rocket{Power: rocket.MotorPower, Body: rocket.Body{Diameter: 0.05, Mass: 0.9, Drag: []rocket.MachDrag{{Mach: 0, Drag: 0}}, DragFactor: 1},
		Motor: &rocket.Motor{Delay: math.NaN(), Propellant: 0.1}, Rail: rocket.Rail{Length: 0.01}}
	var err error
	r.Motor.Curve, err = thrust.NewCurve([]thrust.Point{{Time: 0, Thrust: 200 / burn}, {Time: burn, Thrust: 200 / burn}})
	require.NoError(t, err)
	fl := mustFly(r, 1e-11)
	assert.InEpsilon(t, 210.721, fl.Burnout.Speed+9.80665*burn, 2e-6)
}

// Settled descent, v = √(2mg/(ρ C_D S)): 0.6 m, C_D 0.75, 0.15 kg at 1.225 kg/m³:
// 3.36531792 m/s (computed).
func TestSettledDescent(t *testing.T) {
	r := coasting(t, 0.15, 0.11, 0, 50)
	r.rocket.Canopies = []rocket.Canopy{{Name: "c", Diameter: 0.6, Coefficient: 0.75, FillConstant: 8, OpeningForceCoefficient: 1.7}}
	r.model.canopies = []canopyModel{{0.75 * math.Pi / 4 * 0.36, 8 * 0.6}}
	r.flight.Canopies = []CanopyResult{{Name: "c"}}
	r.pending = 1
	r.release(0)
	r.toTheEnd()
	// The fall follows the thickening air a little late: 1e-5 of it here.
	assert.InEpsilon(t, 3.36531792, r.flight.Landing.Vertical, 2e-5)
	assert.InEpsilon(t, 3.36531792, r.flight.Canopies[0].Descent, 1e-5)
}

// Opening load without gravity, closed form (derived): with B = m/(ρ C_D S n D₀) the
// largest load is √B e^(−1/2) of ½ρv₁²C_D S for B ≤ 1, e^(−1/(2B)) beyond.
func TestOpeningLoad(t *testing.T) {
	for _, mass := range []float64{0.02, 0.5, 1, 3, 40} {
		r := coasting(t, mass, 0.001, 0, 0)
		area, fill := 0.75*math.Pi/4*0.36, 8*0.6
		r.rocket.Canopies = []rocket.Canopy{{Name: "c", Diameter: 0.6, Coefficient: 0.75, FillConstant: 8, OpeningForceCoefficient: 1.7}}
		r.model.canopies = []canopyModel{{area, fill}}
		r.flight.Canopies = []CanopyResult{{Name: "c"}}
		r.pending = 1
		const v = 2e4 // so fast that gravity is nothing beside it
		r.y[vUp], r.y[up] = 0, 100
		r.y[vEast] = v
		r.enter()
		rho := r.now.density
		r.release(0)
		for r.model.full == 0 {
			r.onward()
		}
		b := mass / (rho * area * fill)
		share := math.Exp(-1 / (2 * b))
		if b <= 1 {
			share = math.Sqrt(b) * math.Exp(-0.5)
		}
		r.maxima.write(r.flight)
		assert.InEpsilon(t, share*0.5*rho*v*v*area, r.flight.Canopies[0].Filling, 1e-4, mass)
		assert.InEpsilon(t, 1.7*0.5*rho*v*v*area, r.flight.Canopies[0].LoadBound, 1e-4, mass)
	}
}

// Liquid phase with no gravity and no drag, n the gas's γ: what the gas gives up is
// found again, to 1e-6, in rocket, liquid column, nozzle passage, jet and the loss
// that C_d stands for; and no mass is lost.
func TestMassAndEnergyBalance(t *testing.T) {
	for _, throat := range []float64{0.006, 0.013, 0.022} {
		r := bottle()
		r.Water.Throat = throat
		r.Body.DragFactor = 0
		r.Rail.Length = 1000
		x := newRun(r, Options{Tolerance: 1e-11, Keep: true})
		x.model.axis, x.model.cosTilt = vector{1, 0, 0}, 0 // level guide: no weight along it
		require.NoError(t, x.fly(context.Background()))
		fl := x.flight
		end := fl.LiquidOut.Time
		w := r.Water
		p0 := w.Pressure + 101325
		vg, volume := w.Volume*(1-w.Fill), w.Volume
		an := math.Pi / 4 * throat * throat
		passage := 0.8 * throat

		// Sampled on the dense output, step by step so that Simpson sees no kink.
		var times, jetPower, lossPower, flow []float64
		last := x.y
		for i := range fl.dense.steps {
			s := &fl.dense.steps[i]
			if fl.dense.phases[s.phase].push != unsteadyLiquid {
				break
			}
			last = s.y1
			for k := range 4 {
				var y state
				theta := float64(k) / 4
				hermite(states, theta, s.h, &s.y0, &s.f0, &s.y1, &s.f1, &y)
				q, v := y[jet], y[vEast]
				times = append(times, s.t+theta*s.h)
				jetPower = append(jetPower, 0.5*998.2*an*q*(v-q)*(v-q))
				lossPower = append(lossPower, 0.5*998.2*an*q*q*q*(1/(w.Discharge*w.Discharge)-1))
				flow = append(flow, 998.2*an*q)
			}
		}
		q, v := last[jet], last[vEast]
		times = append(times, end)
		jetPower = append(jetPower, 0.5*998.2*an*q*(v-q)*(v-q))
		lossPower = append(lossPower, 0.5*998.2*an*q*q*q*(1/(w.Discharge*w.Discharge)-1))
		flow = append(flow, 998.2*an*q)
		sum := func(f []float64) float64 { return integrate.Simpsons(times, f) }

		gas := p0*vg/0.4*(1-math.Pow(vg/volume, 0.4)) - 101325*(volume-vg)
		mass := r.Body.Mass + x.model.flow.CarriedGas() // the liquid is out: no column left
		found := 0.5*mass*v*v + 0.5*998.2*an*passage*q*q + sum(jetPower) + sum(lossPower)
		assert.InEpsilon(t, gas, found, 1e-6, throat)
		assert.InEpsilon(t, 998.2*w.Fill*w.Volume, sum(flow), 1e-6, throat)

		// Whole flight: what was aboard at release is what left and what stayed.
		assert.InEpsilon(t, r.Body.Mass+998.2*w.Fill*w.Volume+x.model.flow.StoredGas(), fl.LiftOffMass, 1e-12)
		first, final := fl.At(0), fl.At(fl.Duration())
		gasLeft := x.model.left
		assert.InEpsilon(t, fl.LiftOffMass, first.Mass, 1e-12)
		assert.InEpsilon(t, r.Body.Mass+gasLeft, final.Mass, 1e-12)
		p, _ := x.model.flow.GasState(gasLeft)
		assert.InEpsilon(t, 1.0005*fl.At(fl.Burnout.Time).Air, p, 1e-6)
	}
}

// The default tolerance keeps the apogee within 0.01 % of the converged value, and
// a finer one comes nearer still.
func TestApogeeIsConverged(t *testing.T) {
	for _, throat := range []float64{0.005, 0.009, 0.013, 0.022} {
		for _, fill := range []float64{0.2, 0.35} {
			for _, pressure := range []float64{5e5, 12e5} {
				for _, mass := range []float64{0.2, 0.5} {
					r := withWind(bottle())
					r.Water.Throat, r.Water.Fill, r.Water.Pressure, r.Body.Mass = throat, fill, pressure, mass
					exact := mustFly(r, 1e-9)
					usual, half := mustFly(r, 0), mustFly(r, DefaultTolerance/2)
					off := math.Abs(usual.Apogee.Height/exact.Apogee.Height - 1)
					assert.Less(t, off, 1e-4, "%v %v %v %v", throat, fill, pressure, mass)
					assert.Less(t, math.Abs(half.Apogee.Height/exact.Apogee.Height-1), 0.8*off+1e-5)
				}
			}
		}
	}
}

// A step allocates nothing.
func TestStepAllocatesNothing(t *testing.T) {
	for _, r := range []*rocket.Rocket{bottle(), withWind(bottle())} {
		x := newRun(r, Options{Tolerance: DefaultTolerance})
		x.begin()
		for x.model.push == unsteadyLiquid && !x.model.settled {
			x.onward()
		}
		assert.Zero(t, testing.AllocsPerRun(100, func() {
			x.chooseStep()
			x.try()
			x.firstEvent()
			x.maxima.within(x)
		}))
	}
}

// A factor on the thrust is that of a curve drawn so much higher: burn time and propellant stay.
func TestThrustFactor(t *testing.T) {
	points := []thrust.Point{{Time: 0.05, Thrust: 30}, {Time: 0.8, Thrust: 20}, {Time: 1, Thrust: 0}}
	a := motorRocket(t, points...)
	a.Motor.Factor = 1.1
	for i := range points {
		points[i].Thrust *= 1.1
	}
	b := motorRocket(t, points...)
	one, two := mustFly(a, 0), mustFly(b, 0)
	assert.InEpsilon(t, two.Apogee.Height, one.Apogee.Height, 1e-12)
	assert.InEpsilon(t, two.Drive.Impulse, one.Drive.Impulse, 1e-12)
	assert.InEpsilon(t, two.Drive.Average, one.Drive.Average, 1e-12)
	assert.Equal(t, two.Drive.Class, one.Drive.Class)
	assert.Equal(t, two.Burnout.Time, one.Burnout.Time)
	assert.InEpsilon(t, 1.1*a.Motor.Curve.Impulse(), one.Drive.Impulse, 1e-12)
	a.Motor.Factor = 1
	assert.Less(t, mustFly(a, 0).Apogee.Height, one.Apogee.Height)
}

// However softly a canopy fills, the rocket hangs on it, and its line has to stop it: by hand, the weight, and
// v·√(m·F/(L·ε)) of package chamber.
func TestLeastOpeningLoads(t *testing.T) {
	r := bottle()
	r.Canopies[0].FillConstant = 60 // so slowly that its drag stays below the weight
	soft := mustFly(r, 0)
	c := soft.Canopies[0]
	mass := 2 * soft.Landing.Energy / (soft.Landing.Speed * soft.Landing.Speed)
	assert.InEpsilon(t, mass*9.80665, c.Hanging, 1e-4)
	assert.GreaterOrEqual(t, c.Load, c.Hanging)
	assert.GreaterOrEqual(t, c.Load, c.Filling)
	assert.Zero(t, c.Snatch)
	r.Recovery = &chamber.Mount{Line: 1000, LineLength: 2, LineStretch: 0.2, CanopyMass: 0.05}
	c = mustFly(r, 0).Canopies[0]
	assert.InEpsilon(t, c.Airspeed*math.Sqrt(0.05*1000/(2*0.2)), c.Snatch, 1e-12)
	assert.Equal(t, c.Snatch, c.Load)
	assert.GreaterOrEqual(t, c.LoadBound, c.Load)
	// Two of them share the weight by their areas.
	r.Recovery = nil
	second := r.Canopies[0]
	second.Name, second.Diameter = "second", second.Diameter/2
	r.Canopies = append(r.Canopies, second)
	fl := mustFly(r, 0)
	assert.InEpsilon(t, 4, fl.Canopies[0].Hanging/fl.Canopies[1].Hanging, 1e-9)
	assert.InEpsilon(t, mass*9.80665, fl.Canopies[0].Hanging+fl.Canopies[1].Hanging, 1e-3)
	// All of it hangs on the one that opens first, until the other does.
	r.Canopies[0].Water.Value += 5
	fl = mustFly(r, 0)
	assert.InEpsilon(t, mass*9.80665, fl.Canopies[1].Hanging, 1e-3)
	assert.InEpsilon(t, mass*9.80665*4/5, fl.Canopies[0].Hanging, 1e-3)
}
