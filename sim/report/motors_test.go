package report

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim"
	"ullage/sim/quantity"
	"ullage/sim/rocket"
	"ullage/sim/study"
)

// motorsOf are three motors: one fits, one does not, one makes no rocket.
func motorsOf(sys quantity.System) Motors {
	good, wide := motorFlight(), motorFlight()
	wide.Results.RailExit = sim.GuideEnd{}
	wide.Results.Landing = sim.Landing{}
	return Motors{
		Rocket: plain(), Limit: rocket.DefaultLimits().Impulse, System: sys,
		Compared: []study.Compared{
			{Variant: study.Variant{Name: "h-trainer"}, Flight: good, Delay: 1,
				Delays: []study.Delay{{Value: 6, Airspeed: 30}, {Value: 8, Airspeed: 18.25, Opened: true, Listed: true}}},
			{Variant: study.Variant{Name: "a-rather-long-name", Problem: "wider than the mount"}, Flight: wide, Delay: -1},
			{Variant: study.Variant{Name: "bad,one"}, Invalid: errBad, Delay: -1},
		},
	}
}

func TestMotors(t *testing.T) {
	var b bytes.Buffer
	require.NoError(t, WriteMotorsText(&b, motorsOf(quantity.Metric)))
	goldenPage(t, "motors", b.String())
	b.Reset()
	require.NoError(t, WriteMotorsText(&b, motorsOf(quantity.US)))
	goldenPage(t, "motors-us", b.String())

	b.Reset()
	require.NoError(t, WriteMotorsCSV(&b, motorsOf(quantity.US)))
	records, err := csv.NewReader(&b).ReadAll()
	require.NoError(t, err)
	require.Len(t, records, 4)
	cell := func(row int, name string) string {
		for i, head := range records[0] {
			if head == name {
				return records[row][i]
			}
		}
		t.Fatalf("no column %s", name)
		return ""
	}
	for name, want := range map[string]string{
		"motor": "h-trainer", "problem": "", "class": "H", "impulse_ns": "201.5", "average_n": "139.5", "burn_s": "1.444",
		"thrust_to_weight": "9.5", "rail_exit_mps": "17.5", "apogee_m": "702.5", "apogee_s": "11.25", "best_delay_s": "8",
		"best_delay_airspeed_mps": "18.25", "max_speed_mps": "142.5", "max_mach": "0.42", "max_acceleration_mps2": "121.5",
		"landing_mps": "5.5", "landing_s": "140.5", "drift_m": "210.5",
	} {
		assert.Equal(t, want, cell(1, name), name)
	}
	assert.Equal(t, "wider than the mount", cell(2, "problem"))
	assert.Equal(t, "", cell(2, "rail_exit_mps"))
	assert.Equal(t, "bad,one", cell(3, "motor"))
	assert.Contains(t, cell(3, "problem"), "wider than the bore")
	assert.Equal(t, "", cell(3, "apogee_m"))

	b.Reset()
	require.NoError(t, WriteMotorsJSON(&b, motorsOf(quantity.US)))
	var lines []map[string]any
	for d := json.NewDecoder(&b); d.More(); {
		var line map[string]any
		require.NoError(t, d.Decode(&line))
		lines = append(lines, line)
	}
	require.Len(t, lines, 3)
	assert.Equal(t, 8.0, lines[0]["best_delay_s"])
	assert.Nil(t, lines[0]["problem"])
	assert.Equal(t, 702.5, lines[0]["apogee"].(map[string]any)["height_m"])
	assert.Equal(t, "wider than the mount", lines[1]["problem"])
	assert.Nil(t, lines[1]["best_delay_s"])
	assert.Nil(t, lines[2]["apogee"])
	for _, l := range lines {
		assert.Len(t, l, len(lines[0]), "the same keys on every line")
	}
}

func TestMotorsThatAreCutShort(t *testing.T) {
	m := motorsOf(quantity.Metric)
	m.Partial, m.Compared[2].Invalid = true, nil
	var b bytes.Buffer
	require.NoError(t, WriteMotorsText(&b, m))
	assert.Contains(t, b.String(), "partial: interrupted")
	assert.Contains(t, b.String(), "not flown: interrupted")
}
