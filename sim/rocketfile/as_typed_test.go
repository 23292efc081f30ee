package rocketfile_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/sim/rocketfile"
)

// Values are taken as people write them, in a file as by an option or a field.
func TestValuesAsTyped(t *testing.T) {
	for _, row := range []struct {
		input, text, written string
		want                 float64
	}{
		{"wind.from", "SW", "225 deg", 1.25 * math.Pi},
		{"rail.length", "0,93 m", "0.93 m", 0.93},
		{"rail.length", "5 ft 3 in", "5.25 ft", 1.6002},
		{"water.throat", "9/16 in", "0.5625 in", 0.0142875},
		{"water.fill", "1/4", "0.25", 0.25},
		{"water.fill", "0,31", "0.31", 0.31},
		{"body.mass", "2 lb 10 oz", "2.625 lb", 2.625 * 0.45359237},
		{"water.pressure", "100 psig", "100 psi", 100 * 6894.75729316836},
		{"wind.speed", "10 mph", "10 mph", 4.4704},
	} {
		f := rocketfile.Starter()
		r := f.Rocket()
		in, err := rocketfile.Find(r, row.input)
		require.NoError(t, err)
		require.NoError(t, in.SetText(r, row.text), row.text)
		v, _ := in.Get(r)
		require.InEpsilon(t, row.want, v, 1e-12, row.text)

		set, err := f.Set(row.input, row.text)
		require.NoError(t, err, row.text)
		v, _ = in.Get(set.Rocket())
		require.InEpsilon(t, row.want, v, 1e-12, row.text)
		require.Contains(t, string(set.Text()), row.written)
	}
}
