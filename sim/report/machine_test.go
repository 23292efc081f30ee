package report

import (
	"bytes"
	"context"
	"encoding/csv"
	"encoding/json"
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ullage/sim"
	"ullage/sim/airframe"
	"ullage/sim/results"
	"ullage/sim/rocket"
	"ullage/thrust"
)

// schema is what other programs read of the document. Its keys are fixed; a new result
// adds its own.
const schema = `{"name":"", "power":"water", "model":"point",
 "lift_off":  {"mass_kg":0,"thrust_to_weight":0},
 "tube_exit": {"time_s":0,"speed_mps":0},
 "rail_exit": {"time_s":0,"speed_mps":0,"thrust_to_weight":0},
 "liquid_out":{"time_s":0,"height_m":0,"speed_mps":0,"left_kg":0},
 "burnout":   {"time_s":0,"height_m":0,"speed_mps":0},
 "apogee":    {"time_s":0,"height_m":0,"speed_mps":0},
 "max": {"speed_mps":0,"mach":0,"acceleration_mps2":0,"dynamic_pressure_pa":0,"thrust_n":0},
 "startup": {"thrust_n":0,"acceleration_mps2":0},
 "drive": {"impulse_ns":0,"average_n":0,"burn_s":0,"class":"H"},
 "canopies": [{"name":"main","time_s":0,"height_m":0,"airspeed_mps":0,"load_n":0,"load_bound_n":0,"descent_mps":0}],
 "landing": {"time_s":0,"speed_mps":0,"vertical_mps":0,"energy_j":0,"east_m":0,"north_m":0},
 "stability": {"margin_cal":{"release":0,"rail_exit":0,"liquid_out":0,"burnout":0,"least":0},"rail_exit_angle_deg":0,"max_angle_deg":0},
 "warnings": [{"code":"liquid-left","text":""}],
 "pressure": {"working_pa":0,"proved_for_pa":0,"burst_pa":0,"burst_stated":false,"no_go":true}}`

// shape lists the dotted keys of a JSON value, in the order of the text.
func shape(t require.TestingT, text []byte) []string {
	d := json.NewDecoder(bytes.NewReader(text))
	var keys []string
	var walk func(prefix string)
	walk = func(prefix string) {
		tok, err := d.Token()
		require.NoError(t, err)
		switch tok {
		case json.Delim('{'):
			for d.More() {
				key, err := d.Token()
				require.NoError(t, err)
				name := prefix + "." + key.(string)
				keys = append(keys, name)
				walk(name)
			}
			_, err = d.Token()
			require.NoError(t, err)
		case json.Delim('['):
			for d.More() {
				walk(prefix + "[]")
			}
			_, err = d.Token()
			require.NoError(t, err)
		}
	}
	walk("")
	return keys
}

func jsonOf(t require.TestingT, fl *sim.Flight) []byte {
	var b bytes.Buffer
	require.NoError(t, WriteJSON(&b, fl, results.For(fl.Rocket)))
	return b.Bytes()
}

// keysOf are those of the schema and of every row of a table.
func keysOf(t require.TestingT, table results.Table) map[string]bool {
	keys := map[string]bool{}
	for _, key := range shape(t, []byte(schema)) {
		keys[key] = true
	}
	for i := range table {
		for k := range table[i].Rows {
			path := "." + strings.Join(table[i].Rows[k].Path(), ".")
			if table[i].Canopy != "" {
				path = ".canopies[]" + path
			}
			keys[path] = true
		}
	}
	return keys
}

// The keys of the schema are there and in its order, and so is every row; nothing else is.
func TestJSONHasTheKeysOfTheSchema(t *testing.T) {
	fl := waterFlight()
	fl.Rocket.Canopies, fl.Canopies = fl.Rocket.Canopies[:1], fl.Canopies[:1]
	fl.Rocket.Shape, fl.Rocket.Body.Balance = &airframe.Shape{}, 0.5
	at := sim.StabilityAt{Happened: true}
	fl.Stability = sim.Stability{Known: true, Release: at, RailExit: at, LiquidOut: at, Burnout: at}
	got := shape(t, jsonOf(t, fl))
	wanted := shape(t, []byte(schema))
	assert.Equal(t, wanted, slices.DeleteFunc(slices.Clone(got), func(key string) bool { return !slices.Contains(wanted, key) }))
	assert.ElementsMatch(t, slices.Collect(maps.Keys(keysOf(t, results.For(fl.Rocket)))), got)
}

// member digs a value out of a document by its dotted name.
func member(t *testing.T, doc any, path string) any {
	for _, key := range strings.Split(path, ".") {
		if i, err := strconv.Atoi(key); err == nil {
			require.Less(t, i, len(doc.([]any)), path)
			doc = doc.([]any)[i]
			continue
		}
		value, ok := doc.(map[string]any)[key]
		require.True(t, ok, "%s is there", path)
		doc = value
	}
	return doc
}

func TestJSONValues(t *testing.T) {
	type values map[string]any
	for _, test := range []struct {
		name   string
		flight *sim.Flight
		want   values
	}{
		{"water", waterFlight(), values{
			"name": "Twin Heron", "power": "water", "model": "point",
			"lift_off.mass_kg": 2.5512345, "lift_off.thrust_to_weight": 8.125,
			"rail_exit.time_s": 0.1205, "rail_exit.speed_mps": 18.25, "rail_exit.thrust_to_weight": 8.75,
			"tube_exit.time_s": 0.0405, "tube_exit.speed_mps": 9.85,
			"liquid_out.time_s": 0.3125, "liquid_out.height_m": 5.25, "liquid_out.speed_mps": 41.5, "liquid_out.left_kg": 0.0,
			"burnout.time_s": 0.3625, "burnout.height_m": 7.5, "burnout.speed_mps": 45.125,
			"apogee.time_s": 6.72, "apogee.height_m": 213.625, "apogee.speed_mps": 1.25,
			"max.speed_mps": 52.125, "max.mach": 0.15325, "max.acceleration_mps2": 412.5,
			"max.dynamic_pressure_pa": 1663.5, "max.thrust_n": 612.25,
			"startup.thrust_n": 1240.5, "startup.acceleration_mps2": 486.25,
			"drive.impulse_ns": 87.5, "drive.average_n": 241.375, "drive.burn_s": 0.3626, "drive.class": nil,
			"canopies.0.name": "main", "canopies.0.time_s": 7.52, "canopies.0.height_m": 210.5,
			"canopies.0.airspeed_mps": 8.0625, "canopies.0.load_n": 42.5, "canopies.0.load_bound_n": 55.75,
			"canopies.0.descent_mps": 5.5625,
			"canopies.1.name":        "spare", "canopies.1.time_s": nil, "canopies.1.height_m": nil, "canopies.1.airspeed_mps": nil,
			"canopies.1.load_n": nil, "canopies.1.load_bound_n": nil, "canopies.1.descent_mps": nil,
			"landing.time_s": 45.25, "landing.speed_mps": 8.5, "landing.vertical_mps": 7.125, "landing.energy_j": 40.25,
			"landing.east_m": 160.5, "landing.north_m": -12.25,
			"warnings.0.code": "canopy-never-opens", "stability": nil,
		}},
		{"motor", motorFlight(), values{
			"power": "motor", "drive.class": "H", "tube_exit": nil, "liquid_out": nil, "startup": nil, "warnings": []any{}, "pressure": nil,
		}},
		{"grounded", groundedFlight(), values{
			"rail_exit": nil, "apogee": nil, "landing": nil, "liquid_out.time_s": 2.5, "startup.thrust_n": 0.0,
		}},
	} {
		t.Run(test.name, func(t *testing.T) {
			var doc any
			require.NoError(t, json.Unmarshal(jsonOf(t, test.flight), &doc))
			for path, want := range test.want {
				assert.Equal(t, want, member(t, doc, path), path)
			}
		})
	}
}

func TestJSONForm(t *testing.T) {
	fl := motorFlight()
	fl.Rocket.Name = "Flügel <&> \"quoted\"\x01"
	fl.Results.Landing.North = math.Copysign(0, -1)
	fl.Results.Landing.East = 1e-9
	fl.Rocket.Canopies, fl.Canopies = nil, nil
	text := string(jsonOf(t, fl))
	assert.True(t, strings.HasPrefix(text, "{\n  \"name\": \"Flügel <&> \\\"quoted\\\"\\u0001\",\n  \"power\": \"motor\",\n  \"model\": \"point\",\n  \"lift_off\": {\n    \"mass_kg\": 1.51,"), text)
	assert.Contains(t, text, "\"canopies\": [],")
	assert.Contains(t, text, "\"north_m\": 0,\n")
	assert.True(t, strings.HasSuffix(text, "}\n"))
	assert.Equal(t, text, string(jsonOf(t, fl)), "the same flight gives the same bytes")
}

// Whatever a flight holds, the document is valid, and its keys are those of the
// schema or null.
func TestJSONOfAnything(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		fl := anyFlight(t)
		allowed := keysOf(t, results.For(fl.Rocket))
		text := jsonOf(t, fl)
		require.True(t, json.Valid(text), "%s", text)
		for _, key := range shape(t, text) {
			require.True(t, allowed[key], key)
		}
	})
}

// flown is a short motor flight by the engine itself, its record kept.
func flown(t *testing.T) *sim.Flight {
	curve, err := thrust.NewCurve([]thrust.Point{{Time: 0, Thrust: 0}, {Time: 0.05, Thrust: 40}, {Time: 0.6, Thrust: 30}, {Time: 0.7, Thrust: 0}})
	require.NoError(t, err)
	fl, err := sim.Fly(context.Background(), &rocket.Rocket{
		Name:  "Plover",
		Power: rocket.MotorPower,
		Body:  rocket.Body{Diameter: 0.05, Mass: 0.4, Drag: []rocket.MachDrag{{Mach: 0, Drag: 0.5}}, DragFactor: 1},
		Motor: &rocket.Motor{Curve: curve, Case: 0.03, Propellant: 0.02, Delay: math.NaN()},
		Canopies: []rocket.Canopy{{Name: "main", Diameter: 0.6, Coefficient: 0.75, FillConstant: 8, OpeningForceCoefficient: 1.7,
			Motor: rocket.Rule{Trigger: rocket.AfterApogee, Value: 0.5}}},
		Rail: rocket.Rail{Length: 1},
	}, sim.Options{Keep: true})
	require.NoError(t, err)
	return fl
}

func TestCSV(t *testing.T) {
	fl := flown(t)
	var b bytes.Buffer
	require.NoError(t, WriteCSV(&b, fl, results.Over(), 0.25))
	rows, err := csv.NewReader(&b).ReadAll()
	require.NoError(t, err)

	assert.Equal(t, strings.Split("time_s,east_m,north_m,height_m,speed_mps,vertical_mps,acceleration_mps2,mach,thrust_n,"+
		"drag_n,mass_kg,chamber_pa,air_pa", ","), rows[0])
	value := func(row, column int) float64 {
		v, err := strconv.ParseFloat(rows[row][column], 64)
		require.NoError(t, err, "row %d column %d", row, column)
		return v
	}
	last := len(rows) - 1
	require.Equal(t, int(math.Ceil(fl.Duration()/0.25))+2, len(rows), "header, samples from 0, landing")
	for i := 1; i < last; i++ {
		assert.Equal(t, float64(i-1)*0.25, value(i, 0))
		assert.Empty(t, rows[i][11], "a motor flight has no chamber")
	}
	assert.Equal(t, fl.Landing.Time, value(last, 0), "the landing is the last row")
	assert.InDelta(t, 0, value(last, 3), 1e-6)
	assert.InDelta(t, -fl.Landing.Vertical, value(last, 5), 1e-9, "positive up in samples, down in the landing")

	// The rows are the flight's own samples.
	s := fl.At(1.25)
	for i, x := range results.Over()[:13] {
		if x.Name != "chamber" {
			assert.Equal(t, x.Of(&s), value(1+5, i), x.Column)
		}
	}
	for i, s := range fl.Samples(0.25) {
		assert.InDelta(t, s.Height, value(i+1, 3), 1e-9)
	}
}

func TestCSVRefusesASpacing(t *testing.T) {
	for _, every := range []float64{0, -1, math.NaN(), math.Inf(1)} {
		var b bytes.Buffer
		assert.ErrorIs(t, WriteCSV(&b, flown(t), results.Over(), every), ErrSpacing)
		assert.Zero(t, b.Len())
	}
}

func TestCSVStopsWhenItCannotWrite(t *testing.T) {
	assert.ErrorIs(t, WriteCSV(failing{ErrSpacing}, flown(t), results.Over(), 1e-3), ErrSpacing)
}
