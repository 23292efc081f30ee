package bench

import (
	"math"
	"strconv"

	"ullage/sim/bench"
	"ullage/sim/report/page"
	"ullage/sim/report/words"
	"ullage/sim/rocket"
	"ullage/sim/study"
)

// Ring is the ring of a seal by its size, inside by thickness; empty where none is described.
func Ring(p words.Printer, s *bench.Seal) string {
	switch {
	case s.Cord == 0:
		return ""
	case s.Inside == 0:
		return fine(p, s.Cord) + " thick"
	}
	return fine(p, s.Inside) + " inside, " + fine(p, s.Cord) + " thick"
}

// Strokes is how many of the pump are expected up to a pressure, Pa; empty where the pump is not described.
func Strokes(r *rocket.Rocket, pressure float64) string {
	stroke := r.Bench.Filling.Stroke
	if r.Water == nil || stroke == 0 {
		return ""
	}
	g := study.GasOf(r)
	g.Pressure = pressure
	return words.Plural(int(math.Ceil(g.Strokes(stroke))), "stroke")
}

// Bottle is what a bottle of gas shows before and after filling; empty where it is not described.
func Bottle(p words.Printer, r *rocket.Rocket) string {
	f := &r.Bench.Filling
	if r.Water == nil || f.Bottle == 0 || f.BottlePressure == 0 {
		return ""
	}
	g := study.GasOf(r)
	times := g.Fillings(f)
	if times == 0 {
		return p.Pressure(f.BottlePressure) + " in it do not reach " + p.Pressure(g.Pressure)
	}
	return "from " + p.Pressure(f.BottlePressure) + " to " + p.Pressure(g.BottleAfter(f)) + "; it fills the chamber " + words.Plural(times, "time")
}

// Filling are gas, strokes, bottle and leak of a rocket with water, as the file has them, and what it lacks to
// tell them all.
func Filling(p words.Printer, r *rocket.Rocket) (facts page.Facts, needs []string) {
	f, g := &r.Bench.Filling, study.GasOf(r)
	facts = page.Facts{{"gas", p.Mass(g.Mass()) + " of " + string(r.Water.Gas) + " pumped into " + p.Given(g.Volume, "L") + " to " + p.Pressure(g.Pressure)}}
	if text := Strokes(r, g.Pressure); text != "" {
		facts = append(facts, [2]string{"pump", text + " of " + p.Given(f.Stroke, "L") + " at least, of one that loses nothing"})
	} else {
		needs = append(needs, "filling.stroke for the strokes of a pump")
	}
	if text := Bottle(p, r); text != "" {
		facts = append(facts, [2]string{"bottle", text})
	} else {
		needs = append(needs, "filling.bottle and filling.bottle_pressure for a bottle")
	}
	if lost := f.LostBy(); !math.IsNaN(lost) {
		facts = append(facts, [2]string{"leak", p.Rough(lost, "bar") + " lost by the release, " + p.Given(f.Wait, "min") + " after the valve closes, at the rate of the leak test"})
	} else {
		needs = append(needs, "filling.leak, leak_time and wait for what a leak costs")
	}
	return facts, needs
}

// filling is the section about it, with what a leak costs in height.
func (s *sheet) filling() page.Section {
	if s.Rocket.Water == nil {
		return page.Section{}
	}
	x := page.Section{Name: "Filling", Inputs: keyed("filling", []string{"stroke", "bottle", "bottle_pressure", "leak", "leak_time", "wait"})}
	facts, needs := Filling(s.Printer, s.Rocket)
	if last := &facts[len(facts)-1]; last[0] == "leak" {
		switch {
		case math.IsNaN(s.LeakCost):
			last[1] += ": nothing is left to fly on"
		case s.LeakCost >= 0:
			last[1] += ", " + s.Rough(s.LeakCost, "m") + " of height"
		default:
			last[1] += ", which takes no height"
		}
	}
	x.Add(facts)
	if len(needs) > 0 {
		x.Add(page.Prose("Give " + page.Listed(needs) + "."))
	}
	x.Add(page.Prose("Ideal gas that has come back to its temperature: a chamber filled fast is warm, and its pressure falls as it cools. Never make up for a leak by filling higher; what leaks is mended and proved with water again."))
	return x
}

// fine is a length to a hundredth of a millimetre or a thousandth of an inch.
func fine(p words.Printer, v float64) string {
	const inch = 0.0254
	if p.Unit("mm") == "in" {
		return strconv.FormatFloat(v/inch, 'f', 3, 64) + " in"
	}
	return strconv.FormatFloat(v*1e3, 'f', 2, 64) + " mm"
}
