package atmosphere

import (
	"math"
	"math/rand/v2"
)

// eddies are turbulence frozen in one moment: two sums of sines over the height, along the
// wind and across it, on top of their mean. One rocket meets one of them; the many that might
// blow have together the variance and the spectra of Dryden's form in MIL-F-8785C (from memory),
// low altitude, of a height h in feet and the wind W at 20 ft:
//
//	σ_w = turbulence·W, of 0.1 there         σ_u = σ_v = σ_w/(0.177 + 0.000823h)^0.4
//	L_u = L_v = h/(0.177 + 0.000823h)^1.2    Φ_u(κ) = (2/π)σ²/(1 + κ²)    Φ_v(κ) = (1/π)σ²(1 + 3κ²)/(1 + κ²)²
//
// κ being the wave number times the length, from 0 up. They hold from 10 to 1000 ft; above, the
// values there are kept, below, the gusts fade away towards the ground. The form is one of the
// way flown through the air, and the height stands for it: a rocket goes up, and a canopy
// that drifts along comes down.
//
// Each sum has one wave in each of as many equal shares of the variance of Φ_u, at a place drawn
// in its share, with a phase drawn: so the mean over all draws is the spectrum itself, up to
// the shortest wave. The waves across are weighed by Φ_v/Φ_u.
type eddies struct {
	on            bool
	sigma         float64 // σ_w, m/s
	east, north   float64 // where the mean wind blows to, a unit vector
	along, across [eddyWaves]wave
	spread        power                  // to the exponent 0.4
	way           [eddySteps + 1]float64 // over the length, from 10 ft, at equal steps of the root of h to 1000 ft
	pace          [eddySteps + 1]float64 // how it grows there, a step
}

// wave is one sine over the way.
type wave struct{ number, phase, size float64 }

const (
	foot = 0.3048 // m

	eddyWaves    = 16
	eddySteps    = 32
	shortestWave = 40.0 // κ

	dryLeast     = 10.0 // ft
	dryMost      = 1000.0
	dryLow       = 3.1622776601683795 // their roots
	dryHigh      = 31.622776601683793
	dryStep      = (dryHigh - dryLow) / eddySteps
	dryReference = 20 * foot // m
	dryA, dryB   = 0.177, 0.000823
	dryPower     = 0.4
)

// stir draws the eddies of a wind whose mean is laid out.
func (e *eddies) stir(w *Wind, p *Profile) {
	e.on = false
	turbulence := turbulenceRange.Hold(w.Turbulence)
	if turbulence == 0 || w.Eddies == 0 {
		return
	}
	east, north := p.At(dryReference)
	speed := math.Hypot(east, north)
	if speed == 0 {
		return
	}
	e.on, e.sigma = true, turbulence*speed
	e.east, e.north = east/speed, north/speed
	e.measure()
	var source rand.PCG
	source.Seed(w.Eddies, w.Eddies^0x9e3779b97f4a7c15)
	draw(&e.along, &source, func(float64) float64 { return 1 })
	draw(&e.across, &source, func(k float64) float64 { return (1 + 3*k*k) / (2 * (1 + k*k)) })
}

// draw draws waves whose squares, halved, sum up to 1.
func draw(waves *[eddyWaves]wave, source *rand.PCG, weight func(number float64) float64) {
	all := math.Atan(shortestWave)
	sum := 0.0
	for i := range waves {
		k := math.Tan(all * (float64(i) + unit(source)) / eddyWaves)
		waves[i] = wave{k, 2 * math.Pi * unit(source), weight(k)}
		sum += waves[i].size
	}
	for i := range waves {
		waves[i].size = math.Sqrt(2 * waves[i].size / sum)
	}
}

// unit is the next number from 0 to 1.
func unit(source *rand.PCG) float64 { return float64(source.Uint64()>>11) / (1 << 53) }

// measure lays out the way over the length, ∫dh/L, from 10 ft, once.
func (e *eddies) measure() {
	if e.pace[0] != 0 {
		return
	}
	e.spread.fit(dryPower)
	rate := func(i float64) float64 { // a step of the root
		root := dryLow + dryStep*i
		return dryStep * 2 * root * math.Pow(dryA+dryB*root*root, 3*dryPower) / (root * root)
	}
	for i := range e.way {
		x := float64(i)
		if e.pace[i] = rate(x); i > 0 { // Simpson's rule, twice
			e.way[i] = e.way[i-1] + (rate(x-1)+4*rate(x-0.75)+2*rate(x-0.5)+4*rate(x-0.25)+rate(x))/12
		}
	}
}

// at is what they add at a height, m.
func (e *eddies) at(h float64) (east, north float64) {
	feet := h / foot
	held := min(max(feet, dryLeast), dryMost)
	size := e.sigma / e.spread.of(dryA+dryB*held)
	way := 0.0
	switch {
	case feet < dryLeast:
		x := feet / dryLeast
		size *= x * x * (3 - 2*x)
		way = (feet - dryLeast) * e.pace[0] / (dryStep * 2 * dryLow)
	case feet > dryMost:
		way = e.way[eddySteps] + (feet-dryMost)/dryMost
	default:
		x := (math.Sqrt(feet) - dryLow) / dryStep
		i := min(int(x), eddySteps-1)
		x -= float64(i)
		d0, d1, rise := e.pace[i], e.pace[i+1], e.way[i+1]-e.way[i]
		way = e.way[i] + x*(d0+x*(3*rise-2*d0-d1+x*(d0+d1-2*rise)))
	}
	along, across := size*sum(&e.along, way), size*sum(&e.across, way)
	return along*e.east + across*e.north, along*e.north - across*e.east
}

func sum(waves *[eddyWaves]wave, way float64) float64 {
	v := 0.0
	for i := range waves {
		w := &waves[i]
		v += w.size * math.Sin(w.number*way+w.phase)
	}
	return v
}
