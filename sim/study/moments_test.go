package study

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat"
)

func TestMoments(t *testing.T) {
	// Numbers far from 0 with a small spread, where the sum of squares would fail.
	random := rand.New(rand.NewPCG(1, 2))
	var m moments
	var x []float64
	for range 1000 {
		v := 1e8 + random.Float64()
		x = append(x, v)
		m.add(v)
	}
	mean, sd := stat.MeanStdDev(x, nil)
	require.InEpsilon(t, mean, m.mean, 1e-15)
	require.InEpsilon(t, sd, m.sd(), 1e-6)
	require.True(t, math.IsNaN((&moments{n: 1}).sd()))
}

// The axes and heading of a cloud made by a known map of the plane, and the share of
// the cloud inside, by counting.
func TestEllipse(t *testing.T) {
	for _, c := range []struct{ major, minor, heading float64 }{
		{30, 10, 0}, {30, 10, 0.4}, {30, 10, math.Pi / 2}, {30, 10, 2.5}, {8, 7.9, 1}, {50, 0.1, 3},
	} {
		random := rand.New(rand.NewPCG(3, 4))
		var p plane
		n := 20_000
		points := make([][2]float64, n)
		sin, cos := math.Sincos(c.heading)
		for i := range points {
			a, b := c.major*random.NormFloat64(), c.minor*random.NormFloat64()
			points[i] = [2]float64{5 + a*sin + b*cos, -7 + a*cos - b*sin} // east, north
			p.add(points[i][0], points[i][1])
		}
		e := p.ellipse()
		k := math.Sqrt(chiSquare90)
		require.InEpsilon(t, k*c.major, e.Major, 0.02)
		require.InEpsilon(t, k*c.minor, e.Minor, 0.02)
		require.InDelta(t, 5, e.East, 4*c.major/math.Sqrt(float64(n)))
		require.InDelta(t, -7, e.North, 4*c.major/math.Sqrt(float64(n)))
		if c.major > 2*c.minor {
			require.InDelta(t, 0, math.Sin(e.Heading-c.heading), 0.01)
		}
		require.GreaterOrEqual(t, e.Heading, 0.0)
		require.Less(t, e.Heading, math.Pi)
		inside := 0
		for _, q := range points {
			if e.holds(q[0], q[1]) {
				inside++
			}
		}
		require.InDelta(t, 0.9, float64(inside)/float64(n), 3*math.Sqrt(0.9*0.1/float64(n)))
	}
	// χ² with 2 degrees of freedom is exponential: P(χ² ≤ x) = 1 − e^(−x/2).
	require.InDelta(t, 0.9, 1-math.Exp(-chiSquare90/2), 1e-15)
	var few plane
	few.add(1, 2)
	require.True(t, math.IsNaN(few.ellipse().Major))
}

// holds tells whether a place is inside the ellipse.
func (e *Ellipse) holds(east, north float64) bool {
	sin, cos := math.Sincos(e.Heading)
	x, y := east-e.East, north-e.North
	along, across := x*sin+y*cos, x*cos-y*sin
	return along*along/(e.Major*e.Major)+across*across/(e.Minor*e.Minor) <= 1
}
