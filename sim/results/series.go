package results

import (
	"math"
	"ullage/sim"
	"ullage/sim/quantity"
	"ullage/sim/rocket"
)

// Part is a stretch of a flight.
type Part int

// The parts.
const (
	Whole       Part = iota // the whole flight
	UnderThrust             // to the end of thrust
	WayUp                   // to apogee
)

// End is the last second of the part of a flight, a little after what it is named for, and of the whole
// flight where that never came: where a plot of it ends, s. It is never zero.
func (p Part) End(fl *sim.Flight) float64 {
	const after = 1.08
	whole := fl.Duration()
	end := whole
	switch r := &fl.Results; {
	case p == UnderThrust && r.Burnout.Happened:
		end = r.Burnout.Time * after
	case p == WayUp && r.Apogee.Happened:
		end = r.Apogee.Time * after
	}
	if end = min(end, whole); end > 0 && !math.IsInf(end, 0) {
		return end
	}
	return 1
}

// Series is something of a flight over time. Numbers are SI, angles radians.
type Series struct {
	Name      string // fixed, for the command line: dynamic-pressure
	Label     string
	Dimension quantity.Dimension
	Unit      string // metric, for people; the dimension's usual one when empty
	Suffix    string // behind a ratio, for people: "calibres"
	Column    string // of `fly --csv`; empty where that leaves it out
	Undefined string // when it has no value: "when …"; empty for never

	Part    Part   // of the flight that tells most of it
	Extreme string // what to call its greatest (or, with Least, least) value; empty when that is nothing to point out
	Most    string // name of the result that is its greatest (or, with Least, least) value; empty when there is none
	Least   bool
	Surge   string // name of the result that is its start-up surge, which Most leaves out

	Of func(s *sim.Sample) float64 // NaN where it has no value
}

// At is the name of the result that is the time of Most; empty when there is none.
func (s *Series) At() string {
	if s.Most == "" {
		return ""
	}
	return s.Most + "_time"
}

// Metric is the unit for people, before a system of units has its say.
func (s *Series) Metric() quantity.Unit { return metric(s.Dimension, s.Unit) }

// Known tells whether a flight has values of it, such as a chamber's pressure on water.
func (s *Series) Known(fl *sim.Flight) bool {
	switch s.Undefined {
	case onMotor:
		return fl.Rocket.Power == rocket.WaterPower
	case noBalance:
		return fl.Stability.Known
	case pointFlies:
		return fl.Rocket.Rigid()
	}
	return true
}

// Over lists the series of a flight, those of `fly --csv` first in the order of its columns.
func Over() []Series { return series }

// FindSeries finds a series by its name; nil when there is none.
func FindSeries(name string) *Series {
	for i := range series {
		if series[i].Name == name {
			return &series[i]
		}
	}
	return nil
}

var series = []Series{
	{Name: "time", Label: "time", Dimension: quantity.Time, Column: "time_s", Of: func(s *sim.Sample) float64 { return s.Time }},
	{Name: "east", Label: "east of the pad", Dimension: quantity.Length, Unit: "m", Column: "east_m", Of: func(s *sim.Sample) float64 { return s.East }},
	{Name: "north", Label: "north of the pad", Dimension: quantity.Length, Unit: "m", Column: "north_m", Of: func(s *sim.Sample) float64 { return s.North }},
	{Name: "height", Label: "height", Dimension: quantity.Length, Unit: "m", Column: "height_m", Of: func(s *sim.Sample) float64 { return s.Height }},
	{Name: "speed", Label: "speed", Dimension: quantity.Speed, Column: "speed_mps", Most: "max.speed", Extreme: "fastest", Of: func(s *sim.Sample) float64 { return s.Speed }},
	{Name: "vertical", Label: "upward speed", Dimension: quantity.Speed, Column: "vertical_mps", Extreme: "fastest", Of: func(s *sim.Sample) float64 { return s.Vertical }},
	{Name: "acceleration", Label: "acceleration", Dimension: quantity.Acceleration, Column: "acceleration_mps2", Most: "max.acceleration", Surge: "startup.acceleration",
		Extreme: "greatest", Of: func(s *sim.Sample) float64 { return s.Acceleration }},
	{Name: "mach", Label: "Mach number", Column: "mach", Most: "max.mach", Extreme: "greatest", Of: func(s *sim.Sample) float64 { return s.Mach }},
	{Name: "thrust", Label: "thrust", Dimension: quantity.Force, Column: "thrust_n", Most: "max.thrust", Surge: "startup.thrust", Part: UnderThrust, Extreme: "greatest", Of: func(s *sim.Sample) float64 { return s.Thrust }},
	{Name: "drag", Label: "drag", Dimension: quantity.Force, Column: "drag_n", Extreme: "greatest", Of: func(s *sim.Sample) float64 { return s.Drag }},
	{Name: "mass", Label: "mass", Dimension: quantity.Mass, Unit: "kg", Column: "mass_kg", Part: UnderThrust, Of: func(s *sim.Sample) float64 { return s.Mass }},
	{Name: "chamber", Label: "chamber pressure, absolute", Dimension: quantity.Pressure, Unit: "bar", Column: "chamber_pa", Undefined: onMotor,
		Part: UnderThrust, Extreme: "greatest", Of: func(s *sim.Sample) float64 { return s.Chamber }},
	{Name: "air", Label: "pressure of the air", Dimension: quantity.Pressure, Unit: "hPa", Column: "air_pa", Of: func(s *sim.Sample) float64 { return s.Air }},
	{Name: "pressure", Label: "gauge pressure", Dimension: quantity.Pressure, Unit: "bar", Undefined: onMotor,
		Part: UnderThrust, Extreme: "greatest", Of: func(s *sim.Sample) float64 { return s.Chamber - s.Air }},
	{Name: "airspeed", Label: "airspeed", Dimension: quantity.Speed, Extreme: "fastest", Of: func(s *sim.Sample) float64 { return s.Airspeed }},
	{Name: "dynamic-pressure", Label: "dynamic pressure", Dimension: quantity.Pressure, Unit: "kPa", Most: "max.dynamic_pressure", Extreme: "greatest", Of: func(s *sim.Sample) float64 { return s.DynamicPressure }},
	{Name: "attack", Label: "angle of attack", Dimension: quantity.Angle, Undefined: pointFlies, Part: WayUp, Of: func(s *sim.Sample) float64 { return s.Attack }},
	{Name: "margin", Label: "margin", Suffix: "calibres", Undefined: noBalance, Most: "margin.least", Least: true, Part: WayUp, Extreme: "least", Of: func(s *sim.Sample) float64 { return s.Margin }},
}
