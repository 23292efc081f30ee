package report

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"math"
	"strings"
	"syscall"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ullage/sim/gates"
	"ullage/sim/quantity"
	"ullage/sim/rocket"
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
	m := NewLandingsMap(&stubborn{}, Place{})
	var err error
	for i := 0; i < 10_000 && err == nil; i++ {
		err = m.Add(study.LandingPoint{Draw: i})
	}
	assert.ErrorIs(t, err, syscall.ENOSPC)
	assert.ErrorIs(t, m.Close(study.Dispersion{}, &rocket.Field{}), syscall.ENOSPC)
}

// feature is as much of RFC 7946 as is needed to read a map back.
type feature struct {
	Type     string `json:"type"`
	Geometry struct {
		Type        string          `json:"type"`
		Coordinates json.RawMessage `json:"coordinates"`
	} `json:"geometry"`
	Properties map[string]any `json:"properties"`
}

type collection struct {
	Type     string    `json:"type"`
	Features []feature `json:"features"`
	Partial  bool      `json:"partial"`
}

func readMap(t require.TestingT, text []byte) collection {
	var c collection
	require.NoError(t, json.Unmarshal(text, &c))
	require.Equal(t, "FeatureCollection", c.Type)
	require.NotNil(t, c.Features)
	for _, f := range c.Features {
		require.Equal(t, "Feature", f.Type)
	}
	return c
}

// rings are the outer rings of a Polygon or MultiPolygon, checked to be closed and to
// be counter-clockwise (RFC 7946, section 3.1.6).
func rings(t require.TestingT, f feature) [][][2]float64 {
	var polygons [][][][2]float64
	if f.Geometry.Type == "Polygon" {
		var p [][][2]float64
		require.NoError(t, json.Unmarshal(f.Geometry.Coordinates, &p))
		polygons = append(polygons, p)
	} else {
		require.Equal(t, "MultiPolygon", f.Geometry.Type)
		require.NoError(t, json.Unmarshal(f.Geometry.Coordinates, &polygons))
	}
	var out [][][2]float64
	for _, p := range polygons {
		require.Len(t, p, 1, "no holes")
		ring := p[0]
		require.GreaterOrEqual(t, len(ring), 4)
		require.Equal(t, ring[0], ring[len(ring)-1], "closed")
		require.Positive(t, shoelace(ring), "counter-clockwise")
		for _, c := range ring {
			require.LessOrEqual(t, math.Abs(c[0]), 180.0)
			require.LessOrEqual(t, math.Abs(c[1]), 90.0)
		}
		out = append(out, ring)
	}
	return out
}

func shoelace(ring [][2]float64) float64 {
	sum := 0.0
	for i := 0; i+1 < len(ring); i++ {
		sum += ring[i][0]*ring[i+1][1] - ring[i+1][0]*ring[i][1]
	}
	return sum / 2
}

func mapOf(t require.TestingT, pad Place, r study.Dispersion, points ...study.LandingPoint) []byte {
	var b bytes.Buffer
	m := NewLandingsMap(&b, pad)
	for _, p := range points {
		require.NoError(t, m.Add(p))
	}
	require.NoError(t, m.Close(r, &rocket.Field{}))
	return b.Bytes()
}

func TestMapOfOneLandingIsOnePoint(t *testing.T) {
	pad := Place{Latitude: 50.5, Longitude: -1.25}
	nan := math.NaN()
	text := mapOf(t, pad, study.Dispersion{Landed: 1, Landing: study.Ellipse{East: 100, North: 200, Major: nan, Minor: nan, Heading: nan}},
		study.LandingPoint{Draw: 3, East: 100, North: 200, Apogee: 150})
	c := readMap(t, text)
	require.Len(t, c.Features, 1)
	f := c.Features[0]
	assert.Equal(t, "Point", f.Geometry.Type)
	assert.Equal(t, map[string]any{"kind": "landing", "draw": 3.0, "apogee_m": 150.0}, f.Properties)
	var at [2]float64
	require.NoError(t, json.Unmarshal(f.Geometry.Coordinates, &at))
	// Longitude first (RFC 7946, section 3.1.1).
	assert.InDelta(t, -1.25, at[0], 0.01)
	assert.InDelta(t, 50.5, at[1], 0.01)
	assert.Greater(t, at[0], -1.25, "east")
	assert.Greater(t, at[1], 50.5, "north")
	assert.Empty(t, readMap(t, mapOf(t, pad, study.Dispersion{})).Features, "none at all is still a map")
	assert.False(t, c.Partial)
	assert.True(t, readMap(t, mapOf(t, pad, study.Dispersion{Partial: true})).Partial)
}

func TestMapOfTheEllipse(t *testing.T) {
	pad := Place{Latitude: 50.5, Longitude: -1.25}
	e := study.Ellipse{East: 80, North: -30, Major: 60, Minor: 25, Heading: 30 * math.Pi / 180}
	c := readMap(t, mapOf(t, pad, study.Dispersion{Landed: 3, Landing: e},
		study.LandingPoint{}, study.LandingPoint{Draw: 1}, study.LandingPoint{Draw: 2}))
	require.Len(t, c.Features, 4)
	f := c.Features[3]
	assert.Equal(t, "Polygon", f.Geometry.Type)
	assert.Equal(t, "ellipse_90", f.Properties["kind"])
	ring := rings(t, f)[0]
	assert.Len(t, ring, ellipsePoints+1)
	// Back on the ground: every corner is on the ellipse, the farthest along 30°.
	scale := pad.Offset(1, 1)
	north, east := scale.Latitude-pad.Latitude, scale.Longitude-pad.Longitude
	sin, cos := math.Sincos(e.Heading)
	farthest := 0.0
	for _, p := range ring {
		x, y := (p[0]-pad.Longitude)/east-e.East, (p[1]-pad.Latitude)/north-e.North
		along, across := x*sin+y*cos, x*cos-y*sin
		assert.InDelta(t, 1, math.Hypot(along/e.Major, across/e.Minor), 1e-3)
		farthest = max(farthest, along)
	}
	assert.InDelta(t, e.Major, farthest, 0.1)
}

func TestMapsCrossTheAntimeridianCut(t *testing.T) {
	e := study.Ellipse{East: 10, North: 20, Major: 80, Minor: 40, Heading: 1}
	for _, pad := range []Place{{Latitude: 50, Longitude: 179.9999}, {Latitude: 50, Longitude: -179.9999}, {Latitude: -10, Longitude: 180}, {Latitude: -10, Longitude: -180}} {
		text := mapOf(t, pad, study.Dispersion{Landed: 3, Landing: e}, study.LandingPoint{East: 60}, study.LandingPoint{East: -60})
		c := readMap(t, text)
		f := c.Features[2]
		assert.Equal(t, "MultiPolygon", f.Geometry.Type, "%v", pad)
		parts := rings(t, f)
		require.Len(t, parts, 2)
		assert.NotEqual(t, parts[0][1][0] > 0, parts[1][1][0] > 0, "one on each side")
		var lon []float64
		for _, p := range c.Features[:2] {
			var at [2]float64
			require.NoError(t, json.Unmarshal(p.Geometry.Coordinates, &at))
			require.LessOrEqual(t, math.Abs(at[0]), 180.0)
			lon = append(lon, at[0])
		}
		assert.Less(t, lon[0], 0.0, "east of the line")
		assert.Greater(t, lon[1], 0.0, "west of it")
	}
}

func TestAnyMapIsValid(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		number := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
		pad := Place{Latitude: number("latitude", -MostLatitude, MostLatitude), Longitude: number("longitude", -180, 180)}
		major := number("major", 1, 5000)
		e := study.Ellipse{East: number("east", -5000, 5000), North: number("north", -5000, 5000),
			Major: major, Minor: major * number("flatness", 0.05, 1), Heading: number("heading", 0, math.Pi)}
		c := readMap(t, mapOf(t, pad, study.Dispersion{Landed: 9, Landing: e}, study.LandingPoint{East: e.East, North: e.North}))
		require.Len(t, c.Features, 2)
		area := 0.0
		for _, ring := range rings(t, c.Features[1]) {
			area += shoelace(ring)
		}
		require.Positive(t, area)
	})
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

// The field is a ring around the pad, and what comes down without canopies has a kind and an
// ellipse of its own.
func TestMapOfAField(t *testing.T) {
	pad := Place{Latitude: 50.5, Longitude: -1.25}
	r := study.Dispersion{Landed: 9, Outside: 2, Landing: study.Ellipse{East: 10, Major: 5, Minor: 4},
		Ballistic: study.Fallen{Landed: 4, Outside: 1, Landing: study.Ellipse{East: -10, Major: 3, Minor: 2}}}
	var b bytes.Buffer
	m := NewLandingsMap(&b, pad)
	require.NoError(t, m.Add(study.LandingPoint{Draw: 3, East: 100, Apogee: 150, Kind: study.Falling}))
	require.NoError(t, m.Close(r, &rocket.Field{Radius: 300}))
	c := readMap(t, b.Bytes())
	require.Len(t, c.Features, 4)
	assert.Equal(t, "ballistic", c.Features[0].Properties["kind"])
	assert.Equal(t, map[string]any{"kind": "ellipse_90", "landings": 9.0, "outside": 2.0}, c.Features[1].Properties)
	assert.Equal(t, map[string]any{"kind": "ballistic_90", "landings": 4.0, "outside": 1.0}, c.Features[2].Properties)
	assert.Equal(t, map[string]any{"kind": "field", "radius_m": 300.0}, c.Features[3].Properties)
	var rings [][][2]float64
	require.NoError(t, json.Unmarshal(c.Features[3].Geometry.Coordinates, &rings))
	north := pad.Offset(0, 300)
	most := 0.0
	for _, p := range rings[0] {
		most = math.Max(most, p[1])
	}
	assert.InDelta(t, north.Latitude, most, 1e-6)
}
