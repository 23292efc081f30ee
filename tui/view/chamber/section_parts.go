package chamber

import (
	"math"
	"strings"

	"ullage/sim/chamber"
	"ullage/sim/rocket"
	"ullage/tui/plot"
)

// closure draws an end from where its lap begins; way is −1 forward and 1 aft. Nearer to
// the axis than open it is open.
func (s *chamberSection) closure(e *chamber.Closure, x, way, open float64) {
	if e == nil {
		return
	}
	inner := s.c.Diameter/2 - s.wall
	edge := x + way*e.Overlap
	s.both(plot.TraceB, plot.Solid, []float64{x, x, edge}, []float64{s.c.Diameter / 2, inner, inner})
	const steps = 24
	var px, py []float64
	for i := range steps + 1 {
		share := 1 - float64(i)/steps
		y := share * inner
		if y < open {
			y = open
		}
		px, py = append(px, edge+way*s.depth(e)*profile(e.Shape, y/inner)), append(py, y)
	}
	if e.Shape == chamber.Flat {
		px, py = []float64{edge, edge}, []float64{inner, open}
	}
	s.both(plot.TraceB, plot.Solid, px, py)
}

// profile is how deep a closure is, as a share of its depth, at a share of its radius.
func profile(shape chamber.ClosureShape, share float64) float64 {
	switch shape {
	case chamber.Cone:
		return 1 - share
	case chamber.Flat:
		return 0
	}
	return math.Sqrt(math.Max(1-share*share, 0))
}

// nozzle draws the thread of the retainer and the hole through it, and gives the radius
// that they take out of the closure.
func (s *chamberSection) nozzle(bore float64) float64 {
	if bore == 0 && s.c.Thread == nil {
		return 0
	}
	inner := s.c.Diameter/2 - s.wall
	out := math.Min(bore+1.5*s.wall, inner)
	if t := s.c.Thread; t != nil {
		out = math.Min(t.Diameter/2, inner)
	}
	start := s.at(s.c.Length) + overlap(s.c.Aft)
	if e := s.c.Aft; e != nil {
		start += s.depth(e) * profile(e.Shape, out/inner)
	}
	end := start + s.neck()
	if s.c.Thread != nil {
		start -= s.c.Thread.Engaged / 2
	}
	s.both(plot.TraceC, plot.Solid, []float64{start, start, end, end, start}, []float64{bore, out, out, bore, bore})
	return out
}

// water draws the liquid at release as rows of dots aft of its level: the rocket is
// filled standing on its tail.
func (s *chamberSection) water(w *rocket.Water) {
	level := s.level(w)
	r := s.c.Diameter / 2
	end := s.at(s.c.Length) + overlap(s.c.Aft)
	const rows = 7
	for i := range rows {
		y := r * (2*float64(i+1)/(rows+1) - 1) * 0.92
		to := end
		if e := s.c.Aft; e != nil {
			to += s.depth(e) * profile(e.Shape, math.Min(math.Abs(y)/(r-s.wall), 1)) * 0.8
		}
		s.line(plot.TraceA, plot.Dotted, []float64{s.at(level), to}, []float64{y, y})
	}
	s.line(plot.TraceA, plot.Solid, []float64{s.at(level), s.at(level)}, []float64{-r, r})
}

// level is how far behind the forward closure the liquid stands.
func (s *chamberSection) level(w *rocket.Water) float64 {
	area := math.Pi / 4 * s.c.Diameter * s.c.Diameter
	aft := *s.c
	aft.Length, aft.Forward = 0, nil
	return math.Min(math.Max(s.c.Length-(w.Fill*w.Volume-aft.Volume())/area, 0), s.c.Length)
}

// mark puts a sign where the weakest part is.
func (s *chamberSection) mark(weakest string) {
	r := s.c.Diameter / 2
	x, y := math.NaN(), r+s.wall/2
	ends := func(e *chamber.Closure, from, way float64) {
		switch {
		case strings.HasSuffix(weakest, "bond"):
			x = from + way*overlap(e)/2
		default:
			x, y = from+way*(overlap(e)+0.7*s.depth(e)), 0.6*r
		}
	}
	switch {
	case strings.HasPrefix(weakest, "wall"):
		x = s.at(s.c.Length / 2)
	case strings.HasPrefix(weakest, "forward"):
		ends(s.c.Forward, 0, -1)
	case strings.HasPrefix(weakest, "aft"):
		ends(s.c.Aft, s.at(s.c.Length), 1)
	case strings.HasPrefix(weakest, "retainer"):
		x, y = s.at(s.c.Length)+s.trail()-s.neck()/2, 0
	default:
		return
	}
	s.chart.Points = append(s.chart.Points, plot.PointMark{X: x, Y: y, Sign: weakSign})
}
