package gates

import (
	"time"

	"ullage/sim"
	"ullage/sim/ground"
	"ullage/sim/results"
	"ullage/sim/rocket"
)

// criterion is a check before anything has flown: what number of a flight it looks at, and
// what moves that number.
type criterion struct {
	key    string
	result string // name of the result it judges; empty when it judges something else
	about  Subject
	limit  Limit
	value  func(fl *sim.Flight) (v float64, happened bool)
	levers []lever
	lacks  *Remedy // what must be given before it can pass (see give); nil when it can
	adds   []Remedy
	change string // what would have to change where no input within reach mends it
	ground bool   // means something of a rocket that does not leave its guide
	until  until  // how far a flight has to go for it
	still  bool   // about the rocket, not its flight: no corner, no calm
	warns  bool   // outside its limit is a caution, no failure
	absent string // the word where there is no number to judge; never when empty
	number int    // its place among all of the rocket
}

// flies tells whether a flight tells its number: then it has a corner and calm air, too.
func (g *criterion) flies() bool { return !g.still && g.value != nil }

// criteriaOf lists the checks of a rocket on the drive that flies, in the order to read
// them: on the way up, the day, at the top, the landing, the field, the chamber.
func criteriaOf(r *rocket.Rocket, today time.Time) []criterion {
	out := results.For(r)
	g := make([]criterion, 0, usualCriteria)
	g = append(g, guideCriteria(r, out)...)
	g = append(g, marginCriteria(r, out)...)
	g = append(g, dayCriteria(r)...)
	g = append(g, shapeCriteria(r, out)...)
	g = append(g, driveCriteria(r, out)...)
	g = append(g, canopyCriteria(r, out)...)
	g = append(g, landingCriteria(r, out)...)
	g = append(g, fieldCriteria(r, out)...)
	for _, c := range chamberCriteria(r, today) {
		c.about = Chamber
		g = append(g, c)
	}
	for i := range g {
		g[i].number = i
	}
	return g
}

// usualCriteria is room for those of most rockets.
const usualCriteria = 48

// judging makes a criterion of a result: it has its name and its value.
func (c criterion) judging(row *results.Row) criterion {
	c.result, c.limit.Name, c.value = row.Name, row.Label, row.Defined
	return c
}

func guideCriteria(r *rocket.Rocket, out results.Table) []criterion {
	// A launch tube as long as the rail guides by itself.
	faster := []lever{{input: "rail.length", up: true}, {input: "water.fill"}, {input: "body.mass"}}
	overWind := criterion{key: LimitRailExitWind, until: untilFree, limit: LimitFor(r, LimitRailExitWind), levers: append(faster, calmer(r))}.
		judging(out.Must("rail_exit.wind_ratio"))
	overWind.value = func(fl *sim.Flight) (float64, bool) { // endless in calm air
		return fl.RailExit.Speed / fl.Rocket.GroundWind(), fl.RailExit.Happened && r.Wind.Known()
	}
	overWind.lacks = unstatedWind(r)
	return []criterion{
		criterion{key: LimitRailExit, limit: LimitFor(r, LimitRailExit), levers: faster, ground: true, until: untilFree,
			change: "a longer rail, a lighter rocket or another nozzle than were tried"}.judging(out.Must("rail_exit.speed")),
		overWind,
		criterion{key: LimitThrustToWeight, until: untilFree, limit: LimitFor(r, LimitThrustToWeight),
			levers: []lever{{input: "water.fill"}, {input: "water.throat", up: true}, {input: "body.mass"}}}.judging(out.Must("rail_exit.thrust_to_weight")),
	}
}

// Keys of the checks that have no limit of one number.
const (
	checkMargin      = "margin"
	checkLeastMargin = "margin.least"
	checkUnstated    = "canopies"
	checkMotorFits   = "motor-fits"
	checkMotorLength = "motor-length"
	checkMotorHeld   = "motor-held"
	checkCeiling     = "ceiling"
	checkRadius      = "radius"
	checkBoundary    = "boundary"
	checkMost        = "most-load"
	checkLeft        = "liquid-left"
	checkBurst       = "burst"
	checkDoubt       = "burst-doubt"
	checkSealed      = "sealed"
	checkFell        = "landing-booked"
	checkPressed     = "proof-booked"
	checkTubeTip     = "tube-tip"
	checkTubeGap     = "tube-gap"
	checkDragReach   = "drag-reach"
	checkThrusting   = "landing-thrust"
	checkPlace       = "opening-place"
	checkTurn        = "opening-turn"
	checkFull        = "opening-full"
	checkFree        = "opening-free"
)

func marginCriteria(r *rocket.Rocket, out results.Table) []criterion {
	both := LimitFor(r, LimitMarginLeast)
	most := LimitFor(r, LimitMarginMost)
	both.Max, both.Name = most.Max, "margin"
	if most.Source == theFile {
		both.Source = theFile
	}
	if !r.Balanced() {
		both.Name = "stability margin"
		return []criterion{{key: checkMargin, limit: both, lacks: give(unbalanced(r)...).because("where it balances, against its centre of pressure")}}
	}
	var g []criterion
	for _, at := range []struct {
		key, result string
		until       until
	}{
		{"rail-exit", "margin.rail_exit", untilFree}, {"liquid-out", "margin.liquid_out", untilPushed}, {"burnout", "margin.burnout", untilPushed},
	} {
		if at.result == "margin.liquid_out" && r.Power != rocket.WaterPower {
			continue
		}
		g = append(g, criterion{key: checkMargin + "." + at.key, until: at.until, limit: both, levers: marginLevers(r), change: anotherBalance}.judging(out.Must(at.result)))
	}
	least := criterion{key: checkLeastMargin, until: untilTop, limit: LimitFor(r, LimitMarginLeast), levers: marginLevers(r)}.judging(out.Must("margin.least"))
	least.value = func(fl *sim.Flight) (float64, bool) { return fl.Stability.Least, fl.RailExit.Happened }
	turning := criterion{key: LimitAttackMost, until: untilTop, limit: LimitFor(r, LimitAttackMost), levers: append([]lever{{input: "rail.length", up: true}}, marginLevers(r)...)}.
		judging(out.Must("attack.most"))
	turning.lacks = unstatedWind(r)
	if !r.Rigid() {
		turning.lacks = give("flight.model").because(`a point mass does not turn; "rigid" does`)
	}
	angled := criterion{key: LimitMarginAngle, until: untilFree, limit: LimitFor(r, LimitMarginAngle),
		levers: append(marginLevers(r), lever{input: "rail.length", up: true}, calmer(r))}.judging(out.Must("margin.at_angle"))
	angled.lacks = unstatedWind(r)
	return append(g, least, angled, turning,
		criterion{key: LimitAttack, until: untilFree, limit: LimitFor(r, LimitAttack), lacks: unstatedWind(r),
			levers: []lever{{input: "rail.length", up: true}, calmer(r), {input: "water.fill"}}}.judging(out.Must("attack.rail_exit")))
}

// unbalanced names what a margin needs and the rocket does not have.
func unbalanced(r *rocket.Rocket) []string {
	if r.Shape != nil {
		return []string{"body.balance"}
	}
	return []string{"body.length", "body.balance", "nose", "fins"}
}

// anotherBalance is what moves a margin where no single number does.
const anotherBalance = "move what is aboard, or build other fins, and weigh and balance it anew"

// marginLevers move the balance or the centre of pressure.
func marginLevers(r *rocket.Rocket) []lever {
	levers := []lever{noseWeight(r)}
	if n := len(r.Shape.Fins); n > 0 {
		levers = append(levers, lever{input: "fins." + r.Shape.Fins[n-1].Name + ".span", either: true})
	}
	return append(levers, lever{input: "water.fill", either: true})
}

// statedCalm is how a file says that there is no wind.
const statedCalm = `"0 m/s" says that the air is calm`

// unstatedWind asks for the wind, without which nobody knows what it does; nil where it is stated.
func unstatedWind(r *rocket.Rocket) *Remedy {
	if r.Wind.Known() {
		return nil
	}
	return give("wind.speed").because(statedCalm)
}

func dayCriteria(r *rocket.Rocket) []criterion {
	return []criterion{
		{key: LimitTilt, until: untilReady, limit: LimitFor(r, LimitTilt), ground: true, levers: []lever{{input: "rail.tilt"}},
			value: func(fl *sim.Flight) (float64, bool) { return fl.Rocket.Rail.Tilt, true }},
		{key: LimitWind, until: untilReady, limit: LimitFor(r, LimitWind), ground: true, lacks: unstatedWind(r), levers: []lever{calmer(r)},
			value: func(fl *sim.Flight) (float64, bool) {
				return fl.Rocket.GroundWind(), r.Wind.Known()
			}},
	}
}

func landingCriteria(r *rocket.Rocket, out results.Table) []criterion {
	larger := canopyLevers(r, true)
	thrusting := criterion{key: checkThrusting, absent: WordLeft, levers: []lever{{input: "rail.tilt"}},
		limit: Limit{Key: checkThrusting, Name: "landing after the end of thrust", Min: 0, Max: noMax, Unit: "s", Word: WordLeft, Source: theModel},
		value: func(fl *sim.Flight) (float64, bool) {
			if !fl.Landing.Happened { // which the landing says
				return noMax, true
			}
			return fl.Landing.Time - fl.Burnout.Time, fl.Burnout.Happened
		}}
	return []criterion{thrusting,
		criterion{key: LimitLanding, limit: LimitFor(r, LimitLanding), levers: larger}.judging(out.Must("landing.vertical")),
		criterion{key: LimitEnergy, limit: LimitFor(r, LimitEnergy), levers: append(larger[:len(larger):len(larger)], lever{input: "body.mass"})}.
			judging(out.Must("landing.energy")),
	}
}

// canopyLevers are the diameters of all canopies.
func canopyLevers(r *rocket.Rocket, up bool) []lever {
	var levers []lever
	for i := range r.Canopies {
		levers = append(levers, lever{input: "canopy." + r.Canopies[i].Name + ".diameter", up: up})
	}
	return levers
}

func fieldCriteria(r *rocket.Rocket, out results.Table) []criterion {
	ceiling := criterion{key: checkCeiling,
		limit:  Limit{Key: checkCeiling, Min: noMin, Max: r.Field.Ceiling, Unit: "m", Word: WordHigh, Source: theFile},
		levers: []lever{{input: "water.pressure"}, {input: "water.fill", either: true}, {input: "body.mass", up: true}}}.judging(out.Must("apogee.height"))
	ceiling.limit.Name += " under the ceiling"
	if r.Field.Ceiling == 0 {
		ceiling.limit.Max, ceiling.lacks = noMax, give("field.ceiling")
	}
	radius := criterion{key: checkRadius,
		limit:  Limit{Key: checkRadius, Min: noMin, Max: r.Field.Radius, Unit: "m", Word: WordFar, Source: theFile},
		levers: append([]lever{intoTheWind(), calmer(r)}, append(laterLevers(r), canopyLevers(r, false)...)...)}.judging(out.Must("landing.drift"))
	radius.limit.Name += " within the field"
	radius.lacks = unstatedWind(r)
	if len(r.Field.Boundary) > 0 {
		inside := radius
		inside.key, inside.result = checkBoundary, ""
		inside.limit = Limit{Key: checkBoundary, Name: "landing inside the boundary", Min: 0, Max: noMax, Unit: "m", Word: WordFar, Source: theFile}
		inside.value = func(fl *sim.Flight) (float64, bool) {
			return r.Field.Boundary.Inside(ground.Point{East: fl.Landing.East, North: fl.Landing.North}), fl.Landing.Happened
		}
		if r.Field.Radius == 0 {
			return []criterion{ceiling, inside}
		}
		return []criterion{ceiling, radius, inside}
	}
	if r.Field.Radius == 0 {
		radius.limit.Max, radius.lacks = noMax, give("field.radius")
	}
	return []criterion{ceiling, radius}
}
