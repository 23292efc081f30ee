package quantity_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/sim/quantity"
)

// The units of every dimension: all that files may hold, in the order offered.
func TestUnits(t *testing.T) {
	for d, want := range map[quantity.Dimension]string{
		quantity.Length:                "um mm cm m in ft",
		quantity.Area:                  "mm2 cm2 m2 in2 ft2",
		quantity.Volume:                "mL L cm3 m3 in3 fl oz gal",
		quantity.Mass:                  "mg g kg oz lb",
		quantity.Pressure:              "Pa hPa kPa MPa GPa bar psi inHg",
		quantity.Force:                 "N lbf",
		quantity.Impulse:               "N*s",
		quantity.Energy:                "J ft*lbf",
		quantity.Time:                  "ms s min",
		quantity.Speed:                 "m/s km/h mph kn ft/s",
		quantity.Wind:                  "m/s km/h mph kn ft/s",
		quantity.Acceleration:          "m/s2 ft/s2",
		quantity.Angle:                 "deg rad",
		quantity.Bearing:               "deg rad",
		quantity.AngularRate:           "deg/s",
		quantity.Temperature:           "K degC degF",
		quantity.TemperatureDifference: "K degC degF",
		quantity.Density:               "kg/m3 g/cm3",
		quantity.ArealDensity:          "g/m2 kg/m2 oz/yd2",
		quantity.Inertia:               "kg*m2",
	} {
		var names []string
		for _, u := range quantity.Units(d) {
			require.Equal(t, d, u.Dimension)
			names = append(names, u.Name)
			found, ok := quantity.LookupIn(u.Name, d)
			require.True(t, ok)
			require.Equal(t, u, found)
			q, err := quantity.Parse("1"+u.Name, d)
			require.NoError(t, err)
			require.Equal(t, u, q.Unit)
		}
		require.Equal(t, want, strings.Join(names, " "), d.String())
		require.Contains(t, names, quantity.Usual(d).Name)
	}
}

// Sizes against the sources that define them. GNU Units 2.22, a general-purpose
// converter, gives the same to its 15 digits.
func TestScales(t *testing.T) {
	for _, row := range []struct {
		text string
		d    quantity.Dimension
		si   float64
	}{
		// NIST Special Publication 811 (2008), appendix B, exact there.
		{"1 in", quantity.Length, 0.0254},
		{"1 ft", quantity.Length, 0.3048},
		{"1 in2", quantity.Area, 6.4516e-4},
		{"1 ft2", quantity.Area, 0.09290304},
		{"1 in3", quantity.Volume, 1.6387064e-5},
		{"1 gal", quantity.Volume, 3.785411784e-3},
		{"1 fl oz", quantity.Volume, 2.95735295625e-5},
		{"1 lb", quantity.Mass, 0.45359237},
		{"1 oz", quantity.Mass, 0.028349523125},
		{"1 lbf", quantity.Force, 4.4482216152605},
		{"1 mph", quantity.Speed, 0.44704},
		{"1 ft/s", quantity.Speed, 0.3048},
		{"1 kn", quantity.Speed, 1852.0 / 3600},
		{"36 km/h", quantity.Speed, 10},
		{"212 degF", quantity.Temperature, 373.15},
		{"-40 degF", quantity.Temperature, 233.15},
		{"-40 degC", quantity.Temperature, 233.15},
		{"9 degF", quantity.TemperatureDifference, 5},
		{"2 degC", quantity.TemperatureDifference, 2},
		// Derived from these; digits of GNU Units 2.22.
		{"1 psi", quantity.Pressure, 6894.75729316836},
		{"1 ft*lbf", quantity.Energy, 1.3558179483314},
		{"1 inHg", quantity.Pressure, 3386.388640341},
		// SI brochure.
		{"1 um", quantity.Length, 1e-6},
		{"1 mm", quantity.Length, 1e-3},
		{"1 cm", quantity.Length, 1e-2},
		{"1 mm2", quantity.Area, 1e-6},
		{"1 cm2", quantity.Area, 1e-4},
		{"1 mL", quantity.Volume, 1e-6},
		{"1 L", quantity.Volume, 1e-3},
		{"1 cm3", quantity.Volume, 1e-6},
		{"1 mg", quantity.Mass, 1e-6},
		{"1 g", quantity.Mass, 1e-3},
		{"1 hPa", quantity.Pressure, 100},
		{"1 kPa", quantity.Pressure, 1e3},
		{"1 MPa", quantity.Pressure, 1e6},
		{"1 GPa", quantity.Pressure, 1e9},
		{"1 bar", quantity.Pressure, 1e5},
		{"1 ms", quantity.Time, 1e-3},
		{"180 deg", quantity.Angle, math.Pi},
		{"180 deg/s", quantity.AngularRate, math.Pi},
		{"0 degC", quantity.Temperature, 273.15},
		{"1 g/cm3", quantity.Density, 1000},
		{"1 g/m2", quantity.ArealDensity, 1e-3}, {"0.2 kg/m2", quantity.ArealDensity, 0.2}, {"1 oz/yd2", quantity.ArealDensity, 0.028349523125 / (0.9144 * 0.9144)},
	} {
		q, err := quantity.Parse(row.text, row.d)
		require.NoError(t, err)
		require.InEpsilon(t, row.si, q.Value, 3e-15, row.text)
		require.InEpsilon(t, q.Unit.ToSI(1), (1+q.Unit.Offset)*q.Unit.Scale, 1e-15, "scale and offset of %s", q.Unit.Name)
		require.Equal(t, row.text, quantity.Format(q.Value, q.Unit, 1), "and back")
	}
}

// A whole number of a decimal unit is the very number that the decimal is.
func TestWholeNumbersAreExact(t *testing.T) {
	for text, want := range map[string]float64{
		"35 mm": 0.035, "1100 mg": 0.0011, "4200 mL": 0.0042, "7 um": 7e-6, "9 ms": 0.009, "35 cm2": 0.0035,
		"200 g/m2": 0.2, "29 %": 0.29, "57 %": 0.57,
	} {
		read := false
		for d := quantity.Number; d <= quantity.Inertia; d++ {
			if q, err := quantity.Parse(text, d); err == nil {
				require.Equal(t, want, q.Value, text)
				read = true
			}
		}
		require.True(t, read, text)
	}
}

func TestLookup(t *testing.T) {
	for alias, name := range map[string]string{
		"N·s": "N*s", "N⋅s": "N*s", "°C": "degC", "℃": "degC", "°F": "degF", "℉": "degF", "°": "deg", "°/s": "deg/s",
		"m³": "m3", "cm³": "cm3", "mm²": "mm2", "in³": "in3", "kg·m²": "kg*m2", "kg/m³": "kg/m3", "ft·lbf": "ft*lbf",
		"µm": "um", "μm": "um", "mm": "mm", "%": "%",
	} {
		u, ok := quantity.Lookup(alias)
		require.True(t, ok, alias)
		require.Equal(t, name, u.Name, alias)
	}
	u, _ := quantity.Lookup("degC")
	require.Equal(t, quantity.Temperature, u.Dimension)
	u, ok := quantity.LookupIn("degC", quantity.TemperatureDifference)
	require.True(t, ok)
	require.Equal(t, quantity.TemperatureDifference, u.Dimension)
	require.Zero(t, u.Offset)
	for _, name := range []string{"", "Bar", "MM", "furlong", " mm", "mm "} {
		_, ok := quantity.Lookup(name)
		require.False(t, ok, name)
	}
	_, ok = quantity.LookupIn("kg", quantity.Length)
	require.False(t, ok)
}

// Units made by hand work by their Scale and Offset; the zero Unit is 1.
func TestPlainUnits(t *testing.T) {
	u := quantity.Unit{Name: "cal", Dimension: quantity.Length, Scale: 0.07}
	require.Equal(t, 0.14, u.ToSI(2))
	require.InEpsilon(t, 2, u.FromSI(0.14), 1e-15)
	require.Equal(t, "2 cal", quantity.Exact(0.14, u))
	require.Equal(t, 5.0, quantity.Unit{}.ToSI(5))
	require.Equal(t, 5.0, quantity.Unit{}.FromSI(5))
}

func TestDimensionNames(t *testing.T) {
	seen := map[string]bool{}
	for d := quantity.Number; d <= quantity.Inertia; d++ {
		require.Regexp(t, `^an? [a-z ]+$`, d.String())
		require.False(t, seen[d.String()], d.String())
		seen[d.String()] = true
	}
	for _, d := range []quantity.Dimension{-1, quantity.Inertia + 1} {
		require.Equal(t, "a quantity", d.String())
		require.Empty(t, quantity.Units(d))
		require.Empty(t, quantity.Usual(d).Name)
		_, err := quantity.Parse("5 m", d)
		require.Error(t, err)
		_, err = quantity.Parse("", d)
		require.Error(t, err)
	}
}

func TestSystems(t *testing.T) {
	pairs := []struct{ metric, us string }{
		{"mm", "in"}, {"m", "ft"}, {"cm2", "in2"}, {"m2", "ft2"}, {"mL", "fl oz"}, {"g", "oz"}, {"kg", "lb"}, {"bar", "psi"},
		{"hPa", "inHg"}, {"N", "lbf"}, {"J", "ft*lbf"}, {"m/s", "ft/s"}, {"km/h", "mph"}, {"degC", "degF"},
	}
	for _, p := range pairs {
		metric, _ := quantity.Lookup(p.metric)
		us, _ := quantity.Lookup(p.us)
		require.Equal(t, us, quantity.US.Unit(metric))
		require.Equal(t, metric, quantity.Metric.Unit(us))
	}
	// A unit shown stays shown, whatever it was made from, and measures the same.
	for d := quantity.Number; d <= quantity.Inertia; d++ {
		for _, u := range quantity.Units(d) {
			for _, s := range []quantity.System{quantity.Metric, quantity.US} {
				shown := s.Unit(u)
				require.Equal(t, d, shown.Dimension)
				require.Equal(t, shown, s.Unit(shown), u.Name)
			}
		}
	}
	for _, name := range []string{"s", "deg", "%", "N*s", "kn", "kg/m3"} {
		u, _ := quantity.Lookup(name)
		require.Equal(t, u, quantity.US.Unit(u))
	}
	strange := quantity.Unit{Name: "cal", Scale: 1}
	require.Equal(t, strange, quantity.US.Unit(strange))
	require.Equal(t, quantity.Unit{}, quantity.US.Unit(quantity.Unit{}))
}
