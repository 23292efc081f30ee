package pattern

import (
	"math"

	"ullage/sim/airframe"
	"ullage/sim/fault"
	"ullage/sim/rocket"
)

// millimetre is what distances on a drawing are thought in.
const millimetre = 1e-3

// fins adds one fin of each set, the wrap that marks where the set stands, and the discs
// that hold it meanwhile.
func (s *Set) fins(body *airframe.Shape, holes []rocket.Hole) {
	for i := range body.Fins {
		f := &body.Fins[i]
		name := fault.Entry(f.Name, i)
		s.add(fin(body, f, name))
		s.finWrap(body, f, name, holes)
		s.finDiscs(body, f, name)
	}
}

// fin is the outline of one, the root along X, the body's aft end to the right.
func fin(body *airframe.Shape, f *airframe.Fins, name string) Pattern {
	p := Pattern{Name: "fins-" + name, Title: "fins " + name + ": one fin", Count: f.Count, Input: "fins." + name + ".root"}
	fore, aft := Point{X: 0, Y: 0}, Point{X: f.Root, Y: 0}
	top, back := Point{X: f.Sweep, Y: f.Span}, Point{X: f.Sweep + f.Tip, Y: f.Span}
	root, tapers := finRoot(body, f)
	p.line(Cut, "", append(append([]Point{}, root[0], top, back), root[len(root)-1])...)
	p.line(Cut, "root: to the body", root...)

	long := math.Hypot(f.Sweep, f.Span)
	middle := Point{X: (f.Root + f.Sweep + (f.Sweep+f.Tip)/2) / 3, Y: f.Span * 0.42}
	reach := 0.22 * long
	p.arrow(Grain, "grain, or warp", Point{X: middle.X - reach*f.Sweep/long, Y: middle.Y - reach*f.Span/long},
		Point{X: middle.X + reach*f.Sweep/long, Y: middle.Y + reach*f.Span/long})
	clear := math.Max(0, math.Max(f.Sweep+f.Tip, f.Root)-f.Root) + 14*millimetre
	p.size("root", aft, fore, 8*millimetre)
	if f.Tip > 0 {
		p.size("tip", top, back, 6*millimetre)
	}
	p.size("span", Point{X: f.Root, Y: f.Span}, aft, clear)
	if f.Sweep != 0 {
		p.size("sweep", Point{X: 0, Y: f.Span}, top, 16*millimetre)
	}
	p.arrow(Axis, "forward", Point{X: 0.35 * f.Root, Y: 0.1 * f.Span}, Point{X: 0.1 * f.Root, Y: 0.1 * f.Span})
	p.length("thickness", f.Thickness)
	p.length("leading edge", long)
	p.length("trailing edge", math.Hypot(f.Root-f.Sweep-f.Tip, f.Span))
	p.angle("leading edge swept", math.Atan2(f.Sweep, f.Span))

	p.note("The part that stands outside the body: no tab to go through the wall is described, so none is drawn. Its root lies on the body's outside.")
	p.note("Grain of wood, or the warp of cloth, along the leading edge: common practice, no source.")
	if f.Section != airframe.FlatSection && f.Section != "" {
		p.note("Its profile is " + string(f.Section) + ": cut flat to this outline, then shape the edges.")
	}
	if tapers {
		p.note("The body tapers under the root: the root follows its outside, and the span counts from the middle of the root.")
	}
	return p
}

// finRoot is the root's edge along the body's outside, from which the span counts at its middle.
func finRoot(body *airframe.Shape, f *airframe.Fins) (edge []Point, tapers bool) {
	at := func(x float64) float64 { return body.Radius(math.Min(f.Position+x, body.Length)) }
	middle := at(f.Root / 2)
	const pieces = 100
	for i := 0; i <= pieces; i++ {
		x := f.Root * float64(i) / pieces
		edge = append(edge, Point{X: x, Y: at(x) - middle})
		tapers = tapers || math.Abs(at(x)-middle) > 0.05*millimetre
	}
	if !tapers {
		edge = []Point{{X: 0, Y: 0}, {X: f.Root, Y: 0}}
	}
	return edge, tapers
}

// arrow adds a line that points somewhere.
func (p *Pattern) arrow(pen Pen, word string, from, to Point) {
	p.line(pen, word, from, to)
	long := math.Hypot(to.X-from.X, to.Y-from.Y)
	if !(long > 0) {
		return
	}
	const head, half = 3 * millimetre, 1 * millimetre
	ux, uy := (to.X-from.X)/long, (to.Y-from.Y)/long
	at := func(side float64) Point {
		return Point{X: to.X - head*ux - side*uy, Y: to.Y - head*uy + side*ux}
	}
	p.line(pen, "", at(half), to, at(-half))
}
