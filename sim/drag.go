package sim

import (
	"math"
	"ullage/atmosphere"
	"ullage/sim/airframe"
	"ullage/sim/rocket"
)

// bodyAndCanopies sets the drag area of the body and of what has opened.
func (m *model) bodyAndCanopies(y *state, f *forces) {
	p := &m.drag[m.piece]
	if m.push != noPush {
		p = &m.pushedDrag[m.piece]
	}
	c := p.drag
	if p.slope != 0 {
		c += p.slope * f.mach()
	}
	f.area = c * m.refArea
	f.bodyDrag = f.area
	if m.open == 0 {
		return
	}
	for i := range m.canopies {
		f.area += m.canopyArea(i, y[airPath])
	}
}

// mach is the Mach number from the ambient state: a² = γp/ρ.
func (f *forces) mach() float64 { return f.airspeed * math.Sqrt(perSound2(f.pressure, f.density)) }

// perSound2 is one over the square of the speed of sound.
func perSound2(pressure, density float64) float64 { return density / (atmosphere.Gamma * pressure) }

// dragPiece is a stretch of a drag table, drag + slope·Mach between two of its points.
// Where two pieces meet the drag has a kink, so that the change is an event.
type dragPiece struct{ low, high, drag, slope float64 }

// pieces appends those of a table, constant beyond its ends; the first begins at rest.
func pieces(list []dragPiece, t []rocket.MachDrag) []dragPiece {
	if t[0].Mach > 0 {
		list = append(list, dragPiece{math.Inf(-1), t[0].Mach, t[0].Drag, 0})
	}
	for i := range t[1:] {
		a, b := t[i], t[i+1]
		slope := (b.Drag - a.Drag) / (b.Mach - a.Mach)
		list = append(list, dragPiece{a.Mach, b.Mach, a.Drag - slope*a.Mach, slope})
	}
	last := t[len(t)-1]
	list = append(list, dragPiece{last.Mach, math.Inf(1), last.Drag, 0})
	list[0].low = math.Inf(-1)
	return list
}

// findPiece takes the piece of a Mach number that is not a hair's breadth from the one it is in.
func (m *model) findPiece(mach float64) (changed bool) {
	const hair = 1e-6
	if p := &m.drag[m.piece]; mach >= p.low-hair && mach <= p.high+hair {
		return false
	}
	m.piece = 0
	for mach >= m.drag[m.piece].high {
		m.piece++
	}
	return true
}

// machSlope is the Mach number and how fast it changes: a little on along the rates. Both ends of a piece ask for
// it, so that it is kept with the forces of the moment.
func (m *model) machSlope(y, dy *state, f *forces) slope {
	const bit = 1e-5 // s
	if !math.IsNaN(f.machs.rate) {
		return f.machs
	}
	height, v := y[up]+bit*dy[up], velocity(y).on(bit, velocity(dy))
	airspeed := 0.0
	if m.guided {
		airspeed = math.Abs(dot(v, m.axis))
	} else {
		w := m.throughAir(height, v)
		airspeed = math.Sqrt(dot(w, w))
	}
	mach := f.mach()
	f.machs = slope{mach, (airspeed*math.Sqrt(perSound2(m.column.At(height))) - mach) / bit}
	return f.machs
}

// dragMach are the Mach numbers at which a shape's drag is worked out; past the last
// the equations behind it do not hold.
var dragMach = [...]float64{0.01, 0.02, 0.04, 0.07, 0.1, 0.15, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.75, 0.8}

// shapeDrag is the drag table of a shape in the air of the site, without and with
// a running jet of an exit area, m².
func shapeDrag(aero *airframe.Aero, air atmosphere.Air, jet float64) (coasting, pushed []rocket.MachDrag) {
	for _, mach := range dragMach {
		f := airframe.Flow{Speed: mach * air.SoundSpeed, Density: air.Density, SoundSpeed: air.SoundSpeed, Viscosity: air.Viscosity()}
		coasting = append(coasting, rocket.MachDrag{Mach: mach, Drag: aero.Drag(f, 0)})
		pushed = append(pushed, rocket.MachDrag{Mach: mach, Drag: aero.Drag(f, jet)})
	}
	return coasting, pushed
}
