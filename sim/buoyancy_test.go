package sim

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"ullage/sim/rocket"
)

// An empty chamber under its canopy is carried by the air it displaces (Archimedes):
// m g − ρ V g = ½ ρ v² C_D S. 0.15 kg, 2 litres, 0.6 m, C_D 0.75 in 1.225 kg/m³ and
// 9.80665 m/s²: 3.33772134 m/s, where 3.36531792 would be without it (computed).
func TestSettledDescentIsBuoyed(t *testing.T) {
	r := coasting(t, 0.15, 0.11, 0, 50)
	r.model.chamber = 0.002
	r.rocket.Canopies = []rocket.Canopy{{Name: "c", Diameter: 0.6, Coefficient: 0.75, FillConstant: 8, OpeningForceCoefficient: 1.7}}
	r.model.canopies = []canopyModel{{0.75 * math.Pi / 4 * 0.36, 8 * 0.6}}
	r.flight.Canopies = []CanopyResult{{Name: "c"}}
	r.pending = 1
	r.release(0)
	r.toTheEnd()
	assert.InEpsilon(t, 3.33772134, r.flight.Canopies[0].Descent, 1e-5)
	assert.InEpsilon(t, 3.33772134, r.flight.Landing.Vertical, 2e-5)
}

// A whole flight on water settles to what the file's own figures give, chamber, gas left
// and all: the canopy's opened area and the body's with it.
func TestWaterRocketSettles(t *testing.T) {
	r := bottle()
	r.Canopies = []rocket.Canopy{{Name: "main", Diameter: 0.8, Coefficient: 0.75, OpeningForceCoefficient: 1.7,
		Water: rocket.Rule{Trigger: rocket.AfterApogee}, Motor: rocket.Rule{Trigger: rocket.AfterApogee}}}
	fl := mustFly(r, 1e-9)
	pressure, density, gas := 101325.0, 101325/(287.05287*288.15), 287.05287*288.15
	// The gas left: adiabatic from release to 1.0005 of the air's pressure where it ends.
	start := (r.Water.Pressure + pressure) * r.Water.Volume * (1 - r.Water.Fill) / gas
	full := (r.Water.Pressure + pressure) * math.Pow(1-r.Water.Fill, 1.4)
	left := start * math.Pow(1.0005*fl.At(fl.Burnout.Time).Air/full, 1/1.4)
	mass := r.Body.Mass + r.Water.Fittings + left
	assert.InEpsilon(t, mass, fl.At(fl.Duration()).Mass, 1e-9)
	area := 0.75*math.Pi/4*0.64 + r.Body.Drag[0].Drag*math.Pi/4*r.Body.Diameter*r.Body.Diameter
	want := math.Sqrt(2 * (mass - density*r.Water.Volume) * 9.80665 / (density * area))
	assert.InEpsilon(t, want, fl.Canopies[0].Descent, 1e-9)
	assert.InEpsilon(t, want, fl.Landing.Vertical, 1e-4)
}
