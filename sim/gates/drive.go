package gates

import (
	"ullage/sim"
	"ullage/sim/results"
	"ullage/sim/rocket"
)

// theModel is the source of a limit without which the flight computed is another than the
// one flown.
const theModel = "this model"

// driveCriteria are about what pushes, and the drag at the speed it brings.
func driveCriteria(r *rocket.Rocket, out results.Table) []criterion {
	if r.Power != rocket.MotorPower {
		return append(tubeCriteria(r), dragReach(r, out), criterion{key: checkLeft, until: untilPushed, levers: []lever{{input: "water.fill"}},
			limit: Limit{Key: checkLeft, Min: noMin, Max: 0, Unit: "g", Word: WordLeft, Source: theModel, Either: true}}.judging(out.Must("liquid_out.left")))
	}
	g := []criterion{dragReach(r, out), {key: LimitImpulse, limit: LimitFor(r, LimitImpulse), still: true,
		value: func(fl *sim.Flight) (float64, bool) { return fl.Rocket.Motor.Impulse(), true }}}
	return append(g, fitCriteria(r)...)
}

// fitCriteria hold the motor in its mount: it goes in, ends in it, and does not slide out of it.
func fitCriteria(r *rocket.Rocket) []criterion {
	var mount rocket.MotorMount
	if r.MotorMount != nil {
		mount = *r.MotorMount
	}
	bound := func(key, name, word string, most float64) Limit {
		if most == 0 { // not given: it is lacking then, and no limit
			most = noMax
		}
		return Limit{Key: key, Name: name, Min: noMin, Max: most, Unit: "mm", Word: word, Source: theFile, Either: true}
	}
	wide := criterion{key: checkMotorFits, still: true, lacks: lackOf(
		"motor.diameter", r.Motor.Diameter, "motor_mount.diameter", mount.Bore()), // of its liner, where it has one; what arithmetic adds every limit allows
		limit: bound(checkMotorFits, "motor diameter in its mount", WordLarge, mount.Bore()),
		value: func(fl *sim.Flight) (float64, bool) { return fl.Rocket.Motor.Diameter, fl.Rocket.Motor.Diameter > 0 }}
	long := criterion{key: checkMotorLength, still: true, lacks: lackOf("motor.length", r.Motor.Length, "motor_mount.length", mount.Length),
		limit: bound(checkMotorLength, "motor length in its mount", WordLarge, mount.Length),
		value: func(fl *sim.Flight) (float64, bool) { return fl.Rocket.Motor.Length, fl.Rocket.Motor.Length > 0 }}
	held := criterion{key: checkMotorHeld, still: true, lacks: lackOf("motor.diameter", r.Motor.Diameter, rocket.MotorRetainer, mount.Retainer),
		limit: bound(checkMotorHeld, "opening of the retainer", WordLarge, mount.MostRetainer(r.Motor)),
		value: func(fl *sim.Flight) (float64, bool) { return mount.Retainer, mount.Retainer > 0 }}
	if held.lacks == nil && r.MotorFit().Adapter > 0 && mount.Retainer >= r.Motor.Diameter {
		held.lacks = give("motor_mount.liner", rocket.MotorRetainer).because("so narrow a motor sits in an adapter: the inside of that one, and the opening of what keeps the motor in it")
	}
	return []criterion{wide, long, held}
}

// lackOf asks for those of two inputs that are not given.
func lackOf(a string, given float64, b string, too float64) *Remedy {
	var missing []string
	if given == 0 {
		missing = append(missing, a)
	}
	if too == 0 {
		missing = append(missing, b)
	}
	if len(missing) == 0 {
		return nil
	}
	return give(missing...)
}

// dragReach holds the flight within the drag that is known of the rocket.
func dragReach(r *rocket.Rocket, out results.Table) criterion {
	g := criterion{key: checkDragReach, adds: []Remedy{*give("body.drag").because("a table against Mach that goes as far")},
		limit: Limit{Min: noMin}}.judging(out.Must("max.mach"))
	g.limit = Limit{Key: checkDragReach, Name: "Mach within the drag known", Min: noMin, Max: r.DragReach(), Word: WordHigh, Source: theModel}
	if len(r.Body.Drag) > 1 {
		g.limit.Source = theFile
	}
	return g
}

// tubeCriteria hold that a launch tube is the piston, and dry, that the flight takes it for.
func tubeCriteria(r *rocket.Rocket) []criterion {
	if r.Water.Tube == nil {
		return nil
	}
	return []criterion{
		{key: checkTubeTip, until: untilReady, levers: []lever{{input: "water.fill"}, {input: "water.tube.length", up: true}},
			limit: Limit{Key: checkTubeTip, Name: "liquid around the launch tube, over its length", Min: noMin, Max: 1, Word: WordWet, Source: theModel},
			value: func(fl *sim.Flight) (float64, bool) {
				w := fl.Rocket.Water
				return w.Tube.Depth(w) / w.Tube.Length, true
			}},
		{key: checkTubeGap, still: true, levers: []lever{{input: "water.tube.outer", up: true}},
			limit: Limit{Key: checkTubeGap, Name: "gap around the launch tube", Min: noMin, Max: rocket.LeakingGap, Unit: "mm", Word: WordLarge, Source: CommonPractice},
			value: func(fl *sim.Flight) (float64, bool) { return fl.Rocket.Water.Tube.Gap(fl.Rocket.Water), true }},
	}
}
