package sim

import (
	"context"
	"math"

	"ullage/thrust"

	"ullage/sim/rocket"
)

// bottle is a light water rocket for tests, invented.
func bottle() *rocket.Rocket {
	return &rocket.Rocket{
		Name: "test bottle", Power: rocket.WaterPower,
		Body: rocket.Body{Diameter: 0.09, Mass: 0.25, Drag: []rocket.MachDrag{{Mach: 0, Drag: 0.45}}, DragFactor: 1},
		Water: &rocket.Water{Volume: 0.002, Bore: 0.088, Throat: 0.009, Discharge: 0.97, Fill: 0.3,
			Pressure: 7e5, Gas: thrust.Air, Exponent: 1.4, Density: 998.2, Flow: rocket.UnsteadyFlow},
		Rail: rocket.Rail{Length: 1.5},
		Canopies: []rocket.Canopy{{Name: "main", Diameter: 0.6, Coefficient: 0.75, FillConstant: 8, OpeningForceCoefficient: 1.7,
			Water: rocket.Rule{Trigger: rocket.AfterApogee, Value: 1}, Motor: rocket.Rule{Trigger: rocket.Ejection, Value: 0}}},
	}
}

func withWind(r *rocket.Rocket) *rocket.Rocket {
	r.Wind.Speed, r.Wind.Height, r.Wind.Exponent, r.Wind.From = 4, 10, 1.0/7, math.Pi*1.5
	r.Rail.Tilt, r.Rail.Heading = 3*math.Pi/180, math.Pi/2
	return r
}

func mustFly(r *rocket.Rocket, tol float64) *Flight {
	f, err := Fly(context.Background(), r, Options{Tolerance: tol, Keep: true})
	if err != nil {
		panic(err)
	}
	return f
}
