package atmosphere_test

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/atmosphere"
)

// near fails unless got is within a relative tolerance of want.
func near(t *testing.T, want, got, tolerance float64, what string, args ...any) {
	t.Helper()
	require.InEpsilonf(t, want, got, tolerance, what, args...)
}

// geometric is the altitude of a geopotential height.
func geometric(h float64) float64 {
	return atmosphere.EarthRadius * h / (atmosphere.EarthRadius - h)
}

// The U.S. Standard Atmosphere, 1976, in the table whose head names its source.
// The table's gas constant is 3e-7 larger than the 287.05287 of ISO 2533, which
// the exponents make 4e-6 at 86 km.
func TestStandardAgainstTable(t *testing.T) {
	f, err := os.Open("../testdata/published/us-standard-atmosphere-1976.csv")
	require.NoError(t, err)
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	rows, err := r.ReadAll()
	require.NoError(t, err)
	require.Greater(t, len(rows), 20)
	for _, row := range rows[1:] {
		var v [7]float64
		for i := range v {
			v[i], err = strconv.ParseFloat(row[i], 64)
			require.NoError(t, err)
		}
		z := v[0]
		a := atmosphere.Standard(z)
		near(t, v[1], a.Temperature, 1e-6, "temperature at %g m", z)
		near(t, v[2], a.Pressure, 1e-5, "pressure at %g m", z)
		near(t, v[3], a.Density, 1e-5, "density at %g m", z)
		near(t, v[4], a.SoundSpeed, 1e-5, "speed of sound at %g m", z)
		near(t, v[5], atmosphere.Gravity(z), 1e-7, "gravity at %g m", z)
		near(t, v[6], a.Viscosity(), 1e-6, "viscosity at %g m", z)
	}
}

// Values by the equations of ISO 2533 at geopotential heights, computed apart by
// plain arithmetic with R = 287.05287.
func TestStandardAtGeopotentialHeights(t *testing.T) {
	for _, row := range []struct{ height, temperature, pressure, density, sound, viscosity float64 }{
		{500, 284.900, 95460.8, 1.16727, 338.370, 1.7737e-5},
		{2000, 275.150, 79495.2, 1.00649, 332.529, 1.7260e-5},
		{11000, 216.650, 22632.0, 0.363918, 295.069, 1.4216e-5},
	} {
		a := atmosphere.Standard(geometric(row.height))
		near(t, row.temperature, a.Temperature, 1e-6, "temperature at %g m", row.height)
		near(t, row.pressure, a.Pressure, 1e-5, "pressure at %g m", row.height)
		near(t, row.density, a.Density, 1e-5, "density at %g m", row.height)
		near(t, row.sound, a.SoundSpeed, 1e-5, "speed of sound at %g m", row.height)
		near(t, row.viscosity, a.Viscosity(), 3e-5, "viscosity at %g m", row.height)
	}
}

// Pressures at the feet of the layers, as handbooks print them after the U.S.
// Standard Atmosphere, 1976 (from memory).
func TestStandardAtLayerBoundaries(t *testing.T) {
	for _, row := range []struct{ height, temperature, pressure float64 }{
		{11000, 216.65, 22632.06},
		{20000, 216.65, 5474.889},
		{32000, 228.65, 868.0187},
		{47000, 270.65, 110.9063},
		{51000, 270.65, 66.93887},
		{71000, 214.65, 3.956420},
		{84852, 186.946, 0.3734},
	} {
		a := atmosphere.Standard(geometric(row.height))
		near(t, row.temperature, a.Temperature, 1e-6, "temperature at %g m", row.height)
		near(t, row.pressure, a.Pressure, 6e-5, "pressure at %g m", row.height)
	}
}

// Geopotential height turns geometric altitude into what constant gravity would
// need for the same work: its derivative is g/g0.
func TestGeopotential(t *testing.T) {
	for _, z := range []float64{-4000, -100, 0, 320, 11000, 86000} {
		const d = 10.0
		slope := (atmosphere.Geopotential(z+d) - atmosphere.Geopotential(z-d)) / (2 * d)
		near(t, atmosphere.Gravity(z)/atmosphere.StandardGravity, slope, 1e-9, "at %g m", z)
	}
	// U.S. Standard Atmosphere, 1976: the top of its layers is 86 km high.
	require.InDelta(t, 84852, atmosphere.Geopotential(86000), 0.1)
	require.Equal(t, atmosphere.StandardGravity, atmosphere.Gravity(0))
}

func TestFarAltitudes(t *testing.T) {
	for _, z := range []float64{math.Inf(-1), -1e300, -2 * atmosphere.EarthRadius, -atmosphere.EarthRadius, -1e5} {
		require.Equal(t, atmosphere.Standard(-5000), atmosphere.Standard(z), "at %g m", z)
		require.Equal(t, atmosphere.Gravity(-5000), atmosphere.Gravity(z), "at %g m", z)
		require.Equal(t, atmosphere.Geopotential(-5000), atmosphere.Geopotential(z), "at %g m", z)
	}
	for _, z := range []float64{1e13, 1e300, math.Inf(1)} {
		a := atmosphere.Standard(z)
		require.Less(t, a.Density, 1e-100, "at %g m", z)
		near(t, 186.946, a.Temperature, 1e-9, "at %g m", z)
		near(t, math.Sqrt(atmosphere.Gamma*atmosphere.GasConstant*186.946), a.SoundSpeed, 1e-9, "at %g m", z)
		require.Less(t, atmosphere.Gravity(z), 1e-9)
		near(t, atmosphere.EarthRadius, atmosphere.Geopotential(z), 1e-4, "at %g m", z)
	}
}
