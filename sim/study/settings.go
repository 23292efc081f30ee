package study

import (
	"context"
	"math"

	"ullage/sim"
	"ullage/sim/rocket"
)

// Settings are what the recovery electronics are set to for a drive, from the rules of the file, with what the flight
// says of them.
type Settings struct {
	Flight *sim.Flight
	Slow   float64 // s from release: on the way up it is slower than canopies may open from then on; 0 where it always is, NaN where it never gets so slow
	Sonic  float64 // s from release up to when it is faster than Mach 0.8, where pressure tells no height; 0 where it never is
}

// transonic is the Mach number from which on static ports misread: common practice, no source.
const transonic = 0.8

// SettingsOf flies every drive that a rocket has.
func SettingsOf(ctx context.Context, r *rocket.Rocket) ([]Settings, error) {
	var all []Settings
	for _, power := range drives(r) {
		c := *r
		c.Power = power
		fl, err := sim.Fly(ctx, &c, sim.Options{Keep: true})
		if err != nil {
			return all, err
		}
		all = append(all, settingsOf(fl, r.Limits.InForce().Opening))
	}
	return all, nil
}

func settingsOf(fl *sim.Flight, opening float64) Settings {
	const every = 0.01 // s
	s := Settings{Flight: fl}
	end := fl.Apogee.Time
	if !fl.Apogee.Happened {
		end = fl.Duration()
	}
	at := fl.Reader()
	for t := every; t <= end; t += every {
		x := at(t)
		if x.Airspeed > opening {
			s.Slow = t + every
		}
		if x.Mach > transonic {
			s.Sonic = t + every
		}
	}
	if s.Slow > end {
		s.Slow = math.NaN()
	}
	return s
}

// LeakCost is the height, m, that a flight on water loses with its pressure down by as much; NaN where it then has none.
func LeakCost(ctx context.Context, r *rocket.Rocket, lost float64) (float64, error) {
	c := *r
	c.Power = rocket.WaterPower
	before, err := sim.Fly(ctx, &c, sim.Options{})
	if err != nil {
		return 0, err
	}
	w := *r.Water
	if w.Pressure -= lost; !(w.Pressure > 0) {
		return math.NaN(), nil
	}
	c.Water = &w
	after, err := sim.Fly(ctx, &c, sim.Options{})
	if err != nil {
		return 0, err
	}
	return before.Apogee.Height - after.Apogee.Height, nil
}
