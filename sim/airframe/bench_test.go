package airframe

import "testing"

var sink float64

func BenchmarkAero(b *testing.B) {
	for _, shape := range []NoseShape{TangentOgive, PowerSeries, VonKarman} {
		b.Run(string(shape), func(b *testing.B) {
			s := caseB()
			s.Nose.Shape, s.Nose.Exponent = shape, 0.6
			b.ReportAllocs()
			for b.Loop() {
				s.Aero()
			}
		})
	}
}

func BenchmarkMoments(b *testing.B) {
	a := caseB().Aero()
	b.ReportAllocs()
	for b.Loop() {
		m0, m1, m2 := a.Moments(0.4)
		sink = m0 + m1 + m2
	}
}

func BenchmarkDrag(b *testing.B) {
	a := caseB().Aero()
	f := seaLevel(120)
	b.ReportAllocs()
	for b.Loop() {
		sink = a.Drag(f, 1e-4)
	}
}

func BenchmarkShapeDrag(b *testing.B) {
	s := caseB()
	f := seaLevel(120)
	b.ReportAllocs()
	for b.Loop() {
		sink, _ = s.Drag(f, 1e-4)
	}
}

func BenchmarkCheck(b *testing.B) {
	s := caseB()
	b.ReportAllocs()
	for b.Loop() {
		sink = float64(len(s.Check()))
	}
}
