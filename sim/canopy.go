package sim

import "math"

type canopyModel struct {
	area float64 // C_D S, m²
	fill float64 // n·D₀, m
}

// canopyArea is the drag area of one canopy: it grows linearly with the distance
// through the air since release (the fill distance behind Knacke's t_f = n·D₀/v,
// NWC TP 6575).
func (m *model) canopyArea(i int, path float64) float64 {
	bit := uint64(1) << i
	switch c := &m.canopies[i]; {
	case m.open&bit == 0:
		return 0
	case m.full&bit != 0:
		return c.area
	default:
		return c.area * min(max((path-m.airFrom[i])/c.fill, 0), 1)
	}
}

// release lets a canopy out.
func (r *run) release(i int) {
	m := &r.model
	bit := uint64(1) << i
	r.settle()
	m.rigid = false // under a canopy the attitude no longer matters
	r.pending &^= bit
	r.waited &^= bit
	m.open |= bit
	m.airFrom[i] = r.y[airPath]
	res := &r.flight.Canopies[i]
	res.Opened, res.Time, res.Height, res.Airspeed = true, r.t, r.y[up], r.now.airspeed
	r.mark(CanopyEvent, i)
	if m.canopies[i].fill == 0 {
		q := 0.5 * r.now.density * r.now.airspeed * r.now.airspeed
		r.maxima.noteCanopy(i, q*m.canopies[i].area, q, r.t)
		r.fill(i)
		return
	}
	r.enter()
}

// fill: a canopy has filled.
func (r *run) fill(i int) {
	r.model.full |= 1 << i
	res := &r.flight.Canopies[i]
	res.Full, res.FullTime = true, r.t
	r.mark(CanopyFullEvent, i)
	r.enter()
}

// settle gives the canopies opened last the rate they settle to, at the height
// where the next one opens or the flight ends: m·g = ½·ρ·v²·(ΣC_D·S + C_D·A), the
// buoyancy of the chamber counted.
func (r *run) settle() {
	m := &r.model
	area := r.now.bodyDrag
	for i := range m.canopies {
		if m.open&(1<<i) != 0 {
			area += m.canopies[i].area
		}
	}
	weight := (r.now.mass - r.now.density*m.chamber) * m.column.Gravity(r.y[up])
	for i := range r.flight.Canopies {
		if c := &r.flight.Canopies[i]; c.Opened && c.Descent == 0 && weight > 0 {
			c.Descent = math.Sqrt(2 * weight / (r.now.density * area))
		}
	}
}
