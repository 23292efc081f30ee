package page

import (
	"math"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// place chooses among places for a label the one that hides least, and takes it.
// Earlier ones are preferred.
func (a *area) place(candidates []vg.Rectangle) vg.Rectangle {
	best, least := 0, math.Inf(1)
	for i, r := range candidates {
		if cost := a.cost(r); cost < least {
			best, least = i, cost
		}
	}
	a.taken = append(a.taken, candidates[best])
	return candidates[best]
}

// cost is how much a label would hide: another label more than a curve, and
// nothing of it may lie outside the frame.
func (a *area) cost(r vg.Rectangle) float64 {
	cost := 0.0
	if r.Min.X < a.frame.Min.X || r.Max.X > a.frame.Max.X || r.Min.Y < a.frame.Min.Y || r.Max.Y > a.frame.Max.Y {
		cost += 1000
	}
	for _, t := range a.taken {
		if r.Min.X < t.Max.X && t.Min.X < r.Max.X && r.Min.Y < t.Max.Y && t.Min.Y < r.Max.Y {
			cost += 100
		}
	}
	window := draw.Canvas{Rectangle: r}
	for _, c := range a.curves {
		cost += float64(len(window.ClipLinesXY(c)))
	}
	return cost
}

// around lists the places for a label of a size beside a point.
func around(p vg.Point, away, w, h vg.Length) []vg.Rectangle {
	var out []vg.Rectangle
	for _, d := range []struct{ x, y vg.Length }{{1, 1}, {-1, 1}, {1, -1}, {-1, -1}, {1, 0}, {-1, 0}, {0, 1}, {0, -1}} {
		middle := vg.Point{X: p.X + d.x*(w/2+away), Y: p.Y + d.y*(h/2+away)}
		out = append(out, rectangle(middle, w, h))
	}
	return out
}

// rectangle is one around its middle.
func rectangle(middle vg.Point, w, h vg.Length) vg.Rectangle {
	half := vg.Point{X: w / 2, Y: h / 2}
	return vg.Rectangle{Min: middle.Sub(half), Max: middle.Add(half)}
}

// sized is the width and height that a label takes.
func sized(text string) (w, h vg.Length) {
	return plain(labelSize).Width(text) + 3, labelSize * 1.15
}

// label writes a text into its place, on white.
func (s sheet) label(r vg.Rectangle, text string) {
	s.fill(white, r)
	middleY := (r.Min.Y + r.Max.Y) / 2
	s.write(plain(labelSize), black, vg.Point{X: (r.Min.X + r.Max.X) / 2, Y: middleY - labelSize*middle}, atCentre, text)
}
