package pattern

import (
	"math"
	"strconv"

	"ullage/sim/bench"
	"ullage/sim/rocket"
)

// target adds the disc at the end of the alignment jig: rings at the gaps that angles of the thrust make there.
func (s *Set) target(r *rocket.Rocket) {
	length := r.Bench.Jig
	switch {
	case r.Water == nil && r.Motor == nil:
		return
	case length == 0:
		s.lack("target of the alignment jig", "jig.length")
		return
	}
	p := Pattern{Name: "jig-thrust", Title: "target of the alignment jig", Count: 1, Input: "jig.length"}
	angles := []float64{0.25, 0.5, 1, 2} // deg
	rim := bench.GapAt(length, angles[len(angles)-1]*math.Pi/180) + 10*millimetre
	for i, degrees := range angles {
		gap := bench.GapAt(length, degrees*math.Pi/180)
		word := strconv.FormatFloat(degrees, 'f', -1, 64) + "°"
		p.circle(Mark, Point{}, 2*gap)
		sin, cos := math.Sincos(math.Pi / 6 * float64(i+1-i/2*5)) // named outside, each in a direction of its own
		at := func(r float64) Point { return Point{X: r * cos, Y: r * sin} }
		p.line(Axis, "", at(gap), at(rim+2*millimetre))
		p.line(Axis, word, at(rim+2*millimetre), at(rim+12*millimetre))
		p.length("ring of "+word, gap)
	}
	p.circle(Cut, Point{}, 2*rim)
	p.circle(Hole, Point{}, 1*millimetre)
	p.cross(Point{}, rim+4*millimetre)
	p.size("disc", Point{X: rim, Y: -rim}, Point{X: -rim, Y: -rim}, 9*millimetre)
	p.length("from the nozzle or the mount", length)
	p.note("Set square to the body's axis, its middle on the axis, where the jig's rod ends: a rod in the nozzle or the mount points into the ring of the angle that the thrust is off by. ullage bench tells which ring is held.")
	p.note("Turn the body and read at both sides: half of what the point wanders is the gap, wherever the middle is.")
	s.add(p)
}
