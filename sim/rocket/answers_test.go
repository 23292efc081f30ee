package rocket

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/atmosphere"
	"ullage/sim/chamber"
	"ullage/sim/fault"
	"ullage/thrust"
)

// keys are those of what is missing, and of what is at odds.
func keys(faults fault.List) (missing, atOdds []string) {
	for _, f := range faults {
		if f.Missing {
			missing = append(missing, f.Key)
		} else {
			atOdds = append(atOdds, f.Key)
		}
	}
	return missing, atOdds
}

// A bare rocket says all that is missing, for each answer what that takes.
func TestWhatIsMissing(t *testing.T) {
	bare := &Rocket{}
	tests := []struct {
		name string
		r    *Rocket
		want map[Answer][]string
	}{
		{"nothing", bare, map[Answer][]string{
			ForFlight:    {"power", "body.diameter", "body.mass", "body.drag", "rail.length"},
			ForStability: {"power", "body.diameter", "body.mass", "body.length", "nose", "body.balance"},
			ForChamber:   {"chamber"},
			ForCard: {"power", "body.diameter", "body.mass", "body.drag", "rail.length", "body.length", "nose", "body.balance",
				"canopy", "recovery", "field.ceiling", "field.radius"},
		}},
		{"a power without its drive", &Rocket{Power: WaterPower, Body: Body{Diameter: 0.07, Mass: 1, Drag: []MachDrag{{0, 0.5}}}}, map[Answer][]string{
			ForFlight:    {"water", "rail.length"},
			ForStability: {"water", "body.length", "nose", "body.balance"},
			ForChamber:   {"chamber"},
			ForCard: {"water", "rail.length", "body.length", "nose", "body.balance", "chamber", "canopy", "recovery",
				"field.ceiling", "field.radius"},
		}},
		{"a chamber alone", &Rocket{Chamber: &chamber.Chamber{Diameter: 0.1, Length: 0.5, Material: chamber.PETBottle, Wall: 0.001}}, map[Answer][]string{
			ForChamber: nil,
		}},
		{"a chamber of which little is known", &Rocket{Chamber: &chamber.Chamber{Diameter: 0.1, Length: 0.5, Forward: &chamber.Closure{}}}, map[Answer][]string{
			ForChamber: {"chamber.material", "chamber.forward.shape", "chamber.forward.overlap"},
		}},
		{"a chamber without a size", &Rocket{Chamber: &chamber.Chamber{Material: chamber.PETBottle, Wall: 0.001}}, map[Answer][]string{
			ForChamber: {"chamber.diameter"},
		}},
	}
	for _, tt := range tests {
		for a, want := range tt.want {
			missing, odd := keys(tt.r.Check(a))
			assert.Equal(t, want, missing, "%s for a %s", tt.name, a)
			assert.Empty(t, odd, "%s for a %s", tt.name, a)
		}
	}
	for _, f := range bare.Check(ForCard) {
		assert.NotEmpty(t, f.Problem, f.Key)
		assert.NotEmpty(t, f.Remedy, f.Key)
	}
}

// What is described in full gives every answer, on either drive.
func TestNothingMissing(t *testing.T) {
	dry, water := full(t), wet(t)
	water.Chamber = full(t).Chamber
	water.Chamber.Diameter, water.Chamber.Length = 0, 0 // as water has them
	for _, r := range []*Rocket{dry, water} {
		for _, a := range Answers() {
			assert.Empty(t, r.Check(a), "%s, for a %s", r.Power, a)
		}
	}
	water.Chamber.Proof, water.Chamber.ProofDate, water.Chamber.Burst, water.Chamber.Thread, water.Chamber.Aft = 0, "", 0, nil, nil
	assert.Empty(t, water.Check(ForChamber))
	missing, odd := keys(water.Check(ForCard))
	assert.Equal(t, []string{"chamber.proof", "chamber.proof_date", "chamber.burst", "chamber.aft", "chamber.thread"}, missing)
	assert.Empty(t, odd)
}

// An answer takes no more than its part of the description.
func TestAnswersStandApart(t *testing.T) {
	r := wet(t)
	r.Rail, r.Body.Drag, r.Shape.Fins = Rail{}, nil, nil
	r.Canopies[0].Diameter = 0
	assert.Empty(t, r.Check(ForStability), "balance takes no rail and no canopy")
	missing, _ := keys(r.Check(ForFlight))
	assert.Equal(t, []string{"canopy.main.diameter"}, missing, "the launch tube guides, the shape has drag")

	r = wet(t)
	r.Motor = &Motor{Delay: math.NaN()}
	assert.Empty(t, r.Check(ForFlight), "a drive that does not fly may lack something")
	r.Motor.Case = -1
	_, odd := keys(r.Check(ForFlight))
	assert.Equal(t, []string{"motor.case"}, odd, "but not be wrong")
	r.Power = MotorPower
	missing, _ = keys(r.Check(ForFlight))
	assert.Equal(t, []string{"motor.curve", "motor.propellant"}, missing)

	r = &Rocket{Chamber: full(t).Chamber, Water: &Water{Volume: 2e-3, Bore: 0.065, Fill: math.NaN(), Pressure: 9e5, Gas: thrust.Air}}
	r.Chamber.Length = 0
	missing, odd = keys(r.Check(ForChamber))
	assert.Equal(t, []string{"water.fill"}, missing, "the throat is no matter of strength")
	assert.Empty(t, odd)
}

// Every number that has to be there is missed by name when it is not: NaN is what nobody
// knows yet.
func TestEveryNumberIsMissed(t *testing.T) {
	looked := 0
	for name, n := range numbers() {
		if n.Optional || n.Count != nil {
			continue
		}
		one := full
		if r := full(t); n.At(r, 0) == nil {
			one = wet
		}
		if strings.HasPrefix(name, "wind.layer.") {
			one = blown
		}
		r := one(t)
		*n.At(r, 0) = math.NaN()
		if name == "body.diameter" {
			r.Shape.Diameter = math.NaN()
		}
		missing, odd := keys(fault.In(r.Validate()))
		assert.Contains(t, missing, keyOf(n))
		assert.Empty(t, odd, name)
		looked++
	}
	require.Greater(t, looked, 50)
}

// A chamber stands wherever a site may be: its wall takes the temperature of the air there.
func TestChamberAtAnySite(t *testing.T) {
	air := NumberNamed("site.temperature").Range
	for _, temperature := range []float64{air.Min, air.Max} {
		r := full(t)
		r.Chamber.Temperature, r.Site.Pressure, r.Site.Temperature = 0, 0, temperature
		water := wet(t)
		water.Chamber, water.Site, water.Water.Temperature = r.Chamber, r.Site, 0
		water.Chamber.Length = 0
		assert.Empty(t, water.Check(ForChamber))
	}
}

// What is at odds is no less so for being at odds with something missing.
func TestAtOdds(t *testing.T) {
	r := wet(t)
	r.Water.Throat, r.Water.Pressure = 0.07, math.NaN()
	r.Water.Tube, r.Rail.Length = nil, 2
	r.Site = atmosphere.Site{Elevation: 1500, Pressure: 101300}
	missing, odd := keys(r.Check(ForFlight))
	assert.Equal(t, []string{"water.pressure"}, missing)
	assert.Equal(t, []string{"water.throat", "site.pressure"}, odd)
	assert.Equal(t, []string{"flight", "stability", "chamber", "card"},
		[]string{ForFlight.String(), ForStability.String(), ForChamber.String(), ForCard.String()})
}
