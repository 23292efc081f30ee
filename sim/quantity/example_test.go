package quantity_test

import (
	"fmt"

	"ullage/sim/quantity"
)

func ExampleParse() {
	q, _ := quantity.Parse("70 mm", quantity.Length)
	fmt.Println(q.Value, "m, given in", q.Unit.Name)

	for _, text := range []string{"70", "70 MM", "70 kg", "1,500 m"} {
		_, err := quantity.Parse(text, quantity.Length)
		fmt.Println(err)
	}
	// Output:
	// 0.07 m, given in mm
	// "70": has no unit; write "70 mm"
	// "70 MM": has its unit in the wrong case; write "70 mm"
	// "70 kg": is a mass where a length is due; use um, mm, cm, m, in or ft
	// "1,500 m": is not one plain number; write "1.500 m" or "1500 m"
}

// A field of the screen that shows psi takes a bare number as psi.
func ExampleParseIn() {
	psi, _ := quantity.Lookup("psi")
	for _, text := range []string{"65", "4.5 bar"} {
		q, _ := quantity.ParseIn(text, quantity.Pressure, psi)
		fmt.Printf("%.0f Pa\n", q.Value)
	}
	// Output:
	// 448159 Pa
	// 450000 Pa
}

func ExampleFormat() {
	bar, _ := quantity.Lookup("bar")
	metre, _ := quantity.Lookup("m")
	fmt.Println(quantity.Format(9e5, bar, 2))
	fmt.Println(quantity.Format(213.7, metre, 2))
	// Output:
	// 9.0 bar
	// 214 m
}

func ExampleExact() {
	metre, _ := quantity.Lookup("m")
	celsius, _ := quantity.Lookup("degC")
	a, b := 0.1, 0.2
	fmt.Println(a+b, quantity.Exact(a+b, metre))
	fmt.Println(quantity.Exact(291.15, celsius))
	// Output:
	// 0.30000000000000004 0.3 m
	// 18 degC
}

func ExampleSystem_Unit() {
	bar, _ := quantity.Lookup("bar")
	shown := quantity.US.Unit(bar)
	fmt.Println(quantity.Format(9e5, shown, 3))
	// Output: 131 psi
}
