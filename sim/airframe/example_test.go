package airframe_test

import (
	"fmt"

	"ullage/sim/airframe"
)

// A shape is checked, made ready once, and asked for its centre of pressure.
func ExampleShape_Aero() {
	s := &airframe.Shape{
		Length: 0.8, Diameter: 0.04,
		Nose: airframe.Nose{Shape: airframe.TangentOgive, Length: 0.12},
		Fins: []airframe.Fins{{Count: 4, Root: 0.1, Tip: 0.05, Span: 0.06, Sweep: 0.05, Thickness: 0.003,
			Section: airframe.RoundedSection, Position: 0.7}},
	}
	for _, f := range s.Check() {
		fmt.Println(f.Key, f.Problem)
	}
	a := s.Aero()
	for _, c := range a.Components(0) {
		fmt.Printf("%-6s %5.2f per rad at %.0f mm\n", c.Name, c.CNAlpha, 1000*c.At)
	}
	m0, m1, _ := a.Moments(0)
	fmt.Printf("whole  %5.2f per rad at %.0f mm\n", m0, 1000*m1/m0)
	// Output:
	// nose    2.00 per rad at 55 mm
	// fins.1 19.37 per rad at 742 mm
	// whole  21.37 per rad at 677 mm
}

// What was not weighed as a whole comes from a mass list.
func ExampleSum() {
	s := &airframe.Shape{Length: 0.8, Diameter: 0.04}
	l := airframe.Sum(s, []airframe.Part{
		{Name: "tube", Mass: 0.2, Position: 0.4, Length: 0.8},
		{Name: "nose weight", Mass: 0.05, Position: 0.06, Diameter: 0.02},
	})
	fmt.Printf("%.0f g, balances at %.0f mm, pitch inertia %.4f kg*m2\n", 1000*l.Mass, 1000*l.At, l.Pitch)
	// Output:
	// 250 g, balances at 332 mm, pitch inertia 0.0153 kg*m2
}
