package study

import (
	"context"
	"errors"
	"math"

	"ullage/sim"
	"ullage/sim/chamber"
	"ullage/sim/rocket"
)

// ErrNoChamber is returned where a study needs the structure of a chamber.
var ErrNoChamber = errors.New("there is no [chamber] to look at")

// WorkingBasis says where the working pressure of a structure comes from.
type WorkingBasis string

// The bases.
const (
	WorkingFilled  WorkingBasis = "water.pressure"
	WorkingProved  WorkingBasis = "chamber.proof"
	WorkingUnknown WorkingBasis = "none"
)

// Structure is the chamber of a rocket at its working pressure, beside the flights that
// load it and the recovery mount.
type Structure struct {
	Rocket  *rocket.Rocket
	Vessel  chamber.Chamber // with what the rest of the rocket says of it
	Service chamber.Service
	Basis   WorkingBasis // of Service.Working
	Result  chamber.Result
	Flights []*sim.Flight // one for each drive that the rocket has, water first
}

// StructureOf looks at a rocket's chamber and flies every drive it has, with the
// rocket's own model. Where nothing is filled, the working pressure is what the proof on
// record is for; without one it is 0. A rocket without a chamber is ErrNoChamber, one
// that is not valid a fault.List.
func StructureOf(ctx context.Context, r *rocket.Rocket) (Structure, error) {
	s := Structure{Rocket: r}
	v := r.Vessel()
	if v == nil {
		return s, ErrNoChamber
	}
	s.Vessel, s.Service, s.Basis = *v, r.Service(), WorkingFilled
	if s.Service.Working == 0 {
		s.Service.Working, s.Basis = v.At(s.Service).MostOnRecord, WorkingProved
		if v.Proof == 0 {
			s.Basis = WorkingUnknown
		}
	}
	s.Result = v.At(s.Service)
	for _, power := range drives(r) {
		c := *r
		c.Power = power
		fl, err := sim.Fly(ctx, &c, sim.Options{})
		if err != nil {
			return s, err
		}
		s.Flights = append(s.Flights, fl)
	}
	return s, nil
}

// drives are those that a rocket has, water first.
func drives(r *rocket.Rocket) []rocket.Power {
	var all []rocket.Power
	if r.Water != nil {
		all = append(all, rocket.WaterPower)
	}
	if r.Motor != nil {
		all = append(all, rocket.MotorPower)
	}
	return all
}

// Hoop and Axial are the mean stresses around and along the tube's wall at a pressure,
// p r/t and p r/(2t) with the radius of the wall's middle, Pa.
func (s *Structure) Hoop(pressure float64) float64 {
	t := s.Vessel.WallThickness()
	return pressure * (s.Vessel.Diameter + t) / 2 / t
}

// Axial is half of Hoop.
func (s *Structure) Axial(pressure float64) float64 { return s.Hoop(pressure) / 2 }

// ClosureForce is what a pressure pushes each closure out with, N: on the whole bore,
// the hole of a nozzle included.
func (s *Structure) ClosureForce(pressure float64) float64 {
	return pressure * math.Pi / 4 * s.Vessel.Diameter * s.Vessel.Diameter
}

// RetainerForce is what it pulls at the thread of the retainer with, N: on the area of
// its seal. NaN without a thread.
func (s *Structure) RetainerForce(pressure float64) float64 {
	t := s.Vessel.Thread
	if t == nil {
		return math.NaN()
	}
	seal := t.Seal
	if seal == 0 {
		seal = t.Diameter
	}
	return pressure * math.Pi / 4 * seal * seal
}

// Typical tells whether a built-in strength, unverified, is in the burst pressure of the
// result.
func (s *Structure) Typical() bool {
	r := &s.Result
	return r.Basis == chamber.FromEstimate && r.Weakest >= 0 && r.Parts[r.Weakest].Typical
}
