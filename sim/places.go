package sim

import (
	"math"
	"sort"
)

// Place is where a rocket is and how fast at one time.
type Place struct {
	Height   float64 // above the pad, m
	Vertical float64 // positive up, m/s
	Speed    float64 // over the ground, m/s
}

// Places reads the flight at times that do not fall, held to 0 … Duration, and hands
// each to take. It reads the dense output as At does, but works out no forces, which makes
// it several times as quick.
func (fl *Flight) Places(times []float64, take func(i int, p Place)) {
	var y state
	x := fl.reader()
	fl.walk(times, func(i, k int, t float64, again bool) {
		if !again {
			x.at(k, t, &y)
		}
		take(i, Place{Height: y[up], Vertical: y[vUp], Speed: speedOf(&y)})
	})
}

// Read reads the flight at times that do not fall, held to 0 … Duration, and hands each
// sample to take: those of At, many times as quick, since what they share is made ready once.
func (fl *Flight) Read(times []float64, take func(i int, s Sample)) {
	var s Sample
	x := fl.reader()
	fl.walk(times, func(i, k int, t float64, again bool) {
		if !again {
			s = x.sample(k, t)
		}
		take(i, s)
	})
}

// walk goes through times that do not fall, and tells of each in which step it lies, and whether it
// is that of the one before: as all are that lie before release.
func (fl *Flight) walk(times []float64, at func(i, step int, t float64, again bool)) {
	s := fl.dense.steps
	if len(s) == 0 || len(times) == 0 {
		return
	}
	end := fl.Duration()
	last := math.NaN()
	k := max(sort.Search(len(s), func(i int) bool { return s[i].t > times[0] })-1, 0)
	for i, t := range times {
		for k+1 < len(s) && s[k+1].t <= t {
			k++
		}
		t = min(max(t, s[0].t), end)
		at(i, k, t, t == last)
		last = t
	}
}
