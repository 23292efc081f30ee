package rocketfile

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/sim/quantity"
	"ullage/sim/rocket"
)

func unit(t *testing.T, name string, d quantity.Dimension) quantity.Unit {
	t.Helper()
	u, ok := quantity.LookupIn(name, d)
	require.True(t, ok, name)
	return u
}

// An edit changes the value's bytes and no other.
func TestSetChangesTheValueAlone(t *testing.T) {
	const text = "\xef\xbb\xbf# Mine.\r\nname = 'Mine' # mine\r\npower=\"water\"\r\n\r\n" +
		"  [body]   # the airframe\r\n  diameter= \"2.75 in\"\t# wide\r\n  mass =\"1.10 kg\"\r\n  drag = 0.50\r\n" +
		"[ water ]\r\nvolume = '''4.2 L'''\r\nbore = \"68 mm\" # volume = \"9 L\"\r\nthroat = \"13 mm\"\r\nfill = \"30 %\"\r\npressure = \"\"\"130 psi\"\"\"\r\n" +
		"[[canopy]]\r\ndiameter=\"1 m\"\r\ndeploy=\"apogee+1000ms\"\r\n[rail]\r\nlength=\"6 ft\"\r\n[wind]\r\nspeed=\"4 m/s\""
	f := readIn(t, t.TempDir(), text)
	tests := []struct{ input, value, old, new string }{
		{"name", "Yours", `'Mine'`, `'Yours'`},
		{"name", "It's", `'Mine'`, `"It's"`},
		{"body.diameter", "3 in", `"2.75 in"`, `"3 in"`},
		{"body.diameter", "70mm", `"2.75 in"`, `"70 mm"`},
		{"body.mass", "1.25 kg", `"1.10 kg"`, `"1.25 kg"`},
		{"body.mass", "2 lb", `"1.10 kg"`, `"2 lb"`},
		{"body.drag", "0.45", `0.50`, `0.45`},
		{"body.drag", "[[0, 0.4], [1, 0.6]]", `0.50`, `[[0, 0.4], [1, 0.6]]`},
		{"water.volume", "4.5 L", `'''4.2 L'''`, `'''4.5 L'''`},
		{"water.fill", "33 %", `"30 %"`, `"33 %"`},
		{"water.fill", "0.33", `"30 %"`, `"33 %"`},
		{"water.pressure", "9 bar", `"""130 psi"""`, `"""9 bar"""`},
		{"canopy.1.deploy.water", "apogee + 2 s", `"apogee+1000ms"`, `"apogee + 2 s"`},
		{"canopy.1.deploy.water", "2 s", `"apogee+1000ms"`, `"apogee + 2 s"`},
		{"canopy.1.deploy.water", "-0.5 s", `"apogee+1000ms"`, `"apogee - 0.5 s"`},
		{"canopy.1.deploy.water", "falling through 400 ft", `"apogee+1000ms"`, `"falling through 400 ft"`},
		{"rail.length", "1.8 m", `"6 ft"`, `"1.8 m"`},
		{"wind.speed", "10 mph", `"4 m/s"`, `"10 mph"`},
	}
	for _, tt := range tests {
		t.Run(tt.input+" "+tt.value, func(t *testing.T) {
			require.Equal(t, 1, strings.Count(text, tt.old))
			g, err := f.Set(tt.input, tt.value)
			require.NoError(t, err)
			require.Equal(t, strings.Replace(text, tt.old, tt.new, 1), string(g.Text()))
			require.Equal(t, text, string(f.Text()), "the file edited stays as it was")
		})
	}
}

func TestSetInKeepsTheFilesUnit(t *testing.T) {
	f := readIn(t, folder(t), whole)
	tests := []struct{ input, value, bare, old, new string }{
		{"water.pressure", "140", "psi", `"130 psi"`, `"140 psi"`},
		{"water.pressure", "10", "bar", `"130 psi"`, `"145.03773773020922 psi"`},
		{"water.pressure", "10 bar", "psi", `"130 psi"`, `"10 bar"`},
		{"water.throat", "0.6", "in", `"0.5 in"`, `"0.6 in"`},
		{"water.throat", "12.7", "mm", `"0.5 in"`, ``},
		{"water.fill", "31", "%", `"30 %"`, `"31 %"`},
		{"site.humidity", "50", "%", "humidity    = 0.4", "humidity    = 0.5"},
		{"site.humidity", "0.5", "", "humidity    = 0.4", "humidity    = 0.5"},
		{"site.temperature", "68", "degF", "temperature = \"18 degC\"\npressure", "temperature = \"20 degC\"\npressure"},
		{"body.drag_factor", "1.1", "", `1.02`, `1.1`},
		{"canopy.main.deploy.water", "2", "s", `"apogee - 1 s"`, `"apogee + 2 s"`},
		{"canopy.main.deploy.water", "apogee + 2", "s", `"apogee - 1 s"`, `"apogee + 2 s"`},
		{"canopy.main.deploy.water", "-500", "ms", `"apogee - 1 s"`, `"apogee - 0.5 s"`},
		{"canopy.main.deploy.water", "falling through 200", "m", `"apogee - 1 s"`, `"falling through 200 m"`},
		{"canopy.main.area", "1", "m2", `diameter      = "1.10 m"`, `area      = "1 m2"`},
		{"site.sea_level_pressure", "1013", "hPa", `pressure    = "975 hPa"`, `sea_level_pressure    = "1013 hPa"`},
	}
	for _, tt := range tests {
		t.Run(tt.input+" "+tt.value+" "+tt.bare, func(t *testing.T) {
			in, err := Find(f.Rocket(), tt.input)
			require.NoError(t, err)
			d := in.Dimension
			if strings.HasPrefix(tt.value, "falling") {
				d = quantity.Length
			}
			g, err := f.SetIn(tt.input, tt.value, unit(t, tt.bare, d))
			require.NoError(t, err)
			if tt.new == "" {
				require.Same(t, f, g, "the same value changes nothing")
				return
			}
			require.Equal(t, 1, strings.Count(whole, tt.old))
			require.Equal(t, strings.Replace(whole, tt.old, tt.new, 1), string(g.Text()))
		})
	}
	_, err := f.SetIn("water.throat", "13 bar", unit(t, "mm", quantity.Length))
	require.EqualError(t, err, "water.throat = 13 bar: is a pressure where a length is due; use um, mm, cm, m, in or ft")
	_, err = f.Set("water.throat", "13")
	require.EqualError(t, err, `water.throat = 13: has no unit; write "13 mm"`)
	_, err = f.Set("water.throat", "90 mm")
	require.EqualError(t, err, `water.throat = "90 mm": is as wide as the bore or wider; give a throat narrower than the bore`)
	_, err = f.Set("water.throta", "13 mm")
	require.EqualError(t, err, `water.throta: the rocket has no such input; perhaps water.throat is meant`)
}

func TestUnit(t *testing.T) {
	f := readIn(t, folder(t), whole)
	for input, want := range map[string]string{
		"water.throat": "in", "water.pressure": "psi", "water.fill": "%", "site.humidity": "%", "canopy.main.area": "m2",
		"canopy.main.deploy.water": "s", "canopy.2.deploy.water": "m", "canopy.main.deploy.motor": "s", "motor.delay": "s",
		"site.latitude": "", "power": "", "nothing": "", "water.tube.dead_volume": "L", "water.tube.outer": "mm",
	} {
		require.Equal(t, want, f.Unit(input).Name, input)
	}
	plain := readIn(t, folder(t), plain)
	require.Equal(t, "%", plain.Unit("water.fill").Name)
	require.Equal(t, "degC", plain.Unit("site.temperature").Name)
}

func TestSetAddsAKey(t *testing.T) {
	tests := []struct {
		name, text, input, value, old, new string
	}{
		{"after its neighbour", plain, "water.discharge", "0.95", "bore = \"68 mm\"\n", "bore = \"68 mm\"\ndischarge = 0.95\n"},
		{"at the section's end", plain, "rail.tilt", "3 deg", "length = \"1.8 m\"\n", "length = \"1.8 m\"\ntilt = \"3 deg\"\n"},
		{"in a new section at the end", plain, "wind.speed", "3 m/s", "length = \"1.8 m\"\n", "length = \"1.8 m\"\n\n[wind]\nspeed = \"3 m/s\"\n"},
		{"in a new section between", plain, "site.elevation", "100 m", "deploy = \"apogee + 1 s\"\n", "deploy = \"apogee + 1 s\"\n\n[site]\nelevation = \"100 m\"\n"},
		{"in a canopy", plain, "canopy.main.opening_force_coefficient", "1.5", "diameter = \"1 m\"\n", "diameter = \"1 m\"\nopening_force_coefficient = 1.5\n"},
		{"in a subsection", plain, "water.tube.dead_volume", "50 mL", "inner = \"9 mm\"\n", "inner = \"9 mm\"\ndead_volume = \"50 mL\"\n"},
		{"a fraction is a number", plain, "site.humidity", "40 %", "deploy = \"apogee + 1 s\"\n", "deploy = \"apogee + 1 s\"\n\n[site]\nhumidity = \"40 %\"\n"},
		{"a bare fraction too", plain, "site.humidity", "0.4", "deploy = \"apogee + 1 s\"\n", "deploy = \"apogee + 1 s\"\n\n[site]\nhumidity = 0.4\n"},
		{"at the top", strings.Replace(strings.Replace(plain, "name = \"Plain\"\n", "", 1), "power = \"water\"\n", "power = \"water\"\n", 1), "name", "Plain",
			"power = \"water\"\n", "name = \"Plain\"\npower = \"water\"\n"},
		{"lined up", whole, "canopy.2.coefficient", "0.7", "area   = \"0.1 m2\"\n", "area   = \"0.1 m2\"\ncoefficient = 0.7\n"},
		{"lined up, shorter", strings.Replace(whole, "coefficient   = 0.8\n", "", 1), "canopy.main.coefficient", "0.8", "diameter      = \"1.10 m\"\n", "diameter      = \"1.10 m\"\ncoefficient   = 0.8\n"},
		{"indented", strings.Replace(plain, `fill = 0.3`, "\t fill = 0.3", 1), "water.exponent", "1.3", "bore = \"68 mm\"\n", "bore = \"68 mm\"\nexponent = 1.3\n"},
		{"one rule becomes two", plain, "canopy.main.deploy.motor", "ejection", `deploy = "apogee + 1 s"`, `deploy = { water = "apogee + 1 s", motor = "ejection" }`},
		{"the other of two", plain, "canopy.main.deploy.water", "launch + 9 s", `deploy = "apogee + 1 s"`, `deploy = { water = "launch + 9 s", motor = "apogee + 1 s" }`},
		{"with CRLF", strings.ReplaceAll(plain, "\n", "\r\n"), "wind.speed", "3 m/s", "length = \"1.8 m\"\r\n", "length = \"1.8 m\"\r\n\r\n[wind]\r\nspeed = \"3 m/s\"\r\n"},
		{"without a last newline", strings.TrimSuffix(plain, "\n"), "wind.speed", "3 m/s", "length = \"1.8 m\"", "length = \"1.8 m\"\n\n[wind]\nspeed = \"3 m/s\"\n"},
		{"a key without a last newline", strings.TrimSuffix(plain, "\n"), "rail.tilt", "3 deg", "length = \"1.8 m\"", "length = \"1.8 m\"\ntilt = \"3 deg\""},
		{"below the block's comment", strings.Replace(plain, "deploy = \"apogee + 1 s\"\n", "deploy = \"apogee + 1 s\"\n# opening_force_coefficient = 2\n", 1), "wind.speed", "1 m/s",
			"length = \"1.8 m\"\n", "length = \"1.8 m\"\n\n[wind]\nspeed = \"1 m/s\"\n"},
		{"below a comment at the end", plain + "# the end\n", "wind.speed", "1 m/s", "# the end\n", "# the end\n\n[wind]\nspeed = \"1 m/s\"\n"},
		{"above the next header's comment", strings.Replace(plain, "[rail]", "# The rail.\n[rail]", 1), "site.elevation", "9 m",
			"deploy = \"apogee + 1 s\"\n", "deploy = \"apogee + 1 s\"\n\n[site]\nelevation = \"9 m\"\n"},
	}
	dir := folder(t)
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			require.Equal(t, 1, strings.Count(tt.text, tt.old), tt.old)
			g, err := readIn(t, dir, tt.text).Set(tt.input, tt.value)
			require.NoError(t, err)
			require.Equal(t, strings.Replace(tt.text, tt.old, tt.new, 1), string(g.Text()))
		})
	}
}

// base is what every file of the next tests has besides what they show.
const base = `body = { diameter = "70 mm", mass = "1 kg", drag = 0.5 }
rail = { length = "1.8 m" }
`

const waterKeys = `volume = "4 L", bore = "68 mm", throat = "13 mm", fill = 0.3, pressure = "9 bar"`

func TestSetInEveryWayOfWriting(t *testing.T) {
	dots := "water." + strings.ReplaceAll(waterKeys, ", ", "\nwater.") + "\n"
	lines := strings.ReplaceAll(waterKeys, ", ", "\n") + "\n"
	tests := []struct{ name, text, input, value, want string }{
		{"braces", base + "water = { " + waterKeys + " }\n", "water.gas", "helium",
			base + "water = { " + waterKeys + `, gas = "helium" }` + "\n"},
		{"braces with a comma at the end", base + "water = { " + waterKeys + ",\n}\n", "water.gas", "helium",
			base + "water = { " + waterKeys + `, gas = "helium",` + "\n}\n"},
		{"dots", base + dots, "water.gas", "helium",
			base + dots + "water.gas = \"helium\"\n"},
		{"dots with blanks", base + strings.ReplaceAll(dots, "water.", `"water" . `), "water.gas", "helium",
			base + strings.ReplaceAll(dots, "water.", `"water" . `) + "\"water\" . gas = \"helium\"\n"},
		{"a part of dots", base + dots + "water.tube.length = \"0.6 m\"\nwater.tube.outer = \"12 mm\"\nwater.tube.inner = \"9 mm\"\n", "water.tube.dead_volume", "1 mL",
			base + dots + "water.tube.length = \"0.6 m\"\nwater.tube.outer = \"12 mm\"\nwater.tube.inner = \"9 mm\"\nwater.tube.dead_volume = \"1 mL\"\n"},
		{"dots in a section", base + "[water]\n" + lines + "tube.length = \"0.6 m\"\ntube.outer = \"12 mm\"\ntube.inner = \"9 mm\"\n", "water.tube.dead_volume", "1 mL",
			base + "[water]\n" + lines + "tube.length = \"0.6 m\"\ntube.outer = \"12 mm\"\ntube.inner = \"9 mm\"\ntube.dead_volume = \"1 mL\"\n"},
		{"a section below its part", base + "[water.tube]\nlength = \"0.6 m\"\nouter = \"12 mm\"\ninner = \"9 mm\"\n[water]\n" + lines, "water.gas", "helium",
			base + "[water.tube]\nlength = \"0.6 m\"\nouter = \"12 mm\"\ninner = \"9 mm\"\n[water]\n" + strings.Replace(lines, "bore = \"68 mm\"\n", "bore = \"68 mm\"\ngas = \"helium\"\n", 1)},
		{"a list of canopies", base + "water = { " + waterKeys + " }\ncanopy = [ { diameter = \"1 m\", deploy = \"ejection\" } ]\n", "canopy.1.opening_force_coefficient", "2",
			base + "water = { " + waterKeys + " }\ncanopy = [ { diameter = \"1 m\", deploy = \"ejection\", opening_force_coefficient = 2 } ]\n"},
		{"dotted rules", base + "water = { " + waterKeys + " }\n[[canopy]]\ndiameter = \"1 m\"\ndeploy.motor = \"ejection\"\n", "canopy.1.deploy.water", "apogee + 1 s",
			base + "water = { " + waterKeys + " }\n[[canopy]]\ndiameter = \"1 m\"\ndeploy.motor = \"ejection\"\ndeploy.water = \"apogee + 1 s\"\n"},
		{"rules under a header", base + "water = { " + waterKeys + " }\n[[canopy]]\ndiameter = \"1 m\"\n[canopy.deploy]\nmotor = \"ejection\"\n", "canopy.1.deploy.water", "apogee + 1 s",
			base + "water = { " + waterKeys + " }\n[[canopy]]\ndiameter = \"1 m\"\n[canopy.deploy]\nwater = \"apogee + 1 s\"\nmotor = \"ejection\"\n"},
		{"rules in braces", base + "water = { " + waterKeys + " }\n[[canopy]]\ndiameter = \"1 m\"\ndeploy = {motor = \"ejection\"}\n", "canopy.1.deploy.water", "apogee + 1 s",
			base + "water = { " + waterKeys + " }\n[[canopy]]\ndiameter = \"1 m\"\ndeploy = {motor = \"ejection\", water = \"apogee + 1 s\"}\n"},
		{"empty braces", base + "wind = {}\nwater = { " + waterKeys + " }\n", "wind.speed", "3 m/s",
			base + "wind = { speed = \"3 m/s\" }\nwater = { " + waterKeys + " }\n"},
		{"no header at all", base + "water = { " + waterKeys + " }\n", "wind.speed", "3 m/s",
			base + "water = { " + waterKeys + " }\n\n[wind]\nspeed = \"3 m/s\"\n"},
		{"a key at the top of tables", "# Mine.\n[water]\n" + lines + "[body]\ndiameter = \"7 cm\"\nmass = \"1 kg\"\ndrag = 0.4\n[rail]\nlength = \"1 m\"\n", "name", "Mine",
			"# Mine.\nname = \"Mine\"\n\n[water]\n" + lines + "[body]\ndiameter = \"7 cm\"\nmass = \"1 kg\"\ndrag = 0.4\n[rail]\nlength = \"1 m\"\n"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			f := readIn(t, t.TempDir(), tt.text)
			g, err := f.Set(tt.input, tt.value)
			require.NoError(t, err)
			require.Equal(t, tt.want, string(g.Text()))
			back, err := g.Reset(tt.input)
			require.NoError(t, err)
			sameRocket(t, f, back)
		})
	}
}

func TestResetTakesAKeyOut(t *testing.T) {
	f := readIn(t, folder(t), whole)
	g, err := f.Reset("water.exponent")
	require.NoError(t, err)
	require.Equal(t, strings.Replace(whole, "exponent    = 1.3\n", "", 1), string(g.Text()))
	require.False(t, g.Given("water.exponent"))
	same, err := g.Reset("water.exponent")
	require.NoError(t, err)
	require.Same(t, g, same)

	g, err = f.Reset("canopy.main.deploy.motor")
	require.NoError(t, err)
	require.Contains(t, string(g.Text()), `deploy        = { water = "apogee - 1 s" }`)
	require.Equal(t, rocket.Rule{}, g.Rocket().Canopies[0].Motor)
	g, err = f.Reset("canopy.main.deploy.water")
	require.NoError(t, err)
	require.Contains(t, string(g.Text()), `deploy        = { motor = "ejection" }`)
	g, err = f.Reset("canopy.2.deploy.water")
	require.NoError(t, err)
	require.Contains(t, string(g.Text()), `deploy = { motor = "falling through 120 m" }`)

	_, err = f.Reset("water.throat")
	require.EqualError(t, err, `water.throat: missing; add it to [water], such as throat = "13 mm"`)
	_, err = f.Reset("nothing")
	require.EqualError(t, err, "nothing: the rocket has no such input; ullage inputs lists them")
	_, err = readIn(t, t.TempDir(), base+"water = { "+waterKeys+" }\ncanopy = [{diameter=\"1 m\", deploy=\"apogee+1s\"}]\n").Reset("canopy.1.deploy.water")
	require.EqualError(t, err, "canopy.1.deploy.water: the only rule of the canopy; remove the canopy instead")
}

func TestAddAndRemoveACanopy(t *testing.T) {
	f := readIn(t, folder(t), plain)
	g, name, err := f.AddCanopy()
	require.NoError(t, err)
	require.Equal(t, "drogue", name, "main is taken")
	// 1 kg, 0.2 kg of motor case, 1.225 kg/m³, 5 m/s, 0.75: 1.02 m², 1.14 m across: the main is
	// near that, and what is added is a drogue, which opens before it.
	require.Equal(t, strings.Replace(plain, "\n[rail]", `
[[canopy]]
name     = "drogue"
diameter = "0.3 m"
deploy   = "apogee"

[rail]`, 1), string(g.Text()))
	require.Len(t, g.Rocket().Canopies, 2)
	back, err := g.RemoveCanopy("drogue")
	require.NoError(t, err)
	require.Equal(t, plain, string(back.Text()))
	none, err := back.RemoveCanopy("main")
	require.NoError(t, err)
	require.Empty(t, none.Rocket().Canopies)
	_, name, err = none.AddCanopy()
	require.NoError(t, err)
	require.Equal(t, "main", name)
	beside, _, err := none.AddCanopy()
	require.NoError(t, err)
	require.InDelta(t, 1.15, beside.Rocket().Canopies[0].Diameter, 1e-12)
	small, err := beside.Set("canopy.main.diameter", "0.3 m")
	require.NoError(t, err)
	large, name, err := small.AddCanopy()
	require.NoError(t, err)
	require.Equal(t, "canopy-2", name)
	require.InDelta(t, 1.15, large.Rocket().Canopies[1].Diameter, 1e-12, "beside a drogue alone comes a main")
	require.Equal(t, rocket.Falling, large.Rocket().Canopies[1].Water.Trigger)
	charged, err := f.SetAll(Change{"motor.delay", "6 s"}, Change{"canopy.main.deploy.motor", "ejection"}, Change{"canopy.main.deploy.water", "falling through 100 m"})
	require.NoError(t, err)
	charged, _, err = charged.AddCanopy()
	require.NoError(t, err)
	require.Equal(t, rocket.Rule{Trigger: rocket.AfterApogee}, charged.Rocket().Canopies[1].Water)
	require.Equal(t, rocket.Rule{Trigger: rocket.AfterBurnout, Value: 5}, charged.Rocket().Canopies[1].Motor)
	_, err = none.RemoveCanopy("main")
	require.EqualError(t, err, "canopy.main: the rocket has no such canopy; there is none")

	for range 6 {
		g, name, err = g.AddCanopy()
		require.NoError(t, err)
	}
	require.Equal(t, "canopy-8", name)
	_, _, err = g.AddCanopy()
	require.ErrorContains(t, err, "more than a rocket may carry")
}

func TestAddCanopyInEveryWayOfWriting(t *testing.T) {
	for name, text := range map[string]string{
		"none":         base + "water = { " + waterKeys + " }\n",
		"list":         base + "water = { " + waterKeys + " }\ncanopy = [\n  { area = \"1 m2\", deploy = \"ejection\" }, # first\n]\n",
		"empty list":   base + "water = { " + waterKeys + " }\ncanopy = []\n",
		"comments":     plain + "\n# Below the main.\n[[canopy]]\narea = \"1 m2\"\n  [canopy.deploy]\n  water = \"apogee\"\n  # no motor\n\n# The wind.\n[wind]\n",
		"at the start": "[[canopy]]\narea = \"1 m2\"\ndeploy = \"apogee\"\n" + plain[strings.Index(plain, "[body]"):strings.Index(plain, "[motor]")] + "[rail]\nlength = \"1 m\"",
	} {
		t.Run(name, func(t *testing.T) {
			f := readIn(t, folder(t), text)
			g, made, err := f.AddCanopy()
			require.NoError(t, err)
			require.Len(t, g.Rocket().Canopies, len(f.Rocket().Canopies)+1)
			back, err := g.RemoveCanopy(made)
			require.NoError(t, err)
			sameRocket(t, f, back)
			require.Equal(t, strings.TrimRight(text, "\n"), strings.TrimRight(string(back.Text()), "\n"))
			for _, c := range g.Rocket().Canopies {
				less, err := g.RemoveCanopy(c.Name)
				require.NoError(t, err)
				require.Len(t, less.Rocket().Canopies, len(g.Rocket().Canopies)-1)
			}
		})
	}
}

func TestAddAndRemoveTheTube(t *testing.T) {
	tube := plain[strings.Index(plain, "[water.tube]"):strings.Index(plain, "[motor]")]
	without := strings.Replace(plain, tube, "", 1)
	f := readIn(t, folder(t), plain)
	g, err := f.RemoveTube()
	require.NoError(t, err)
	require.Equal(t, without, string(g.Text()))
	require.Nil(t, g.Rocket().Water.Tube)
	_, err = g.RemoveTube()
	require.EqualError(t, err, "water.tube: the rocket has no launch tube; add one first")
	_, err = f.AddTube()
	require.EqualError(t, err, "water.tube: the rocket has a launch tube; change that one")

	h, err := g.AddTube()
	require.NoError(t, err)
	tubed := h.Rocket().Water.Tube
	require.NotNil(t, tubed)
	require.Less(t, tubed.Outer, 0.013)
	require.Equal(t, strings.Replace(without, "\n[motor]", `
[water.tube]
length = "`+quantity.Exact(tubed.Length, unit(t, "mm", quantity.Length))+`"
outer  = "12.8 mm"
inner  = "9.6 mm"

[motor]`, 1), string(h.Text()))
	back, err := h.RemoveTube()
	require.NoError(t, err)
	require.Equal(t, without, string(back.Text()))

	for name, text := range map[string]string{
		"braces": base + "water = { " + waterKeys + " }\n",
		"dots":   base + "water." + strings.ReplaceAll(waterKeys, ", ", "\nwater.") + "\n",
		"full":   base + "water = { " + strings.Replace(waterKeys, "0.3", "0.9", 1) + " }\n",
		"narrow": base + "water = { " + strings.Replace(waterKeys, "13 mm", "0.5 mm", 1) + " }\n",
		"wide":   base + "water = { " + strings.Replace(waterKeys, "13 mm", "67 mm", 1) + " }\n",
	} {
		t.Run(name, func(t *testing.T) {
			f := readIn(t, t.TempDir(), text)
			g, err := f.AddTube()
			if name == "wide" { // no room for the liquid around it
				require.Error(t, err)
				return
			}
			require.NoError(t, err)
			w := g.Rocket().Water
			bore, outer := w.Bore*w.Bore, w.Tube.Outer*w.Tube.Outer
			require.Greater(t, w.Tube.Length*(bore-outer), w.Fill*w.Volume*4/3.1416, "the tip starts above the liquid")
			back, err := g.RemoveTube()
			require.NoError(t, err)
			sameRocket(t, f, back)
		})
	}
	_, err = readIn(t, folder(t), strings.Replace(plain, plain[strings.Index(plain, "[water]"):strings.Index(plain, "[motor]")], "", 1)[len("name = \"Plain\"\npower = \"water\"\n"):]).AddTube()
	require.EqualError(t, err, "water.tube: the rocket has no water drive; add [water] first")
}

func TestSetAllAsksForTheOutcomeAlone(t *testing.T) {
	f := readIn(t, folder(t), plain)
	f, err := f.RemoveTube()
	require.NoError(t, err)
	_, err = f.Set("water.throat", "80 mm")
	require.Error(t, err)
	g, err := f.SetAll(Change{"water.throat", "80 mm"}, Change{"water.bore", "90 mm"}, Change{"body.diameter", "95 mm"})
	require.NoError(t, err)
	require.Equal(t, 0.08, g.Rocket().Water.Throat)
	_, err = f.SetAll(Change{"water.throat", "80"}, Change{"water.bare", "9 mm"})
	require.EqualError(t, err, `water.throat = 80: has no unit; write "80 mm"
water.bare: the rocket has no such input; perhaps water.bore is meant`)
	g, err = f.SetAll(Change{"water.tube.length", "0.6 m"}, Change{"water.tube.outer", "12 mm"}, Change{"water.tube.inner", "8 mm"})
	require.NoError(t, err)
	require.Equal(t, rocket.LaunchTube{Length: 0.6, Outer: 0.012, Inner: 0.008}, *g.Rocket().Water.Tube)
	g, err = f.SetAll()
	require.NoError(t, err)
	require.Same(t, f, g)
}

// Of an input changed twice the last counts, if it is what the file says too, and if the first change took its key away.
func TestSetAllTheLastCounts(t *testing.T) {
	f, err := Open("../../testdata/heron.toml")
	require.NoError(t, err)
	g, err := f.SetAll(Change{"rail.length", "1 m"}, Change{"rail.length", "2.2 m"})
	require.NoError(t, err)
	require.Equal(t, 2.2, g.Rocket().Rail.Length)
	require.Equal(t, string(f.Text()), string(g.Text()))
	g, err = f.SetAll(Change{"canopy.main.area", "2 m2"}, Change{"canopy.main.diameter", "1.00 m"})
	require.NoError(t, err)
	require.Equal(t, 1.0, g.Rocket().Canopies[0].Diameter)
	require.Zero(t, g.Rocket().Canopies[0].Area)
}
