package proof

import (
	"bytes"
	"context"
	"encoding/json"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/chamber"
	"ullage/sim/quantity"
	"ullage/sim/report/page"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
)

// structured is the heron with something changed.
func structured(t testing.TB, change func(r *rocket.Rocket)) *study.Structure {
	t.Helper()
	f, err := rocketfile.Open("../../../testdata/heron.toml")
	require.NoError(t, err)
	r := f.Rocket()
	if change != nil {
		change(r)
	}
	s, err := study.StructureOf(context.Background(), r)
	require.NoError(t, err)
	return &s
}

// unproved takes the proof off the record.
func unproved(r *rocket.Rocket) { r.Chamber.Proof, r.Chamber.ProofDate = 0, "" }

// oddChambers are those that something is missing of, or that hold little.
var oddChambers = map[string]func(r *rocket.Rocket){
	"as it is": nil,
	"bottle": func(r *rocket.Rocket) {
		r.Chamber = &chamber.Chamber{Material: chamber.PETBottle, Wall: 0.3e-3, Burst: 14e5}
	},
	"carbon with a cone and a plate": func(r *rocket.Rocket) {
		c := r.Chamber
		c.Material, c.FibreFraction, c.Temperature, c.Cycles = chamber.CarbonEpoxy, 0, 273.15+55, 40
		unproved(r)
		c.Forward = &chamber.Closure{Shape: chamber.Cone, HalfAngle: 0.35, Overlap: 0.025}
		c.Aft = &chamber.Closure{Shape: chamber.Flat, Overlap: 0.025}
		c.Thread = nil
		c.Heating.Temperature, c.Heating.Rise = 273.15+105, 0
	},
	"own": func(r *rocket.Rocket) {
		r.Chamber = &chamber.Chamber{Material: chamber.Own, Wall: 1.2e-3, Around: 200e6, Along: 150e6, Density: 1600,
			Proof: 60e5, Cycles: 3000, Aft: &chamber.Closure{Shape: chamber.Hemisphere, Overlap: 0.01}}
		r.Recovery = nil
	},
	"hot":      func(r *rocket.Rocket) { r.Chamber.Temperature = 273.15 + 70; unproved(r) },
	"weak":     func(r *rocket.Rocket) { r.Chamber.Aft.Overlap = 0.004; unproved(r) },
	"unfilled": func(r *rocket.Rocket) { r.Water.Pressure = 0 },
	"unknown":  func(r *rocket.Rocket) { r.Water.Pressure = 0; unproved(r) },
	"motor only": func(r *rocket.Rocket) {
		r.Chamber.Diameter, r.Chamber.Length, r.Water, r.Power = 0.068, 1.1, nil, rocket.MotorPower
	},
	"long names": func(r *rocket.Rocket) {
		r.Chamber.Plies[1].Name = "wound-tape-of-glass-150g"
		r.Canopies[0].Name = "the-one-and-only-canopy-"
		r.Limits.ProofFactor = 2
	},
	"named": func(r *rocket.Rocket) {
		r.Name = "Pipe | *star* _x_ [a](b) <i>\x07"
		r.Canopies[0].Name = "ma|in"
	},
}

func proofOf(t testing.TB, form page.Form, s *study.Structure, sys quantity.System) string {
	t.Helper()
	var b bytes.Buffer
	doc := Document(s, sys)
	require.NoError(t, doc.Write(&b, form))
	return b.String()
}

func TestProofOfOddChambers(t *testing.T) {
	for name, change := range oddChambers {
		t.Run(name, func(t *testing.T) {
			s := structured(t, change)
			for _, sys := range []quantity.System{quantity.Metric, quantity.US} {
				text := proofOf(t, page.AsText, s, sys)
				for _, line := range strings.Split(text, "\n") {
					assert.LessOrEqual(t, len([]rune(line)), page.Width, line)
				}
				marked := proofOf(t, page.AsMarkdown, s, sys)
				for _, out := range []string{text, marked} {
					for _, word := range []string{"NaN", "Inf", "%!", "\x00", "\x07", " \n"} {
						assert.NotContains(t, out, word)
					}
					assert.NotContains(t, strings.ToLower(out), "safe")
					out = strings.Join(strings.Fields(out), " ")
					assert.Contains(t, out, "Local codes, the range officer and qualified people decide")
					assert.Contains(t, out, map[quantity.System]string{quantity.Metric: "from 45 °C to 65 °C", quantity.US: "from 113 °F to 149 °F"}[sys])
				}
				tablesAreWhole(t, marked)
			}
			var b bytes.Buffer
			require.NoError(t, WriteJSON(&b, s))
			assert.True(t, json.Valid(b.Bytes()))
			assert.NotContains(t, b.String(), "NaN")
		})
	}
}

// tablesAreWhole holds every row of every table to as many cells as its head has.
func tablesAreWhole(t *testing.T, text string) {
	t.Helper()
	cells, tables := 0, 0
	for _, line := range strings.Split(text, "\n") {
		if !strings.HasPrefix(line, "|") {
			cells = 0
			continue
		}
		n := strings.Count(strings.ReplaceAll(line, `\|`, ""), "|")
		if cells == 0 {
			cells, tables = n, tables+1
		}
		assert.Equal(t, cells, n, line)
		assert.True(t, strings.HasSuffix(line, "|"), line)
	}
	assert.GreaterOrEqual(t, tables, 2)
}

func TestProofKeysAreFixed(t *testing.T) {
	s := structured(t, nil)
	var b bytes.Buffer
	require.NoError(t, WriteJSON(&b, s))
	at := 0
	for _, key := range []string{"wall_m", "tube_kg", "hoop_pa", "axial_pa", "burst_pa", "burst_basis", "weakest", "proof_pa", "working_pa",
		"stored_working_j", "stored_pneumatic_proof_j", "tnt_kg", "standoff_m", "parts", "name", "stress_pa", "strength_pa", "use"} {
		i := strings.Index(b.String()[at:], `"`+key+`"`)
		require.GreaterOrEqual(t, i, 0, key)
		at += i
	}
}

// By hand: wall (3×163 + 150 g/m²)/(2580 kg/m³ × 0.35); hoop p r/t at the wall's middle;
// the gas is 70 % of 4.2 L at 10 bar over the 977 hPa of the site; p V/(γ−1)
// [1 − (p_a/p)^((γ−1)/γ)].
func TestProofJSONByHand(t *testing.T) {
	s := structured(t, func(r *rocket.Rocket) { r.Chamber.Forward.Strength, r.Chamber.Around, r.Chamber.Along = 0, 0, 0 })
	j := newDocument(s)
	wall := 0.639 / (2580 * 0.35)
	assert.InEpsilon(t, wall, float64(j.Wall), 1e-12)
	assert.InEpsilon(t, 1e6*(0.068+wall)/2/wall, float64(j.Hoop), 1e-12)
	assert.InEpsilon(t, float64(j.Hoop)/2, float64(j.Axial), 1e-12)
	pressure, gas := 1e6+97700., 0.7*4.2e-3
	stored := pressure * gas / 0.4 * (1 - math.Pow(97700/pressure, 0.4/1.4))
	assert.InEpsilon(t, stored, float64(j.StoredWorking), 1e-6)
	assert.InEpsilon(t, stored/4.26692e6, float64(j.TNT), 1e-6)
	assert.Equal(t, number(30), j.Standoff)
	assert.InEpsilon(t, 15e5, float64(j.Proof), 1e-12)
	assert.Equal(t, chamber.FromEstimate, j.BurstBasis)
	assert.Equal(t, "wall around", *j.Weakest)
	// The equator of the 1.6 mm ellipsoid: p r/t in compression.
	assert.InEpsilon(t, -1e6*0.034/0.0016, float64(j.Parts[2].Stress), 1e-12)
	assert.InEpsilon(t, 1e6/float64(j.Parts[0].Use), float64(j.Burst), 1e-12)
	// It is of cloth lying both ways, of which compression leaves 0.6.
	cloth := chamber.Chamber{Diameter: 0.068, Length: 1, Material: chamber.GlassEpoxy, Wall: 0.001, FibreFraction: 0.35, Cycles: 6}
	assert.InEpsilon(t, 0.6, float64(j.Parts[2].Strength)/cloth.At(chamber.Service{Working: 1e6}).Parts[0].Strength, 1e-9)
	require.Len(t, j.Stages, 4)
	for i, x := range []float64{3.75e5, 7.5e5, 11.25e5, 15e5} {
		assert.InEpsilon(t, x, float64(j.Stages[i].Pressure), 1e-12)
	}
	assert.Equal(t, []number{60, 60, 60, 300}, []number{j.Stages[0].Hold, j.Stages[1].Hold, j.Stages[2].Hold, j.Stages[3].Hold})
	assert.InEpsilon(t, 1e6*math.Pi/4*0.034*0.034, float64(j.Forces.Retainer), 1e-12)
	require.Len(t, j.Flights, 2)
	assert.InDelta(t, 2.78e-3, float64(j.Flights[0].StartupTime), 0.05e-3, "a surge lasts")
	assert.Zero(t, float64(j.Flights[1].StartupTime))
	speed := float64(j.Flights[0].Canopies[0].Airspeed)
	assert.InEpsilon(t, speed*math.Sqrt(0.06*1200/(3*0.15)), float64(j.Flights[0].Canopies[0].Snatch), 1e-12)
	assert.InEpsilon(t, float64(j.Flights[0].Canopies[0].Snatch)/1200, float64(j.Mount[2].MostUse), 1e-12)
}

func TestProofJSONOfWhatIsNotKnown(t *testing.T) {
	var b bytes.Buffer
	require.NoError(t, WriteJSON(&b, structured(t, oddChambers["own"])))
	for _, want := range []string{`"pump_m3": null`, `"fibre_fraction": null`, `"proof_date": null`, `"retainer_working_n": null`,
		`"snatch_n": null`, `"heating": null`, `"mount": []`, `"cloth": []`} {
		assert.Contains(t, b.String(), want)
	}
}
