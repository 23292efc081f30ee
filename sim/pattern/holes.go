package pattern

import (
	"fmt"
	"math"

	"ullage/sim/airframe"
	"ullage/sim/rocket"
)

// holeRoom is how tall the strip for a hole is at least, beyond it: common practice, no source.
const holeRoom = 20 * millimetre

// within tells whether all of a hole lies on a stretch of the body.
func within(h *rocket.Hole, fore, aft float64) bool {
	half := math.Max(h.Length, h.Diameter) / 2
	return h.Position-half >= fore && h.Position+half <= aft
}

// holes adds a strip for each hole that is on no fins' wrap.
func (s *Set) holes(body *airframe.Shape, holes []rocket.Hole) {
	for i := range holes {
		h := &holes[i]
		half := math.Max(h.Length, h.Diameter) / 2
		tube, there := straightUnder(body, h.Position-half, h.Position+half)
		switch {
		case !there:
			s.Lacks = append(s.Lacks, Lack{What: "wrap for hole " + h.Name, Why: "the body tapers there, or it is not on one tube"})
			continue
		case onFins(body, tube, h):
			continue
		}
		s.add(holeWrap(body, tube, h))
	}
}

// onFins tells whether the wrap of a set of fins has the hole.
func onFins(body *airframe.Shape, tube airframe.Frustum, h *rocket.Hole) bool {
	for i := range body.Fins {
		f := &body.Fins[i]
		if under, there := straightUnder(body, f.Position, f.Position+f.Root); there && under == tube {
			if fore, aft := finStretch(tube, f); within(h, fore, aft) {
				return true
			}
		}
	}
	return false
}

// holeWrap is the strip for one row of holes, with the lines of the last fins to lay it by.
func holeWrap(body *airframe.Shape, tube airframe.Frustum, h *rocket.Hole) Pattern {
	half := math.Max(h.Length, h.Diameter)/2 + holeRoom
	fore, aft := math.Max(tube.Start, h.Position-half), math.Min(tube.End(), h.Position+half)
	shift := 0.0
	if n := len(body.Fins); n > 0 {
		shift = -finShift(&body.Fins[n-1])
	}
	w := newWrap("wrap-hole-"+h.Name, "wrap for "+h.Name, tube.Fore, fore, aft, shift)
	if n := len(body.Fins); n > 0 {
		f := &body.Fins[n-1]
		for k := range f.Count {
			x := w.around(2 * math.Pi * float64(k) / float64(f.Count))
			split := (aft - fore) * 0.7 // clear of what is on the lines
			w.line(Axis, "", Point{X: x, Y: 0}, Point{X: x, Y: split})
			w.line(Axis, fmt.Sprintf("fin %d", k+1), Point{X: x, Y: split}, Point{X: x, Y: aft - fore})
		}
		w.note("The lines named after fins are those of the last set carried forward: lay them on a line drawn along the body.")
	}
	w.Input = "hole." + h.Name + ".position"
	w.hole(h)
	w.length("middle of the holes from the forward edge", h.Position-fore)
	return w.Pattern
}

// hole marks a row of holes, each with its centre lines, and again where it lies across the seam.
func (w *wrap) hole(h *rocket.Hole) {
	n := h.Number()
	for k := range n {
		x, y := w.around(h.Angle+2*math.Pi*float64(k)/float64(n)), w.up(h.Position)
		word := h.Name
		for _, at := range []float64{x, x + w.girth, x - w.girth} {
			if at < -h.Diameter/2 || at > w.girth+math.Min(h.Diameter/2, wrapLap) {
				continue
			}
			middle := Point{X: at, Y: y}
			if h.Length > 0 {
				a, b := h.Diameter/2, h.Length/2
				w.closed(Hole, Point{X: at - a, Y: y - b}, Point{X: at + a, Y: y - b}, Point{X: at + a, Y: y + b}, Point{X: at - a, Y: y + b})
			} else {
				w.circle(Hole, middle, h.Diameter)
			}
			reach := math.Max(h.Diameter, h.Length)/2 + 3*millimetre
			w.cross(middle, reach)
			w.line(Axis, word, Point{X: at + reach, Y: y}, Point{X: at + reach + 18*millimetre, Y: y})
		}
	}
	w.count(h.Name+", number", n)
	w.length(h.Name+" diameter", h.Diameter)
	if h.Length > 0 {
		w.length(h.Name+" length", h.Length)
	}
	w.length(h.Name+" from the tip of the nose", h.Position)
	w.angle(h.Name+" around from fin 1", h.Angle)
}
