package draw

import (
	"ullage/sim/airframe"
	"ullage/sim/quantity"
	"ullage/sim/rocket"
	"ullage/tui/plot"
)

// Silhouette is a shape from the side, nose to the left: the body's outline and the fins, in a unit of length.
func Silhouette(s *airframe.Shape, u quantity.Unit) []plot.Series {
	var out []plot.Series
	both := func(ink plot.Ink, x, y []float64) {
		mirrored := make([]float64, len(y))
		for i := range y {
			mirrored[i] = -y[i]
		}
		out = append(out, plot.Series{X: InUnit(x, u), Y: InUnit(y, u), Ink: ink}, plot.Series{X: InUnit(x, u), Y: InUnit(mirrored, u), Ink: ink})
	}
	x, y := outline(s)
	both(plot.TraceA, x, y)
	for _, f := range s.Fins {
		root := f.Position
		body := s.Radius(root)
		both(plot.TraceB, []float64{root, root + f.Sweep, root + f.Sweep + f.Tip, root + f.Root}, []float64{body, body + f.Span, body + f.Span, body})
	}
	return out
}

// outline is the body's upper edge from the tip of the nose to the aft end.
func outline(s *airframe.Shape) (x, y []float64) {
	nose := s.Forebody()
	const steps = 40
	for i := range steps + 1 {
		at := nose.Length * float64(i) / steps
		x, y = append(x, at), append(y, nose.Radius(at))
	}
	at, d := nose.Length, nose.Diameter
	for _, sec := range s.Sections {
		fore := sec.Forward
		if fore == 0 {
			fore = d
		}
		aft := sec.Aft
		if aft == 0 {
			aft = fore
		}
		x, y = append(x, at, at+sec.Length), append(y, fore/2, aft/2)
		at, d = at+sec.Length, aft
	}
	return append(x, s.Length, s.Length), append(y, d/2, 0)
}

// Growing is what can be drawn of a rocket that is not all described; nil when diameter or length is not known yet.
func Growing(r *rocket.Rocket) *airframe.Shape {
	if r.Shape == nil || !(r.Body.Diameter > 0) || !(r.Shape.Length > 0) {
		return nil
	}
	s := *r.Shape
	s.Diameter = r.Body.Diameter
	if s.Nose.Shape == "" {
		s.Nose.Shape = airframe.Conical
	}
	if !(s.Nose.Length > 0) || s.Nose.Length > s.Length {
		s.Nose = airframe.Nose{Shape: airframe.Conical, Length: 1e-3 * s.Length}
	}
	if s.Nose.Shape == airframe.PowerSeries && !(s.Nose.Exponent > 0) {
		s.Nose.Exponent = 0.5
	}
	room := s.Length - s.Nose.Length
	var sections []airframe.Section
	for _, sec := range s.Sections {
		if sec.Length > 0 && sec.Length <= room {
			sections, room = append(sections, sec), room-sec.Length
		}
	}
	s.Sections = sections
	var fins []airframe.Fins
	for _, f := range s.Fins {
		if !(f.Root > 0) || !(f.Span > 0) || f.Root > s.Length {
			continue
		}
		if !(f.Position > 0) {
			f.Position = s.Length - f.Root
		}
		fins = append(fins, f)
	}
	s.Fins = fins
	return &s
}
