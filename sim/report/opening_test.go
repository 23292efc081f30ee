package report

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim"
	"ullage/sim/quantity"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
)

// openingOf is a study of the starter's canopy.
func openingOf(t *testing.T, sys quantity.System, power string, rule string) Opening {
	file, err := rocketfile.Starter().SetAll(rocketfile.Change{Input: "power", Value: power},
		rocketfile.Change{Input: "canopy.main.deploy." + power, Value: rule})
	require.NoError(t, err)
	rocket := file.Rocket()
	rocket.Shape, rocket.Parts = nil, nil
	opens := func(c sim.CanopyResult) *sim.Flight {
		c.Name, c.Opened = "main", true
		return &sim.Flight{Rocket: rocket, Results: sim.Results{Canopies: []sim.CanopyResult{c}, Landing: waterFlight().Landing}}
	}
	planned := waterFlight()
	never := waterFlight()
	never.Results.Canopies[0] = sim.CanopyResult{Name: "main"}
	return Opening{
		Rocket: rocket, Rule: rule, System: sys, Best: 1,
		Delays: []study.Delay{
			{Value: 6, Opened: true, Early: true, SinceTop: -1.5, Flight: opens(sim.CanopyResult{Airspeed: 31.5, Height: 560.25, Load: 75.5, LoadBound: 520.5})},
			{Value: 8, Opened: true, Listed: true, SinceTop: 0.25, Flight: opens(sim.CanopyResult{Airspeed: 18.25, Height: 596.5, Load: 28.25, LoadBound: 188.5})},
			{Value: 40, Flight: &sim.Flight{Rocket: rocket, Results: sim.Results{Canopies: []sim.CanopyResult{{Name: "main"}}}}},
		},
		WhatIfs: []study.WhatIf{
			{Case: study.AsPlanned, Flight: planned},
			{Case: study.LateBy20, Problem: "the rule counts no seconds"},
			{Case: study.NotAtAll, Flight: never},
		},
		Speed: 5,
		Sized: study.Sized{Diameter: 1.06, Area: 0.879, Vertical: 5.001, Drift: 373.5, Flight: planned},
	}
}

func TestOpening(t *testing.T) {
	var b bytes.Buffer
	require.NoError(t, WriteOpeningText(&b, openingOf(t, quantity.Metric, "motor", "ejection")))
	goldenPage(t, "opening", b.String())
	b.Reset()
	require.NoError(t, WriteOpeningText(&b, openingOf(t, quantity.US, "water", "falling through 30 m")))
	goldenPage(t, "opening-us", b.String())

	const wanted = `{"canopy":"main","rule":"","delays":[{"delay_s":0,"set_height_m":null,"opened":true,"listed":true,"under_thrust":true,"out_of_turn":false,
"since_apogee_s":0,"height_m":0,"airspeed_mps":0,"load_n":0,"load_bound_n":0,
"landing":{"time_s":0,"speed_mps":0,"vertical_mps":0,"energy_j":0,"east_m":0,"north_m":0,"drift_m":0}}],"best":1,
"what_if":[{"case":"","canopy":null,"problem":null,"ballistic":false,"height_m":0,"airspeed_mps":0,"load_n":0,
"canopies":[{"name":"","height_m":0,"airspeed_mps":0,"load_n":0,"load_bound_n":0}],
"landing":{"time_s":0,"speed_mps":0,"vertical_mps":0,"energy_j":0,"east_m":0,"north_m":0,"drift_m":0}}],
"sized":{"asked_mps":0,"diameter_m":0,"area_m2":0,"vertical_mps":0,"drift_m":0,"time_s":0},"model":"point","pressure":null}`
	o := openingOf(t, quantity.US, "motor", "ejection")
	b.Reset()
	require.NoError(t, WriteOpeningJSON(&b, o))
	var d map[string]any
	require.NoError(t, json.Unmarshal(b.Bytes(), &d))
	assert.Equal(t, 1.0, d["best"])
	assert.Len(t, d["delays"], 3)
	assert.Nil(t, d["delays"].([]any)[2].(map[string]any)["airspeed_mps"])
	assert.Nil(t, d["what_if"].([]any)[2].(map[string]any)["airspeed_mps"], "never opens")
	o.Delays, o.WhatIfs = o.Delays[:1], o.WhatIfs[:1]
	b.Reset()
	require.NoError(t, WriteOpeningJSON(&b, o))
	assert.Equal(t, shape(t, []byte(wanted)), shape(t, b.Bytes()))

	// A rule that counts from apogee says itself how long after it each opens.
	b.Reset()
	require.NoError(t, WriteOpeningText(&b, o))
	assert.Regexp(t, `\n +after *\n +delay apogee `, b.String())
	o.Delays[0].SinceTop = o.Delays[0].Value
	b.Reset()
	require.NoError(t, WriteOpeningText(&b, o))
	assert.Regexp(t, `\n +delay  height `, b.String())

	falling := openingOf(t, quantity.US, "water", "falling through 30 m")
	falling.Speed, falling.Best = 0, -1
	b.Reset()
	require.NoError(t, WriteOpeningJSON(&b, falling))
	require.NoError(t, json.Unmarshal(b.Bytes(), &d))
	assert.Nil(t, d["sized"])
	assert.Nil(t, d["best"])
	first := d["delays"].([]any)[0].(map[string]any)
	assert.Equal(t, 6.0, first["set_height_m"])
	assert.Nil(t, first["delay_s"])

	b.Reset()
	require.NoError(t, WriteOpeningCSV(&b, openingOf(t, quantity.US, "motor", "ejection")))
	records, err := csv.NewReader(&b).ReadAll()
	require.NoError(t, err)
	assert.Equal(t, strings.Split("delay_s,best,listed,since_apogee_s,height_m,airspeed_mps,load_n,load_bound_n,landing_mps,landing_s,drift_m", ","), records[0])
	assert.Equal(t, []string{"8", "true", "true", "0.25", "596.5", "18.25", "28.25", "188.5", "8.5", "45.25"}, records[2][:10])
	assert.Equal(t, []string{"40", "false", "false", "", "", "", "", "", "", "", ""}, records[3])
}
