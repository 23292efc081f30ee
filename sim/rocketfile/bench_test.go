package rocketfile

import (
	"path/filepath"
	"testing"

	"ullage/sim/rocket"
)

func BenchmarkOpen(b *testing.B) {
	path := filepath.Join(b.TempDir(), "starter.toml")
	if err := WriteStarter(path); err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Open(path); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkSet(b *testing.B) {
	f := Starter()
	values := []string{"0.31", "0.32"}
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		if _, err := f.Set("water.fill", values[i%2]); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkSetAddsAKey(b *testing.B) {
	f := Starter()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := f.Set("water.discharge", "0.95"); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkInputs(b *testing.B) {
	r := Starter().Rocket()
	b.ReportAllocs()
	for b.Loop() {
		if len(Inputs(r)) == 0 {
			b.Fatal("none")
		}
	}
}

// BenchmarkInputSet is what a sweep pays for each flight.
func BenchmarkInputSet(b *testing.B) {
	r := Starter().Rocket()
	in, err := Find(r, "water.fill")
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	var copied *rocket.Rocket
	for b.Loop() {
		copied = r.Clone()
		if err := in.Set(copied, 0.31); err != nil {
			b.Fatal(err)
		}
	}
}
