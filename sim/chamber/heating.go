package chamber

import "math"

// Heated is a sealed chamber that has warmed up. Pressures are gauge, Pa.
type Heated struct {
	Dry, Damp       float64 // with dry air in it, and with water left that keeps the air saturated
	DryUse, DampUse float64 // of Result.MostWorking
	Vent, DampVent  Vent    // that hold Heating.Rise
}

// Wider is the larger of the two vents: enough for either. Its area is NaN when no rise is given.
func (h *Heated) Wider() Vent {
	if h.Vent.Area > h.DampVent.Area {
		return h.Vent
	}
	return h.DampVent
}

// Vent is a hole that lets out what a warming chamber's gas gains.
type Vent struct {
	Area        float64 // m²; +Inf when water would boil, NaN when no rise is given
	Hole        float64 // diameter of one round hole, m
	Temperature float64 // when it has most to do, K
}

// Closing says whether a chamber is closed while a motor burns beside it.
type Closing string

// The closings; "" is not stated, and counts as Sealed.
const (
	Sealed Closing = "sealed"
	Open   Closing = "open" // or vented as wide as it has to be: nothing builds up
)

// Orifice is a sharp hole's coefficient of discharge (Weisbach, from memory; the limit for a far wall is π/(π+2) = 0.611).
const Orifice = 0.61

// Gas constants of dry air and of water vapour, J/(kg K).
const (
	airConstant    = 287.05287
	vapourConstant = 461.52
)

// Reached is how warm the air inside gets, K, on a day with air that warm: a motor cools nothing.
func (h *Heating) Reached(air float64) float64 { return math.Max(h.Temperature, air) }

// heated is what a sealed volume comes to: dry p_a T/T_0, damp (p_a − p_v) T/T_0 +
// p_sat(T), saturated when it is sealed and ever after, so that damp is the most.
func (h *Heating) heated(s Service, volume, mostWorking float64) *Heated {
	reached := h.Reached(s.AirTemperature)
	ratio := reached / s.AirTemperature
	was, _ := saturation(s.AirTemperature)
	now, _ := saturation(reached)
	r := &Heated{
		Dry:  s.Ambient*ratio - s.Ambient,
		Damp: (s.Ambient-was)*ratio + now - s.Ambient,
	}
	r.DryUse, r.DampUse = r.Dry/mostWorking, r.Damp/mostWorking
	if h.Rise == 0 {
		none := Vent{Area: math.NaN(), Hole: math.NaN(), Temperature: math.NaN()}
		r.Vent, r.DampVent = none, none
		return r
	}
	// Both needs are convex in temperature: the worst instant is the first or the last.
	for _, t := range [...]float64{s.AirTemperature, reached} {
		dry, damp := h.needs(s, volume, t)
		r.Vent.widen(dry, t)
		r.DampVent.widen(damp, t)
	}
	return r
}

// needs are the areas of the vent at an instant, with the pressure held at what is
// allowed and the temperature rising evenly: A = (m Ṫ/T)/(C_d √(2 ρ Δp)). With vapour at
// saturation the air gives way to it as well: the volume that has to leave grows by
// dp_sat/dT over the air's pressure (derived: moles of air that stay within p − p_sat).
func (h *Heating) needs(s Service, volume, temperature float64) (dry, damp float64) {
	rate := (h.Reached(s.AirTemperature) - s.AirTemperature) / h.Time
	held := s.Ambient + h.Rise
	area := func(growth, density float64) float64 {
		return math.Max(0, rate*growth*volume*math.Sqrt(density)/(Orifice*math.Sqrt(2*h.Rise)))
	}
	dry = area(1/temperature, held/(airConstant*temperature))
	vapour, rise := saturation(temperature)
	air := held - vapour
	if air <= 0 {
		return dry, math.Inf(1)
	}
	density := air/(airConstant*temperature) + vapour/(vapourConstant*temperature)
	return dry, area(1/temperature+rise/air, density)
}

// widen takes the wider of two instants.
func (v *Vent) widen(area, temperature float64) {
	if v.Temperature == 0 || area > v.Area {
		*v = Vent{Area: area, Hole: math.Sqrt(4 * area / math.Pi), Temperature: temperature}
	}
}
