package quantity_test

import (
	"errors"
	"math"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/require"

	"ullage/sim/fault"
	"ullage/sim/quantity"
)

func TestParse(t *testing.T) {
	for _, row := range []struct {
		text string
		d    quantity.Dimension
		si   float64
		unit string
	}{
		{"70 mm", quantity.Length, 0.07, "mm"},
		{"70mm", quantity.Length, 0.07, "mm"},
		{"  70\t mm ", quantity.Length, 0.07, "mm"},
		{"70\u00a0mm", quantity.Length, 0.07, "mm"},
		{"70\u202fmm", quantity.Length, 0.07, "mm"},
		{"+.5 in", quantity.Length, 0.0127, "in"},
		{"5. m", quantity.Length, 5, "m"},
		{"1e3 mm", quantity.Length, 1, "mm"},
		{"1.5E-2m", quantity.Length, 0.015, "m"},
		{"0 m", quantity.Length, 0, "m"},
		{"-0.0e9 m", quantity.Length, 0, "m"},
		{"0e-999 m", quantity.Length, 0, "m"},
		{"-3 m", quantity.Length, -3, "m"},
		{"−3 m", quantity.Length, -3, "m"},
		{"12 µm", quantity.Length, 12e-6, "um"},
		{"0.48", quantity.Number, 0.48, ""},
		{"-2", quantity.Number, -2, ""},
		{"0.30", quantity.Fraction, 0.3, ""},
		{"30 %", quantity.Fraction, 0.3, "%"},
		{"30%", quantity.Fraction, 0.3, "%"},
		{"10 bar", quantity.Pressure, 1e6, "bar"},
		{"18 degC", quantity.Temperature, 291.15, "degC"},
		{"18°C", quantity.Temperature, 291.15, "degC"},
		{"-273.15 degC", quantity.Temperature, 0, "degC"},
		{"2 degC", quantity.TemperatureDifference, 2, "degC"},
		{"-2 K", quantity.TemperatureDifference, -2, "K"},
		{"120 N·s", quantity.Impulse, 120, "N*s"},
		{"3°", quantity.Angle, math.Pi / 60, "deg"},

		// As people write them.
		{"0,93 m", quantity.Length, 0.93, "m"},
		{"1,5 m", quantity.Length, 1.5, "m"},
		{"0,125 in", quantity.Length, 0.003175, "in"},
		{"1,2345 m", quantity.Length, 1.2345, "m"},
		{"-2,5e3 mm", quantity.Length, -2.5, "mm"},
		{"0,48", quantity.Number, 0.48, ""},
		{"9/16 in", quantity.Length, 0.0142875, "in"},
		{"1 1/2 in", quantity.Length, 0.0381, "in"},
		{"1-1/2in", quantity.Length, 0.0381, "in"},
		{"-1 1/4 in", quantity.Length, -0.03175, "in"},
		{"1/3", quantity.Fraction, 1. / 3, ""},
		{"2 lb 10 oz", quantity.Mass, 2*0.45359237 + 10*0.028349523125, "lb"},
		{"2lb 10oz", quantity.Mass, 2*0.45359237 + 10*0.028349523125, "lb"},
		{"5 ft 3 1/2 in", quantity.Length, 63.5 * 0.0254, "ft"},
		{`5'3"`, quantity.Length, 63 * 0.0254, "ft"},
		{"-1 m 5 cm", quantity.Length, -1.05, "m"},
		{"1 kg 250 g", quantity.Mass, 1.25, "kg"},
		{`0.4"`, quantity.Length, 0.01016, "in"},
		{"5'", quantity.Length, 1.524, "ft"},
		{"9 Bar", quantity.Pressure, 9e5, "bar"},
		{"130 psig", quantity.Pressure, 130 * 4.4482216152605 / (0.0254 * 0.0254), "psi"},
		{"9 barg", quantity.Pressure, 9e5, "bar"},
		{"975 mbar", quantity.Pressure, 97500, "hPa"},
		{"600 ml", quantity.Volume, 6e-4, "mL"},
		{"2 l", quantity.Volume, 2e-3, "L"},
		{"2 Litres", quantity.Volume, 2e-3, "L"},
		{"1/2 gal", quantity.Volume, 0.5 * 3.785411784e-3, "gal"},
		{"20 fl oz", quantity.Volume, 20 * 2.95735295625e-5, "fl oz"},
		{"20 FL. OZ.", quantity.Volume, 20 * 2.95735295625e-5, "fl oz"},
		{"3 lbs", quantity.Mass, 3 * 0.45359237, "lb"},
		{"350 grams", quantity.Mass, 0.35, "g"},
		{"5 kg/m^3", quantity.Density, 5, "kg/m3"},
		{"30 percent", quantity.Fraction, 0.3, "%"},
		{"18 C", quantity.Temperature, 291.15, "degC"},
		{"12 MPH", quantity.Speed, 5.36448, "mph"},
		{"SW", quantity.Bearing, 1.25 * math.Pi, "deg"},
		{" nne ", quantity.Bearing, math.Pi / 8, "deg"},
		{"225°", quantity.Bearing, 1.25 * math.Pi, "deg"},
	} {
		q, err := quantity.Parse(row.text, row.d)
		require.NoError(t, err, row.text)
		require.InDelta(t, row.si, q.Value, 1e-15*math.Abs(row.si), row.text)
		require.Equal(t, row.unit, q.Unit.Name, row.text)
		require.Equal(t, row.d, q.Unit.Dimension, row.text)
	}
}

// Every error says what is wrong and what to write.
func TestParseErrors(t *testing.T) {
	for _, row := range []struct {
		text string
		d    quantity.Dimension
		want string
	}{
		{"", quantity.Length, `"": is empty; write a length such as "70 mm"`},
		{"  ", quantity.Angle, `"  ": is empty; write an angle such as "5 deg"`},

		{"70", quantity.Length, `"70": has no unit; write "70 mm"`},
		{"9.5", quantity.Pressure, `"9.5": has no unit; write "9.5 bar"`},
		{"0", quantity.Mass, `"0": has no unit; write "0 g"`},

		{"70 kg", quantity.Length, `"70 kg": is a mass where a length is due; use um, mm, cm, m, in or ft`},
		{"9 Bar", quantity.Length, `"9 Bar": is a pressure where a length is due; use um, mm, cm, m, in or ft`},
		{"3 seconds", quantity.Force, `"3 seconds": is a time where a force is due; use N or lbf`},
		{"5 m", quantity.Inertia, `"5 m": is a length where a moment of inertia is due; use kg*m2`},
		{"5 mm", quantity.Fraction, `"5 mm": is a length where a fraction is due; write a fraction such as "30 %"`},
		{"5 mm", quantity.Number, `"5 mm": has a unit where a plain number is due; write "5"`},
		{"48 %", quantity.Number, `"48 %": has a unit where a plain number is due; write "0.48"`},
		{"1e40 %", quantity.Number, `"1e40 %": has a unit where a plain number is due; write a plain number such as "0.48"`},

		{"70 MM", quantity.Length, `"70 MM": has its unit in the wrong case; write "70 mm"`},
		{"1,5,2 m", quantity.Length, `"1,5,2 m": is not a length; write a length such as "70 mm"`},
		{"-1,500 m", quantity.Length, `"-1,500 m": is not one plain number; write "-1.500 m" or "-1500 m"`},
		{"1/0 in", quantity.Length, `"1/0 in": has the unknown unit "/0 in"; use um, mm, cm, m, in or ft`},
		{"2 lb 10", quantity.Mass, `"10": has no unit; write "10 g"`},
		{"2 lb 10 ox", quantity.Mass, `"10 ox": has the unknown unit "ox"; perhaps "10 oz"; use mg, g, kg, oz or lb`},
		{"2 lb -10 oz", quantity.Mass, `"2 lb -10 oz": has the unknown unit "lb -10 oz"; use mg, g, kg, oz or lb`},
		{"10 oz 2 lb", quantity.Mass, `"10 oz 2 lb": has units that do not go from large to small; write it in one unit`},
		{"2 lb 3 mm", quantity.Mass, `"3 mm": is a length where a mass is due; use mg, g, kg, oz or lb`},
		{"18 degC 3 K", quantity.Temperature, `"18 degC 3 K": has units that do not go from large to small; write it in one unit`},
		{"100 psia", quantity.Pressure, `"100 psia": is an absolute pressure; pressures of a chamber are above the air's: take that off and write psi`},
		{"SWW", quantity.Bearing, `"SWW": is not a bearing; write a bearing such as "225 deg" or "SW"`},
		{"SW", quantity.Angle, `"SW": is not an angle; write an angle such as "5 deg"`},
		{"4 gr", quantity.Mass, `"4 gr": has the unknown unit "gr"; perhaps "4 g"; use mg, g, kg, oz or lb`},

		{"9 mpa", quantity.Pressure, `"9 mpa": has its unit in the wrong case; write "9 MPa"`},

		{"9 barr", quantity.Pressure, `"9 barr": has the unknown unit "barr"; perhaps "9 bar"; use Pa, hPa, kPa, MPa, GPa, bar, psi or inHg`},
		{"5 m/ss", quantity.Speed, `"5 m/ss": has the unknown unit "m/ss"; perhaps "5 m/s"; use m/s, km/h, mph, kn or ft/s`},
		{"5 lfb", quantity.Force, `"5 lfb": has the unknown unit "lfb"; perhaps "5 lbf"; use N or lbf`},
		{"5 xm", quantity.Length, `"5 xm": has the unknown unit "xm"; use um, mm, cm, m, in or ft`},
		{"5 q", quantity.Length, `"5 q": has the unknown unit "q"; use um, mm, cm, m, in or ft`},
		{"5 qq", quantity.Fraction, `"5 qq": has the unknown unit "qq"; write a fraction such as "30 %"`},
		{"5 mm long", quantity.Time, `"5 mm long": has the unknown unit "mm long"; use ms, s or min`},

		{"NaN bar", quantity.Pressure, `"NaN bar": is not a pressure; write a pressure such as "6 bar"`},
		{"inf m", quantity.Length, `"inf m": is not a length; write a length such as "70 mm"`},
		{"-Infinity", quantity.Number, `"-Infinity": is not a plain number; write a plain number such as "0.48"`},
		{"--1 m", quantity.Length, `"--1 m": is not a length; write a length such as "70 mm"`},
		{"1-1 m", quantity.Length, `"1-1 m": is not a length; write a length such as "70 mm"`},
		{"mm", quantity.Length, `"mm": is not a length; write a length such as "70 mm"`},
		{".", quantity.Length, `".": is not a length; write a length such as "70 mm"`},
		{"0x1p3 m", quantity.Length, `"0x1p3 m": is not a length; write a length such as "70 mm"`},
		{"1.2.3 m", quantity.Length, `"1.2.3 m": is not a length; write a length such as "70 mm"`},
		{"1..2 m", quantity.Length, `"1..2 m": is not a length; write a length such as "70 mm"`},

		{"1_000 m", quantity.Length, `"1_000 m": is not one plain number; write "1000 m"`},
		{"1 000 m", quantity.Length, `"1 000 m": is not one plain number; write "1000 m"`},
		{"25 26 27", quantity.Fraction, `"25 26 27": is not one plain number; write a fraction such as "30 %"`},
		{"1'000'000 mm", quantity.Length, `"1'000'000 mm": is not one plain number; write "1000000 mm"`},
		{"1,500 m", quantity.Length, `"1,500 m": is not one plain number; write "1.500 m" or "1500 m"`},

		{"1e400 m", quantity.Length, `"1e400 m": is too large; write a length such as "70 mm"`},
		{"1e29 GPa", quantity.Pressure, `"1e29 GPa": is too large; write a pressure such as "6 bar"`},
		{"-1e31 m", quantity.Length, `"-1e31 m": is too large; write a length such as "70 mm"`},
		{"1e-400 m", quantity.Length, `"1e-400 m": is too small; write "0 m"`},
		{"1e-28 mm", quantity.Length, `"1e-28 mm": is too small; write "0 mm"`},
		{"-274 degC", quantity.Temperature, `"-274 degC": is below absolute zero; write a temperature such as "18 degC"`},
		{"-1 K", quantity.Temperature, `"-1 K": is below absolute zero; write a temperature such as "18 degC"`},
	} {
		_, err := quantity.Parse(row.text, row.d)
		require.EqualError(t, err, row.want, row.text)
		require.IsType(t, fault.Fault{}, err)
	}
}

// What an error says to write can be read, and where it only mends the text it
// means the same.
func TestMendsCanBeRead(t *testing.T) {
	for _, text := range []string{"70", "70 MM", "5'", "1_000 m", "1,500 m", "2 lb 3", "SWW", "9 psia", "1 000 ft", "9 barr", "2 L", "", "nan", "1e999 m", "5 kg"} {
		for d := quantity.Number; d <= quantity.Inertia; d++ {
			_, err := quantity.Parse(text, d)
			var bad fault.Fault
			if !errors.As(err, &bad) {
				continue
			}
			for i, part := range strings.Split(bad.Remedy, `"`) {
				if i%2 == 1 {
					_, err := quantity.Parse(part, d)
					require.NoError(t, err, "%q for %s", text, d)
				}
			}
		}
	}
}

func TestParseAs(t *testing.T) {
	metre, _ := quantity.Lookup("m")
	psi, _ := quantity.Lookup("psi")
	_, err := quantity.ParseAs("320", quantity.Length, metre)
	require.EqualError(t, err, `"320": has no unit; write "320 m"`)
	_, err = quantity.ParseAs("", quantity.Length, metre)
	require.EqualError(t, err, `"": is empty; write a length such as "1 m"`)
	_, err = quantity.ParseAs("320", quantity.Length, psi) // a unit that can't be meant
	require.EqualError(t, err, `"320": has no unit; write "320 mm"`)
}

func TestParseIn(t *testing.T) {
	psi, _ := quantity.Lookup("psi")
	percent, _ := quantity.Lookup("%")
	celsius, _ := quantity.Lookup("degC")
	for _, row := range []struct {
		text string
		d    quantity.Dimension
		bare quantity.Unit
		want string
	}{
		{"65", quantity.Pressure, psi, "65 psi"},
		{" 65 ", quantity.Pressure, psi, "65 psi"},
		{"4.5 bar", quantity.Pressure, psi, "4.5 bar"},
		{"33", quantity.Fraction, percent, "33 %"},
		{"0.33", quantity.Fraction, quantity.Usual(quantity.Fraction), "0.33 %"},
		{"-5", quantity.Temperature, celsius, "-5 degC"},
		{"0.5", quantity.Number, quantity.Unit{}, "0.5"},
	} {
		q, err := quantity.ParseIn(row.text, row.d, row.bare)
		require.NoError(t, err, row.text)
		require.Equal(t, row.want, quantity.Exact(q.Value, q.Unit))
	}
	for text, want := range map[string]string{
		"":       `"": is empty; write a pressure such as "1 psi"`,
		"5 mm":   `"5 mm": is a length where a pressure is due; use Pa, hPa, kPa, MPa, GPa, bar, psi or inHg`,
		"1e99":   `"1e99": is too large; write a pressure such as "1 psi"`,
		"twelve": `"twelve": is not a pressure; write a pressure such as "1 psi"`,
	} {
		_, err := quantity.ParseIn(text, quantity.Pressure, psi)
		require.EqualError(t, err, want)
	}
	// A unit of another dimension is not taken.
	_, err := quantity.ParseIn("5", quantity.Length, psi)
	require.EqualError(t, err, `"5": has no unit; write "5 mm"`)
}

// A text of any length and any bytes is shown in one short line.
func TestErrorsAreShort(t *testing.T) {
	for _, text := range []string{
		strings.Repeat("9", 1<<20) + " m", strings.Repeat("é", 1000), "5 " + strings.Repeat("mm", 1<<16),
		"5\n\x1b[31mmm", "\xff\xfe", "5 \xff", strings.Repeat("1 ", 1000) + "m",
	} {
		_, err := quantity.Parse(text, quantity.Length)
		require.Error(t, err)
		message := err.Error()
		require.True(t, utf8.ValidString(message))
		require.LessOrEqual(t, utf8.RuneCountInString(message), 300, message)
		require.NotContains(t, message, "\n")
		require.NotContains(t, message, "\x1b")
	}
}
