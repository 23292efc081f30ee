package flown

import (
	"math"

	"ullage/sim/solve"
)

// widthFor is how many samples a parabola is fitted through to read speeds: so many that
// noise moves the slope by no more than a share of the greatest speed, and no more than reach
// over half a second; odd. A slope through n samples has the deviation σ·√(12/n³)/Δt.
func (c *Channel) widthFor(speed float64) int {
	const share, longest, least = 0.01, 0.5, 5
	most := max(least, 2*int(longest/c.Every/2)+1)
	for n := least; n < most; n += 2 {
		if c.Noise*math.Sqrt(12/math.Pow(float64(n), 3))/c.Every <= share*speed {
			return n
		}
	}
	return most
}

// read is what a course of heights tells, read in the same way from a log and from a predicted
// flight that was sampled like it. NaN where it tells nothing.
type read struct {
	apogee, apogeeTime float64   // m; s after release
	speed              float64   // the greatest on the way up, m/s
	burnout            float64   // vertical speed at the predicted end of thrust, m/s
	fall               []float64 // time of the fastest fall before each canopy holds, s after release
	descent            []float64 // settled rate under each canopy, m/s, positive down
}

// legs are the times of the predicted flight between which each canopy is told, s after release.
type leg struct{ from, settled, to float64 }

// readCourse reads heights y at times t after release, smoothed over so many samples.
func readCourse(t, y []float64, width int, burnout float64, legs []leg) read {
	nan := math.NaN()
	r := read{apogee: nan, apogeeTime: nan, speed: nan, burnout: nan}
	s := solve.Smooth(t, y, width)
	top := -1
	for i := range s {
		if t[i] > 0 && !math.IsNaN(s[i].Value) && (top < 0 || s[i].Value > s[top].Value) {
			top = i
		}
	}
	if top >= 0 {
		r.apogee, r.apogeeTime = vertex(t, y, t[top], s[top].Value)
	}
	for i := 0; i < top; i++ {
		if t[i] > 0 && !(s[i].Slope <= r.speed) && !math.IsNaN(s[i].Slope) {
			r.speed = s[i].Slope
		}
		if i+1 < len(t) && t[i] <= burnout && t[i+1] > burnout {
			r.burnout = s[i].Slope + (s[i+1].Slope-s[i].Slope)*(burnout-t[i])/(t[i+1]-t[i])
		}
	}
	for _, l := range legs {
		r.fall = append(r.fall, fastestFall(t, s, l))
		r.descent = append(r.descent, settled(t, y, l))
	}
	return r
}

// vertex is the top of the parabola through what is around the top of a course: there a rocket is
// so slow that gravity alone bends it. More is taken before than after, where a canopy may open.
func vertex(t, y []float64, at, height float64) (top, time float64) {
	const before, after = 1.2, 0.7 // s
	var near series
	for i := range t {
		if t[i] >= at-before && t[i] <= at+after && !math.IsNaN(y[i]) {
			near.t, near.y = append(near.t, t[i]), append(near.y, y[i])
		}
	}
	n := len(near.t)
	if n < 5 {
		return height, at
	}
	first, last := solve.Parabola(near.t, near.y, near.t[0]), solve.Parabola(near.t, near.y, near.t[n-1])
	if !(first.Slope > 0) || !(last.Slope < 0) {
		return height, at
	}
	span := near.t[n-1] - near.t[0]
	in := span * first.Slope / (first.Slope - last.Slope) // the slope of a parabola falls evenly
	return first.Value + first.Slope*in/2, near.t[0] + in
}

// fastestFall is when the fall is fastest before a canopy holds.
func fastestFall(t []float64, s []solve.Smoothed, l leg) float64 {
	at := -1
	for i := range t {
		if t[i] >= l.from && t[i] <= l.settled && !math.IsNaN(s[i].Slope) && (at < 0 || s[i].Slope < s[at].Slope) {
			at = i
		}
	}
	if at < 1 || at+1 >= len(t) || t[at-1] < l.from || t[at+1] > l.settled {
		return math.NaN() // at an end it is none
	}
	return t[at]
}

// settled is the rate of a straight line through a leg, positive down.
func settled(t, y []float64, l leg) float64 {
	n, mt, my := 0.0, 0.0, 0.0
	for i := range t {
		if t[i] >= l.settled && t[i] <= l.to && !math.IsNaN(y[i]) {
			n, mt, my = n+1, mt+t[i], my+y[i]
		}
	}
	if n < 5 {
		return math.NaN()
	}
	mt, my = mt/n, my/n
	a, b := 0.0, 0.0
	for i := range t {
		if t[i] >= l.settled && t[i] <= l.to && !math.IsNaN(y[i]) {
			a += (t[i] - mt) * (y[i] - my)
			b += (t[i] - mt) * (t[i] - mt)
		}
	}
	return -a / b
}

// emptied is when nine tenths of what a chamber's pressure loses after release are gone, s after it; NaN
// where the course does not tell.
func emptied(t, y []float64) float64 {
	const left, looked = 0.1, 5.0 // s
	full, least := math.NaN(), math.NaN()
	for i, v := range y {
		switch {
		case t[i] <= 0:
			full = v
		case t[i] <= looked && !(v >= least) && !math.IsNaN(v):
			least = v
		}
	}
	level := least + left*(full-least)
	for i := 1; i < len(y); i++ {
		if t[i] > 0 && y[i-1] > level && y[i] <= level {
			return t[i-1] + (t[i]-t[i-1])*(y[i-1]-level)/(y[i-1]-y[i])
		}
	}
	return math.NaN()
}
