package study

import (
	"context"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/airframe"
	"ullage/sim/long"
	"ullage/sim/rocket"
	"ullage/sim/solve"
	"ullage/thrust"
)

// finned is a motor rocket with a shape, invented.
func finned(t testing.TB) *rocket.Rocket {
	c, err := thrust.NewCurve([]thrust.Point{{Time: 0.02, Thrust: 60}, {Time: 0.6, Thrust: 50}, {Time: 1.2, Thrust: 40}, {Time: 1.3, Thrust: 0}})
	require.NoError(t, err)
	r := &rocket.Rocket{Name: "finned", Power: rocket.MotorPower,
		Shape: &airframe.Shape{Length: 0.8, Diameter: 0.04, Roughness: 20e-6,
			Nose: airframe.Nose{Shape: airframe.TangentOgive, Length: 0.12},
			Fins: []airframe.Fins{{Name: "1", Count: 4, Root: 0.1, Tip: 0.05, Span: 0.05, Sweep: 0.05, Thickness: 0.003,
				Section: airframe.FlatSection, Position: 0.7}}},
		Body:  rocket.Body{Diameter: 0.04, Mass: 0.5, Drag: []rocket.MachDrag{{Mach: 0, Drag: 0.5}}, DragFactor: 1, Balance: 0.55},
		Motor: &rocket.Motor{Curve: c, Case: 0.05, Propellant: 0.04, Delay: math.NaN(), Diameter: 0.024, Length: 0.1},
		Rail:  rocket.Rail{Length: 1.2},
		Canopies: []rocket.Canopy{{Name: "main", Diameter: 0.6, Coefficient: 0.75, FillConstant: 8, OpeningForceCoefficient: 1.7,
			Motor: rocket.Rule{Trigger: rocket.AfterApogee, Value: 1}}},
	}
	require.NoError(t, r.Validate())
	return r
}

func TestAlignments(t *testing.T) {
	r := finned(t)
	r.Wind.Speed, r.Wind.Height = 6, 10 // the study is of calm air
	before := *r
	const degree = math.Pi / 180
	rows, err := alignments(context.Background(), r, []float64{0.05 * degree, 0.1 * degree, 0.2 * degree}, Options{Tolerance: 1e-7})
	require.NoError(t, err)
	require.Len(t, rows, 3)
	for i, row := range rows {
		assert.Positive(t, row.Lower)
		assert.Positive(t, row.Off)
		if i > 0 { // small angles: the turn is in proportion, what is lost in height as its square
			assert.InEpsilon(t, 2, row.MaxAngle/rows[i-1].MaxAngle, 0.1)
			assert.InEpsilon(t, 2, row.Off/rows[i-1].Off, 0.15)
			assert.InEpsilon(t, 4, row.Lower/rows[i-1].Lower, 0.2)
		}
	}
	assert.Equal(t, before, *r, "the rocket is left as it was")

	limit := 3 * math.Pi / 180
	angle, err := alignmentTolerance(context.Background(), r, limit, Options{})
	require.NoError(t, err)
	at, err := alignments(context.Background(), r, []float64{angle, angle * 1.01}, Options{})
	require.NoError(t, err)
	assert.InEpsilon(t, limit, at[0].MaxAngle, 1e-3)
	assert.Greater(t, at[1].MaxAngle, limit)
}

func TestBalanceHelp(t *testing.T) {
	r := finned(t)
	ctx := context.Background()
	now, err := leastMargin(ctx, r, Options{})
	require.NoError(t, err)
	weight, err := noseWeight(ctx, r, 0.08, now+0.5, Options{})
	require.NoError(t, err)
	assert.Positive(t, weight)
	got, err := leastMargin(ctx, WithWeight(r, weight, 0.08), Options{})
	require.NoError(t, err)
	assert.InDelta(t, now+0.5, got, 1e-3)
	none, err := noseWeight(ctx, r, 0.08, now-0.5, Options{})
	require.NoError(t, err)
	assert.Zero(t, none)
	_, err = noseWeight(ctx, r, 0.7, now+3, Options{}) // behind the balance point: never
	assert.ErrorIs(t, err, errOutOfReach)

	span, err := finSpan(ctx, r, now+0.5, Options{})
	require.NoError(t, err)
	assert.Greater(t, span, 0.05)
	c, shape := *r, *r.Shape
	shape.Fins = append([]airframe.Fins(nil), shape.Fins...)
	shape.Fins[0].Span = span
	c.Shape = &shape
	got, err = leastMargin(ctx, &c, Options{})
	require.NoError(t, err)
	assert.InDelta(t, now+0.5, got, 1e-3)
	assert.InDelta(t, 0.05, r.Shape.Fins[0].Span, 0, "the rocket is left as it was")
	_, err = finSpan(ctx, r, 100, Options{})
	assert.ErrorIs(t, err, errOutOfReach)

	// A part as wide as the fins as they are leaves no narrower ones to look at.
	ringed := finned(t)
	ringed.Parts = []airframe.Part{{Name: "ring", Mass: 0.5, Position: 0.55, Diameter: 0.14}}
	require.NoError(t, ringed.Validate())
	wider, err := finSpan(ctx, ringed, now+0.5, Options{})
	require.NoError(t, err)
	assert.Greater(t, wider, 0.05)
	just, err := finSpan(ctx, ringed, now-0.5, Options{})
	require.NoError(t, err)
	assert.InDelta(t, (0.14/1.01-0.04)/2, just, 1e-6, "the narrowest there may be: the ring may stand out by 1 %")

	// Interrupted is not out of reach.
	done, cancel := context.WithCancel(ctx)
	cancel()
	for _, study := range []func() (float64, error){
		func() (float64, error) { return noseWeight(done, r, 0.08, now+0.5, Options{}) },
		func() (float64, error) { return finSpan(done, r, now+0.5, Options{}) },
		func() (float64, error) { return alignmentTolerance(done, r, 0.05, Options{}) },
	} {
		_, err := study()
		assert.ErrorIs(t, err, context.Canceled)
		assert.NotErrorIs(t, err, errOutOfReach)
	}

	bare := finned(t)
	bare.Shape = nil
	_, err = noseWeight(ctx, bare, 0, 1, Options{})
	assert.ErrorIs(t, err, errNoShape)
}

// A size is found to a millionth of the range, on the side that is enough, in half the
// looks that halving takes.
func TestSized(t *testing.T) {
	for name, f := range map[string]solve.Func{
		"bent":     func(x float64) (float64, error) { return x*x*x - 0.3, nil },
		"straight": func(x float64) (float64, error) { return x - 0.2, nil },
		"flat":     func(x float64) (float64, error) { return 0.6 - 1/(1+x), nil },
	} {
		looks := 0
		counted := solve.Func(func(x float64) (float64, error) { looks++; return f(x) })
		enough, err := f.At(1)
		require.NoError(t, err)
		short, err := f.At(0)
		require.NoError(t, err)
		got, err := sized(counted, enough, short, 1)
		require.NoError(t, err)
		after, err := f(got - sizingTol)
		require.NoError(t, err)
		at, err := f(got)
		require.NoError(t, err)
		assert.Positive(t, at, name)
		assert.LessOrEqual(t, after, 0.0, name)
		assert.LessOrEqual(t, looks, 10, name)
	}
	_, err := sized(nil, solve.Point{Y: -1}, solve.Point{X: 1, Y: -2}, 1)
	assert.ErrorIs(t, err, errOutOfReach)
	_, err = sized(nil, solve.Point{Y: math.NaN()}, solve.Point{X: 1, Y: -2}, 1)
	assert.ErrorIs(t, err, errOutOfReach)
	just, err := sized(nil, solve.Point{X: 3}, solve.Point{X: 1, Y: -2}, 2)
	require.NoError(t, err)
	assert.Equal(t, 3.0, just)
}

// Airframes answers for every rocket that flies: what is out of reach is said of that figure alone.
func TestAirframesOfAnyRocket(t *testing.T) {
	long.Unraced(t)
	ctx := context.Background()
	listed := func(r *rocket.Rocket) {
		r.Parts = []airframe.Part{{Name: "all", Mass: 0.4, Position: 0.55, Length: 0.5}, {Name: "nose", Mass: 0.1, Position: 0.06, Length: 0.1, Diameter: 0.03}}
		r.Body.Mass, r.Body.Balance = 0, 0
	}
	for name, change := range map[string]func(r *rocket.Rocket){
		"as it is":               func(*rocket.Rocket) {},
		"a mass list":            listed,
		"a mass list, weighed":   func(r *rocket.Rocket) { listed(r); r.Body.Mass = 0.7 },
		"a mass list, balanced":  func(r *rocket.Rocket) { listed(r); r.Body.Balance = 0.2 },
		"heavy":                  func(r *rocket.Rocket) { r.Body.Mass = 80 },
		"as heavy as may be":     func(r *rocket.Rocket) { r.Body.Mass = 200 },
		"light":                  func(r *rocket.Rocket) { r.Body.Mass = 0.02; r.Body.Inertia = 1e-4 },
		"tumbles":                func(r *rocket.Rocket) { r.Body.Balance = 0.75 },
		"tumbles by its offset":  func(r *rocket.Rocket) { r.Alignment.Offset = 0.02 },
		"without fins":           func(r *rocket.Rocket) { r.Shape.Fins = nil },
		"as a point mass":        func(r *rocket.Rocket) { r.Model = rocket.PointModel },
		"never leaves the guide": func(r *rocket.Rocket) { r.Rail.Length = 60; r.Body.Mass = 30 },
	} {
		r := finned(t)
		change(r)
		require.NoError(t, r.Validate(), name)
		frames, err := Airframes(ctx, r, UsualMargin, Options{})
		require.NoError(t, err, name)
		require.Len(t, frames, 1, name)
		a := &frames[0]
		assert.Len(t, a.Alignments, 3, name)
		assert.False(t, math.IsNaN(a.Tolerance) || math.IsNaN(a.Sizing.Weight) || math.IsNaN(a.Sizing.Span), name)
		switch name {
		case "tumbles", "tumbles by its offset":
			assert.True(t, a.Crooked, name)
		case "as it is", "a mass list":
			assert.False(t, a.Crooked, name)
		case "as heavy as may be":
			assert.True(t, a.Sizing.WeightOut || a.Sizing.Weight == 0)
		case "without fins":
			assert.True(t, a.Sizing.SpanOut)
		}
		if a.Sizing.Weight > 0 && !a.Sizing.WeightOut {
			got, err := leastMargin(ctx, WithWeight(r, a.Sizing.Weight, a.Sizing.NoseAt), Options{})
			require.NoError(t, err, name)
			assert.InDelta(t, UsualMargin, got, 1e-2, name)
		}
	}
}
