package pattern

import (
	"math"

	"ullage/sim/gore"
)

// GorePattern is one of the gores of a surface, its rim below and its middle upright, with its
// allowances and its warp at an angle to the middle; of places along it, the widths, which mark
// it out on cloth without a print.
func GorePattern(name, title string, g gore.Gore, a gore.Allowance, warp float64, along []float64) Pattern {
	p := Pattern{Name: name, Title: title, Count: g.Count}
	p.closed(Cut, g.Outline(a)...)
	if a != (gore.Allowance{}) {
		seam := g.Outline(gore.Allowance{})
		p.line(Fold, "", append(seam, seam[0])...)
	}
	long, low := g.Length(), -a.Rim
	rim := g.Half(0)
	p.line(Axis, "", Point{Y: low}, Point{Y: long + a.Far})
	sin, cos := math.Sincos(warp)
	reach := math.Min(long*0.15, rim*0.6)
	p.arrow(Grain, "warp", Point{X: rim*0.3 - reach*sin, Y: long*0.25 - reach*cos}, Point{X: rim*0.3 + reach*sin, Y: long*0.25 + reach*cos})
	_, width := g.Cut(a)
	cut, _ := g.Cut(a)
	p.size("cut length", Point{X: width / 2, Y: low + cut}, Point{X: width / 2, Y: low}, 6*millimetre)
	p.size("rim", Point{X: rim}, Point{X: -rim}, a.Rim+7*millimetre)
	p.length("cut width", width)
	p.length("length without allowances", long)
	p.count("gores around", g.Count)
	if a.Side > 0 {
		p.length("seam at each side", a.Side)
	}
	if len(along) > 0 {
		p.Table = &Table{Title: "Widths along the middle, from the rim", Heads: []string{"from the rim", "without seam", "as cut"}}
		for _, y := range along {
			p.Table.Rows = append(p.Table.Rows, []float64{y, 2 * g.Half(y), 2 * halfCut(g, a, y)})
		}
	}
	return p
}

// halfCut is half a gore's width as cut, between the points of its outline.
func halfCut(g gore.Gore, a gore.Allowance, y float64) float64 {
	points := g.Outline(a)
	for i := 1; i < len(points) && points[i].X >= 0; i++ {
		p, q := points[i-1], points[i]
		if p.Y >= y && y >= q.Y && p.Y > q.Y {
			return q.X + (p.X-q.X)*(y-q.Y)/(p.Y-q.Y)
		}
	}
	return g.Half(y)
}
