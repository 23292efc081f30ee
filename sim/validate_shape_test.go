package sim

import (
	"context"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/airframe"
	"ullage/sim/fault"
	"ullage/sim/rocket"
)

// What several inputs of a shaped rocket disagree about is told by name, once.
func TestValidateShape(t *testing.T) {
	parts := []airframe.Part{{Name: "tube", Mass: 0.3, Position: 0.4, Length: 0.7}, {Name: "2", Mass: 0.2, Position: 0.1}}
	tests := []struct {
		name  string
		fault string // "" for none
		alter func(r *rocket.Rocket)
	}{
		{"as it is", "", func(*rocket.Rocket) {}},
		{"no drag of its own", "", func(r *rocket.Rocket) { r.Body.Drag = nil }},
		{"no balance", "", func(r *rocket.Rocket) { r.Body.Balance = 0 }},
		{"no drag, no shape", "body.drag", func(r *rocket.Rocket) { r.Body.Drag, r.Shape = nil, nil }},
		{"no mass", "body.mass", func(r *rocket.Rocket) { r.Body.Mass = 0 }},
		{"mass of the list", "", func(r *rocket.Rocket) { r.Body.Mass, r.Parts = 0, parts }},
		{"list without a shape", "", func(r *rocket.Rocket) { r.Body.Mass, r.Parts, r.Shape = 0, parts, nil }},
		{"weightless list", "part.x.mass", func(r *rocket.Rocket) { r.Body.Mass, r.Parts = 0, []airframe.Part{{Name: "x"}} }},
		{"weightless list, no shape", "part.x.mass", func(r *rocket.Rocket) { r.Body.Mass, r.Parts, r.Shape = 0, []airframe.Part{{Name: "x"}}, nil }},
		{"negative part, no shape", "part.x.mass", func(r *rocket.Rocket) { r.Parts, r.Shape = []airframe.Part{{Name: "x", Mass: -1}}, nil }},
		{"floating part", "part.tube.position", func(r *rocket.Rocket) { r.Parts = []airframe.Part{{Name: "tube", Mass: 1, Position: 1.2}} }},
		{"two diameters", "body.diameter", func(r *rocket.Rocket) { r.Shape.Diameter = 0.041 }},
		{"a fault of the shape", "fins.1.position", func(r *rocket.Rocket) { r.Shape.Fins[0].Position = 0.75 }},
		{"balance behind the tail", "body.balance", func(r *rocket.Rocket) { r.Body.Balance = 0.81 }},
		{"balance that is none", "body.balance", func(r *rocket.Rocket) { r.Body.Balance = math.NaN() }},
		{"negative inertia", "body.inertia", func(r *rocket.Rocket) { r.Body.Inertia = -0.01 }},
		{"endless inertia", "body.inertia", func(r *rocket.Rocket) { r.Body.Inertia = math.Inf(1) }},
		{"inertia that is none", "body.roll_inertia", func(r *rocket.Rocket) { r.Body.RollInertia = math.NaN() }},
		// 0.5 kg at 440 of 800 mm: at most 0.5·0.44·0.36 and a little for the width.
		{"much inertia", "", func(r *rocket.Rocket) { r.Body.Inertia = 0.0792 }},
		{"too much inertia", "body.inertia", func(r *rocket.Rocket) { r.Body.Inertia = 0.083 }},
		// All of it at the fins' tips, 80 mm out: 0.0032 kg·m².
		{"much roll inertia", "", func(r *rocket.Rocket) { r.Body.RollInertia = 0.00319 }},
		{"too much roll inertia", "body.roll_inertia", func(r *rocket.Rocket) { r.Body.RollInertia = 0.00321 }},
		{"motor a little out", "", func(r *rocket.Rocket) { r.Motor.Position = 0.99 }},
		{"motor far out", "motor.position", func(r *rocket.Rocket) { r.Motor.Position = 1.01 }},
		{"motor ahead", "motor.position", func(r *rocket.Rocket) { r.Motor.Position = -0.3 }},
		{"motor's fittings out", "motor.fittings_at", func(r *rocket.Rocket) { r.Motor.FittingsAt = 1.01 }},
		{"motor longer than the rocket", "motor.length", func(r *rocket.Rocket) { r.Motor.Length = 0.81 }},
		{"misaligned", "", func(r *rocket.Rocket) { r.Alignment = rocket.Alignment{Angle: -0.17, Offset: 0.05} }},
		{"misaligned too far", "flight.misalignment", func(r *rocket.Rocket) { r.Alignment.Angle = 0.18 }},
		{"offset too far", "flight.offset", func(r *rocket.Rocket) { r.Alignment.Offset = -0.051 }},
		{"gust from below", "gust.height", func(r *rocket.Rocket) { r.Gust.Height = -1 }},
		{"gust backwards", "gust.speed", func(r *rocket.Rocket) { r.Gust.Speed = -1 }},
		{"gust from nowhere", "gust.from", func(r *rocket.Rocket) { r.Gust.From = math.NaN() }},
		{"no such model", "flight.model", func(r *rocket.Rocket) { r.Model = "stiff" }},
		{"rigid without a shape", "flight.model", func(r *rocket.Rocket) { r.Model, r.Shape = rocket.RigidModel, nil }},
		{"rigid without a balance", "flight.model", func(r *rocket.Rocket) { r.Model, r.Body.Balance = rocket.RigidModel, 0 }},
		{"rigid from a list", "", func(r *rocket.Rocket) { r.Model, r.Body.Balance, r.Parts = rocket.RigidModel, 0, parts }},
	}
	for _, tt := range tests {
		r := rigidRocket(t)
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
	wet := wetRigid(t)
	for name, alter := range map[string]func(w *rocket.Water){
		"water.nozzle":      func(w *rocket.Water) { w.Nozzle = 1.11 },
		"water.fittings_at": func(w *rocket.Water) { w.FittingsAt = -0.21 },
		"water.volume":      func(w *rocket.Water) { w.Nozzle = 0.1 },
	} {
		c, w := *wet, *wet.Water
		c.Water = &w
		alter(&w)
		var faults fault.List
		require.ErrorAs(t, c.Validate(), &faults, name)
		require.Len(t, faults, 1)
		assert.Equal(t, name, faults[0].Key)
	}
}

// A rocket known by its mass list flies as one that was weighed.
func TestMassListFlies(t *testing.T) {
	r := rigidRocket(t)
	weighed := mustFly(r, 1e-8)
	r.Parts = []airframe.Part{{Name: "tube", Mass: 0.3, Position: 0.4, Length: 0.7}, {Name: "2", Mass: 0.2, Position: 0.5}}
	r.Body.Mass, r.Body.Balance = 0, 0
	require.Equal(t, 0.5, r.BodyMass())
	listed := mustFly(r, 1e-8)
	require.InDelta(t, weighed.LiftOffMass, listed.LiftOffMass, 1e-12)
	require.InDelta(t, weighed.Stability.Dry.Balance, listed.Stability.Dry.Balance, 1e-12) // 0.44 m both times
	require.InEpsilon(t, weighed.Apogee.Height, listed.Apogee.Height, 1e-9)

	r.Shape = nil
	point, err := Fly(context.Background(), r, Options{})
	require.NoError(t, err)
	require.InDelta(t, weighed.LiftOffMass, point.LiftOffMass, 1e-12)
}
