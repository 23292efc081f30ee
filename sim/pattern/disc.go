package pattern

import (
	"math"

	"ullage/sim/airframe"
)

// Of the discs that hold fins: common practice, no source.
const (
	discDepth = 40 * millimetre // of their slots, no more than half a span
	discRim   = 10 * millimetre // beyond the slots
)

// finDiscs adds the discs that slide over the body from behind and hold the fins while
// their roots set: a hole for the body, a slot for each fin.
func (s *Set) finDiscs(body *airframe.Shape, f *airframe.Fins, name string) {
	tube, there := straightUnder(body, f.Position, f.Position+f.Root)
	if !there {
		s.Lacks = append(s.Lacks, Lack{What: "jig discs for fins " + name, Why: "the body tapers under their roots"})
		return
	}
	input := "fins." + name + ".thickness" // of the slots
	places := []float64{f.Root / 4, f.Root * 3 / 4}
	if f.Cant == 0 {
		s.add(finDisc(f, tube.Fore, input, "jig-fins-"+name, "jig disc for fins "+name, 2, 0, places...))
		return
	}
	for i, end := range []string{"forward", "aft"} {
		turn := math.Tan(f.Cant) * (places[i] - f.Root/2) / (tube.Fore / 2)
		s.add(finDisc(f, tube.Fore, input, "jig-fins-"+name+"-"+end, end+" jig disc for fins "+name, 1, turn, places[i]))
	}
}

// finDisc is one, seen from behind, its slots turned clockwise by an angle.
func finDisc(f *airframe.Fins, diameter float64, input, name, title string, count int, turn float64, places ...float64) Pattern {
	p := Pattern{Name: name, Title: title, Count: count, Input: input}
	inner := diameter / 2
	outer := inner + math.Min(discDepth, f.Span/2)
	rim := outer + discRim
	p.circle(Cut, Point{}, 2*rim)
	half := f.Thickness / 2
	var hole []Point
	n := float64(f.Count)
	near, far := math.Asin(half/inner), math.Sqrt(inner*inner-half*half)
	for k := range f.Count {
		// Fin 1 is up; the others follow clockwise.
		at := math.Pi/2 - turn - 2*math.Pi*float64(k)/n
		sin, cos := math.Sincos(at)
		spot := func(along, across float64) Point {
			return Point{X: along*cos - across*sin, Y: along*sin + across*cos}
		}
		hole = append(hole, spot(far, half), spot(outer, half), spot(outer, -half))
		hole = append(hole, arc(Point{}, inner, at-near, at-2*math.Pi/n+near)...)
	}
	p.closed(Hole, hole...)
	p.cross(Point{}, inner*0.25)
	p.line(Axis, "up: fin 1", Point{X: -inner * 0.5, Y: inner * 0.7}, Point{X: inner * 0.5, Y: inner * 0.7})
	p.size("hole for the body", Point{X: -inner, Y: 0}, Point{X: inner, Y: 0}, inner*0.3)
	p.size("disc", Point{X: rim, Y: -rim}, Point{X: -rim, Y: -rim}, 4*millimetre)
	p.length("slot, as wide as a fin is thick", f.Thickness)
	p.length("slot, out from the middle", outer)
	p.angle("between slots", 2*math.Pi/n)
	for i, x := range places {
		where := "place, behind the root's leading edge"
		if len(places) > 1 {
			where = []string{"forward", "aft"}[i] + " disc, behind the root's leading edge"
		}
		p.length(where, x)
	}
	p.note("Seen from behind. Slid over the body from its aft end, one where the fins begin and one where they end; fins go through the slots down to the body. The slots have no play: file them to the fins, and cover edges with tape that adhesive does not take to.")
	if turn != 0 {
		p.angle("slots turned, clockwise seen from behind", turn)
		p.note("The fins are canted, so that the two discs differ; their slots are straight through: file them to the slant.")
	}
	return p
}
