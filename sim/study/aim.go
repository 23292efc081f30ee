package study

import "ullage/sim"

// Aim is what a search is after.
type Aim struct {
	// Value of a flight is to be the greatest. It is a number, and not below 0, for every
	// flight that is not refused.
	Value func(*sim.Flight) float64
	// Refuse says why a flight may not be the best one, and how far, 0 to 1, it is from
	// being one, by which a search finds its way back.
	Refuse func(*sim.Flight) (why Refusal, far float64)
}

// Refusal says why a flight may not be the best one.
type Refusal int

// The refusals.
const (
	Accepted   Refusal = iota
	LiquidLeft         // it ended with liquid aboard
	NeverLeft          // it did not leave the rail, or has no apogee
)

// Highest is the highest apogee of the flights that leave the rail and, unless leftovers
// are allowed, end without liquid aboard.
func Highest(leftovers bool) Aim {
	return Aim{
		Value: func(fl *sim.Flight) float64 { return fl.Apogee.Height },
		Refuse: func(fl *sim.Flight) (Refusal, float64) {
			switch {
			case !fl.RailExit.Happened || !fl.Apogee.Happened:
				return NeverLeft, 0
			case fl.LiquidLeft > 0 && !leftovers:
				w := fl.Rocket.Water
				return LiquidLeft, fl.LiquidLeft / (w.Fill * w.Volume * w.Density)
			}
			return Accepted, 0
		},
	}
}
