package quantity_test

import (
	"testing"

	"ullage/sim/quantity"
)

func BenchmarkParse(b *testing.B) {
	for b.Loop() {
		if _, err := quantity.Parse("70.4 mm", quantity.Length); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkParseError(b *testing.B) {
	for b.Loop() {
		if _, err := quantity.Parse("9 barr", quantity.Pressure); err == nil {
			b.Fatal("read")
		}
	}
}

func BenchmarkFormat(b *testing.B) {
	u := quantity.Usual(quantity.Pressure)
	for b.Loop() {
		quantity.Format(9.13e5, u, 3)
	}
}

func BenchmarkExact(b *testing.B) {
	u := quantity.Usual(quantity.Length)
	for _, bb := range []struct {
		name string
		v    float64
	}{{"few digits", 0.0704}, {"all digits", 1.0 / 7}} {
		b.Run(bb.name, func(b *testing.B) {
			for b.Loop() {
				quantity.Exact(bb.v, u)
			}
		})
	}
}
