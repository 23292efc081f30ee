package solve

import (
	"errors"
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

var errStop = errors.New("stop")

// counter counts the looks at a function and holds them between two places.
type counter struct {
	f         func(x float64) float64
	low, high float64
	n         int
}

// at is the function for a search. t may be rapid's.
func (c *counter) at(t require.TestingT) Func {
	return func(x float64) (float64, error) {
		require.GreaterOrEqual(t, x, c.low)
		require.LessOrEqual(t, x, c.high)
		c.n++
		return c.f(x), nil
	}
}

func (c *counter) point(x float64) Point { return Point{x, c.f(x)} }

// bracket is two places with the one above zero as In.
func (c *counter) bracket(a, b float64) Bracket {
	if in := c.point(a); in.Y > 0 {
		return Bracket{in, c.point(b)}
	}
	return Bracket{c.point(b), c.point(a)}
}

// closed holds that a bracket is one, of the function, and as narrow as asked.
func (c *counter) closed(t require.TestingT, b Bracket, tol float64) {
	require.Equal(t, c.point(b.In.X), b.In)
	require.Positive(t, b.In.Y)
	require.False(t, b.Out.Y > 0)
	if !math.IsNaN(b.Out.Y) {
		require.Equal(t, c.point(b.Out.X), b.Out)
	}
	require.LessOrEqual(t, math.Abs(b.In.X-b.Out.X), tol)
}

// never fails when it is asked.
func never(t *testing.T) Func {
	return func(x float64) (float64, error) {
		require.Fail(t, "asked", "at %g", x)
		return 0, nil
	}
}

// failsAfter is a function that fails at the n-th look.
func failsAfter(n int, f func(x float64) float64) Func {
	return func(x float64) (float64, error) {
		if n--; n < 0 {
			return math.NaN(), errStop
		}
		return f(x), nil
	}
}
