package report

import (
	"bytes"
	"encoding/csv"
	"math"
	"strings"
	"syscall"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/gates"
	"ullage/sim/quantity"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
)

// scatterSchema is the document that other programs read. Its keys are fixed.
const scatterSchema = `{"flights":0,"invalid":0,"apogee_m":{"mean":0,"sd":0,"q05":0,"q50":0,"q95":0},
"rail_exit_mps":{"mean":0,"sd":0,"q05":0,"q50":0,"q95":0},
"landing":{"east_m":0,"north_m":0,"ellipse_90":{"major_m":0,"minor_m":0,"heading_deg":0},"landed":0,"outside_field":0},
"drogue_only":null,"ballistic":{"east_m":0,"north_m":0,"ellipse_90":{"major_m":0,"minor_m":0,"heading_deg":0},"landed":0,"outside_field":0},
"importance":[{"input":"body.drag_factor","rank_correlation":0}],
"pressure":{"working_pa":0,"proved_for_pa":0,"burst_pa":0,"burst_stated":false,"no_go":true},"model":"point"}`

func scatterOf(t require.TestingT, sys quantity.System) Dispersion {
	r := plain()
	spread := func(input, sd string) study.Spread {
		s, err := rocketfile.ParseSpread(r, input, sd)
		require.NoError(t, err)
		return s
	}
	spreads := []study.Spread{spread("site.temperature", "2 degC"), spread("body.drag_factor", "0.05")}
	s := Dispersion{
		Rocket: r, Seed: 7, System: sys, Spreads: spreads,
		Units: []quantity.Unit{spreads[0].Input.Unit, spreads[1].Input.Unit},
		Result: study.Dispersion{
			Asked: 1000, Drawn: 1000, Invalid: 3, Grounded: 2, FirstInvalid: errBad, Landed: 995, Reservoir: 995,
			Apogee:   study.Summary{Count: 995, Mean: 167.5, SD: 6.25, Q05: 157, Q50: 166.5, Q95: 177},
			RailExit: study.Summary{Count: 995, Mean: 15.5, SD: 0.75, Q05: 14.25, Q50: 15.25, Q95: 16.5},
			Landing:  study.Ellipse{East: 82, North: -10, Major: 55, Minor: 33, Heading: math.Pi / 2}, Outside: 12,
			Ballistic: study.Fallen{Landed: 500, Outside: 3, Farthest: 640,
				Landing: study.Ellipse{East: -40, North: 5, Major: 21, Minor: 13, Heading: math.Pi / 4}},
			Importance: []study.Influence{
				{Input: spreads[1].Input, SD: 0.05, Rank: -0.8125}, {Input: spreads[0].Input, SD: 2, Rank: math.NaN()},
			},
		},
	}
	return s
}

func TestScatterText(t *testing.T) {
	var b bytes.Buffer
	require.NoError(t, WriteDispersionText(&b, scatterOf(t, quantity.Metric)))
	goldenPage(t, "scatter", b.String())
	b.Reset()
	us := scatterOf(t, quantity.US)
	us.Result.Partial, us.Result.Drawn, us.Result.Asked = true, 200_000, 1_000_000
	us.Result.Apogee.Count, us.Result.Reservoir = 199_995, study.ReservoirSize
	require.NoError(t, WriteDispersionText(&b, us))
	goldenPage(t, "scatter-us", b.String())
	b.Reset()
	require.NoError(t, WriteDispersionText(&b, Dispersion{Rocket: us.Rocket, Spreads: us.Spreads, Units: us.Units}))
	goldenPage(t, "scatter-none", b.String())
}

func TestScatterJSON(t *testing.T) {
	s := scatterOf(t, quantity.US)
	s.Result.Importance = s.Result.Importance[:1]
	var b bytes.Buffer
	require.NoError(t, WriteDispersionJSON(&b, s))
	assert.Equal(t, shape(t, []byte(scatterSchema)), shape(t, b.Bytes()))
	assert.JSONEq(t, `{"flights":1000,"invalid":3,"apogee_m":{"mean":167.5,"sd":6.25,"q05":157,"q50":166.5,"q95":177},
"rail_exit_mps":{"mean":15.5,"sd":0.75,"q05":14.25,"q50":15.25,"q95":16.5},
"landing":{"east_m":82,"north_m":-10,"ellipse_90":{"major_m":55,"minor_m":33,"heading_deg":90},"landed":995,"outside_field":0.012060301507537688},
"drogue_only":null,"ballistic":{"east_m":-40,"north_m":5,"ellipse_90":{"major_m":21,"minor_m":13,"heading_deg":45},"landed":500,"outside_field":0.006},
"importance":[{"input":"body.drag_factor","rank_correlation":-0.8125}],"pressure":{"working_pa":1200000,"proved_for_pa":null,"burst_pa":4759663.67869657,"burst_stated":false,"no_go":true},"model":"point"}`, b.String())

	// More flights than are kept, and fewer than were asked for, are told.
	s.Result.Apogee.Count, s.Result.Reservoir, s.Result.Partial = 250_000, study.ReservoirSize, true
	b.Reset()
	require.NoError(t, WriteDispersionJSON(&b, s))
	assert.Contains(t, b.String(), `"reservoir":100000,"partial":true`)

	b.Reset()
	require.NoError(t, WriteDispersionJSON(&b, Dispersion{Rocket: s.Rocket}))
	assert.Contains(t, b.String(), `"apogee_m":{"mean":null`)
	assert.Contains(t, b.String(), `"landing":null`)
	assert.Contains(t, b.String(), `"importance":[]`)
}

func TestLandingsCSV(t *testing.T) {
	var b bytes.Buffer
	w := NewLandingsCSV(&b)
	require.NoError(t, w.Add(study.LandingPoint{Draw: 0, East: 1.5, North: -2, Apogee: 160.25}))
	require.NoError(t, w.Add(study.LandingPoint{Draw: 12, East: math.Copysign(0, -1), North: 3, Apogee: 150}))
	require.NoError(t, w.Close())
	records, err := csv.NewReader(&b).ReadAll()
	require.NoError(t, err)
	assert.Equal(t, [][]string{{"draw", "apogee_m", "east_m", "north_m"}, {"0", "160.25", "1.5", "-2"}, {"12", "150", "0", "3"}}, records)
}

func TestLandingsTellOfAFullDisk(t *testing.T) {
	w := NewLandingsCSV(&stubborn{})
	require.NoError(t, w.Add(study.LandingPoint{}), "held back")
	assert.ErrorIs(t, w.Close(), syscall.ENOSPC)
}

func TestScatterJudgesItsSlowFlights(t *testing.T) {
	s := scatterOf(t, quantity.Metric)
	word := func() string {
		var b bytes.Buffer
		require.NoError(t, WriteDispersionText(&b, s))
		_, line, _ := strings.Cut(b.String(), "rail exit m/s")
		line, _, _ = strings.Cut(line, "\n")
		return line[strings.LastIndexByte(line, ' ')+1:]
	}
	assert.Equal(t, gates.WordLow, word(), "5 % of them are below the limit, though the mean is not")
	s.Result.RailExit.Q05 = 15.01
	assert.Equal(t, gates.WordGood, word())
}
