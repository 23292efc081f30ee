package report

import (
	"context"
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ullage/sim"
	"ullage/sim/gates"
	"ullage/sim/quantity"
	"ullage/sim/report/words"
	"ullage/sim/results"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
)

func findingNamed(t *testing.T, fl *sim.Flight, sys quantity.System, key string) Finding {
	t.Helper()
	for _, f := range findingsOf(fl, sys) {
		if f.Key == key {
			return f
		}
	}
	t.Fatalf("no finding %s", key)
	return Finding{}
}

func TestFindingsInOrder(t *testing.T) {
	var keys []string
	for _, f := range findingsOf(waterFlight(), quantity.Metric) {
		keys = append(keys, f.Key)
	}
	assert.Equal(t, []string{"pressure", "rail-exit", "thrust-to-weight", "apogee", "canopy.main", "canopy.spare",
		"landing", "landing-energy", "drift"}, keys)
}

func TestFindingsGrade(t *testing.T) {
	for _, test := range []struct {
		name   string
		change func(*sim.Flight)
		key    string
		value  string
		word   string
		level  gates.Level
	}{
		{"as it is", func(*sim.Flight) {}, "rail-exit", "18.2 m/s", gates.WordGood, gates.Good},
		{"slow", func(f *sim.Flight) { f.RailExit.Speed = 14.9 }, "rail-exit", "14.9 m/s", gates.WordLow, gates.Bad},
		{"at the limit", func(f *sim.Flight) { f.RailExit.Speed = 16 }, "rail-exit", "16.0 m/s", gates.WordGood, gates.Good},
		{"four times the wind", func(f *sim.Flight) { f.RailExit.Speed = 15.9 }, "rail-exit", "15.9 m/s", gates.WordLow, gates.Bad},
		{"still air asks for less", func(f *sim.Flight) { f.RailExit.Speed, f.Rocket.Wind.Speed = 15.9, 0 },
			"rail-exit", "15.9 m/s", gates.WordGood, gates.Good},
		{"weak", func(f *sim.Flight) { f.RailExit.ThrustToWeight = 4.5 }, "thrust-to-weight", "4.50", gates.WordLow, gates.Bad},
		{"never left", func(f *sim.Flight) { f.RailExit.Happened = false }, "rail-exit", "", gates.WordNever, gates.Bad},
		{"apogee", func(*sim.Flight) {}, "apogee", "214 m at 6.72 s", "", gates.Plain},
		{"canopy", func(*sim.Flight) {}, "canopy.main", "0.800 s after apogee at 8.06 m/s", gates.WordGood, gates.Good},
		{"early", func(f *sim.Flight) { f.Canopies[0].Time = 5.72 }, "canopy.main", "1.00 s before apogee at 8.06 m/s", gates.WordGood, gates.Good},
		{"at apogee", func(f *sim.Flight) { f.Canopies[0].Time = 6.72 }, "canopy.main", "at apogee at 8.06 m/s", gates.WordGood, gates.Good},
		{"fast", func(f *sim.Flight) { f.Canopies[0].Airspeed = 20.5 }, "canopy.main", "0.800 s after apogee at 20.5 m/s", gates.WordFast, gates.Bad},
		{"unopened", func(*sim.Flight) {}, "canopy.spare", "", gates.WordNever, gates.Bad},
		{"hard", func(*sim.Flight) {}, "landing", "7.12 m/s", gates.WordHard, gates.Bad},
		{"soft", func(f *sim.Flight) { f.Landing.Vertical = 6 }, "landing", "6.00 m/s", gates.WordGood, gates.Good},
		{"75 ft·lbf", func(f *sim.Flight) { f.Landing.Energy = 101.68 }, "landing-energy", "102 J", gates.WordGood, gates.Good},
		{"more", func(f *sim.Flight) { f.Landing.Energy = 101.7 }, "landing-energy", "102 J", gates.WordHigh, gates.Bad},
		{"no number", func(f *sim.Flight) { f.Landing.Energy = math.NaN() }, "landing-energy", "-", gates.WordUnknown, gates.Caution},
		{"drift", func(*sim.Flight) {}, "drift", "161 m east", "", gates.Plain},
		{"no drift", func(f *sim.Flight) { f.Landing.East, f.Landing.North = 0.2, 0.1 }, "drift", "0 m", "", gates.Plain},
		{"windy", func(f *sim.Flight) { f.Rocket.Wind.Speed = 9 }, "wind", "9 m/s", gates.WordStrong, gates.Bad},
		{"leaning", func(f *sim.Flight) { f.Rocket.Rail.Tilt = 0.36 }, "tilt", "20.6 deg", gates.WordOver, gates.Bad},
		{"ballast", func(f *sim.Flight) { f.Warnings = []sim.Warning{{Code: sim.LiquidLeft, Value: 0.123}} },
			"warning.liquid-left", "123 g", gates.WordLeft, gates.Bad},
		{"late", func(f *sim.Flight) { f.Warnings = []sim.Warning{{Code: sim.CanopyWaited, Canopy: "main", Value: 0.25}} },
			"warning.canopy-waited.main", "waited 0.250 s", gates.WordLate, gates.Bad},
		{"a code of tomorrow", func(f *sim.Flight) { f.Warnings = []sim.Warning{{Code: "rain"}} },
			"warning.rain", "", gates.WordUnknown, gates.Caution},
	} {
		t.Run(test.name, func(t *testing.T) {
			fl := waterFlight()
			test.change(fl)
			f := findingNamed(t, fl, quantity.Metric, test.key)
			assert.Equal(t, test.value, f.Value)
			assert.Equal(t, test.word, f.Word)
			assert.Equal(t, test.level, f.Level)
		})
	}
}

func TestFindingsInUSUnits(t *testing.T) {
	fl := waterFlight()
	assert.Equal(t, "59.9 ft/s", findingNamed(t, fl, quantity.US, "rail-exit").Value)
	assert.Equal(t, "At least 52.5 ft/s: common practice.", findingNamed(t, fl, quantity.US, "rail-exit").Detail)
	assert.Equal(t, "701 ft at 6.72 s", findingNamed(t, fl, quantity.US, "apogee").Value)
	assert.Equal(t, "At most 75 ft·lbf: US student practice, from memory.", findingNamed(t, fl, quantity.US, "landing-energy").Detail)
}

func TestFindingsUseTheListOfWords(t *testing.T) {
	assert.True(t, slices.IsSorted(gates.Words()[1:]))
	rapid.Check(t, func(t *rapid.T) {
		for _, f := range findingsOf(anyFlight(t), quantity.Metric) {
			if f.Level == gates.Plain {
				require.Empty(t, f.Word, f.Key)
			} else {
				require.Contains(t, gates.Words(), f.Word, f.Key)
			}
			require.True(t, f.Value != "" || f.Word != "", f.Key)
			require.NotEmpty(t, f.Label, f.Key)
			require.Equal(t, f.Word == gates.WordGood, f.Level == gates.Good, f.Key)
		}
	})
}

// What flies as a point mass though its shape is known says so in its findings; the rule does
// not.
func TestFindingOfTheModel(t *testing.T) {
	r := rocketfile.Starter().Rocket()
	has := func() bool {
		fl, err := sim.Fly(context.Background(), r, sim.Options{})
		require.NoError(t, err)
		return slices.ContainsFunc(Findings(fl, results.For(r), quantity.Metric), func(f Finding) bool {
			return f.Key == "model" && f.Value == words.Model(r)
		})
	}
	require.False(t, has())
	r.Model = rocket.PointModel
	require.True(t, has())
	r.Shape = nil
	require.False(t, has())
}
