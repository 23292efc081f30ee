package fieldmap

import (
	"math"

	"ullage/sim"
)

// trackWithin is how far the straight pieces of a track are from the flight at most, m, but where it
// turns sharper than two places a millisecond apart tell.
const trackWithin = 0.02

// track is a flight by places on it, the closer the more it bends. Its heights are never negative.
func track(at []spot, fl *sim.Flight) []spot {
	const pieces, deepest = 64, 12
	place := func(t float64) spot {
		s := fl.At(t)
		return spot{s.East, s.North, math.Max(s.Height, 0)}
	}
	end := fl.Duration()
	var split func(t0 float64, a spot, t1 float64, b spot, depth int)
	split = func(t0 float64, a spot, t1 float64, b spot, depth int) {
		t := (t0 + t1) / 2
		c := place(t)
		// Apart in time, too: a globe that plays a track goes along it evenly.
		off := math.Hypot(math.Hypot(c.east-(a.east+b.east)/2, c.north-(a.north+b.north)/2), c.height-(a.height+b.height)/2)
		if off < trackWithin || depth == 0 {
			return
		}
		split(t0, a, t, c, depth-1)
		at = append(at, c)
		split(t, c, t1, b, depth-1)
	}
	last := place(0)
	at = append(at, last)
	for i := range pieces {
		t0, t1 := end*float64(i)/pieces, end*float64(i+1)/pieces
		next := place(t1)
		split(t0, last, t1, next, deepest)
		at = append(at, next)
		last = next
	}
	return at
}
