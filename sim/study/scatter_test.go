package study

import (
	"context"
	"testing"

	"ullage/sim/rocketfile"
)

func TestScatterScratch(t *testing.T) {
	r := rocketfile.Starter().Rocket()
	sp := DefaultSpread(r)
	for _, s := range sp {
		t.Log(s.Input.Name, s.SD)
	}
	res, err := RunScatter(context.Background(), r, sp, 10000, 1, Options{}, nil)
	t.Logf("%+v %v", res.Apogee, err)
	t.Logf("%+v %+v %v %v %v", res.RailExit, res.Landing, res.Invalid, res.Grounded, res.FirstInvalid)
	for _, s := range res.Importance {
		t.Log(s.Input.Name, s.Rank)
	}
	e, err := RailExitFor(context.Background(), r, 20, Options{})
	t.Logf("%+v %v", e, err)
	z, err := CanopyFor(context.Background(), r, 0, 4, Options{})
	t.Logf("%+v %v", z, err)
	w, err := WhatIfs(context.Background(), r, 0, Options{})
	for _, c := range w {
		t.Log(c.Case, c.Opens, c.Problem)
		if c.Flight != nil {
			t.Log(c.Flight.Landing)
		}
	}
	t.Log(err)
	for range 2 {
		v, err := OpeningValues(context.Background(), r, 0, Options{})
		d, b, err2 := Opening(context.Background(), r, 0, v, Options{})
		t.Log(err, err2, b)
		for _, x := range d {
			x.Flight = nil
			t.Logf("%+v", x)
		}
		r.Power = "motor"
	}
}

func BenchmarkScatter10000(b *testing.B) {
	r := rocketfile.Starter().Rocket()
	sp := DefaultSpread(r)
	for b.Loop() {
		if _, err := RunScatter(context.Background(), r, sp, 10000, 1, Options{}, nil); err != nil {
			b.Fatal(err)
		}
	}
}
