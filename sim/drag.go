package sim

import (
	"math"
	"ullage/atmosphere"
	"ullage/sim/airframe"
	"ullage/sim/rocket"
)

// bodyAndCanopies sets the drag area of the body and of what has opened.
func (m *model) bodyAndCanopies(y *state, f *forces) {
	t := m.table
	if m.push != noPush {
		t = m.pushed
	}
	c := t[0].Drag
	if len(t) > 1 {
		c = dragAt(t, f.mach())
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
func (f *forces) mach() float64 {
	return f.airspeed * math.Sqrt(f.density/(atmosphere.Gamma*f.pressure))
}

// dragAt interpolates a drag table.
func dragAt(t []rocket.MachDrag, mach float64) float64 {
	if mach <= t[0].Mach {
		return t[0].Drag
	}
	for i := 1; i < len(t); i++ {
		if mach < t[i].Mach {
			a, b := t[i-1], t[i]
			return a.Drag + (b.Drag-a.Drag)*(mach-a.Mach)/(b.Mach-a.Mach)
		}
	}
	return t[len(t)-1].Drag
}

// dragMach are the Mach numbers at which a shape's drag is worked out; past the last
// the equations behind it do not hold.
var dragMach = [...]float64{0.01, 0.02, 0.04, 0.07, 0.1, 0.15, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.75, 0.8}

// shapeDrag is the drag table of a shape in the air of the site, without and with
// a running jet of an exit area, m².
func shapeDrag(s *airframe.Shape, air atmosphere.Air, jet float64) (coasting, pushed []rocket.MachDrag) {
	aero := s.Aero()
	for _, mach := range dragMach {
		f := airframe.Flow{Speed: mach * air.SoundSpeed, Density: air.Density, SoundSpeed: air.SoundSpeed, Viscosity: air.Viscosity()}
		coasting = append(coasting, rocket.MachDrag{Mach: mach, Drag: aero.Drag(f, 0)})
		pushed = append(pushed, rocket.MachDrag{Mach: mach, Drag: aero.Drag(f, jet)})
	}
	return coasting, pushed
}
