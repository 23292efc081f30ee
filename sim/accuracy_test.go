package sim

import (
	"context"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"ullage/sim/airframe"
	"ullage/sim/long"
	"ullage/sim/rocket"
	"ullage/thrust"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// lot draws rockets that somebody might build, from the ordinary to the far end of
// it: throats of 5 to 22 mm, fills to 95 %, up to 60 bar and 4000 m, tilted rails, wind,
// launch tubes, canopies that fill at once, none, one or two of them, drag tables with kinks
// through Mach 1, slender bodies, margins from a little below none.
type lot struct{ *rand.Rand }

func newLot(seed uint64) lot { return lot{rand.New(rand.NewPCG(seed, 20))} }

func (l lot) within(low, high float64) float64 { return low + (high-low)*l.Float64() }

// spread is even on a logarithmic scale.
func (l lot) spread(low, high float64) float64 {
	return math.Exp(l.within(math.Log(low), math.Log(high)))
}

func (l lot) chance(p float64) bool { return l.Float64() < p }

// rocket draws one that passes its validation.
func (l lot) rocket() *rocket.Rocket {
	for {
		r := l.day()
		if l.chance(0.5) {
			l.water(r)
		} else {
			l.motor(r)
		}
		if l.chance(0.5) {
			l.shape(r)
		}
		if r.Validate() == nil {
			return r
		}
	}
}

// day draws what both drives share.
func (l lot) day() *rocket.Rocket {
	r := &rocket.Rocket{Body: rocket.Body{DragFactor: 1}}
	switch l.IntN(3) {
	case 0:
		r.Body.Drag = []rocket.MachDrag{{Mach: 0, Drag: l.within(0.25, 0.8)}}
	case 1:
		c := l.within(0.25, 0.6)
		r.Body.Drag = []rocket.MachDrag{{Mach: 0, Drag: c}, {Mach: l.within(0.1, 0.8), Drag: c * l.within(0.8, 1.2)}, {Mach: 0.9, Drag: c * 1.3}, {Mach: 1.05, Drag: c * 2}, {Mach: 1.4, Drag: c * 1.8}}
	default:
		c := l.within(0.25, 0.6)
		r.Body.Drag = []rocket.MachDrag{{Mach: 0.05, Drag: c * 1.3}, {Mach: 0.15, Drag: c}, {Mach: 0.7, Drag: c * 0.95}, {Mach: 0.95, Drag: c * 1.7}, {Mach: 2, Drag: c * 1.2}}
	}
	r.Rail = rocket.Rail{Length: l.spread(0.3, 6), Heading: l.within(0, 6)}
	if l.chance(0.7) {
		r.Rail.Tilt = l.within(0, 20*math.Pi/180)
	}
	if l.chance(0.7) {
		r.Wind.Speed, r.Wind.Height, r.Wind.Exponent, r.Wind.From = l.within(0, 10), 10, l.within(0, 0.3), l.within(0, 6)
	}
	if l.chance(0.5) {
		r.Site.Elevation = l.within(0, 4000)
	}
	for i := range l.IntN(3) {
		c := rocket.Canopy{Name: string(rune('a' + i)), Coefficient: 0.75, OpeningForceCoefficient: 1.7}
		if l.chance(0.7) {
			c.FillConstant = l.within(2, 20)
		}
		c.Water = rocket.Rule{Trigger: rocket.AfterApogee, Value: l.within(0, 3)}
		if i == 1 || l.chance(0.2) {
			c.Water = rocket.Rule{Trigger: rocket.Falling, Value: l.spread(10, 300)}
		}
		c.Motor = c.Water
		r.Canopies = append(r.Canopies, c)
	}
	return r
}

// canopies gives them the size for a rate of descent.
func (l lot) canopies(r *rocket.Rocket, mass float64) {
	for i := range r.Canopies {
		v := l.within(3, 10)
		if len(r.Canopies) == 2 && i == 0 {
			v = l.within(12, 30)
		}
		r.Canopies[i].Area = 2 * mass * 9.8 / (1.2 * v * v * 0.75)
	}
}

func (l lot) water(r *rocket.Rocket) {
	r.Power = rocket.WaterPower
	w := &rocket.Water{Volume: l.spread(0.0005, 0.02), Discharge: l.within(0.9, 1), Fill: l.within(0.05, 0.95),
		Pressure: l.spread(2e5, 60e5), Gas: thrust.Air, Density: 998.2, Flow: rocket.UnsteadyFlow, Exponent: l.within(1.1, 1.4)}
	w.Bore = math.Cbrt(4 * w.Volume / (math.Pi * l.spread(2, 15)))
	w.Throat = math.Min(l.spread(0.005, 0.022), 0.6*w.Bore)
	if l.chance(0.15) {
		w.Flow = rocket.SteadyFlow
	}
	if l.chance(0.2) {
		height := w.Volume / (math.Pi / 4 * w.Bore * w.Bore)
		outer := w.Throat * l.within(0.9, 0.99)
		w.Tube = &rocket.LaunchTube{Length: height * l.within(0.1, 0.9), Outer: outer, Inner: outer * 0.8, DeadVolume: l.within(0, 2e-5)}
	}
	r.Water = w
	r.Body.Diameter = w.Bore * l.within(1.01, 1.3)
	r.Body.Mass = w.Volume * 1000 * l.spread(0.05, 0.3) * (1 + w.Pressure/3e6)
	l.canopies(r, r.Body.Mass)
}

func (l lot) motor(r *rocket.Rocket) {
	r.Power = rocket.MotorPower
	impulse, burn := l.spread(10, 2500), l.spread(0.3, 4)
	n := 2 + l.IntN(20)
	points := make([]thrust.Point, 0, n+2)
	for i := range n {
		points = append(points, thrust.Point{Time: burn * (0.02 + float64(i)) / float64(n), Thrust: l.within(0.6, 1.4) * impulse / burn})
	}
	points = append(points, thrust.Point{Time: burn, Thrust: 0})
	curve, err := thrust.NewCurve(points)
	if err != nil {
		panic(err)
	}
	m := &rocket.Motor{Curve: curve, Propellant: curve.Impulse() / 1900, Delay: l.within(3, 12)}
	m.Case = m.Propellant * l.within(0.8, 2)
	m.Diameter = math.Cbrt(m.Propellant / 1700 / l.within(3, 6))
	m.Length = 7 * m.Diameter
	r.Motor = m
	r.Body.Diameter = m.Diameter * l.within(1.1, 2.5)
	all := curve.Average() / (9.8 * l.spread(4, 25))
	r.Body.Mass = math.Max(all-m.Case-m.Propellant, 0.5*m.Propellant)
	l.canopies(r, r.Body.Mass+m.Case)
}

// shape makes it a rigid body: a tube with a nose and fins, and a balance.
func (l lot) shape(r *rocket.Rocket) {
	d := r.Body.Diameter
	length := d * l.spread(8, 32)
	if w := r.Water; w != nil {
		length = math.Max(length, w.Volume/(math.Pi/4*w.Bore*w.Bore)+3*d)
	}
	if m := r.Motor; m != nil {
		length = math.Max(length, m.Length+4*d)
	}
	root := d * l.within(1, 3)
	fins := airframe.Fins{Name: "1", Count: 3 + l.IntN(2), Root: root, Tip: root * l.within(0.3, 1), Span: d * l.within(0.6, 1.8),
		Sweep: root * l.within(0, 0.7), Thickness: 0.003, Section: airframe.FlatSection, Position: length - root}
	if l.chance(0.2) {
		fins.Cant = l.within(0, 1) * math.Pi / 180
	}
	r.Shape = &airframe.Shape{Length: length, Diameter: d, Roughness: 20e-6,
		Nose: airframe.Nose{Shape: airframe.TangentOgive, Length: d * l.within(1.5, 5)}, Fins: []airframe.Fins{fins}}
	r.Body.Balance = length * l.within(0.35, 0.75)
	if l.chance(0.3) {
		r.Alignment = rocket.Alignment{Angle: l.within(-0.5, 0.5) * math.Pi / 180, Offset: l.within(-0.01, 0.01) * d}
	}
	if l.chance(0.2) {
		r.Gust = rocket.Gust{Speed: l.within(0, 6), From: l.within(0, 6), Height: l.spread(5, 300)}
	}
	if l.chance(0.3) {
		r.Body.Drag = nil
	}
}

// tally is how far off some result of many flights is.
type tally []float64

func (l *tally) add(usual, exact float64) {
	if usual == exact {
		*l = append(*l, 0) // both may be 0
		return
	}
	*l = append(*l, math.Abs(usual/exact-1))
}

// tell gives the median, the 99th percentile and the worst.
func (l tally) tell(t *testing.T, of string) (median, most, worst float64) {
	slices.Sort(l)
	n := len(l)
	t.Logf("%s of %d rockets off by %.2g (median), %.2g (99th percentile), %.2g (worst)", of, n, l[n/2], l[n*99/100], l[n-1])
	return l[n/2], l[n*99/100], l[n-1]
}

// The apogee of any rocket is near the converged one, that of a hundredth of the
// tolerance, and so is what is greatest on the way. Told apart are those that turn over and over under thrust so
// that a thousandth of the tolerance gives another apogee again: their flight is not to be foretold, as its
// start is never known to so many digits.
func TestAnyRocketIsAccurate(t *testing.T) {
	var apogee, push, dynamic tally
	unsettled, n := 0, long.Of(300, 2000)
	fly := func(r *rocket.Rocket, share float64) *Flight {
		fl, err := Fly(context.Background(), r, Options{Tolerance: DefaultTolerance * share})
		require.NoError(t, err)
		return fl
	}
	for i := range n {
		r := newLot(uint64(i)).rocket()
		usual, exact := fly(r, 1), fly(r, 0.01)
		assert.Less(t, usual.Steps+usual.Rejected, 20_000, i)
		if !exact.RailExit.Happened {
			continue
		}
		if math.Abs(usual.Apogee.Height/exact.Apogee.Height-1) > 1e-4 &&
			math.Abs(fly(r, 0.001).Apogee.Height/exact.Apogee.Height-1) > 1e-5 {
			require.Greater(t, exact.Stability.MaxAngle, math.Pi/3, i) // it turns broadside
			unsettled++
			continue
		}
		apogee.add(usual.Apogee.Height, exact.Apogee.Height)
		push.add(usual.Max.Thrust, exact.Max.Thrust)
		dynamic.add(usual.Max.DynamicPressure, exact.Max.DynamicPressure)
	}
	t.Logf("%d are not to be foretold", unsettled)
	assert.LessOrEqual(t, unsettled, n/100)
	median, most, worst := apogee.tell(t, "apogee")
	assert.Less(t, median, 1e-5)
	assert.Less(t, most, 1e-4)
	assert.Less(t, worst, 1e-4)
	_, _, worst = push.tell(t, "greatest thrust")
	assert.Less(t, worst, 1e-3)
	_, most, worst = dynamic.tell(t, "greatest dynamic pressure")
	assert.Less(t, most, 1e-3)
	assert.Less(t, worst, 1e-2)
}

// Rockets beyond those of the lot, found among ten thousand, whose apogee was off by more than 1e-4 once: after a knot of the thrust
// curve, in the first step of a surge, by a steady jet that crept on with liquid left, and by a Mach number that rose above a point of
// the drag table and fell below it again within a step.
func TestRocketsFoundBeyondAreAccurate(t *testing.T) {
	for _, seed := range []uint64{3730, 5378, 20621, 21765, 22797, 107043} {
		r := newLot(seed).rocket()
		usual, exact := mustFly(r, 0), mustFly(r, DefaultTolerance/1000)
		assert.InEpsilon(t, exact.Apogee.Height, usual.Apogee.Height, 7e-5, seed)
	}
}
