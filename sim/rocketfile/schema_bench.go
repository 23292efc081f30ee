package rocketfile

import (
	"ullage/sim/bench"
	"ullage/sim/rocket"
)

// small is a section of small parts, which is listed where something of it is given.
func small[T comparable](path, group, about string, of func(*bench.Bench) T, fields ...*field) *section {
	var none T
	return &section{path: path, group: group, about: about, loose: true, apart: true, count: one, fields: fields,
		quiet: func(r *rocket.Rocket) bool { return of(&r.Bench) == none }}
}

func sealSection() *section {
	return small("seal", "seal", "The O-ring or cord that seals nozzle, plug or closure, and its groove.", func(b *bench.Bench) bench.Seal { return b.Seal },
		num("cord", "cord", 0.1, 0.5,
			"Thickness of the O-ring, or of the cord it is made of, that seals nozzle, plug or closure."),
		num("inside", "inside", 0.5, 5,
			"Inside diameter of the ring before it is stretched over its groove."),
		num("groove", "groove", 0.1, 1,
			"Diameter of the floor of its groove, around the plug."),
		num("width", "width", 0.1, 0.5,
			"Of the groove, along the plug."),
		num("bore", "bore", 0.1, 1,
			"Diameter that the ring seals against."),
		num("plug", "plug", 0.1, 1,
			"Diameter of the plug beside the groove, away from the pressure."),
		num("hardness", "hardness", 5, 10,
			"Of the ring, Shore A; 70 when not given (common practice).").
			otherwise(func(place) float64 { return bench.UsualHardness }))
}

func baySection() *section {
	return small("bay", "altimeter bay", "The altimeter's bay, for its static ports.", func(b *bench.Bench) bench.Bay { return b.Bay },
		num("volume", "volume", 0.05, 0.5,
			"Air in the altimeter's bay, what is in it left out."),
		num("ports", "ports", 1, 1,
			"Static ports of the bay, evenly around; 3 when not given (common practice).").
			otherwise(func(p place) float64 { return float64(p.rocket.Bench.Bay.Number()) }))
}

func jigSection() *section {
	return small("jig", "jig", "The jig by which the thrust's line is set.", func(b *bench.Bench) float64 { return b.Jig },
		num("length", "length", 10, 50,
			"From the nozzle, or the mount, to where the jig's gap to the axis is read."))
}

func fillingSection() *section {
	return small("filling", "filling", "The pump or bottle that the chamber is filled by, and a leak test.", func(b *bench.Bench) bench.Filling { return b.Filling },
		num("stroke", "stroke", 0.05, 0.5,
			"Volume of air that one stroke of the pump takes in."),
		num("bottle", "bottle", 0.5, 5,
			"Inside volume of the bottle that the chamber is filled from."),
		num("bottle_pressure", "bottle press", 1, 10,
			"In the bottle before filling."),
		num("leak", "leak", 0.01, 0.1,
			"Pressure lost in a leak test, at about the pressure of the flight."),
		num("leak_time", "leak time", 1, 5,
			"In which it was lost."),
		num("wait", "wait", 0.5, 5,
			"From the closing of the valve to the release."))
}
