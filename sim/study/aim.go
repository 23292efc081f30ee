package study

import (
	"math"

	"ullage/sim"
	"ullage/sim/rocket"
)

// Aim is what a search is after.
type Aim struct {
	// Value of a flight is to be the greatest. It is a number for every flight that is not
	// refused.
	Value func(*sim.Flight) float64
	// Drop is how far below the best value, which it is given, is still within 1 % of it; nil
	// takes 1 % of its size.
	Drop func(best float64) float64
	// Gain is the share of the value that is not worth a flight more; 0 takes 1e-5. Only a search of several inputs asks.
	Gain float64
	// Refuse says why a flight may not be the best one, and how far, 0 to 1, it is from
	// being one, by which a search finds its way back.
	Refuse func(*sim.Flight) (why Refusal, far float64)
}

// Refusal says why a flight may not be the best one.
type Refusal int

// The refusals.
const (
	Accepted    Refusal = iota
	LiquidLeft          // it ended with liquid aboard
	NeverLeft           // it did not leave the rail, or has no apogee
	Overpressed         // its pressure is more than any proof on record is for
	Leaking             // its launch tube is no piston in its throat
	Undefined           // it does not have the result that is wished for
	Failing             // it does not pass every check
)

// drop is Drop, and never 0.
func (a *Aim) drop(best float64) float64 {
	if a.Drop != nil {
		return a.Drop(best)
	}
	return math.Max(bandDrop*math.Abs(best), math.SmallestNonzeroFloat32)
}

// gain is Gain or what it is without.
func (a *Aim) gain() float64 {
	if a.Gain > 0 {
		return a.Gain
	}
	return climbTol
}

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

// Within refuses besides what has more pressure than the chamber is proved for; with no
// proof on record the pressure of the rocket that the search starts from is the top. Nor may a launch
// tube leak, which no flight here covers, more than that rocket's does.
func (a Aim) Within(base *rocket.Rocket) Aim {
	refuse := a.Refuse
	a.Refuse = func(fl *sim.Flight) (Refusal, float64) {
		if far := overpressed(base, fl.Rocket); far > 0 {
			return Overpressed, far
		}
		if gap := tubeGap(fl.Rocket); gap > math.Max(rocket.LeakingGap, tubeGap(base)) {
			return Leaking, math.Min(gap/fl.Rocket.Water.Throat, 1)
		}
		return refuse(fl)
	}
	return a
}

// tubeGap is how far a launch tube stands off its throat on one side, m; 0 without one.
func tubeGap(r *rocket.Rocket) float64 {
	if r.Power != rocket.WaterPower || r.Water.Tube == nil {
		return 0
	}
	return r.Water.Tube.Gap(r.Water)
}

// TopPressure is what [Aim.Within] takes for the most, gauge, Pa; infinite on a motor.
func TopPressure(base, r *rocket.Rocket) float64 {
	if r.Power != rocket.WaterPower {
		return math.Inf(1)
	}
	if top := r.ProvedFor(); !math.IsNaN(top) {
		return top
	}
	return base.Water.Pressure
}

// overpressed is how far a rocket's pressure is above the top, 0 to 1; 0 below it.
func overpressed(base, r *rocket.Rocket) float64 {
	const slack = 1e-9 // what arithmetic may add
	top := TopPressure(base, r)
	if math.IsInf(top, 1) || r.Water.Pressure <= top*(1+slack) {
		return 0
	}
	return (r.Water.Pressure - top) / r.Water.Pressure
}

// MostPressed is the rocket of a sweep with the most pressure in its chamber.
func MostPressed(base *rocket.Rocket, axes []Axis) *rocket.Rocket {
	most := base
	for _, a := range axes {
		if a.Input.Name != "water.pressure" || base.Water == nil {
			continue
		}
		for i, v := range a.Values {
			if i > 0 && v.Number <= most.Water.Pressure {
				continue
			}
			r := base.Clone()
			if v.set(a.Input, r) == nil {
				most = r
			}
		}
	}
	return most
}
