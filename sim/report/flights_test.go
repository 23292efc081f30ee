package report

import (
	"math"

	"ullage/atmosphere"
	"ullage/sim"
	"ullage/sim/quantity"
	"ullage/sim/results"
	"ullage/sim/rocket"
)

// waterFlight is a flight on water made up by hand: every number differs from
// every other, so that a swapped pair shows.
func waterFlight() *sim.Flight {
	return &sim.Flight{
		Rocket: &rocket.Rocket{
			Name:     "Twin Heron",
			Power:    rocket.WaterPower,
			Water:    &rocket.Water{Volume: 4.2e-3, Bore: 0.068, Throat: 0.013, Fill: 0.30, Pressure: 9e5},
			Rail:     rocket.Rail{Length: 1.8, Tilt: 3 * math.Pi / 180},
			Wind:     atmosphere.Wind{Speed: 4, Height: 10, Exponent: 1. / 7},
			Canopies: []rocket.Canopy{{Name: "main"}, {Name: "spare"}},
		},
		Results: sim.Results{
			LiftOffMass:           2.5512345,
			LiftOffThrustToWeight: 8.125,
			RailExit: sim.GuideEnd{
				Moment:         sim.Moment{Happened: true, Time: 0.1205, Height: 1.7975, Speed: 18.25},
				ThrustToWeight: 8.75,
			},
			TubeExit:   sim.GuideEnd{Moment: sim.Moment{Happened: true, Time: 0.0405, Height: 0.3, Speed: 9.85}},
			LiquidOut:  sim.Moment{Happened: true, Time: 0.3125, Height: 5.25, Speed: 41.5},
			Burnout:    sim.Moment{Happened: true, Time: 0.3625, Height: 7.5, Speed: 45.125},
			Apogee:     sim.Moment{Happened: true, Time: 6.72, Height: 213.625, Speed: 1.25},
			LiquidLeft: 0,
			WaterFlew:  true,
			Max: sim.Maxima{
				Speed: 52.125, Mach: 0.15325, Acceleration: 412.5, DynamicPressure: 1663.5, Thrust: 612.25,
				SpeedTime: 0.36, MachTime: 0.361, AccelerationTime: 0.081, DynamicPressureTime: 0.359, ThrustTime: 0.0055,
			},
			Startup: sim.Startup{Thrust: 1240.5, Acceleration: 486.25},
			Drive:   sim.Drive{Impulse: 87.5, Average: 241.375, BurnTime: 0.3626},
			Canopies: []sim.CanopyResult{
				{Name: "main", Opened: true, Time: 7.52, Height: 210.5, Airspeed: 8.0625, Full: true, FullTime: 8.1,
					Load: 42.5, LoadBound: 55.75, Descent: 5.5625},
				{Name: "spare"},
			},
			Landing: sim.Landing{
				Moment:   sim.Moment{Happened: true, Time: 45.25, Height: 0, Speed: 8.5},
				Vertical: 7.125, Energy: 40.25, East: 160.5, North: -12.25,
			},
		},
		Warnings: []sim.Warning{{Code: sim.CanopyNever, Canopy: "spare"}},
	}
}

// motorFlight is a flight on a motor made up by hand, all of it within the limits.
func motorFlight() *sim.Flight {
	return &sim.Flight{
		Rocket: &rocket.Rocket{
			Name:     "Twin Heron",
			Power:    rocket.MotorPower,
			Motor:    &rocket.Motor{Case: 0.21, Propellant: 0.14},
			Rail:     rocket.Rail{Length: 1.8},
			Wind:     atmosphere.Wind{Speed: 2},
			Canopies: []rocket.Canopy{{Name: "main"}},
		},
		Results: sim.Results{
			LiftOffMass:           1.51,
			LiftOffThrustToWeight: 10.5,
			RailExit: sim.GuideEnd{
				Moment:         sim.Moment{Happened: true, Time: 0.21, Height: 1.8, Speed: 17.5},
				ThrustToWeight: 9.5,
			},
			Burnout: sim.Moment{Happened: true, Time: 1.45, Height: 101.5, Speed: 140.25},
			Apogee:  sim.Moment{Happened: true, Time: 11.25, Height: 702.5, Speed: 0.5},
			Max:     sim.Maxima{Speed: 142.5, Mach: 0.42, Acceleration: 121.5, DynamicPressure: 12100, Thrust: 181.5},
			Drive:   sim.Drive{Impulse: 201.5, Average: 139.5, BurnTime: 1.444, Class: "H"},
			Canopies: []sim.CanopyResult{
				{Name: "main", Opened: true, Time: 9.45, Height: 680.5, Airspeed: 19.5, Full: true, FullTime: 9.9,
					Load: 310.5, LoadBound: 420.5, Descent: 5.25},
			},
			Landing: sim.Landing{
				Moment:   sim.Moment{Happened: true, Time: 140.5, Speed: 5.5},
				Vertical: 5.25, Energy: 20.75, East: -210.5, North: 0,
			},
		},
	}
}

// groundedFlight never left the pad.
func groundedFlight() *sim.Flight {
	fl := waterFlight()
	fl.Rocket.Canopies = fl.Rocket.Canopies[:1]
	fl.Results = sim.Results{
		LiftOffMass: 9.5, LiftOffThrustToWeight: 0.5, WaterFlew: true,
		LiquidOut: sim.Moment{Happened: true, Time: 2.5},
		Burnout:   sim.Moment{Happened: true, Time: 2.75},
		Max:       sim.Maxima{Thrust: 41.5, ThrustTime: 0.01},
		Drive:     sim.Drive{Impulse: 51.5, Average: 21.5, BurnTime: 2.75},
		Canopies:  []sim.CanopyResult{{Name: "main"}},
	}
	fl.Warnings = []sim.Warning{{Code: sim.NeverLifted}, {Code: sim.CanopyNever, Canopy: "main"}}
	return fl
}

// findingsOf are the findings of a flight by its own table.
func findingsOf(fl *sim.Flight, sys quantity.System) []Finding {
	return Findings(fl, results.For(fl.Rocket), sys)
}
