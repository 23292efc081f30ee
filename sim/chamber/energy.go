package chamber

import "math"

// Stored is the energy that a burst would set free. Fragments go farther than any
// stand-off here: these are distances for the blast alone.
type Stored struct {
	Isentropic    float64 // J: the gas expands to the pressure around it
	Brode         float64 // J
	TNT           float64 // kg, of the isentropic energy
	Standoff      float64 // m, of ASME PCC-2
	StandoffFloor float64 // m, not below the 30 m of ASME PCC-2
}

// ASME PCC-2, article 501 (hydrostatic and pneumatic tests), from memory.
const (
	tntEnergy     = 4.26692e6 // J/kg
	standoffScale = 20        // m/kg^(1/3)
	standoffFloor = 30        // m
)

// airGamma is the ratio of air's specific heats.
const airGamma = 1.4

// store works out the three stores of a service in a volume.
func (r *Result) store(s Service, volume float64) {
	gamma := s.Gamma
	if gamma == 0 {
		gamma = airGamma
	}
	gas := volume * math.Max(0, math.Min(1, 1-s.Fill))
	r.Gas = gasEnergy(s.Working+s.Ambient, gas, s.Ambient, gamma)
	r.Pneumatic = gasEnergy(r.Proof+s.Ambient, volume, s.Ambient, gamma)
	// Water and wall are springs.
	spring := r.Proof * r.Dilation.Pump / 2
	r.Hydraulic = standOff(spring, spring)
}

// gasEnergy is that of a volume of gas at an absolute pressure: isentropic expansion,
// p V/(γ−1) [1 − (p_a/p)^((γ−1)/γ)], and Brode's (p − p_a) V/(γ−1) (Brode, Physics of
// Fluids 2 (1959) 217).
func gasEnergy(pressure, volume, ambient, gamma float64) Stored {
	if pressure <= ambient || volume == 0 {
		return standOff(0, 0)
	}
	isentropic := pressure * volume / (gamma - 1) * (1 - math.Pow(ambient/pressure, (gamma-1)/gamma))
	return standOff(isentropic, (pressure-ambient)*volume/(gamma-1))
}

func standOff(isentropic, brode float64) Stored {
	s := Stored{Isentropic: isentropic, Brode: brode, TNT: isentropic / tntEnergy}
	s.Standoff = standoffScale * math.Cbrt(2*s.TNT)
	s.StandoffFloor = math.Max(s.Standoff, standoffFloor)
	return s
}
