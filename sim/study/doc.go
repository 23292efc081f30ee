// Package study flies one rocket many times: over a range of inputs, towards the
// best value of one, side by side with others, over the opening of a canopy, along
// its rail, and with everything uncertain drawn at random.
//
// Flights run on all cores and come back in the order they were asked for, so that
// the same study gives the same bytes whatever the machine does. Every function
// takes a context and ends early when it does; what it has by then it returns
// beside the context's error.
//
// Flights are those of the rocket's own model, as everywhere: which one that is stands in
// the rocket ([rocket.Rocket.Rigid]), and in nothing else.
//
// [Sweep] and [Disperse] hand out their rows as they come and keep none, so that
// memory does not grow with them; [FindBest] looks for a value; [Compare] sets rockets
// side by side; [Opening], [WhatIfs] and [CanopyFor] are about a canopy, [RailExitFor]
// and [WindTilts] about the rail, and [StructureOf] about the chamber beside the flights
// that load it. What is wrong with what is asked for is a fault.List, all at once, as for a
// file.
package study

import (
	"ullage/sim"
)

// Options are common to all studies. The zero value is fit for use.
type Options struct {
	// Workers is how many flights are in the air at once; 0 takes GOMAXPROCS.
	Workers int
	// Tolerance is passed on to the engine; 0 takes its default.
	Tolerance float64
	// Keep keeps the dense record of every flight handed out, for plots.
	Keep bool
	// Progress is told how many flights are done of how many, now and then, never
	// by two goroutines at once. The total is 0 where it is not known beforehand.
	Progress func(done, total int)

	from *sim.WayUp // that flights go on from where it is theirs
}

func (o Options) flight() sim.Options {
	return sim.Options{Tolerance: o.Tolerance, Keep: o.Keep, From: o.from}
}

// unkept are those of a flight of which only the results are read.
func (o Options) unkept() sim.Options {
	o.Keep = false
	return o.flight()
}
