package rocketfile

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/sim/fault"
)

// A part of a shape makes one, of which the rest is missing then.
func TestOnePartAsksForTheRest(t *testing.T) {
	nose := "x.toml: nose: the section is missing; add [nose] with shape and length"
	length := `x.toml:4: body.length: missing; add it to [body], such as length = "980 mm"`
	for name, tt := range map[string]struct {
		text string
		want []string
	}{
		"length":    {swapped(t, "drag = 0.5", "drag = 0.5\nlength = \"1400 mm\""), []string{nose}},
		"balance":   {swapped(t, "drag = 0.5", "drag = 0.5\nbalance = \"400 mm\""), []string{nose, length}},
		"roughness": {swapped(t, "drag = 0.5", "drag = 0.5\nroughness = \"10 um\""), []string{nose, length}},
		"nose":      {plain + "[nose]\nlength = \"200 mm\"\n", []string{length, "x.toml:33: nose.shape: missing; add it to [nose], such as shape = \"tangent ogive\""}},
		"fins":      {plain + "[[fins]]\ncount = 3\n", []string{nose, length, `x.toml:33: fins.1.root: missing; add it to [[fins]], such as root = "110 mm"`}},
		"section":   {plain + "[[section]]\n", []string{nose, length, `x.toml:33: section.1.length: missing; add it to [[section]], such as length = "120 mm"`}},
		"part":      {plain + "[[part]]\n", []string{`x.toml:33: part.1.mass: missing; add it to [[part]], such as mass = "40 g"`, `x.toml:33: part.1.position: missing; add it to [[part]], such as position = "300 mm"`}},
	} {
		t.Run(name, func(t *testing.T) {
			_, err := Read("x.toml", folder(t), []byte(tt.text))
			require.Error(t, err)
			for _, want := range tt.want {
				require.Contains(t, strings.Split(err.Error(), "\n"), want)
			}
		})
	}
	_, err := Read("x.toml", folder(t), []byte(swapped(t, "drag = 0.5", "")))
	require.EqualError(t, err, "x.toml:4: body.drag: missing; add it to [body], such as drag = 0.48")
}

// Whatever is wrong with a shape is told with line, key, value and remedy.
func TestFaultsOfShapes(t *testing.T) {
	tests := []struct{ name, text, old, new, want string }{
		{"nose contour", finned, `"conical"`, `"pointed"`, `x.toml:11: nose.shape = "pointed": not one of the words for it; write "conical", "tangent ogive", "elliptical", "parabolic", "von Karman" or "power series"`},
		{"nose longer than the rocket", finned, `length = "200 mm"`, `length = "1500 mm"`, `x.toml:12: nose.length = "1500 mm": is longer than the whole rocket, 1400 mm; shorten the nose or correct body.length`},
		{"nose too wide", finned, `length = "200 mm"`, "length = \"200 mm\"\ndiameter = \"80 mm\"", `x.toml:13: nose.diameter = "80 mm": is wider than the body, 70 mm; give at most body.diameter, the largest outside diameter`},
		{"exponent", shapely, `exponent = 0.6`, `exponent = 1.5`, `nose.exponent = 1.5: too large; give 0.05 to 1`},
		{"sections too long", finned, `length = "100 mm"`, `length = "1300 mm"`, `x.toml:7: body.length = "1400 mm": is less than nose and sections add up to, 1500 mm; make body.length 1500 mm, or shorten what is in it by 100 mm`},
		{"step", finned, `length = "100 mm"`, "length = \"100 mm\"\nforward = \"60 mm\"\n[[section]]\nlength = \"20 mm\"\nforward = \"70 mm\"", `x.toml:20: section.2.forward = "70 mm": does not meet what is before it, 60 mm wide; give that diameter, or a section between them that tapers`},
		{"narrower than said", finned, `length = "100 mm"`, "length = \"100 mm\"\nforward = \"60 mm\"", `x.toml:5: body.diameter = "70 mm": is more than nose and sections have, 60 mm; give the largest outside diameter, or correct the sections`},
		{"floating fins", finned, `position = "1290 mm"`, `position = "1390 mm"`, `x.toml:25: fins.1.position = "1390 mm": floats: the root ends 100 mm behind the body; give at most 1290 mm for this root and body.length`},
		{"fins on the nose", finned, `position = "1290 mm"`, `position = "100 mm"`, `x.toml:25: fins.1.position = "100 mm": stands on the nose, which ends at 200 mm; move the fins aft onto the body`},
		{"overlapping fins", finned, `position = "1290 mm"`, "position = \"1290 mm\"\n[[fins]]\nname = \"fore\"\ncount = 3\nroot = \"100 mm\"\ntip = \"0 mm\"\nspan = \"50 mm\"\nsweep = \"50 mm\"\nthickness = \"2 mm\"\nposition = \"1200 mm\"", `x.toml:34: fins.fore.position = "1200 mm": overlaps fins.1, whose root goes from 1290 mm to 1400 mm; move one of the two, or make them one set`},
		{"two fins", finned, `count = 4`, `count = 2`, `x.toml:19: fins.1.count = 2: too small; give 3 to 6`},
		{"half a fin", finned, `count = 4`, `count = 3.5`, `x.toml:19: fins.1.count = 3.5: not a whole number; give 3 to 6`},
		{"fins with a unit", finned, `count = 4`, `count = "4 mm"`, `x.toml:19: fins.1.count = "4 mm": has a unit where a plain number is due; write "4"`},
		{"wide tip", finned, `tip = "60 mm"`, `tip = "300 mm"`, `x.toml:21: fins.1.tip = "300 mm": is more than twice the root chord; give at most 220 mm; check that root and tip are not exchanged`},
		{"thick fins", finned, `thickness = "3 mm"`, `thickness = "90 mm"`, `x.toml:24: fins.1.thickness = "90 mm": is too much; give at most half the mean chord, 42.5 mm`},
		{"a profile", finned, `thickness = "3 mm"`, "thickness = \"3 mm\"\nsection = \"oval\"", `x.toml:25: fins.1.section = "oval": not one of the words for it; write "flat", "rounded", "wedge" or "airfoil"`},
		{"cant", finned, `thickness = "3 mm"`, "thickness = \"3 mm\"\ncant = \"12 deg\"", `x.toml:25: fins.1.cant = "12 deg": too large; give -10 deg to 10 deg`},
		{"names twice", shapely, "name      = \"tail\"", "name      = \"2\"", `fins.2.name: a name that another [[fins]] has too; give each a name of its own`},
		{"a name", finned, `name = "tail"`, `name = "Tail end"`, `x.toml:15: section.1.name = "Tail end": not a name for a section; write 1 to 24 small letters, digits and hyphens, such as tail`},
		{"balance behind", finned, `balance = "650 mm"`, `balance = "1650 mm"`, `x.toml:8: body.balance = "1650 mm": out of range; give where the body balances, from the tip of the nose, less than body.length, 1.4 m`},
		{"inertia zero", finned, `balance = "650 mm"`, "balance = \"650 mm\"\ninertia = \"0 kg*m2\"", `x.toml:9: body.inertia = "0 kg*m2": zero; give 0.000001 kg*m2 to 10000 kg*m2`},
		{"inertia of a wall", finned, `balance = "650 mm"`, "balance = \"650 mm\"\ninertia = \"50 kg*m2\"", `x.toml:9: body.inertia = "50 kg*m2": is more than a body of this mass, length and balance can have; give at most 0.5 kg*m2; check the unit, kg*m2`},
		{"roll inertia", finned, `balance = "650 mm"`, "balance = \"650 mm\"\nroll_inertia = \"0.1 kg*m2\"", `x.toml:9: body.roll_inertia = "0.1 kg*m2": is more than a body of this mass and width can have; give at most 0.0121 kg*m2; check the unit, kg*m2`},
		{"roughness", finned, `balance = "650 mm"`, "balance = \"650 mm\"\nroughness = \"2 mm\"", `x.toml:9: body.roughness = "2 mm": too large; give 0 um to 1000 um`},
		{"short body", finned, `length = "1400 mm"`, `length = "60 mm"`, `x.toml:7: body.length = "60 mm": is less than the diameter; give the length from the tip of the nose to the aft end`},
		{"part off the rocket", listed, `position = "700 mm"`, `position = "1700 mm"`, `part.tube.position = "1700 mm": floats: it is off the body, 1400 mm long; give where the part balances, from the tip of the nose`},
		{"part ahead", listed, `length = "1200 mm"`, `length = "1500 mm"`, `part.tube.length = "1500 mm": reaches ahead of the tip of the nose; give at most 1400 mm for a part that balances in its middle there`},
		{"part's mass", listed, `mass = "200 g"`, `mass = "-2 g"`, `part.2.mass = "-2 g": negative; give 0 g to 200000 g`},
		{"no mass", strings.Replace(listed, `"800 g"`, `"0 g"`, 1), `mass = "200 g"`, `mass = "0 g"`, `part.tube.mass = "0 g": and all others are zero: the list has no mass; weigh the parts`},
		{"nozzle off", finned, `throat = "13 mm"`, "throat = \"13 mm\"\nnozzle = \"1700 mm\"", `x.toml:32: water.nozzle = "1700 mm": is off the body, 1.4 m long; give where the nozzle's exit is, from the tip of the nose`},
		{"fittings off", finned, `throat = "13 mm"`, "throat = \"13 mm\"\nfittings_at = \"1700 mm\"", `x.toml:32: water.fittings_at = "1700 mm": is off the body, 1.4 m long; give where the balance point of the fittings is, from the tip of the nose`},
		{"chamber too long", finned, `throat = "13 mm"`, "throat = \"13 mm\"\nnozzle = \"900 mm\"", `x.toml:29: water.volume = "4 L": makes a chamber longer than the rocket: 1.101 m of it before the nozzle's exit at 0.9 m; check volume, bore, body.length and water.nozzle`},
		{"motor off", finned, `case = "200 g"`, "case = \"200 g\"\nposition = \"1700 mm\"", `x.toml:43: motor.position = "1700 mm": is off the body, 1.4 m long; give where the motor's aft end is, from the tip of the nose`},
		{"motor's fittings off", finned, `case = "200 g"`, "case = \"200 g\"\nfittings_at = \"1700 mm\"", `x.toml:43: motor.fittings_at = "1700 mm": is off the body, 1.4 m long; give where the balance point of the fittings is, from the tip of the nose`},
		{"motor too long", finned, `case = "200 g"`, "case = \"200 g\"\nlength = \"300 mm\"\nposition = \"200 mm\"", `x.toml:43: motor.length = "300 mm": reaches ahead of the tip of the nose; give at most 0.2 m, or correct motor.position`},
		{"misalignment", finned, "[rail]", "[flight]\nmisalignment = \"11 deg\"\n[rail]", `x.toml:51: flight.misalignment = "11 deg": too large; give -10 deg to 10 deg`},
		{"offset", finned, "[rail]", "[flight]\noffset = \"60 mm\"\n[rail]", `x.toml:51: flight.offset = "60 mm": too large; give -50 mm to 50 mm`},
		{"model", finned, "[rail]", "[flight]\nmodel = \"stiff\"\n[rail]", `x.toml:51: flight.model = "stiff": not one of the words for it; write "rigid" or "point"`},
		{"gust", finned, "[rail]", "[gust]\nspeed = \"60 m/s\"\n[rail]", `x.toml:51: gust.speed = "60 m/s": too large; give 0 m/s to 50 m/s`},
		{"gust's height", finned, "[rail]", "[gust]\nheight = \"-1 m\"\n[rail]", `x.toml:51: gust.height = "-1 m": negative; give 0 m to 5000 m`},
		{"rigid without a shape", plain, "[rail]", "[flight]\nmodel = \"rigid\"\n[rail]", `x.toml:32: flight.model = "rigid": asks for a rigid body, and the file gives no shape; give [nose], [[fins]], body.length and body.balance, or write "point"`},
		{"rigid without a balance", strings.Replace(finned, "balance = \"650 mm\"\n", "", 1), "[rail]", "[flight]\nmodel = \"rigid\"\n[rail]", `x.toml:50: flight.model = "rigid": asks for a rigid body, and where it balances is not known; give body.balance or a mass list of [[part]], or write "point"`},
		{"a key of another section", finned, "[nose]\n", "[nose]\nspan = \"1 mm\"\n", `x.toml:11: nose.span: unknown key; it belongs in [[fins]]`},
		{"a slip", finned, "[nose]\n", "[nose]\nlenght = \"1 mm\"\n", `x.toml:11: nose.lenght: unknown key; perhaps length is meant`},
		{"one table", finned, "[[fins]]", "[fins]", `x.toml:18: fins: not written as it must be; write it as [[fins]] with keys below`},
		{"many noses", finned, "[nose]", "[[nose]]", `x.toml:10: nose: not written as it must be; write it as [nose] with keys below`},
	}
	dir := folder(t)
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			require.Equal(t, 1, strings.Count(tt.text, tt.old), tt.old)
			_, err := Read("x.toml", dir, []byte(strings.Replace(tt.text, tt.old, tt.new, 1)))
			require.Error(t, err)
			lines := strings.Split(err.Error(), "\n")
			if !strings.HasPrefix(tt.want, "x.toml") {
				for i := range lines { // where it stands matters less than what it says
					if _, rest, ok := strings.Cut(lines[i], ": "); ok {
						lines[i] = rest
					}
				}
			}
			require.Contains(t, lines, tt.want)
			require.Len(t, lines, 1, "one slip, one fault")
			var faults fault.List
			require.ErrorAs(t, err, &faults)
			_, key, _ := cutLast(faults[0].Key)
			if faults[0].Value != "" {
				require.Contains(t, strings.Split(strings.Replace(tt.text, tt.old, tt.new, 1), "\n")[faults[0].Line-1], key, "the line has the key")
			}
		})
	}
	_, err := Read("x.toml", dir, []byte(finned+manyLines(65, "[[part]]\nname = \"p%d\"\nmass = \"1 g\"\nposition = \"1 m\"\n")))
	require.ErrorContains(t, err, "part: more than 64 of them; take some out")
	_, err = Read("x.toml", dir, []byte(finned+manyLines(64, "[[part]]\nname = \"p%d\"\nmass = \"1 g\"\nposition = \"1 m\"\n")))
	require.NoError(t, err)
}
