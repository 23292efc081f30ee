package study

import (
	"context"
	"testing"

	"ullage/sim/rocketfile"
)

func TestScratch(t *testing.T) {
	r := rocketfile.Starter().Rocket()
	for _, texts := range [][]string{{"water.fill"}, {"water.fill=0.3..0.9"}, {"water.throat"}, {"body.mass"}, {"water.pressure"}, {"water.fill", "water.throat"}, {"water.fill", "water.throat", "body.mass"}, {"rail.tilt"}} {
		goals, err := ParseGoals(r, texts)
		if err != nil {
			t.Fatal(err)
		}
		b, err := FindBest(context.Background(), r, goals, false, Options{})
		t.Log(texts, err, b.Values, b.Apogee, b.Within, b.Flights, b.AtBound, b.AtEdge)
	}
}

func BenchmarkBestOne(b *testing.B) {
	r := rocketfile.Starter().Rocket()
	goals, _ := ParseGoals(r, []string{"water.fill"})
	for b.Loop() {
		if _, err := FindBest(context.Background(), r, goals, false, Options{}); err != nil {
			b.Fatal(err)
		}
	}
}
