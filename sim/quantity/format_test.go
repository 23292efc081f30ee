package quantity_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ullage/sim/quantity"
)

func unit(t require.TestingT, name string) quantity.Unit {
	u, ok := quantity.Lookup(name)
	require.True(t, ok || name == "", name)
	return u
}

func TestFormat(t *testing.T) {
	for _, row := range []struct {
		v      float64
		unit   string
		digits int
		want   string
	}{
		{0.3, "%", 2, "30 %"},
		{9e5, "bar", 2, "9.0 bar"},
		{0.013, "mm", 2, "13 mm"},
		{213.7, "m", 1, "214 m"},
		{213.7, "m", 2, "214 m"},
		{213.7, "m", 3, "214 m"},
		{213.7, "m", 4, "213.7 m"},
		{1.1, "kg", 3, "1.10 kg"},
		{9.96, "m", 2, "10 m"},
		{0.0996, "m", 2, "0.10 m"},
		{0, "bar", 2, "0.0 bar"},
		{0, "bar", 1, "0 bar"},
		{math.Copysign(0, -1), "bar", 2, "0.0 bar"},
		{-12.34, "m", 3, "-12.3 m"},
		{1.5e7, "m", 3, "15000000 m"},
		{2.5e-6, "m", 2, "0.0000025 m"},
		{2.5e-7, "m", 2, "2.5e-07 m"},
		{2.5e16, "m", 2, "2.5e+16 m"},
		{291.15, "degC", 3, "18.0 degC"},
		{0.48, "", 3, "0.480"},
		{1.0 / 3, "m", 99, "0.33333333333333331 m"},
		{1.0 / 3, "m", -5, "0.3 m"},
		{math.NaN(), "m", 3, "-"},
		{math.Inf(-1), "m", 3, "-"},
		{1e308, "mm", 3, "-"},
	} {
		require.Equal(t, row.want, quantity.Format(row.v, unit(t, row.unit), row.digits))
	}
}

func TestExact(t *testing.T) {
	for _, row := range []struct {
		v    float64
		unit string
		want string
	}{
		{0.07, "mm", "70 mm"},
		{0.3, "%", "30 %"},
		{9e5, "bar", "9 bar"},
		{291.15, "degC", "18 degC"},
		{291.15, "K", "291.15 K"},
		{291.15, "degF", "64.4 degF"},
		{0.1 + 0.2, "m", "0.3 m"},
		{0.1 + 0.2, "%", "30 %"},
		{0.07 * 3, "mm", "210 mm"},
		{291.15 + 2*5.7e-14, "degC", "18 degC"},
		{0.3 + 1e-9, "m", "0.300000001 m"},
		{1.0 / 7, "", "0.14285714285714285"},
		{0.142857, "", "0.142857"},
		{0.01016, "in", "0.4 in"},
		{0, "mm", "0 mm"},
		{math.Copysign(0, -1), "mm", "0 mm"},
		{273.15, "degC", "0 degC"},
		{0, "degC", "-273.15 degC"},
		{-0.5, "m", "-0.5 m"},
		{1234567, "m", "1234567 m"},
		{1e-9, "m", "1e-09 m"},
		{math.Pi / 60, "deg", "3 deg"},
		{65 * 6894.757293168361, "psi", "65 psi"},
		{math.NaN(), "m", "-"},
		{math.Inf(1), "m", "-"},
		{1e308, "mm", "-"},
	} {
		require.Equal(t, row.want, quantity.Exact(row.v, unit(t, row.unit)))
	}
}

// anyUnit draws a unit of any dimension.
func anyUnit(t *rapid.T) quantity.Unit {
	d := quantity.Dimension(rapid.IntRange(int(quantity.Number), int(quantity.Inertia)).Draw(t, "dimension"))
	return rapid.SampledFrom(quantity.Units(d)).Draw(t, "unit")
}

// miss is the difference of two values, over their size; of temperatures with an
// offset, over the offset if that is larger.
func miss(want, got float64, u quantity.Unit) float64 {
	if want == got {
		return 0
	}
	return math.Abs(got-want) / max(math.Abs(want), math.Abs(u.Offset*u.Scale))
}

// Whatever the value, Exact's text reads back as it, within 1e-15.
func TestExactReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		u := anyUnit(t)
		v := math.Exp(rapid.Float64Range(math.Log(1e-29), math.Log(1e29)).Draw(t, "log v"))
		text := quantity.Exact(v, u)
		q, err := quantity.Parse(text, u.Dimension)
		require.NoError(t, err)
		require.Equal(t, u, q.Unit)
		require.LessOrEqualf(t, miss(v, q.Value, u), 1e-15, "%v is %s, which is %v", v, text, q.Value)
	})
}

// A number of few digits comes back as it was written, whatever its unit.
func TestExactKeepsWhatWasWritten(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		u := anyUnit(t)
		digits := rapid.IntRange(0, 999999).Draw(t, "digits")
		places := rapid.IntRange(0, 5).Draw(t, "places")
		text := quantity.Exact(float64(digits)/math.Pow10(places), quantity.Unit{Name: u.Name})
		q, err := quantity.Parse(text, u.Dimension)
		require.NoError(t, err)
		require.Equal(t, text, quantity.Exact(q.Value, u))
	})
}

// Formatting to all digits reads back too, and never shows an exponent at
// everyday sizes.
func TestFormatReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		u := anyUnit(t)
		x := rapid.Float64Range(-1e6, 1e6).Draw(t, "x")
		v := u.ToSI(x)
		text := quantity.Format(v, u, rapid.IntRange(8, 17).Draw(t, "digits"))
		if u.Dimension == quantity.Temperature && v < 0 || math.Abs(x) < 1e-6 {
			return
		}
		require.NotContains(t, text, "e+")
		q, err := quantity.Parse(text, u.Dimension)
		require.NoError(t, err)
		require.LessOrEqual(t, miss(v, q.Value, u), 1e-7)
	})
}
