package sim

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/atmosphere"
	"ullage/sim/airframe"
	"ullage/sim/rocket"
	"ullage/thrust"
)

// A gust is all the wind there is: what flew straight up comes down where it blows to.
func TestGustBlowsItsWay(t *testing.T) {
	for _, from := range []float64{20, 110, 200, 290} {
		r := rigidRocket(t)
		r.Model = rocket.PointModel
		r.Gust = rocket.Gust{Speed: 6, From: from * math.Pi / 180, Height: 60}
		fl := mustFly(r, 0)
		toward := math.Atan2(-fl.Landing.East, -fl.Landing.North)
		assert.InDelta(t, 0, math.Remainder(toward-r.Gust.From, 2*math.Pi), 1e-9, "%v", from)
	}
}

// The tip of the launch tube stands in a ring of liquid between it and the bore: the depth
// is the volume over π/4 (D² − d²).
func TestTubeTipInTheLiquid(t *testing.T) {
	r := bottle()
	r.Water.Fill = 0.6
	r.Water.Tube = &rocket.LaunchTube{Length: 0.15, Outer: 0.009, Inner: 0.007}
	fl := mustFly(r, 0)
	for _, w := range fl.Warnings {
		if w.Code == TubeTipWet {
			assert.InEpsilon(t, 0.6*0.002/(math.Pi/4*(0.088*0.088-0.009*0.009)), w.Value, 1e-12)
			assert.Equal(t, 0.15, w.Limit)
			return
		}
	}
	assert.Fail(t, "the tip is wet")
}

// Drag from the shape is the airframe's at the air of the site: its Reynolds number and its
// Mach number, with the base bare or under the jet. Sutherland's viscosity and the speed of
// sound are those of the U.S. Standard Atmosphere, 1976, at 1000 m.
func TestShapeDragIsOfTheSite(t *testing.T) {
	s := slender()
	site := atmosphere.Site{Elevation: 1000}
	column := site.Column()
	coasting, pushed := shapeDrag(s.Aero(), column.Air(0), 2e-4)
	require.Equal(t, len(coasting), len(pushed))
	for i, at := range coasting {
		flow := airframe.Flow{Speed: at.Mach * 336.435, Density: 1.11166, SoundSpeed: 336.435, Viscosity: 1.7578e-5}
		bare, _ := s.Drag(flow, 0)
		under, _ := s.Drag(flow, 2e-4)
		assert.InEpsilon(t, bare, at.Drag, 1e-5, "Mach %v", at.Mach)
		assert.InEpsilon(t, under, pushed[i].Drag, 1e-5, "Mach %v", at.Mach)
		assert.Less(t, under, bare)
	}
	assert.Equal(t, airframe.MachLimit, coasting[len(coasting)-1].Mach)
}

// The drive's figures of a motor of one thrust, by hand: thrust over weight as it lights,
// and the mean of it.
func TestFiguresOfTheDrive(t *testing.T) {
	r := rigidRocket(t)
	var err error
	r.Motor.Curve, err = thrust.NewCurve([]thrust.Point{{Time: 0, Thrust: 40}, {Time: 1.5, Thrust: 40}})
	require.NoError(t, err)
	fl := mustFly(r, 0)
	assert.InEpsilon(t, 40/(0.59*9.80665), fl.LiftOffThrustToWeight, 1e-12)
	assert.InEpsilon(t, 60, fl.Drive.Impulse, 1e-12)
	assert.InEpsilon(t, 40, fl.Drive.Average, 1e-12)

	wet := mustFly(bottle(), 0)
	assert.InEpsilon(t, wet.Drive.Impulse/wet.Burnout.Time, wet.Drive.Average, 1e-12)
	assert.InEpsilon(t, wet.Burnout.Time, wet.Drive.BurnTime, 1e-12)
}

// A drag that is one number is trusted up to Mach 0.8, a table up to its last entry.
func TestDragBeyondTable(t *testing.T) {
	r := rigidRocket(t)
	r.Model = rocket.PointModel
	most := mustFly(r, 0).Max.Mach
	for _, c := range []struct {
		end  float64
		told bool
	}{{most * 1.001, false}, {most * 0.999, true}} {
		r.Body.Drag = []rocket.MachDrag{{Mach: 0, Drag: 0.5}, {Mach: c.end, Drag: 0.5}}
		fl := mustFly(r, 0)
		assert.Equal(t, c.told, slices.Contains(codes(fl), DragBeyondTable), "%v", c.end)
	}
	// As fast as it takes: half the mass, and thrust until it passes.
	r.Body.Drag = r.Body.Drag[:1]
	for _, push := range []float64{100, 150, 200, 300} {
		var err error
		r.Motor.Curve, err = thrust.NewCurve([]thrust.Point{{Time: 0, Thrust: push}, {Time: 1.5, Thrust: push}})
		require.NoError(t, err)
		fl := mustFly(r, 0)
		assert.Equal(t, fl.Max.Mach > 0.8, slices.Contains(codes(fl), DragBeyondTable), "Mach %v", fl.Max.Mach)
		for _, w := range fl.Warnings {
			if w.Code == DragBeyondTable {
				assert.Equal(t, 0.8, w.Limit)
				assert.Equal(t, fl.Max.Mach, w.Value)
			}
		}
	}
}

// On a launch tube leaning any way the gas has grown by the tube's area times the way gone
// What lifts a rocket off its launch tube is the tube's piston, (p − p_a)·A_t over the weight, though the jet
// that follows on the rail pushes harder.
func TestLiftOffFromATube(t *testing.T) {
	r := bottle()
	r.Water.Throat = 0.014
	r.Water.Tube = &rocket.LaunchTube{Length: 0.1, Outer: 0.0135, Inner: 0.01}
	r.Water.Fill = 0.2
	r.Rail.Length = 2
	fl := mustFly(r, 0)
	require.True(t, fl.TubeExit.Happened)
	push := r.Water.Pressure * math.Pi / 4 * 0.0135 * 0.0135
	assert.InEpsilon(t, push/(fl.LiftOffMass*9.80665), fl.LiftOffThrustToWeight, 1e-6)
	assert.Greater(t, fl.Max.Thrust, push)
}

// along it: p Vⁿ = const by hand, from where the rocket is.
func TestChamberOnALeaningTube(t *testing.T) {
	r := bottle()
	r.Rail.Tilt, r.Rail.Heading = 40*math.Pi/180, 35*math.Pi/180
	r.Water.Tube = &rocket.LaunchTube{Length: 0.3, Outer: 0.0085, Inner: 0.007, DeadVolume: 5e-5}
	require.NoError(t, r.Validate())
	fl := mustFly(r, 1e-10)
	outer, inner := math.Pi/4*0.0085*0.0085, math.Pi/4*0.007*0.007
	first := 0.002*0.7 - outer*0.3 + inner*0.3 + 5e-5
	for _, share := range []float64{0.3, 0.6, 0.9} {
		s := fl.At(share * fl.TubeExit.Time)
		way := math.Sqrt(s.East*s.East + s.North*s.North + s.Height*s.Height)
		assert.Greater(t, way, 0.01*share)
		assert.InEpsilon(t, (7e5+101325)*math.Pow(first/(first+outer*way), 1.4), s.Chamber, 1e-6, "%v", share)
	}
}

// A rocket too heavy to leave its leaning rail: its jet starts under pressure and the head
// along the rail, with no motion in it (closed form at rest), whichever way the flow is
// reckoned.
func TestHeldJet(t *testing.T) {
	r := bottle()
	r.Body.Mass, r.Rail.Tilt, r.Water.Pressure = 60, 60*math.Pi/180, 0.2e5
	area, bore := math.Pi/4*0.009*0.009, math.Pi/4*0.088*0.088
	h, beta := 0.3*0.002/bore, area/bore
	head := 0.2e5/998.2 + 9.80665*math.Cos(r.Rail.Tilt)*h
	fl := mustFly(r, 1e-9)
	assert.InEpsilon(t, 998.2*area*h*head/(h*beta+0.8*0.009), fl.At(0).Thrust, 1e-9)
	r.Water.Flow = rocket.SteadyFlow
	fl = mustFly(r, 1e-9)
	assert.InEpsilon(t, 2*998.2*area*(1-beta)*head/(1/(0.97*0.97)-beta*beta), fl.At(0).Thrust, 1e-9)
}

// Liquid that is left rides along on the nozzle, and the gas above it fills the chamber:
// where the rocket balances then, by hand.
func TestBalanceWithLiquidLeft(t *testing.T) {
	r := wetRigid(t)
	r.Water.Fill, r.Water.Pressure = 0.8, 4e5
	fl := mustFly(r, 1e-9)
	require.Greater(t, fl.LiquidLeft, 0.01)
	area := math.Pi / 4 * r.Water.Bore * r.Water.Bore
	gas := (4e5 + 101325) * 0.2 * r.Water.Volume / (287.05287 * 288.15)
	dry, length := r.DryBody(), r.Shape.Length
	h := fl.LiquidLeft / 998.2 / area
	mass := dry.Mass + fl.LiquidLeft + gas
	at := (dry.Mass*dry.At + fl.LiquidLeft*(length-h/2) + gas*(length-r.Water.Volume/area/2)) / mass
	end := fl.At(fl.Burnout.Time + 0.05)
	assert.InEpsilon(t, mass, end.Mass, 1e-12)
	assert.InDelta(t, (fl.Stability.Burnout.PressureCentre-at)/r.Shape.Diameter, fl.Stability.Burnout.Margin, 1e-6)
	assert.InDelta(t, fl.Stability.Burnout.Margin, end.Margin, 1e-3, "and so it stays")
	// The margin of a sample moves with the Mach number only; the balance does not.
	x := newRun(r, Options{Tolerance: 1e-9, Keep: true})
	require.NoError(t, x.fly(t.Context()))
	x.model.push = noPush
	var dy state
	var f forces
	x.model.rates(x.t, &x.y, &dy, &f)
	assert.InEpsilon(t, gas, f.gas, 1e-9)
	assert.InEpsilon(t, fl.LiquidLeft/998.2, f.liquid, 1e-9)
}

// Balance and centre of pressure of case A of Barrowman's equations: 677.446 mm and 21.36904
// at rest (see the airframe's TestBarrowman), and the way between in calibres.
func TestStabilityAtRelease(t *testing.T) {
	fl := mustFly(rigidRocket(t), 0)
	for name, s := range map[string]StabilityAt{"dry": fl.Stability.Dry, "release": fl.Stability.Release} {
		assert.InDelta(t, 0.677446, s.PressureCentre, 5e-7, name)
		assert.InDelta(t, 21.36904, s.CNAlpha, 5e-6, name)
		assert.InEpsilon(t, (s.PressureCentre-s.Balance)/0.04, s.Margin, 1e-12, name)
	}
	assert.InEpsilon(t, (0.5*0.44+0.05*0.75)/0.55, fl.Stability.Dry.Balance, 1e-12)
}

// Fin cant spins the rocket up as ½ρ(v² drive − v damp ω) = I dω/dt: ω∞(1 − e^(−t/τ)) with
// τ = 2 I/(ρ v damp), in closed form while speed and air stay.
func TestSpinUp(t *testing.T) {
	const speed, inertia = 100.0, 0.02
	x := adrift(t, 0, speed, func(r *rocket.Rocket) {
		r.Shape.Fins[0].Cant = 0.5 * math.Pi / 180
		r.Body.RollInertia, r.Motor.Case = inertia, 0
	})
	drive, damp := x.model.body.aero.Roll()
	tau := 2 * inertia / (x.now.density * speed * damp)
	for _, at := range []float64{0.01, 0.05, 0.1} {
		x.until(at)
		want := speed * drive / damp * (1 - math.Exp(-at/tau))
		assert.InEpsilon(t, want, x.y[spin+2]/inertia, 2e-3, "%v s of %v", at, tau)
	}
}

// A jet that stops leaves the liquid under which gas and head balance the air: p = p_a − ρ g h,
// with p Vⁿ from release, on a rocket too heavy to move. Solved here by bisection.
func TestLiquidLeftInBalance(t *testing.T) {
	r := bottle()
	r.Body.Mass, r.Water.Fill, r.Water.Pressure, r.Water.Flow = 90, 0.8, 2e5, rocket.SteadyFlow
	fl := mustFly(r, 1e-10)
	area := math.Pi / 4 * r.Water.Bore * r.Water.Bore
	low, high := 0.0, 0.8*0.002
	for range 100 {
		mid := (low + high) / 2
		p := (2e5 + 101325) * math.Pow(0.2*0.002/(0.002-mid), 1.4)
		if p > 101325-998.2*9.80665*mid/area {
			high = mid // pressure to spare: more goes
		} else {
			low = mid
		}
	}
	require.Greater(t, low, 1e-4)
	assert.InEpsilon(t, 998.2*low, fl.LiquidLeft, 1e-6)
}

// The angle of attack as the rail ends is that between the rail and the wind of the flight,
// on a leaning rail in a wind from anywhere: by vectors.
func TestAngleAtRailExit(t *testing.T) {
	for _, from := range []float64{0, 70, 160, 250} {
		for name, r := range map[string]*rocket.Rocket{"motor": rigidRocket(t), "water": wetRigid(t)} {
			r.Rail.Tilt, r.Rail.Heading = 8*math.Pi/180, 40*math.Pi/180
			r.Wind = atmosphere.Wind{Speed: 5, Height: 10, Exponent: 0.2, From: from * math.Pi / 180}
			fl := mustFly(r, 0)
			st, ct := math.Sincos(r.Rail.Tilt)
			sh, ch := math.Sincos(r.Rail.Heading)
			axis := vector{st * sh, st * ch, ct}
			height := fl.RailExit.Height + (r.Shape.Length-fl.Stability.RailExit.Balance)*ct
			sw, cw := math.Sincos(r.Wind.From)
			wind := 5 * math.Pow(height/10, 0.2)
			v := vector{fl.RailExit.Speed*axis.x + wind*sw, fl.RailExit.Speed*axis.y + wind*cw, fl.RailExit.Speed * axis.z}
			want := math.Acos(dot(v, axis) / math.Sqrt(dot(v, v)))
			assert.InEpsilon(t, want, fl.Stability.RailExitAngle, 1e-9, "%s from %v", name, from)
		}
	}
}

// What lands has ½ m v² of its whole speed, drift and all.
func TestLandingEnergy(t *testing.T) {
	r := withWind(bottle())
	fl := mustFly(r, 0)
	l := fl.Landing
	assert.Greater(t, l.Speed, 1.1*l.Vertical)
	assert.InEpsilon(t, fl.At(fl.Duration()).Mass*l.Speed*l.Speed/2, l.Energy, 1e-12)
}
