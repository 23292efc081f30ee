package report

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"io"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim"
	"ullage/sim/quantity"
	"ullage/sim/results"
)

// withRows is the table of a flight's rocket with a row more in its groups and a group
// more at its end.
func withRows(fl *sim.Flight) results.Table {
	t := results.For(fl.Rocket)
	add := func(group string, r results.Row, of func(fl *sim.Flight) float64) {
		g := t.Group(group)
		r.Name = group + "." + r.Name
		g.Rows = append(g.Rows, r.From(of))
	}
	row := results.Row{Name: "energy", Label: "energy at rail exit", Short: "energy", Dimension: quantity.Energy}
	for _, group := range []string{"lift_off", "rail_exit", "liquid_out", "apogee", "landing", "startup", "drive", "attack"} {
		add(group, row, func(fl *sim.Flight) float64 { return 12.5 })
	}
	main := t.Group("canopy.main") // whose rows know whose they are
	more := *main.Row("load")
	more.Name, more.Short, more.Dimension = "canopy.main.energy", "energy", quantity.Energy
	main.Rows = append(main.Rows, more.From(func(*sim.Flight) float64 { return 12.5 }))
	add("max", results.Row{Name: "spin", Label: "greatest spin", Short: "spin", Dimension: quantity.Angle}, func(*sim.Flight) float64 { return 0.5 })
	add("margin", results.Row{Name: "mid", Label: "margin half-way", Short: "half-way", Suffix: "calibres"}, func(*sim.Flight) float64 { return 1.75 })
	t = append(t, results.Group{Name: "noise", Label: "noise", Rows: []results.Row{
		results.Row{Name: "noise.most", Label: "greatest noise", Short: "at most"}.From(func(*sim.Flight) float64 { return 93.5 })}},
		results.Group{Name: "splash", Label: "splash", Event: true, Rows: []results.Row{
			results.Row{Name: "splash.time", Label: "time of splash", Short: "time", Dimension: quantity.Time}.From(func(*sim.Flight) float64 { return 46.5 }),
			results.Row{Name: "splash.depth", Label: "depth of splash", Short: "depth", Dimension: quantity.Length, Unit: "m"}.From(func(*sim.Flight) float64 { return 0.75 })}})
	return t
}

// A result is one row of the table: the JSON of a flight, its report and what a sweep
// shows have it without another word.
func TestAnAddedRowIsEverywhere(t *testing.T) {
	fl := waterFlight()
	at := sim.StabilityAt{Happened: true, Margin: 1.5}
	fl.Stability = sim.Stability{Known: true, Release: at, RailExit: at, LiquidOut: at, Burnout: at, Least: 1.5}
	table := withRows(fl)

	var b bytes.Buffer
	require.NoError(t, WriteJSON(&b, fl, table))
	var doc any
	require.NoError(t, json.Unmarshal(b.Bytes(), &doc))
	for path, want := range map[string]float64{
		"lift_off.energy_j": 12.5, "rail_exit.energy_j": 12.5, "canopies.0.energy_j": 12.5, "landing.energy_j": 12.5,
		"attack.energy_j": 12.5, "max.spin_deg": results.Machine(quantity.Angle, 0.5), "noise.most": 93.5, "splash.depth_m": 0.75,
	} {
		assert.Equal(t, want, member(t, doc, path), path)
	}

	b.Reset()
	require.NoError(t, WriteText(&b, fl, table, quantity.Metric))
	text := strings.Join(strings.Fields(b.String()), " ")
	for _, want := range []string{
		"lift-off 0 s 0 m 0 m/s 2.55 kg, thrust/weight 8.12, energy 12.5 J", "thrust/weight 8.75 good; energy 12.5 J",
		"nothing left; energy 12.5 J", "1.25 m/s energy 12.5 J", "then 5.56 m/s down; energy 12.5 J", "valve opened at once; energy 12.5 J",
		"spin 28.6 deg", "least 1.50, half-way 1.75", "splash 46.5 s", "depth 0.750 m", "noise at most 93.5",
	} {
		assert.Contains(t, text, want)
	}

	s := sweepOf(t, quantity.Metric, "water.fill=0.2..0.4/5")
	s.Table = table
	s.Show = []results.Row{*table.Must("rail_exit.energy"), *table.Must("noise.most"), *table.Must("max.spin")}
	line := written(t, rows(s)[3:4], func(w io.Writer) RowWriter { return SweepJSON(w, s) })
	require.NoError(t, json.Unmarshal([]byte(line), &doc))
	assert.Equal(t, 12.5, member(t, doc, "rail_exit.energy_j"))
	records, err := csv.NewReader(strings.NewReader(written(t, rows(s), func(w io.Writer) RowWriter { return SweepCSV(w, s) }))).ReadAll()
	require.NoError(t, err)
	assert.Equal(t, []string{"landing_s", "rail_exit_energy_j", "noise_most", "max_spin_deg"}, records[0][9:])
	assert.Equal(t, []string{"12.5", "93.5"}, records[4][10:12])
	assert.Equal(t, []string{"", "", ""}, records[1][10:], "no rocket")
	text = written(t, rows(s), func(w io.Writer) RowWriter { return SweepText(w, s) })
	assert.Regexp(t, `(?m)^ +35 .* hard +12\.5 +93\.5 +28\.6$`, text)

	grid := sweepOf(t, quantity.Metric, "water.fill=0.2..0.4/3", "water.throat=9..15mm/2")
	grid.Show = s.Show[:1]
	text = written(t, rows(grid), func(w io.Writer) RowWriter { return SweepText(w, grid) })
	assert.Contains(t, text, "energy at rail exit, J; across: water.throat, mm")
	assert.Contains(t, text, "40   12.5    12.5")
}

// A series with a column is in the samples.
func TestAnAddedSeriesHasAColumn(t *testing.T) {
	fl := flown(t)
	series := append(results.Over(), results.Series{Name: "roll", Label: "roll", Dimension: quantity.Angle, Column: "roll_deg",
		Of: func(s *sim.Sample) float64 { return s.Time }})
	var b bytes.Buffer
	require.NoError(t, WriteCSV(&b, fl, series, 0.5))
	records, err := csv.NewReader(&b).ReadAll()
	require.NoError(t, err)
	last := len(records[0]) - 1
	assert.Equal(t, "roll_deg", records[0][last])
	assert.Equal(t, "0", records[1][last])
	assert.NotEqual(t, "0.5", records[2][last], "degrees")
}
