package rocket

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/atmosphere"
	"ullage/sim/airframe"
	"ullage/sim/chamber"
	"ullage/thrust"
)

// full is a rocket on a motor that has one of everything but the water drive.
func full(t *testing.T) *Rocket {
	t.Helper()
	curve, err := thrust.NewCurve([]thrust.Point{{Time: 0, Thrust: 80}, {Time: 1.5, Thrust: 60}, {Time: 1.6, Thrust: 0}})
	require.NoError(t, err)
	r := &Rocket{
		Name: "Grey Shoveller", Power: MotorPower,
		Body: Body{Diameter: 0.07, Mass: 1.1, Drag: []MachDrag{{0, 0.5}, {0.8, 0.6}}, DragFactor: 1, Balance: 0.6, Inertia: 0.05, RollInertia: 0.001},
		Motor: &Motor{Curve: curve, Case: 0.2, Propellant: 0.1, Delay: 6, Delays: []float64{4, 6}, Diameter: 0.029, Length: 0.2,
			Fittings: 0.05, FittingsAt: 1, Position: 1.1},
		MotorMount: &MotorMount{Diameter: 0.029, Length: 0.25, Wall: 0.001, Within: 0.066, Rings: 3},
		Canopies: []Canopy{{Name: "main", Diameter: 1, Coefficient: 0.75, FillConstant: 8, OpeningForceCoefficient: 1.7,
			Shape: HemisphereCanopy, Gores: 10, Seam: 0.012, Vent: 0.1,
			Water: Rule{AfterApogee, 1}, Motor: Rule{Ejection, 0}}},
		Site:      atmosphere.Site{Elevation: 100, Temperature: 290, Pressure: 100e3, Humidity: 0.5, Latitude: 50, Longitude: 8, Located: true},
		Rail:      Rail{Length: 2, Tilt: 0.05, Heading: 1},
		Wind:      atmosphere.Wind{Speed: 3, Height: 10, Exponent: 0.14, From: 2},
		Gust:      Gust{Speed: 2, From: 1, Height: 50},
		Alignment: Alignment{Angle: 0.002, Offset: 0.001},
		Shape: &airframe.Shape{
			Length: 1.1, Diameter: 0.07, Roughness: 30e-6, RailButtons: 9e-5,
			Nose:     airframe.Nose{Shape: airframe.PowerSeries, Length: 0.2, Exponent: 0.6, Diameter: 0.07},
			Sections: []airframe.Section{{Name: "tube", Length: 0.6, Forward: 0.07, Aft: 0.07}},
			Fins: []airframe.Fins{{Name: "tail", Count: 4, Root: 0.12, Tip: 0.06, Span: 0.08, Sweep: 0.05, Thickness: 0.003,
				Section: airframe.FlatSection, Position: 0.97, Cant: 0.01, ShearModulus: 5e9}},
		},
		Holes: []Hole{{Name: "rail-button", Position: 0.7, Diameter: 0.005, Length: 0.02, Count: 2, Angle: 1}},
		Parts: []airframe.Part{{Name: "battery", Mass: 0.1, Position: 0.3, Length: 0.05, Diameter: 0.03}},
		Chamber: &chamber.Chamber{
			Diameter: 0.065, Length: 0.6, Material: chamber.GlassEpoxy, Wall: 0.001, FibreFraction: 0.35, Waste: 0.15,
			Around: 200e6, Along: 100e6, Density: 1800, Modulus: 15e9, Temperature: 310, HeatFactor: 0.9, Cycles: 13, CycleFactor: 0.9,
			Burst: 40e5, Proof: 20e5, ProofDate: "2026-05-01",
			Plies:    []chamber.Ply{{Name: "hoop", Cloth: 0.2, Count: 4, Direction: 0.1, Weave: chamber.Woven}},
			Forward:  &chamber.Closure{Shape: chamber.Cone, Wall: 0.002, Strength: 100e6, HalfAngle: 0.5, Overlap: 0.03, BondStrength: 10e6},
			Aft:      &chamber.Closure{Shape: chamber.Cone, Wall: 0.002, Strength: 100e6, HalfAngle: 0.5, Overlap: 0.03, BondStrength: 10e6},
			Thread:   &chamber.Thread{Diameter: 0.04, Pitch: 0.002, Engaged: 0.012, Strength: 200e6, Female: 150e6, Seal: 0.035, Hole: 0.013},
			Adhesive: &chamber.Adhesive{GlueLine: 2e-4, Strength: 20e6, Elastic: 0.02, Plastic: 0.05},
			Boss:     &chamber.Boss{Diameter: 0.045, Length: 0.02, BondStrength: 8e6},
			Liner:    chamber.Unlined,
			Heating:  &chamber.Heating{Temperature: 350, Time: 20, Rise: 5e3},
		},
		Recovery: &chamber.Mount{Pin: 0.005, PinStrength: 100e6, Planes: 2, BondArea: 2e-3, Bond: 8e6, Line: 1000, LineLength: 3,
			LineStretch: 0.2, CanopyMass: 0.06},
		Limits: DefaultLimits(),
		Field:  Field{Ceiling: 600, Radius: 500},
	}
	require.NoError(t, r.Validate())
	return r
}

// keyOf is a number's name in the rockets of these tests.
func keyOf(n *Number) string {
	items := map[string]string{"canopy": "main", "section": "tube", "fins": "tail", "part": "battery", "chamber": "hoop", "wind": "1", "hole": "rail-button"}
	group, _, _ := strings.Cut(n.Name, ".")
	return strings.Replace(n.Name, "*", items[group], 1)
}

// blown is a rocket in a wind of layers.
func blown(t *testing.T) *Rocket {
	t.Helper()
	r := full(t)
	r.Wind = atmosphere.Wind{Layers: []atmosphere.Layer{{Height: 10, Speed: 4, From: 1}}}
	require.NoError(t, r.Validate())
	return r
}

// wet is a rocket on water, with a launch tube.
func wet(t *testing.T) *Rocket {
	t.Helper()
	r := full(t)
	r.Power, r.Motor, r.Chamber = WaterPower, nil, nil
	r.Water = &Water{Volume: 2e-3, Bore: 0.065, Throat: 0.013, Discharge: 0.97, Fill: 0.3, Pressure: 9e5, Exponent: 1.3, Gas: thrust.Air,
		Temperature: 290, Density: 998, Flow: UnsteadyFlow, Fittings: 0.1, FittingsAt: 1, Nozzle: 1.1,
		Tube: &LaunchTube{Length: 0.4, Outer: 0.0128, Inner: 0.009, DeadVolume: 1e-4}}
	require.NoError(t, r.Validate())
	return r
}
