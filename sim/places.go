package sim

import "sort"

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
	s := fl.dense.steps
	if len(s) == 0 || len(times) == 0 {
		return
	}
	m := fl.dense.model
	k := max(sort.Search(len(s), func(i int) bool { return s[i].t > times[0] })-1, 0)
	for i, t := range times {
		for k+1 < len(s) && s[k+1].t <= t {
			k++
		}
		now := &s[k]
		t = min(max(t, now.t), now.t+now.h)
		theta := 0.0
		if now.h > 0 {
			theta = (t - now.t) / now.h
		}
		m.phase = fl.dense.phases[now.phase]
		var y state
		now.between(&m, theta, &y)
		take(i, Place{Height: y[up], Vertical: y[vUp], Speed: speedOf(&y)})
	}
}

// Read reads the flight at times that do not fall, held to 0 … Duration, and hands each
// sample to take: those of At, many times as quick, since what they share is made ready once.
func (fl *Flight) Read(times []float64, take func(i int, s Sample)) {
	s := fl.dense.steps
	if len(s) == 0 || len(times) == 0 {
		return
	}
	m := fl.dense.model
	k := max(sort.Search(len(s), func(i int) bool { return s[i].t > times[0] })-1, 0)
	for i, t := range times {
		for k+1 < len(s) && s[k+1].t <= t {
			k++
		}
		take(i, fl.sample(&m, k, t))
	}
}
