package sim

import (
	"context"
	"math"

	"ullage/thrust"
)

// bottle is a light water rocket for tests, invented.
func bottle() *Rocket {
	return &Rocket{
		Name: "test bottle", Power: WaterPower,
		Body: Body{Diameter: 0.09, Mass: 0.25, Drag: []MachDrag{{0, 0.45}}, DragFactor: 1},
		Water: &Water{Volume: 0.002, Bore: 0.088, Throat: 0.009, Discharge: 0.97, Fill: 0.3,
			Pressure: 7e5, Gas: thrust.Air, Density: 998.2, Flow: UnsteadyFlow},
		Rail: Rail{Length: 1.5},
		Canopies: []Canopy{{Name: "main", Diameter: 0.6, Coefficient: 0.75, FillConstant: 8, Shock: 1.7,
			Water: Rule{AfterApogee, 1}, Motor: Rule{Ejection, 0}}},
	}
}

func withWind(r *Rocket) *Rocket {
	r.Wind.Speed, r.Wind.Height, r.Wind.Exponent, r.Wind.From = 4, 10, 1.0/7, math.Pi*1.5
	r.Rail.Tilt, r.Rail.Heading = 3*math.Pi/180, math.Pi/2
	return r
}

func mustFly(r *Rocket, tol float64) *Flight {
	f, err := Fly(context.Background(), r, Options{Tolerance: tol, Keep: true})
	if err != nil {
		panic(err)
	}
	return f
}
