package pattern

import (
	"math"
	"strconv"

	"ullage/sim/airframe"
	"ullage/sim/rocket"
)

// What is drawn beyond what is marked: common practice, no source.
const (
	wrapLap  = 15 * millimetre // of paper on paper
	wrapRoom = 12 * millimetre // ahead of and behind the roots
)

// wrap is a strip around a tube, laid flat: X to the right around it, clockwise seen from
// behind, Y forward. The first fin is a quarter of a space from its left edge, so that the
// seam lies beside no fin.
type wrap struct {
	Pattern
	radius float64 // of the tube, m
	aft    float64 // where it ends, from the tip of the nose, m
	shift  float64 // angle of its left edge, rad, counted from the first fin
	girth  float64 // m
}

// around is where an angle, counted from the first fin, lies on the strip.
func (w *wrap) around(angle float64) float64 {
	turn := math.Mod(angle-w.shift, 2*math.Pi)
	if turn < 0 {
		turn += 2 * math.Pi
	}
	return turn * w.radius
}

// up is where a place along the rocket lies on the strip.
func (w *wrap) up(x float64) float64 { return w.aft - x }

// newWrap is a strip with its edges and lap drawn.
func newWrap(name, title string, diameter, fore, aft, shift float64) *wrap {
	w := &wrap{radius: diameter / 2, aft: aft, shift: shift, girth: math.Pi * diameter}
	w.Pattern = Pattern{Name: name, Title: title, Count: 1}
	c, tall := w.girth, aft-fore
	w.closed(Cut, Point{X: 0, Y: 0}, Point{X: c + wrapLap, Y: 0}, Point{X: c + wrapLap, Y: tall}, Point{X: 0, Y: tall})
	w.line(Fold, "lay the left edge here", Point{X: c, Y: 0}, Point{X: c, Y: tall})
	w.size("around the tube", Point{X: c, Y: 0}, Point{X: 0, Y: 0}, 8*millimetre)
	w.length("outside diameter", diameter)
	w.length("forward edge from the tip of the nose", fore)
	w.length("aft edge from the tip of the nose", aft)
	w.arrow(Axis, "forward", Point{X: c - 9*millimetre, Y: tall * 0.35}, Point{X: c - 9*millimetre, Y: tall * 0.65})
	w.note("As seen from outside: forward is up, and to the right is clockwise seen from behind. Wrapped tight, the left edge meets the dashed line; if it does not, measure the tube and set body.diameter.")
	return w
}

// finWrap adds the strip that marks where a set of fins stands.
func (s *Set) finWrap(body *airframe.Shape, f *airframe.Fins, name string, holes []rocket.Hole) {
	tube, there := straightUnder(body, f.Position, f.Position+f.Root)
	if !there {
		s.Lacks = append(s.Lacks, Lack{What: "wrap for fins " + name,
			Why: "the body tapers under their roots; where it tapers, mark the fins on the cone wrap"})
		return
	}
	fore, aft := finStretch(tube, f)
	w := newWrap("wrap-fins-"+name, "wrap for fins "+name, tube.Fore, fore, aft, -finShift(f))
	w.Input = "fins." + name + ".position"
	w.finLines(f)
	w.length("root's leading edge from the forward edge", f.Position-fore)
	w.length("between fins, around", w.girth/float64(f.Count))
	for i := range holes {
		if h := &holes[i]; within(h, fore, aft) {
			w.hole(h)
		}
	}
	s.add(w.Pattern)
}

// finStretch is from where to where the wrap of a set goes.
func finStretch(tube airframe.Frustum, f *airframe.Fins) (fore, aft float64) {
	return math.Max(tube.Start, f.Position-wrapRoom), math.Min(tube.End(), f.Position+f.Root+wrapRoom)
}

// finShift is how far the first fin is from the left edge of its wrap, rad.
func finShift(f *airframe.Fins) float64 { return math.Pi / 2 / float64(f.Count) }

// finLines marks the roots of a set: the middle and both sides of each fin.
func (w *wrap) finLines(f *airframe.Fins) {
	drift := math.Tan(f.Cant) // around, for each length aft
	for k := range f.Count {
		at := w.around(2 * math.Pi * float64(k) / float64(f.Count))
		for side := -1; side <= 1; side++ {
			shift := float64(side) * f.Thickness / 2 / math.Cos(f.Cant)
			pen, word := Mark, ""
			switch side {
			case -1:
				word = "fin " + strconv.Itoa(k+1) // left of all three
			case 0:
				pen = Axis
			}
			from := Point{X: at + shift - drift*f.Root/2, Y: w.up(f.Position)}
			to := Point{X: at + shift + drift*f.Root/2, Y: w.up(f.Position + f.Root)}
			w.line(pen, word, from, to)
		}
	}
	for _, x := range []float64{f.Position, f.Position + f.Root} {
		w.line(Mark, "", Point{X: 0, Y: w.up(x)}, Point{X: w.girth, Y: w.up(x)})
	}
	w.note("Each fin has its middle and, beside it, its two sides; the lines across are where the roots begin and end. Fin 1 is any; the others count from it.")
	if f.Cant != 0 {
		w.angle("cant", f.Cant)
		w.note("The fins are canted about the middle of their roots: the aft end is to the right where the cant is positive.")
	}
}

// straightUnder is the tube that lies under all of a stretch.
func straightUnder(body *airframe.Shape, from, to float64) (airframe.Frustum, bool) {
	const fit = 1.5 * millimetre // what the shape's own check lets pass
	for _, t := range body.Frustums() {
		if t.Straight() && from >= t.Start-fit && to <= t.End()+fit {
			return t, true
		}
	}
	return airframe.Frustum{}, false
}
