package report

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"errors"
	"io"
	"math"
	"strings"
	"syscall"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ullage/sim/gates"
	"ullage/sim/golden"
	"ullage/sim/quantity"
	"ullage/sim/report/page"
	"ullage/sim/report/words"
	"ullage/sim/results"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
)

// plain is the starter without its shape, so that it flies as a point mass.
func plain() *rocket.Rocket {
	r := rocketfile.Starter().Rocket()
	r.Shape, r.Parts = nil, nil
	return r
}

// axis is an input of the starter with values.
func axis(t require.TestingT, text string) study.Axis {
	a, err := study.ParseAxis(plain(), text)
	require.NoError(t, err)
	return a
}

// sweepOf is a sweep of the starter over axes.
func sweepOf(t require.TestingT, sys quantity.System, texts ...string) Sweep {
	s := Sweep{Rocket: plain(), System: sys}
	for _, text := range texts {
		a := axis(t, text)
		s.Axes = append(s.Axes, a)
		s.Units = append(s.Units, a.Input.Unit)
	}
	return s
}

var errBad = errors.New("water.throat: wider than the bore\nuse another")

// rows are made up flights over the axes of a sweep: the first makes no rocket, the
// second leaves liquid, the third never leaves its guide, the others fly well.
func rows(s Sweep) []study.Row {
	out := make([]study.Row, study.Count(s.Axes))
	for i := range out {
		r := study.Row{Index: i}
		k := i
		for j := len(s.Axes) - 1; j >= 0; j-- {
			n := len(s.Axes[j].Values)
			r.Values = append([]study.Value{s.Axes[j].Values[k%n]}, r.Values...)
			k /= n
		}
		switch i {
		case 0:
			r.Invalid = errBad
		case 1:
			r.Flight = waterFlight()
			r.Flight.Results.LiquidLeft = 0.1234
			r.Flight.Results.Apogee.Height = 999
		case 2:
			r.Flight = groundedFlight()
		default:
			r.Flight = waterFlight()
			r.Flight.Results.Apogee.Height -= float64(i)
			r.Flight.Results.RailExit.Speed -= float64(i) / 2
		}
		out[i] = r
	}
	return out
}

// written is what a writer makes of rows.
func written(t require.TestingT, rows []study.Row, with func(io.Writer) RowWriter) string {
	var b bytes.Buffer
	w := with(&b)
	for _, r := range rows {
		require.NoError(t, w.Row(r))
	}
	require.NoError(t, w.End())
	return b.String()
}

// goldenPage compares a text with a file, and holds it to the page.
func goldenPage(t *testing.T, name, got string) {
	t.Helper()
	golden.Equal(t, name+".txt", got)
	for _, line := range strings.Split(got, "\n") {
		assert.LessOrEqual(t, utf8.RuneCountInString(line), page.Width, line)
	}
	assert.NotContains(t, strings.ToLower(got), "safe")
}

func TestSweepTextGolden(t *testing.T) {
	for _, test := range []struct {
		name string
		sys  quantity.System
		axes []string
	}{
		{"sweep-one", quantity.Metric, []string{"water.throat=9mm,11mm,13mm,15.25mm,17mm"}},
		{"sweep-us", quantity.US, []string{"water.pressure=6..10bar/5"}},
		{"sweep-word", quantity.Metric, []string{"water.gas=air,helium,nitrogen,argon"}},
		{"sweep-grid", quantity.Metric, []string{"water.fill=0.2..0.4/3", "water.throat=9..15mm/4"}},
		{"sweep-list", quantity.Metric, []string{"canopy.main.deploy.water=0.5..1.5s/2", "site.sea_level_pressure=990..1020hPa/10"}},
	} {
		t.Run(test.name, func(t *testing.T) {
			s := sweepOf(t, test.sys, test.axes...)
			goldenPage(t, test.name, written(t, rows(s), func(w io.Writer) RowWriter { return SweepText(w, s) }))
		})
	}
}

func TestSweepTextThatIsCutShortSaysSo(t *testing.T) {
	for _, axes := range [][]string{
		{"water.fill=0.2..0.4/21"},
		{"water.fill=0.2..0.4/21", "water.throat=9,11,13mm"},
	} {
		s := sweepOf(t, quantity.Metric, axes...)
		all := rows(s)
		text := written(t, all[:7], func(w io.Writer) RowWriter { return SweepText(w, s) })
		assert.Contains(t, text, "partial: 7 of ")
		assert.NotContains(t, written(t, all, func(w io.Writer) RowWriter { return SweepText(w, s) }), "partial")
		none := written(t, nil, func(w io.Writer) RowWriter { return SweepText(w, s) })
		assert.Contains(t, none, "partial: 0 of ", "heads and notes without any row")
	}
}

// sweepSchema is a line of `sweep --json`: the keys of fly beside the inputs.
func sweepSchema(inputs string) []byte {
	return []byte(`{"inputs":` + inputs + `,"invalid":null,` + strings.TrimPrefix(schema, "{"))
}

func TestSweepJSON(t *testing.T) {
	s := sweepOf(t, quantity.US, "rail.tilt=0..9deg/3", "water.gas=air,helium")
	lines := strings.Split(strings.TrimSuffix(written(t, rows(s), func(w io.Writer) RowWriter { return SweepJSON(w, s) }), "\n"), "\n")
	require.Len(t, lines, 6)

	whole := shape(t, []byte(lines[4]))
	want := shape(t, sweepSchema(`{"rail.tilt":0,"water.gas":""}`))
	for _, key := range want {
		if !strings.HasPrefix(key, ".stability.") { // a point mass has none
			assert.Contains(t, whole, key)
		}
	}
	var last map[string]any
	require.NoError(t, json.Unmarshal([]byte(lines[5]), &last))
	assert.Equal(t, map[string]any{"rail.tilt": 9.0, "water.gas": "helium"}, last["inputs"], "angles in degrees, words as words")
	assert.Nil(t, last["invalid"])

	var bad map[string]any
	require.NoError(t, json.Unmarshal([]byte(lines[0]), &bad))
	assert.Equal(t, "water.throat: wider than the bore; use another", bad["invalid"])
	for key, value := range bad {
		if key != "invalid" && key != "inputs" {
			assert.Nil(t, value, key)
		}
		assert.Contains(t, last, key, "the same keys on every line")
	}
	assert.Len(t, bad, len(last))
}

func TestSweepJSONLineHoldsTheKeysOfFly(t *testing.T) {
	s := sweepOf(t, quantity.Metric, "water.fill=0.2..0.4/5")
	s.Table = results.For(rows(s)[4].Flight.Rocket)
	var line, fly map[string]any
	text := written(t, rows(s)[4:], func(w io.Writer) RowWriter { return SweepJSON(w, s) })
	require.NoError(t, json.Unmarshal([]byte(text), &line))
	require.NoError(t, json.Unmarshal(jsonOf(t, rows(s)[4].Flight), &fly))
	delete(line, "inputs")
	delete(line, "invalid")
	assert.Equal(t, fly, line)
}

func TestSweepCSV(t *testing.T) {
	s := sweepOf(t, quantity.US, "water.throat=9..15mm/4", "water.gas=air")
	text := written(t, rows(s), func(w io.Writer) RowWriter { return SweepCSV(w, s) })
	records, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	require.NoError(t, err)
	// The columns that other programs read, as they are fixed.
	assert.Equal(t, strings.Split("water.throat,water.gas,apogee_m,apogee_s,rail_exit_mps,max_speed_mps,max_acceleration_mps2,"+
		"liquid_left_kg,burnout_s,landing_mps,landing_s", ","), records[0])
	assert.Equal(t, []string{"0.009", "air", "", "", "", "", "", "", "", "", ""}, records[1], "no rocket")
	assert.Equal(t, []string{"0.011", "air", "999", "6.72", "18.25", "52.125", "412.5", "0.1234", "0.3625", "8.5", "45.25"}, records[2])
	assert.Equal(t, []string{"0.013", "air", "", "", "", "0", "0", "0", "2.75", "", ""}, records[3], "never left")
	assert.Len(t, records, 5)
	assert.Equal(t, 1, strings.Count(written(t, nil, func(w io.Writer) RowWriter { return SweepCSV(w, s) }), "\n"),
		"the header without any row")
}

// stubborn takes some bytes and then fails.
type stubborn struct{ left int }

func (s *stubborn) Write(b []byte) (int, error) {
	if s.left -= len(b); s.left < 0 {
		return 0, syscall.ENOSPC
	}
	return len(b), nil
}

func TestSweepTellsOfAFullDisk(t *testing.T) {
	s := sweepOf(t, quantity.Metric, "water.fill=0.2..0.4/5")
	grid := sweepOf(t, quantity.Metric, "water.fill=0.2..0.4/3", "water.throat=9..15mm/4")
	for name, test := range map[string]struct {
		s    Sweep
		with func(io.Writer, Sweep) RowWriter
	}{"text": {s, SweepText}, "grid": {grid, SweepText}, "JSON": {s, SweepJSON}, "CSV": {s, SweepCSV}} {
		all := rows(test.s)
		size := len(written(t, all, func(w io.Writer) RowWriter { return test.with(w, test.s) }))
		for _, left := range []int{0, 1, size / 4, size / 2, size - 1} {
			w := test.with(&stubborn{left}, test.s)
			var err error
			for _, r := range all {
				if err = w.Row(r); err != nil {
					break
				}
			}
			if err == nil {
				err = w.End()
			}
			assert.ErrorIs(t, err, syscall.ENOSPC, "%s with room for %d of %d", name, left, size)
		}
	}
}

func TestNamesKeepToTheirColumn(t *testing.T) {
	for name, want := range map[string][]string{
		"water.throat":                        {"water.throat"},
		"site.sea_level_pressure":             {"site.", "sea_level_", "pressure"},
		"canopy.main.deploy":                  {"canopy.main.", "deploy"},
		"canopy.an-uncommonly-long-name.area": {"canopy.", "an-uncommonly-", "long-name.area"},
	} {
		assert.Equal(t, want, nameLines(name))
	}
	rapid.Check(t, func(t *rapid.T) {
		name := rapid.StringMatching(`[a-z0-9_-]{1,40}(\.[a-z0-9_-]{1,40}){0,3}`).Draw(t, "name")
		lines := nameLines(name)
		assert.Equal(t, name, strings.Join(lines, ""))
		for _, l := range lines {
			assert.LessOrEqual(t, len(l), mostName)
		}
	})
}

func TestValuesOfAnAxisAreToldApart(t *testing.T) {
	for text, want := range map[string]string{
		"water.fill=0.2..0.4/3":             "20 30 40",
		"water.fill=0.2..0.4/4":             "20 26.67 33.33 40",
		"water.throat=10mm,10.0001mm,11mm":  "10 10.0001 11",
		"rail.tilt=0..1deg/3":               "0 0.5 1",
		"site.temperature=-5..5degC/3":      "-5 0 5",
		"canopy.main.deploy.water=-1..1s/2": "-1 1",
	} {
		a := axis(t, text)
		c := Column{a.Input, a.Input.Unit}
		d := c.digitsFor(a.Values, words.In(quantity.Metric))
		var got []string
		for _, v := range a.Values {
			got = append(got, c.bare(v.Number, words.In(quantity.Metric), d))
		}
		assert.Equal(t, want, strings.Join(got, " "), text)
	}
}

func TestProgramsReadDegrees(t *testing.T) {
	tilt := axis(t, "rail.tilt=0..3deg/2")
	assert.Equal(t, 3.0, programValue(tilt.Input, tilt.Values[1].Number), "degrees, without noise")
}

// bestOf is a search of the starter that found what it is told.
func bestOf(t *testing.T, sys quantity.System) Best {
	r := plain()
	goals, err := study.ParseGoals(r, []string{"water.fill=0.2..0.5", "rail.tilt=0..5deg"})
	require.NoError(t, err)
	fl := waterFlight()
	today := waterFlight()
	today.Results.Apogee.Height = 201
	return Best{
		Rocket: r, Goals: goals, System: sys, Today: today, Wish: study.MostOf(*results.For(r).Must("apogee.height")),
		Units: []quantity.Unit{goals[0].Input.Unit, goals[1].Input.Unit},
		Found: study.Best{
			Values: []float64{0.31, 0}, Apogee: 213.625, Flights: 97, Flight: fl,
			Within:  [][2]float64{{0.27, 0.36}, {0, 2 * math.Pi / 180}},
			AtBound: []bool{false, true}, AtEdge: []bool{true, false},
		},
	}
}

func TestBest(t *testing.T) {
	var b bytes.Buffer
	require.NoError(t, WriteBestText(&b, bestOf(t, quantity.Metric)))
	goldenPage(t, "best", b.String())

	b.Reset()
	require.NoError(t, WriteBestJSON(&b, bestOf(t, quantity.US)))
	assert.JSONEq(t, `{"inputs":{"water.fill":0.31,"rail.tilt":0},"apogee_m":213.625,`+
		`"within_1_percent":{"water.fill":[0.27,0.36],"rail.tilt":[0,2]},"flights":97,`+
		`"loses":[],"cut_off":0,"for":"apogee.height","value":213.625,"least":false,"model":"point","pressure":{"working_pa":900000,"proved_for_pa":null,"burst_pa":null,"burst_stated":false,"no_go":true}}`, b.String())
	one := bestOf(t, quantity.Metric)
	one.Goals = one.Goals[:1]
	b.Reset()
	require.NoError(t, WriteBestJSON(&b, one))
	assert.Equal(t, shape(t, []byte(`{"inputs":{"water.fill":0.31},"apogee_m":0,"within_1_percent":{"water.fill":[0.27,0.36]},"flights":0,
		"loses":[],"cut_off":0,"for":"apogee.height","value":0,"least":false,"model":"point","pressure":{"working_pa":0,"proved_for_pa":0,"burst_pa":0,"burst_stated":false,"no_go":true}}`)),
		shape(t, b.Bytes()), "the keys are fixed")
}

// Another wish than the highest has its own title, its own line and keys; a target that is out
// of reach is told as such.
func TestBestOfAWish(t *testing.T) {
	b := bestOf(t, quantity.Metric)
	table := results.For(b.Rocket)
	write := func() (string, string) {
		var text, machine bytes.Buffer
		require.NoError(t, WriteBestText(&text, b))
		require.NoError(t, WriteBestJSON(&machine, b))
		return strings.Join(strings.Fields(text.String()), " "), machine.String()
	}
	b.Wish = study.MostOf(*table.Must("landing.vertical"))
	b.Wish.Least = true
	text, machine := write()
	assert.Contains(t, text, "on water power: the least vertical landing speed")
	assert.Contains(t, text, "vertical landing speed 7.12 m/s; as it is 7.12 m/s")
	assert.Contains(t, machine, `"for":"landing.vertical","value":7.125,"least":true`)
	b.Wish = study.MostOf(*table.Must("apogee.height"))
	b.Wish.Target = b.Found.Flight.Apogee.Height / 1.005
	text, machine = write()
	assert.NotContains(t, text, "nearest")
	assert.Contains(t, machine, `"met":true`)
	b.Wish.Target = 2 * b.Found.Flight.Apogee.Height
	text, machine = write()
	assert.Contains(t, text, ": apogee of ")
	assert.Contains(t, text, ": the nearest there is; as it is")
	assert.Contains(t, machine, `"met":false`)
}

func TestBestThatIsCutShortSaysSo(t *testing.T) {
	best := bestOf(t, quantity.Metric)
	best.Partial, best.Found.Within = true, nil
	var b bytes.Buffer
	require.NoError(t, WriteBestText(&b, best))
	assert.Contains(t, b.String(), "partial")
	b.Reset()
	require.NoError(t, WriteBestJSON(&b, best))
	assert.Contains(t, b.String(), `"partial":true`)
	assert.Contains(t, b.String(), `"water.fill":null`)
}

func TestRailFindings(t *testing.T) {
	nan := math.NaN()
	for _, test := range []struct {
		name string
		exit study.RailExit
		want []string
	}{
		{"fast enough", study.RailExit{Limit: 15, Guided: 1.8, Exited: true, Speed: 22, Reached: true, At: 0.89, Enough: 0.89, Pressure: 8e5, Wind: 5.5},
			[]string{"on the rail: 15 m/s at 0.890 m of 1.8 m good", "wind for the rail: 5.5 m/s"}},
		{"too slow", study.RailExit{Limit: 15, Guided: 1.8, Exited: true, Speed: 12, At: nan, Enough: 2.81, Pressure: 18e5, Wind: 3},
			[]string{"on the rail: 15 m/s takes 2.81 m; there is 1.8 m: short", "or at: 18.0 bar with the rail as it is", "wind for the rail: 3 m/s"}},
		{"hopeless", study.RailExit{Limit: 15, Guided: 1.8, At: nan, Enough: nan, Pressure: nan},
			[]string{"on the rail: 15 m/s never"}},
	} {
		t.Run(test.name, func(t *testing.T) {
			var got []string
			for _, f := range RailFindings(test.exit, &rocket.Rocket{}, quantity.Metric) {
				got = append(got, strings.TrimSpace(f.Label+": "+f.Value+" "+f.Word))
				if f.Word != "" {
					assert.Contains(t, gates.Words(), f.Word)
				}
				assert.Equal(t, f.Word == "", f.Level == gates.Plain)
			}
			assert.Equal(t, test.want, got)
		})
	}
	var b bytes.Buffer
	more := RailFindings(study.RailExit{Limit: 15, Guided: 1.8, Exited: true, Speed: 12, At: nan, Enough: 2.81, Pressure: 18e5, Wind: 3}, &rocket.Rocket{}, quantity.US)
	require.NoError(t, WriteText(&b, waterFlight(), results.For(waterFlight().Rocket), quantity.US, more...))
	assert.Contains(t, b.String(), "49.2 ft/s takes 9.22 ft; there is 5.91 ft: short")
	assert.Contains(t, b.String(), "261 psi with the rail as it is. Only within the")
}
