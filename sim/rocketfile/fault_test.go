package rocketfile

import (
	"bytes"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/sim/fault"
	"ullage/thrust"
)

// plain is a small rocket file with both drives; tests spoil one thing in it.
const plain = `name = "Plain"
power = "water"

[body]
diameter = "70 mm"
mass = "1 kg"
drag = 0.5

[water]
volume = "4 L"
bore = "68 mm"
throat = "13 mm"
fill = 0.3
pressure = "9 bar"

[water.tube]
length = "0.5 m"
outer = "12 mm"
inner = "9 mm"

[motor]
curve = "h.csv"
case = "200 g"
propellant = "100 g"

[[canopy]]
name = "main"
diameter = "1 m"
deploy = "apogee + 1 s"

[rail]
length = "1.8 m"
`

const curve = "time_s,thrust_n\n0,0\n0.1,100\n2,80\n2.1,0\n"

// folder has the curve that plain names.
func folder(t testing.TB) string {
	t.Helper()
	dir := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(dir, "h.csv"), []byte(curve), 0o644))
	return dir
}

func readIn(t testing.TB, dir, text string) *File {
	t.Helper()
	f, err := Read("x.toml", dir, []byte(text))
	require.NoError(t, err)
	return f
}

func swapped(t *testing.T, old, new string) string {
	t.Helper()
	require.Equal(t, 1, strings.Count(plain, old), old)
	return strings.Replace(plain, old, new, 1)
}

func TestFaultsOfOneValue(t *testing.T) {
	const throat = `throat = "13 mm"`
	tests := []struct {
		name, old, new, want string
	}{
		{"wrong dimension", throat, `throat = "13 bar"`, `x.toml:12: water.throat = "13 bar": is a pressure where a length is due; use um, mm, cm, m, in or ft`},
		{"unknown unit", throat, `throat = "13 mmm"`, `x.toml:12: water.throat = "13 mmm": has the unknown unit "mmm"; perhaps "13 mm"; use um, mm, cm, m, in or ft`},
		{"bare number", throat, `throat = 13`, `x.toml:12: water.throat = 13: has no unit; write "13 mm"`},
		{"no quotes", throat, `throat = 13 mm # turned`, `x.toml:12: water.throat = 13 mm: a quantity without quotes; write "13 mm"`},
		{"no quotes, no space", throat, `throat = 13mm`, `x.toml:12: water.throat = 13mm: a quantity without quotes; write "13mm"`},
		{"nan", throat, `throat = nan`, `x.toml:12: water.throat = nan: not a finite number; give a length such as "0.5 mm"`},
		{"NaN", throat, `throat = NaN`, `x.toml:12: water.throat = NaN: not a finite number; give a finite value`},
		{"nan with a unit", throat, `throat = "nan mm"`, `x.toml:12: water.throat = "nan mm": is not a length; write a length such as "70 mm"`},
		{"inf", `drag = 0.5`, `drag = -inf`, `x.toml:7: body.drag = -inf: not a finite number; give a plain number such as 0`},
		{"beyond doubles", throat, `throat = "1e400 mm"`, `x.toml:12: water.throat = "1e400 mm": is too large; write a length such as "70 mm"`},
		{"beyond doubles, bare", `drag = 0.5`, `drag = 1e400`, `x.toml:7: body.drag = 1e400: is too large; write a plain number such as "0.48"`},
		{"negative", throat, `throat = "-13 mm"`, `x.toml:12: water.throat = "-13 mm": negative; give 0.5 mm to 500 mm`},
		{"zero volume", `volume = "4 L"`, `volume = "0 L"`, `x.toml:10: water.volume = "0 L": zero; give 0.001 L to 1000 L`},
		{"too large", `mass = "1 kg"`, `mass = "1000 kg"`, `x.toml:6: body.mass = "1000 kg": too large; give 0.001 kg to 200 kg`},
		{"too small", throat, `throat = "0.1 mm"`, `x.toml:12: water.throat = "0.1 mm": too small; give 0.5 mm to 500 mm`},
		{"full", `fill = 0.3`, `fill = "100 %"`, `x.toml:13: water.fill = "100 %": too large; give 0 % to 98 %`},
		{"percent left out", `fill = 0.3`, `fill = 30`, `x.toml:13: water.fill = 30: too large; give 0 % to 98 %`},
		{"number in quotes", `fill = 0.3`, `fill = "0.3"`, `x.toml:13: water.fill = "0.3": a plain number in quotes; write 0.3`},
		{"boolean", throat, `throat = true`, `x.toml:12: water.throat = true: not a length; give a length such as "0.5 mm"`},
		{"date", throat, `throat = 1979-05-27`, `x.toml:12: water.throat = 1979-05-27: not a length; give a length such as "0.5 mm"`},
		{"array", throat, `throat = ["13 mm"]`, `x.toml:12: water.throat = ["13 mm"]: not a length; give a length such as "0.5 mm"`},
		{"table", throat, `throat = { d = "13 mm" }`, `x.toml:12: water.throat = { d = "13 mm" }: not a length; give a length such as "0.5 mm"`},
		{"nothing", throat, `throat =`, `x.toml:12: water.throat: no value; give one, or take the line out`},
		{"open quote", throat, `throat = "13 mm`, `x.toml:12: water.throat = "13 mm: a quote that is not closed; end the text with the quote it began with, on the same line`},
		{"colon", throat, `throat: "13 mm"`, `x.toml:12: throat: "13 mm": expected '=' after key; write it as key = value`},
		{"no leading digit", `drag = 0.5`, `drag = .5`, `x.toml:7: body.drag = .5: a number without a digit before its point; write 0.5`},
		{"decimal comma", `drag = 0.5`, `drag = 0,5`, `x.toml:7: body.drag = 0,5: a quantity without quotes; write "0,5"`},
		{"bare word", `power = "water"`, `power = water`, `x.toml:2: power = water: a text without quotes; write "water"`},
		{"wide throat", throat, `throat = "90 mm"`, `x.toml:12: water.throat = "90 mm": is as wide as the bore or wider; give a throat narrower than the bore`},
		{"fat tube", `outer = "12 mm"`, `outer = "20 mm"`, `x.toml:18: water.tube.outer = "20 mm": is fatter than the throat; give at most the throat's diameter`},
		{"tube outside in", `inner = "9 mm"`, `inner = "12 mm"`, `x.toml:19: water.tube.inner = "12 mm": is not inside the tube's outside; give less than the outer diameter`},
		{"long tube", `length = "0.5 m"`, `length = "2 m"`, `x.toml:17: water.tube.length = "2 m": is longer than the chamber; give at most 1.1 m, the volume over the bore's area`},
		{"unknown key", throat, `trhoat = "13 mm"`, `x.toml:12: water.trhoat: unknown key; perhaps throat is meant`},
		{"unknown key at the top", `name = "Plain"`, `names = "Plain"`, `x.toml:1: names: unknown key; perhaps name is meant`},
		{"unknown key, other section", `drag = 0.5`, "drag = 0.5\nbore = \"68 mm\"", `x.toml:8: body.bore: unknown key; it belongs in [water]`},
		{"unknown key, nothing like it", `length = "1.8 m"`, "length = \"1.8 m\"\ncolour = \"red\"", `x.toml:33: rail.colour: unknown key; [rail] may have length, tilt and heading`},
		{"unknown section", `[rail]`, `[rial]`, `x.toml:31: rial: unknown key; perhaps rail is meant`},
		{"quoted dots", `name = "Plain"`, `"water.tube" = 1`, `x.toml:1: water.tube: unknown key; perhaps water.tube is meant`},
		{"two keys", throat, throat + "\nthroat = \"14 mm\"", `x.toml:13: water.throat = "14 mm": given twice, first on line 12; keep one`},
		{"two keys, one dotted", `name = "Plain"`, "name = \"Plain\"\nbody.mass = \"2 kg\"", "x.toml:5: body: given twice, first on line 2; keep one\nx.toml:7: body.mass = \"1 kg\": given twice, first on line 2; keep one"},
		{"two sections", `[rail]`, "[body]\n\n[rail]", `x.toml:31: body: given twice, first on line 4; keep one`},
		{"single canopy", `[[canopy]]`, `[canopy]`, `x.toml:26: canopy: not written as it must be; write it as [[canopy]] with keys below`},
		{"water as a list", `[water]`, `[[water]]`, `x.toml:9: water: not written as it must be; write it as [water] with keys below`},
		{"open header", `[rail]`, `[rail`, `x.toml:31: [rail: expected ']' to close table name; mend it; below this line nothing was checked`},
		{"power", `power = "water"`, `power = "steam"`, `x.toml:2: power = "steam": not one of the words for it; write "water" or "motor"`},
		{"power missing", `power = "water"`, ``, `x.toml: power: missing, and the file has [water] and [motor]; add power = "water" or power = "motor" at the top`},
		{"missing section", "[rail]\nlength = \"1.8 m\"", "[wind]\nspeed = \"3 m/s\"", ``}, // the tube guides it
		{"missing section, motor", `power = "water"`, `power = "motor"`, ``},
		{"gas", throat, throat + "\ngas = \"neon\"", `x.toml:13: water.gas = "neon": not one of the words for it; write "air", "nitrogen", "argon", "helium" or "carbon dioxide"`},
		{"name", `name = "Plain"`, `name = "Pl\u001bain"`, `x.toml:1: name = "Pl\u001bain": holds control characters; write plain letters`},
		{"canopy name", `name = "main"`, `name = "Main one"`, `x.toml:27: canopy.1.name = "Main one": not a name for a canopy; write 1 to 24 small letters, digits and hyphens, such as main`},
		{"both sizes", `diameter = "1 m"`, "diameter = \"1 m\"\narea = \"1 m2\"", `x.toml:29: canopy.main.area = "1 m2": given beside diameter on line 28; keep one of the two`},
		{"no size", `diameter = "1 m"`, ``, `x.toml:26: canopy.main.diameter: missing, and so is area; add it to [[canopy]], such as diameter = "1.1 m"`},
		{"no rule", `deploy = "apogee + 1 s"`, ``, `x.toml:26: canopy.main.deploy: missing; add it to [[canopy]], such as deploy = "apogee + 1 s"`},
		{"empty rule", `deploy = "apogee + 1 s"`, `deploy = {}`, `x.toml:26: canopy.main.deploy: missing; add it to [[canopy]], such as deploy = "apogee + 1 s"`},
		{"rule without a unit", `deploy = "apogee + 1 s"`, `deploy = "apogee + 1"`, `x.toml:29: canopy.main.deploy = "apogee + 1": has no unit after its number; write "apogee + 1 s"`},
		{"rule of no kind", `deploy = "apogee + 1 s"`, `deploy = "at the top"`, `x.toml:29: canopy.main.deploy = "at the top": not an opening rule; ` + ruleRemedy},
		{"rule before launch", `deploy = "apogee + 1 s"`, `deploy = "launch - 1 s"`, `x.toml:29: canopy.main.deploy = "launch - 1 s": negative; give 0 s to 600 s`},
		{"rule, wrong dimension", `deploy = "apogee + 1 s"`, `deploy = "falling through 9 s"`, `x.toml:29: canopy.main.deploy = "falling through 9 s": is a time where a length is due; use um, mm, cm, m, in or ft`},
		{"rule for one drive", `deploy = "apogee + 1 s"`, `deploy = { water = "apogee + 1 s", motor = "later" }`, `x.toml:29: canopy.main.deploy.motor = "later": not an opening rule; ` + ruleRemedy},
		{"rule for no drive", `deploy = "apogee + 1 s"`, `deploy = { water = "apogee + 1 s", steam = "ejection" }`, `x.toml:29: canopy.main.deploy.steam: unknown key; give deploy for water, for motor or for both`},
		{"drag table falls", `drag = 0.5`, `drag = [[0.5, 0.4], [0.2, 0.5]]`, `x.toml:7: body.drag = [0.2, 0.5]: the Mach numbers do not rise; put the points in order of Mach, each once`},
		{"drag table of one column", `drag = 0.5`, `drag = [0.5, 0.4]`, `x.toml:7: body.drag = [0.5, 0.4]: a point is not a pair; ` + dragRemedy},
		{"drag table empty", `drag = 0.5`, `drag = []`, `x.toml:7: body.drag = []: not 1 to 200 points of drag against Mach; ` + dragRemedy},
		{"drag table negative", `drag = 0.5`, `drag = [[0, 0.5], [1, -0.5]]`, `x.toml:7: body.drag = [1, -0.5]: negative; give 0 to 10`},
		{"delays", `case = "200 g"`, "case = \"200 g\"\ndelays = [\"6 s\", 8]", `x.toml:24: motor.delays = ["6 s", 8]: 8 in it: has no unit; write "8 s"`},
		{"idle drive", `case = "200 g"`, `case = "-200 g"`, `x.toml:23: motor.case = "-200 g": negative; give 0 g to 100000 g`},
		{"latitude alone", `[rail]`, "[site]\nlatitude = 50\n[rail]", `x.toml:32: site.latitude = 50: given without longitude; give both or neither`},
		{"two pressures", `[rail]`, "[site]\nsea_level_pressure = \"1013 hPa\"\npressure = \"1000 hPa\"\n[rail]", `x.toml:33: site.pressure = "1000 hPa": given beside sea_level_pressure on line 32; keep one of the two`},
		{"no curve", `curve = "h.csv"`, `curve = "i.csv"`, `x.toml:22: motor.curve = "i.csv": there is no such file; name a CSV file with the header time_s,thrust_n`},
		{"a folder as curve", `curve = "h.csv"`, `curve = "."`, `x.toml:22: motor.curve = ".": it is a folder, not a file; name a CSV file with the header time_s,thrust_n`},
		{"curve without a name", `curve = "h.csv"`, `curve = ""`, `x.toml:22: motor.curve = "": not the name of a file; give a name relative to this file`},
		{"motor file missing", `curve = "h.csv"`, `file = "no.toml"`, `x.toml:22: motor.file = "no.toml": there is no such file; name a file that holds the keys of [motor]`},
	}
	dir := folder(t)
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			_, err := Read("x.toml", dir, []byte(swapped(t, tt.old, tt.new)))
			if tt.want == "" {
				require.NoError(t, err)
				return
			}
			require.Error(t, err)
			require.Equal(t, tt.want, err.Error())
		})
	}
}

func TestFaultsOfAWholeFile(t *testing.T) {
	const remedy = "; give a rocket file: a TOML text in UTF-8, such as ullage new writes"
	tests := []struct{ name, text, want string }{
		{"empty", "", "x.toml: empty" + remedy},
		{"blank", " \r\n\t\n", "x.toml: empty" + remedy},
		{"byte order mark alone", "\xef\xbb\xbf", "x.toml: empty" + remedy},
		{"binary", "name = 1\n\x00\x01", "x.toml:2: a binary file, not text" + remedy},
		{"UTF-16, little", "\xff\xfen\x00", "x.toml: UTF-16 text; save it as UTF-8"},
		{"UTF-16, big", "\xfe\xff\x00n", "x.toml: UTF-16 text; save it as UTF-8"},
		{"Latin-1", "# a\nname = \"\xe9\"\n", "x.toml:2: not UTF-8 text; save it as UTF-8"},
		{"old line ends", "# a\rname = \"b\"\r", "x.toml:1: a carriage return stands alone; end the lines with LF or CRLF"},
		{"one old line end", "# a\r\n[body]\r\nmass = 1\rdrag = 2\r\n", "x.toml:3: a carriage return stands alone; end the lines with LF or CRLF"},
		{"huge", strings.Repeat("#\n", 1<<19+1), "x.toml: larger than 1048576 bytes" + remedy},
		{"comments", "# a\n", `x.toml: power: nothing drives the rocket; add [water] or [motor]
x.toml: body: the section is missing; add [body] with diameter, mass and drag
x.toml: rail: the section is missing; add [rail] with length`},
		{"all missing", "[water]\n[body]\n", `x.toml: rail: the section is missing; add [rail] with length
x.toml:1: water.fill: missing; add it to [water], such as fill = 0.3
x.toml:1: water.pressure: missing; add it to [water], such as pressure = "9 bar"
x.toml:1: water.throat: missing; add it to [water], such as throat = "13 mm"
x.toml:1: water.volume: missing; add it to [water], such as volume = "4.2 L"
x.toml:1: water.bore: missing; add it to [water], such as bore = "68 mm"
x.toml:2: body.diameter: missing; add it to [body], such as diameter = "70.4 mm"
x.toml:2: body.mass: missing; add it to [body], such as mass = "1.1 kg"
x.toml:2: body.drag: missing; add it to [body], such as drag = 0.48`},
		{"the drive missing", "power = \"motor\"\n[body]\ndiameter = \"7 cm\"\nmass = \"1 kg\"\ndrag = 0.4\n[rail]\nlength = \"1 m\"\n",
			`x.toml: motor: the section is missing, and power asks for it; add [motor] with curve, case and propellant`},
		{"a motor file", "curve = \"h.csv\"\ncase = \"2 g\"\n", "x.toml: a motor file, not a rocket file; name it in the [motor] of a rocket file"},
		{"two canopies of one name", plain + "[[canopy]]\nname = \"main\"\narea = \"1 m2\"\ndeploy = \"ejection\"\n",
			"x.toml:33: canopy.main.name: a name that another [[canopy]] has too; give each a name of its own"},
		{"a name that is a place", plain + "[[canopy]]\narea = \"1 m2\"\ndeploy = \"ejection\"\n[[canopy]]\nname = \"2\"\narea = \"1 m2\"\ndeploy = \"ejection\"\n",
			"x.toml:36: canopy.2.name: a name that another [[canopy]] has too; give each a name of its own"},
		{"several", strings.NewReplacer(`"70 mm"`, `70`, `"13 mm"`, `"99 mm"`, "fill", "fil", `"1.8 m"`, `"0 m"`).Replace(plain),
			`x.toml:5: body.diameter = 70: has no unit; write "70 mm"
x.toml:12: water.throat = "99 mm": is as wide as the bore or wider; give a throat narrower than the bore
x.toml:13: water.fil: unknown key; perhaps fill is meant
x.toml:32: rail.length = "0 m": zero; give 0.01 m to 100 m`},
	}
	dir := folder(t)
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			_, err := Read("x.toml", dir, []byte(tt.text))
			require.EqualError(t, err, tt.want)
		})
	}
}

// A value that cannot be read must not make others look wrong.
func TestUnreadableValueBlamesNothingElse(t *testing.T) {
	dir := folder(t)
	for _, line := range []string{"bore", "volume", "throat", "fill", "pressure", "outer", "length", "mass", "drag", "diameter", "deploy", "propellant"} {
		for _, value := range []string{` = "1 parsec"`, ` = "`, ` = `} {
			lines := strings.Split(plain, "\n")
			for i, l := range lines {
				if strings.HasPrefix(l, line+" ") {
					lines[i] = line + value
					break
				}
			}
			_, err := Read("x.toml", dir, []byte(strings.Join(lines, "\n")))
			require.Error(t, err)
			require.NotContains(t, err.Error(), "\n", "%s%s", line, value)
		}
	}
}

func TestNestingEndsSoon(t *testing.T) {
	for name, text := range map[string]string{
		"brackets":        "a = " + strings.Repeat("[", 500_000),
		"closed brackets": "a = " + strings.Repeat("[", 9_000) + strings.Repeat("]", 9_000),
		"braces":          "a = " + strings.Repeat("{a=", 300_000),
		"closed braces":   "a = " + strings.Repeat("{a=", 9_000) + "1" + strings.Repeat("}", 9_000),
		"dots":            strings.Repeat("a.", 500_000) + "a = 1",
		"headers":         "[" + strings.Repeat("a.", 500_000) + "a]",
		"keys":            manyLines(90_000, "k%d=1\n"),
		"tables":          manyLines(80_000, "[k%d]\n"),
		"errors":          strings.Repeat("x=\n", 300_000),
		"canopies":        strings.Repeat("[[canopy]]\n", 90_000),
		"named canopies":  manyLines(20_000, "[[canopy]]\nname=\"c%d\"\n"),
	} {
		t.Run(name, func(t *testing.T) {
			_, err := Read("x.toml", t.TempDir(), []byte(text))
			require.Error(t, err)
			var faults fault.List
			require.ErrorAs(t, err, &faults)
			require.LessOrEqual(t, len(faults), maxFaults+1)
		})
	}
}

func TestCurveFaultsNameTheCurve(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "h.csv")
	require.NoError(t, os.WriteFile(path, []byte("time_s,thrust_n\n0,0\n0.2,ten\n0.1,50\n"), 0o644))
	_, err := Read("x.toml", dir, []byte(plain))
	text, readErr := os.ReadFile(path)
	require.NoError(t, readErr)
	var bad fault.List
	_, curveErr := thrust.ReadCurve(bytes.NewReader(text))
	require.ErrorAs(t, curveErr, &bad)
	require.Len(t, bad, 2)
	require.EqualError(t, err, path+":3: motor.curve = ten: "+bad[0].Problem+"; "+bad[0].Remedy+"\n"+
		path+":4: motor.curve = 0.1: "+bad[1].Problem+"; "+bad[1].Remedy)
}

func TestMotorFile(t *testing.T) {
	dir := folder(t)
	require.NoError(t, os.Mkdir(filepath.Join(dir, "motors"), 0o755))
	write := func(text string) {
		require.NoError(t, os.WriteFile(filepath.Join(dir, "motors", "h.toml"), []byte(text), 0o644))
	}
	write("curve = \"../h.csv\"\ncase = \"150 g\"\npropellant = \"90 g\"\ndelay = \"6 s\"\n")
	named := swapped(t, `curve = "h.csv"`, `file = "motors/h.toml"`)

	f := readIn(t, dir, strings.Replace(named, `propellant = "100 g"`, ``, 1))
	m := f.Rocket().Motor
	require.Equal(t, 0.2, m.Case, "keys beside file come first")
	require.Equal(t, 0.09, m.Propellant)
	require.Equal(t, 6.0, m.Delay)
	require.NotNil(t, m.Curve)
	require.True(t, f.Given("motor.delay"))

	f, err := f.Set("motor.delay", "8 s")
	require.NoError(t, err)
	require.Contains(t, string(f.Text()), "case = \"200 g\"\ndelay = \"8 s\"\n", "an edit overrides the motor file")

	write("curve = \"../h.csv\"\ncase = \"-1 g\"\ncaze = 1\nfile = \"more.toml\"\n")
	path := filepath.Join(dir, "motors", "h.toml")
	_, err = Read("x.toml", dir, []byte(strings.Replace(named, `case = "200 g"`, ``, 1)))
	require.EqualError(t, err, path+`:2: motor.case = "-1 g": negative; give 0 g to 100000 g
`+path+`:3: motor.caze: unknown key; perhaps case is meant
`+path+`:4: motor.file = "more.toml": a motor file that names another; give the keys here`)
}

func TestOpenFaults(t *testing.T) {
	dir := t.TempDir()
	missing := filepath.Join(dir, "no.toml")
	_, err := Open(missing)
	require.EqualError(t, err, missing+": there is no such file; name a rocket file, or make one with ullage new")
	require.ErrorIs(t, err, fs.ErrNotExist)
	_, err = Open(dir)
	require.EqualError(t, err, dir+": it is a folder, not a file; name a rocket file, or make one with ullage new")
	var faults fault.List
	require.True(t, errors.As(err, &faults))
}
