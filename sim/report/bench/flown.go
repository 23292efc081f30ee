package bench

import (
	"math"
	"strconv"

	"ullage/sim/report/page"
	"ullage/sim/report/words"
	"ullage/sim/rocket"
	"ullage/sim/study"
)

// jig is how straight the thrust has to be, as a gap.
func (s *sheet) jig() page.Section {
	x := page.Section{Name: "Alignment, as a gap at the jig's end", Inputs: []string{"jig.length", "field.radius"}}
	if len(s.Jigs) == 0 {
		x.Inputs = []string{"body.length", "body.balance"}
		x.Add(page.Prose("Not worked out: it takes the airframe's shape and balance."))
		return x
	}
	g := page.Grid{Heads: []page.GridHead{page.Words("drive"), page.Words("thrust off by"), page.Figures("angle"), page.Figures("gap"), page.Figures("lands")}}
	row := func(drive rocket.Power, what string, r study.JigRow) {
		gap, far := "-", "does not land"
		if !math.IsNaN(r.Gap) {
			gap = s.fine(r.Gap)
		}
		if !math.IsInf(r.Drift, 1) {
			far = s.Height(r.Drift)
		}
		if r.Shut {
			far += ", no canopy open"
		}
		g.Rows = append(g.Rows, []string{string(drive), what, s.Angle(r.Angle), gap, far})
	}
	for i := range s.Jigs {
		j := &s.Jigs[i]
		for _, r := range j.Rows {
			row(j.Power, "tried", r)
		}
		if !math.IsNaN(j.Field.Angle) && !j.AllField {
			row(j.Power, "most for the field", j.Field)
		}
		if !math.IsNaN(j.Attack.Angle) {
			row(j.Power, "most for the attack", j.Attack)
		}
	}
	x.Add(g)
	for i := range s.Jigs {
		x.Add(s.held(&s.Jigs[i]))
	}
	if s.Rocket.Bench.Jig == 0 {
		x.Add(page.Prose("Give jig.length, from the nozzle or the mount to where the gap is read, to have it as a gap."))
	}
	x.Add(page.Prose("On the day of the file, its wind and its rail, the thrust off to the worse side in the plane of the rail's tilt, the rest as described; distances are from the pad. The angle of attack is held to limits.attack in calm air, upright, as in ullage airframe. " +
		"To measure: a straight rod in the nozzle or the mount, the body turned in two vees; half of what the rod's end wanders is the gap."))
	return x
}

// held says what to build to on a drive.
func (s *sheet) held(j *study.Jigged) page.Block {
	on := "On " + string(j.Power) + " power "
	switch most := j.Most(); {
	case j.Radius == 0:
		return page.Prose(on + "no field is given (field.radius): where it may land is not judged.")
	case math.IsNaN(j.Field.Angle) && j.Rows[0].Shut:
		return page.Alarm(on + "it comes down with no canopy open even with its thrust straight: mend that first.")
	case math.IsNaN(j.Field.Angle):
		return page.Alarm(on + "it lands outside the field of " + s.Height(j.Radius) + " even with its thrust straight: mend that first.")
	case math.IsNaN(j.Attack.Angle):
		return page.Alarm(on + "its angle of attack is beyond limits.attack even with its thrust straight: mend that first.")
	default:
		text := on + "build to less than " + s.Angle(most.Angle)
		if !math.IsNaN(most.Gap) {
			text += ", a gap of " + s.fine(most.Gap) + " at " + s.Given(j.Length, "mm")
		}
		why := ": the angle of attack asks for that; the field alone would let it be more."
		if j.Field.Angle <= j.Attack.Angle {
			why = ": farther off it lands beyond the field of " + s.Height(j.Radius) + ", or with no canopy open."
		}
		return page.Prose(text + why)
	}
}

// electronics is what is set for each canopy, by drive.
func (s *sheet) electronics() page.Section {
	x := page.Section{Name: "Recovery electronics: what to set"}
	for i := range s.Rocket.Canopies {
		if name := s.Rocket.OpeningInput(i); name != "" {
			x.Inputs = append(x.Inputs, name)
		}
	}
	if len(s.Rocket.Canopies) == 0 {
		x.Add(page.Prose("No canopy is described."))
		return x
	}
	g := page.Grid{Heads: []page.GridHead{page.Words("drive"), page.Words("canopy"), page.Words("set"), page.Figures("comes at"), page.Figures("height"), page.Figures("airspeed")}}
	for i := range s.Settings {
		fl := s.Settings[i].Flight
		for k := range fl.Canopies {
			c := &fl.Canopies[k]
			at, height, speed := "never", "-", "-"
			if c.Opened {
				at, height, speed = s.Time(c.Time), s.Height(c.Height), s.Speed(c.Airspeed)
			}
			g.Rows = append(g.Rows, []string{string(fl.Rocket.Power), c.Name, s.rule(fl.Rocket, k), at, height, speed})
		}
	}
	x.Add(g)
	var points page.Points
	for i := range s.Settings {
		points = append(points, s.lockOut(&s.Settings[i])...)
	}
	x.Add(points, page.Prose("Times are from release, or from ignition, as this flight has them: a setting counts from what it waits for, not from these. Nothing of charges or of pins "+
		"that shear is told here, on purpose: quantities of energetic material belong to qualified people."))
	return x
}

// rule is what is set, in words.
func (s *sheet) rule(r *rocket.Rocket, canopy int) string {
	rule := r.Canopies[canopy].Rule(r.Power)
	if rule.Trigger.ByCharge() {
		if _, seconds, ok := r.Waits(canopy); ok {
			return "the motor's delay, " + s.Given(seconds, "s")
		}
		return "nothing fires it on this drive"
	}
	text := rule.Text(func(v float64) string { return s.Given(v, rule.Trigger.Row().Range.Unit.Name) }, "-")
	if text == "" {
		return "nothing"
	}
	return text
}

// lockOut says until when nothing may fire.
func (s *sheet) lockOut(x *study.Settings) page.Points {
	fl := x.Flight
	on := "On " + string(fl.Rocket.Power) + " power: "
	from := "release"
	if fl.Rocket.Power == rocket.MotorPower {
		from = "ignition"
	}
	limit := s.Given(fl.Rocket.Limits.InForce().Opening, "m/s")
	var points page.Points
	switch {
	case !fl.Apogee.Happened:
		return page.Points{on + "no apogee to wait for."}
	case math.IsNaN(x.Slow):
		points = append(points, on+"at the top it is still faster than "+limit+", what canopies may open at (limits.opening): no lock-out helps, tilt and wind do.")
	case x.Slow > 0:
		points = append(points, on+"lock out all events for "+s.upTo(x.Slow)+" from "+from+", while it is faster than "+limit+" (limits.opening); the top comes at "+s.Time(fl.Apogee.Time)+".")
	default:
		points = append(points, on+"it never is faster than "+limit+" (limits.opening); the top comes at "+s.Time(fl.Apogee.Time)+".")
	}
	if x.Sonic > 0 {
		points = append(points, on+"beyond Mach 0.8 up to "+s.upTo(x.Sonic)+": pressure tells no height meanwhile (common practice), lock it out.")
	}
	return points
}

// upTo is a time rounded up to a tenth of a second.
func (s *sheet) upTo(v float64) string {
	return strconv.FormatFloat(math.Ceil(v*10)/10, 'f', 1, 64) + " s"
}

// cautions go with all of it.
func (s *sheet) cautions() page.Section {
	x := page.Section{Name: "Cautions"}
	for i := range s.Settings {
		if text := s.Beyond(s.Settings[i].Flight.Rocket); text != "" {
			x.Add(page.Alarm(text))
		}
	}
	var points page.Points
	if s.Rocket.Water != nil || s.Rocket.Chamber != nil {
		points = append(points, "A pressurised chamber can burst and kill: prove it with water, fill and release it from a distance, never stand by it under pressure. A bottle of gas needs a regulator and a relief valve that are made for it.")
	}
	if s.Rocket.Motor != nil {
		points = append(points, words.MotorCaution)
	}
	x.Add(append(points, "These are estimates from the numbers of the file. Local law, the range officer and qualified people decide."))
	return x
}
