package rocket

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/airframe"
	"ullage/sim/fault"
	"ullage/thrust"
)

// slender is a small motor rocket with a shape: 0.5 kg that balance at 440 of 800 mm.
func slender(t *testing.T) *Rocket {
	t.Helper()
	curve, err := thrust.NewCurve([]thrust.Point{{Time: 0.02, Thrust: 60}, {Time: 1.3, Thrust: 0}})
	require.NoError(t, err)
	return &Rocket{Power: MotorPower,
		Body:  Body{Diameter: 0.04, Mass: 0.5, Drag: []MachDrag{{0, 0.5}}, DragFactor: 1, Balance: 0.44, Inertia: 0.012, RollInertia: 2e-4},
		Motor: &Motor{Curve: curve, Case: 0.05, Propellant: 0.04, Delay: 5, Diameter: 0.024, Length: 0.1},
		Rail:  Rail{Length: 1.2},
		Shape: &airframe.Shape{
			Length: 0.8, Diameter: 0.04, Roughness: 20e-6,
			Nose: airframe.Nose{Shape: airframe.TangentOgive, Length: 0.12},
			Fins: []airframe.Fins{{Name: "tail", Count: 4, Root: 0.1, Tip: 0.05, Span: 0.06, Sweep: 0.05, Thickness: 0.003,
				Section: airframe.FlatSection, Position: 0.7}},
		},
	}
}

// What several inputs of a shaped rocket disagree about is told by name, once.
func TestValidateShape(t *testing.T) {
	parts := []airframe.Part{{Name: "tube", Mass: 0.3, Position: 0.4, Length: 0.7}, {Name: "2", Mass: 0.2, Position: 0.1}}
	tests := []struct {
		name  string
		fault string // "" for none
		alter func(r *Rocket)
	}{
		{"as it is", "", func(*Rocket) {}},
		{"no drag of its own", "", func(r *Rocket) { r.Body.Drag = nil }},
		{"no balance", "", func(r *Rocket) { r.Body.Balance = 0 }},
		{"no drag, no shape", "body.drag", func(r *Rocket) { r.Body.Drag, r.Shape = nil, nil }},
		{"no mass", "body.mass", func(r *Rocket) { r.Body.Mass = 0 }},
		{"mass of the list", "", func(r *Rocket) { r.Body.Mass, r.Parts = 0, parts }},
		{"list without a shape", "", func(r *Rocket) { r.Body.Mass, r.Parts, r.Shape = 0, parts, nil }},
		{"weightless list", "part.x.mass", func(r *Rocket) { r.Body.Mass, r.Parts = 0, []airframe.Part{{Name: "x"}} }},
		{"weightless list, no shape", "part.x.mass", func(r *Rocket) { r.Body.Mass, r.Parts, r.Shape = 0, []airframe.Part{{Name: "x"}}, nil }},
		{"negative part, no shape", "part.x.mass", func(r *Rocket) { r.Parts, r.Shape = []airframe.Part{{Name: "x", Mass: -1}}, nil }},
		{"floating part", "part.tube.position", func(r *Rocket) { r.Parts = []airframe.Part{{Name: "tube", Mass: 1, Position: 1.2}} }},
		{"two diameters", "body.diameter", func(r *Rocket) { r.Shape.Diameter = 0.041 }},
		{"a fault of the shape", "fins.tail.position", func(r *Rocket) { r.Shape.Fins[0].Position = 0.75 }},
		{"balance behind the tail", "body.balance", func(r *Rocket) { r.Body.Balance = 0.81 }},
		{"balance that is none", "body.balance", func(r *Rocket) { r.Body.Balance = math.NaN() }},
		{"negative inertia", "body.inertia", func(r *Rocket) { r.Body.Inertia = -0.01 }},
		{"endless inertia", "body.inertia", func(r *Rocket) { r.Body.Inertia = math.Inf(1) }},
		{"inertia that is none", "body.roll_inertia", func(r *Rocket) { r.Body.RollInertia = math.NaN() }},
		// 0.5 kg at 440 of 800 mm: at most 0.5·0.44·0.36 and a little for the width.
		{"much inertia", "", func(r *Rocket) { r.Body.Inertia = 0.0792 }},
		{"too much inertia", "body.inertia", func(r *Rocket) { r.Body.Inertia = 0.083 }},
		// All of it at the fins' tips, 80 mm out: 0.0032 kg·m².
		{"much roll inertia", "", func(r *Rocket) { r.Body.RollInertia = 0.00319 }},
		{"too much roll inertia", "body.roll_inertia", func(r *Rocket) { r.Body.RollInertia = 0.00321 }},
		{"motor a little out", "", func(r *Rocket) { r.Motor.Position = 0.99 }},
		{"motor far out", "motor.position", func(r *Rocket) { r.Motor.Position = 1.01 }},
		{"motor ahead", "motor.position", func(r *Rocket) { r.Motor.Position = -0.3 }},
		{"motor's fittings out", "motor.fittings_at", func(r *Rocket) { r.Motor.FittingsAt = 1.01 }},
		{"motor longer than the rocket", "motor.length", func(r *Rocket) { r.Motor.Length = 0.81 }},
		{"misaligned", "", func(r *Rocket) { r.Alignment = Alignment{Angle: -0.17, Offset: 0.05} }},
		{"misaligned too far", "flight.misalignment", func(r *Rocket) { r.Alignment.Angle = 0.18 }},
		{"offset too far", "flight.offset", func(r *Rocket) { r.Alignment.Offset = -0.051 }},
		{"gust from below", "gust.height", func(r *Rocket) { r.Gust.Height = -1 }},
		{"gust backwards", "gust.speed", func(r *Rocket) { r.Gust.Speed = -1 }},
		{"gust from nowhere", "gust.from", func(r *Rocket) { r.Gust.From = math.NaN() }},
		{"no such model", "flight.model", func(r *Rocket) { r.Model = "stiff" }},
		{"rigid without a shape", "flight.model", func(r *Rocket) { r.Model, r.Shape = RigidModel, nil }},
		{"rigid without a balance", "flight.model", func(r *Rocket) { r.Model, r.Body.Balance = RigidModel, 0 }},
		{"rigid from a list", "", func(r *Rocket) { r.Model, r.Body.Balance, r.Parts = RigidModel, 0, parts }},
	}
	for _, tt := range tests {
		r := slender(t)
		tt.alter(r)
		err := r.Validate()
		if tt.fault == "" {
			assert.NoError(t, err, tt.name)
			continue
		}
		var faults fault.List
		require.ErrorAs(t, err, &faults, tt.name)
		require.Len(t, faults, 1, tt.name)
		assert.Equal(t, tt.fault, faults[0].Key, tt.name)
		assert.NotEmpty(t, faults[0].Problem, tt.name)
		assert.NotEmpty(t, faults[0].Remedy, tt.name)
	}
}

// What the inputs of a drive, of canopies, of the day and of the chamber disagree about is
// told by name, once.
func TestValidateTogether(t *testing.T) {
	onMotor := map[string][]func(r *Rocket){
		"body.drag": {
			func(r *Rocket) { r.Body.Drag = []MachDrag{{0.5, 0.4}, {0.5, 0.5}} },
			func(r *Rocket) { r.Body.Drag = []MachDrag{{0.5, 0.4}, {0.2, 0.5}} },
		},
		"power":                   {func(r *Rocket) { r.Power = "steam" }, func(r *Rocket) { r.Power = "" }},
		"motor":                   {func(r *Rocket) { r.Motor = nil }},
		"motor.curve":             {func(r *Rocket) { r.Motor.Curve = nil }},
		"motor.delays":            {func(r *Rocket) { r.Motor.Delays = []float64{4, 61} }},
		"canopy":                  {func(r *Rocket) { r.Canopies = canopies(MaxCanopies + 1) }},
		"canopy.main.area":        {func(r *Rocket) { r.Canopies[0].Area = 0.8 }},
		"canopy.main.diameter":    {func(r *Rocket) { r.Canopies[0].Diameter = 0 }},
		"rail.length":             {func(r *Rocket) { r.Rail.Length = 0 }},
		"site.sea_level_pressure": {func(r *Rocket) { r.Site.SeaLevelPressure = 101e3 }},
		"site.pressure":           {func(r *Rocket) { r.Site.Elevation = 2500 }},
		"limits.margin_least":     {func(r *Rocket) { r.Limits.MarginMost = 0.9 }},
		"chamber.diameter":        {func(r *Rocket) { r.Chamber.Diameter = 0.07 }, func(r *Rocket) { r.Chamber.Diameter = 0 }},
		"chamber.forward.overlap": {func(r *Rocket) { r.Chamber.Forward.Overlap = 0.7 }},
		"recovery.planes":         {func(r *Rocket) { r.Recovery.Planes = 3 }},
	}
	onWater := map[string][]func(r *Rocket){
		"water":                {func(r *Rocket) { r.Water = nil }},
		"water.throat":         {func(r *Rocket) { r.Water.Throat = 0.065 }},
		"water.gas":            {func(r *Rocket) { r.Water.Gas = "steam" }},
		"water.flow":           {func(r *Rocket) { r.Water.Flow = "" }},
		"water.tube.outer":     {func(r *Rocket) { r.Water.Tube.Outer = 0.0131 }},
		"water.tube.inner":     {func(r *Rocket) { r.Water.Tube.Inner = 0.0128 }},
		"water.nozzle":         {func(r *Rocket) { r.Water.Nozzle = 1.31 }},
		"water.fittings_at":    {func(r *Rocket) { r.Water.FittingsAt = 1.31 }},
		"water.volume":         {func(r *Rocket) { r.Water.Nozzle = 0.1 }},
		"water.tube.length":    {func(r *Rocket) { r.Water.Tube.Length = 0.61 }, func(r *Rocket) { r.Water.Fill, r.Water.Tube.Length = 0.98, 0.59 }},
		"canopy.main.diameter": {func(r *Rocket) { r.Canopies[0].Diameter = 0 }},
	}
	for base, tests := range map[string]map[string][]func(r *Rocket){"full": onMotor, "wet": onWater} {
		for key, alters := range tests {
			for i, alter := range alters {
				r := full(t)
				if base == "wet" {
					r = wet(t)
				}
				alter(r)
				faults := fault.In(r.Validate())
				if assert.Len(t, faults, 1, "%s %s %d", base, key, i) {
					assert.Equal(t, key, faults[0].Key)
					assert.NotEmpty(t, faults[0].Problem)
					assert.NotEmpty(t, faults[0].Remedy)
				}
			}
		}
	}
	r := wet(t)
	r.Rail.Length = 0
	assert.NoError(t, r.Validate(), "the launch tube guides")
}

// canopies are some sound ones.
func canopies(n int) []Canopy {
	list := make([]Canopy, n)
	for i := range list {
		list[i] = Canopy{Name: fmt.Sprint(i + 1), Diameter: 1, Coefficient: 0.75, FillConstant: 8, OpeningForceCoefficient: 1.7}
	}
	return list
}
