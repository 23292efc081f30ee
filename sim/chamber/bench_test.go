package chamber

import "testing"

func BenchmarkAt(b *testing.B) {
	c, s := glassTube(), service()
	b.ReportAllocs()
	for b.Loop() {
		c.At(s)
	}
}

func BenchmarkCheck(b *testing.B) {
	c := glassTube()
	b.ReportAllocs()
	for b.Loop() {
		c.Check()
	}
}
