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
	fl.walk(times, func(m *model, i, k int, t float64) {
		now := &fl.dense.steps[k]
		_, theta := now.share(t)
		m.phase = fl.dense.phases[now.phase]
		var y state
		now.between(m, theta, &y)
		take(i, Place{Height: y[up], Vertical: y[vUp], Speed: speedOf(&y)})
	})
}

// Read reads the flight at times that do not fall, held to 0 … Duration, and hands each
// sample to take: those of At, many times as quick, since what they share is made ready once.
func (fl *Flight) Read(times []float64, take func(i int, s Sample)) {
	fl.walk(times, func(m *model, i, k int, t float64) { take(i, fl.sample(m, k, t)) })
}

// walk goes through times that do not fall, and tells of each in which step it lies.
func (fl *Flight) walk(times []float64, at func(m *model, i, step int, t float64)) {
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
		at(&m, i, k, t)
	}
}
