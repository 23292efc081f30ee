package sim

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A motor in the airframe by hand: its case a thin tube, its grain a solid cylinder, its
// fittings a point, each at its place (textbook inertias, parallel axes).
func TestMassPropertiesOfAMotor(t *testing.T) {
	r := rigidRocket(t)
	r.Motor.Fittings, r.Motor.Position = 0.03, 0.79
	l := newMassModel(r)
	dry := r.DryBody()
	const radius, long, middle, grain = 0.012, 0.1, 0.74, 0.025
	hollow := 0.05 * (6*radius*radius + long*long) / 12
	solid := grain * (3*radius*radius + long*long) / 12
	got := l.with(0, 0, grain)
	mass := dry.Mass + 0.05 + 0.03 + grain
	at := (dry.Mass*dry.At + (0.05+0.03+grain)*middle) / mass
	assert.InEpsilon(t, at, got.balance, 1e-12)
	assert.InEpsilon(t, dry.Pitch+dry.Mass*sq(dry.At-at)+hollow+solid+(0.05+0.03+grain)*sq(middle-at), got.pitch, 1e-12)
	assert.InEpsilon(t, dry.Roll+0.05*radius*radius+grain*radius*radius/2, got.roll, 1e-12)

	// Without a place the motor ends where the rocket does; fittings told of elsewhere are there.
	r.Motor.Position, r.Motor.FittingsAt = 0, 0.6
	fl := mustFly(r, 0)
	at = (dry.Mass*dry.At + 0.05*0.75 + 0.03*0.6) / (mass - grain)
	assert.InEpsilon(t, at, fl.Stability.Dry.Balance, 1e-12)
}

// Water's fittings are at the nozzle's exit, or where they are told to be; a nozzle ahead of
// the rocket's end takes liquid and gas with it.
func TestMassPropertiesOfFittings(t *testing.T) {
	r := wetRigid(t)
	r.Water.Fittings, r.Water.Nozzle = 0.08, 0.85
	dry := r.DryBody()
	at := func() float64 { return mustFly(r, 0).Stability.Dry.Balance }
	assert.InEpsilon(t, (dry.Mass*dry.At+0.08*0.85)/(dry.Mass+0.08), at(), 1e-12)
	r.Water.FittingsAt = 0.5
	assert.InEpsilon(t, (dry.Mass*dry.At+0.08*0.5)/(dry.Mass+0.08), at(), 1e-12)
	area := math.Pi / 4 * r.Water.Bore * r.Water.Bore
	h := r.Water.Fill * r.Water.Volume / area
	liquid := 998.2 * r.Water.Fill * r.Water.Volume
	l := newMassModel(r)
	got := l.with(r.Water.Fill*r.Water.Volume, 0, 0)
	mass := dry.Mass + 0.08 + liquid
	assert.InEpsilon(t, (dry.Mass*dry.At+0.08*0.5+liquid*(0.85-h/2))/mass, got.balance, 1e-12)
	require.InEpsilon(t, r.Shape.Length, 0.9, 1e-12)
}
