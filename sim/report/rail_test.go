package report

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim"
	"ullage/sim/quantity"
	"ullage/sim/study"
)

func TestWithRail(t *testing.T) {
	nan := math.NaN()
	for _, test := range []struct {
		name   string
		wind   float64
		exit   study.RailExit
		sys    quantity.System
		value  string
		detail []string
	}{
		{"reached", 3, study.RailExit{Limit: 15, Exited: true, Speed: 18.25, Reached: true, At: 0.936, Enough: 0.936, Pressure: 5.37e5, Wind: 4.5},
			quantity.Metric, "18.2 m/s (15 at 0.94 m)",
			[]string{"At least 15 m/s", "15 m/s is reached 0.936 m along", "it takes 5.37 bar; no proof of the chamber is on record.", "a wind up to 4.5 m/s"}},
		{"the wind rules", 4, study.RailExit{Limit: 16, Exited: true, Speed: 18.25, Reached: true, At: 1.52, Enough: 1.52, Pressure: 7.71e5, Wind: 4.5},
			quantity.Metric, "18.2 m/s (16 at 1.5 m, 4 × wind)", []string{"The wind asks for it: 4 times 4 m/s"}},
		{"short", 0, study.RailExit{Limit: 15, Exited: true, Speed: 12, At: nan, Enough: 2.81, Pressure: 18e5, Wind: 3},
			quantity.US, "59.9 ft/s (49.2 needs 9.2 ft)", []string{"A rail of 9.22 ft would be enough", "it takes 261 psi; no proof of the chamber is on record."}},
		{"no rail", 0, study.RailExit{Limit: 15, Exited: true, Speed: 12, At: nan, Enough: nan, Pressure: nan, Wind: 3},
			quantity.Metric, "18.2 m/s (15 on no rail)", []string{"No rail up to 20 m is enough"}},
	} {
		t.Run(test.name, func(t *testing.T) {
			fl := waterFlight()
			fl.Rocket.Wind.Speed = test.wind
			list := findingsOf(fl, test.sys)[1:] // after the pressure
			before := findingsOf(fl, test.sys)[1:]
			WithRail(list, test.exit, fl.Rocket, test.sys)
			require.Equal(t, before[1:], list[1:], "the others stay")
			assert.Equal(t, before[0].Word, list[0].Word)
			assert.Equal(t, test.value, list[0].Value)
			for _, d := range test.detail {
				assert.Contains(t, list[0].Detail, d)
			}
			assert.NotContains(t, list[0].Value+list[0].Detail, "NaN")
		})
	}

	fl := waterFlight()
	fl.RailExit = sim.GuideEnd{}
	list := findingsOf(fl, quantity.Metric)[1:]
	WithRail(list, study.RailExit{Limit: 15, At: nan, Enough: nan, Pressure: nan}, fl.Rocket, quantity.Metric)
	assert.Equal(t, "(15 m/s on no rail)", list[0].Value, "it has no speed whose unit would be known")
	WithRail(nil, study.RailExit{}, fl.Rocket, quantity.Metric)
}
