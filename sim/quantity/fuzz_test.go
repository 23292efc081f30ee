package quantity_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/sim/quantity"
)

// FuzzParse: no text of any dimension panics or gives a value that is not finite,
// and what is read can be written and read again.
func FuzzParse(f *testing.F) {
	for d := quantity.Number; d <= quantity.Inertia; d++ {
		for _, text := range []string{
			"", "70 mm", "1e400 m", "NaN bar", "0x1p3 m", "1_000 m", "--1 m", "1,5 m", "30 %", "-273.15 degC",
			"18°C", "9 Bar", "5 N·s", "1e-400 K", "−3 kg*m2", "5'", "1 000", "9 barr", "\xff", "5 \u202fµm", "1e30 m",
			"9/16 in", "1 1/2 in", "2 lb 10 oz", `5'3"`, "0,93 m", "SW", "1/0", "1 2/00 3 4/5 m 6",
		} {
			f.Add(text, int(d))
		}
	}
	f.Fuzz(func(t *testing.T, text string, dimension int) {
		d := quantity.Dimension(uint(dimension) % uint(quantity.Inertia+1))
		check := func(q quantity.Quantity, err error) {
			require.Truef(t, !math.IsNaN(q.Value) && math.Abs(q.Value) <= 1e30, "%q gives %v", text, q.Value)
			if err != nil {
				require.NotEmpty(t, err.Error())
				return
			}
			require.Equal(t, d, q.Unit.Dimension)
			written := quantity.Exact(q.Value, q.Unit)
			again, err := quantity.Parse(written, d)
			require.NoErrorf(t, err, "%q is written %q", text, written)
			require.Equal(t, q.Unit, again.Unit)
			require.LessOrEqualf(t, miss(q.Value, again.Value, q.Unit), 1e-15, "%q is written %q", text, written)
			quantity.Format(q.Value, q.Unit, 3)
		}
		check(quantity.Parse(text, d))
		check(quantity.ParseIn(text, d, quantity.Usual(d)))
	})
}

// FuzzExact: any value in any unit is written without panic, and reads back if it
// is one that Parse takes.
func FuzzExact(f *testing.F) {
	f.Add(0.07, 3)
	f.Add(291.15, 40)
	f.Add(math.NaN(), 0)
	f.Add(math.MaxFloat64, 5)
	f.Add(5e-324, 9)
	f.Fuzz(func(t *testing.T, v float64, index int) {
		var units []quantity.Unit
		for d := quantity.Number; d <= quantity.Inertia; d++ {
			units = append(units, quantity.Units(d)...)
		}
		u := units[uint(index)%uint(len(units))]
		text := quantity.Exact(v, u)
		quantity.Format(v, u, index)
		size := math.Abs(v)
		if !(size == 0 || 1e-29 < size && size < 1e29) || u.Dimension == quantity.Temperature && v < 0 {
			return
		}
		q, err := quantity.Parse(text, u.Dimension)
		require.NoError(t, err)
		require.LessOrEqual(t, miss(v, q.Value, u), 1e-15)
	})
}
