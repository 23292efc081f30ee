package report

import (
	"context"
	"encoding/json"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim"
	"ullage/sim/airframe"
	"ullage/sim/gates"
	"ullage/sim/quantity"
	"ullage/sim/results"
)

// finned is a flight of a rocket with a shape, in a wind.
func finned(t *testing.T, balance float64) *sim.Flight {
	fl := flown(t)
	r := *fl.Rocket
	r.Shape = &airframe.Shape{Length: 0.9, Diameter: 0.05, Roughness: 20e-6,
		Nose: airframe.Nose{Shape: airframe.TangentOgive, Length: 0.15},
		Fins: []airframe.Fins{{Name: "1", Count: 3, Root: 0.1, Tip: 0.05, Span: 0.06, Sweep: 0.05, Thickness: 0.003,
			Section: airframe.FlatSection, Position: 0.8}}}
	r.Body.Balance = balance
	r.Motor.Diameter, r.Motor.Length = 0.024, 0.1
	r.Wind.Speed, r.Wind.Height = 3, 10
	out, err := sim.Fly(context.Background(), &r, sim.Options{Keep: true})
	require.NoError(t, err)
	return out
}

func TestStabilityIsReported(t *testing.T) {
	fl := finned(t, 0.6)
	var doc struct {
		Stability struct {
			Margin        map[string]*float64 `json:"margin_cal"`
			RailExitAngle float64             `json:"rail_exit_angle_deg"`
			MaxAngle      float64             `json:"max_angle_deg"`
		}
	}
	require.NoError(t, json.Unmarshal(jsonOf(t, fl), &doc))
	s := doc.Stability
	assert.InDelta(t, fl.Stability.RailExit.Margin, *s.Margin["rail_exit"], 1e-12)
	assert.Nil(t, s.Margin["liquid_out"], "a motor has no liquid")
	assert.InDelta(t, fl.Stability.RailExitAngle*180/math.Pi, s.RailExitAngle, 1e-9)
	assert.Positive(t, s.MaxAngle)

	find := func(fl *sim.Flight, key string) Finding {
		for _, f := range findingsOf(fl, quantity.Metric) {
			if f.Key == key {
				return f
			}
		}
		t.Fatalf("no finding %s", key)
		return Finding{}
	}
	assert.Contains(t, find(fl, "margin").Value, "calibres")
	assert.Contains(t, find(fl, "margin").Detail, "common practice")
	assert.Equal(t, gates.Good, find(fl, "margin").Level)
	assert.Equal(t, gates.WordHigh, find(finned(t, 0.3), "margin").Word)
	assert.Equal(t, gates.WordLow, find(finned(t, 0.75), "margin").Word)
	assert.Equal(t, gates.Bad, find(finned(t, 0.8), "warning.unstable").Level)

	// A margin that is good, and is none at the angle it leaves the rail with.
	angled := fl.Clone()
	r := *fl.Rocket
	r.Limits.MarginAtAngle = fl.Stability.AtAngle + 0.1
	angled.Rocket = &r
	said := find(angled, "margin")
	assert.Equal(t, gates.WordLow, said.Word)
	assert.Equal(t, gates.Bad, said.Level)
	assert.Regexp(t, `^at the angle [0-9.]+ calibres$`, said.Value)
	assert.Contains(t, said.Detail, "the rocket file")

	var b strings.Builder
	require.NoError(t, WriteText(&b, angled, results.For(angled.Rocket), quantity.Metric))
	assert.Regexp(t, `calibres,\s+good; at the\s+angle\s+[0-9.]+\s+calibres\s+low`, b.String())
	b.Reset()
	require.NoError(t, WriteText(&b, fl, results.For(fl.Rocket), quantity.Metric))
	assert.Regexp(t, `calibres,\s+good; at the\s+angle\s+[0-9.]+\s+calibres\s+good`, b.String())
	assert.Contains(t, b.String(), "margin            lift-off ")
	assert.Contains(t, b.String(), "angle of attack   ")
	assert.Contains(t, b.String(), "A rigid body up to the first canopy")
}
