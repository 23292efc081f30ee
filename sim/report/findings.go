package report

import (
	"math"

	"ullage/sim"
	"ullage/sim/gates"
	"ullage/sim/quantity"
	"ullage/sim/report/page"
	"ullage/sim/report/words"
)

// Finding is one thing a flight came to: a number and a word.
type Finding struct {
	Key    string // stable: rail-exit, apogee, canopy.main, landing, warning.liquid-left, …
	Label  string // "rail exit"
	Value  string // with its unit, in the system asked for; empty when the word says it all
	Word   string // one of Words; empty when Level is Plain
	Level  gates.Level
	Detail string // sentences: the limit and its source, or what to do; may be empty
}

// Findings lists what a flight came to, in the order to read it: on the way up,
// at the top, each canopy, the landing, the day, then the warnings.
func Findings(fl *sim.Flight, sys quantity.System) []Finding {
	p := words.In(sys)
	r := &fl.Results
	var out []Finding
	add := func(f Finding) { out = append(out, f) }

	if r.RailExit.Happened {
		add(judged(p, "rail-exit", "rail exit", p.Speed(r.RailExit.Speed), r.RailExit.Speed, gates.RailExit(fl.Rocket)))
		add(judged(p, "thrust-to-weight", "thrust/weight", p.Number(r.RailExit.ThrustToWeight),
			r.RailExit.ThrustToWeight, gates.LimitFor(fl.Rocket, gates.LimitThrustToWeight)))
	} else {
		add(Finding{Key: "rail-exit", Label: "rail exit", Word: gates.WordNever, Level: gates.Bad,
			Detail: "The rocket did not leave its guide."})
	}
	for _, f := range stabilityFindings(p, fl) {
		add(f)
	}
	if r.Apogee.Happened {
		add(Finding{Key: "apogee", Label: "apogee", Value: p.Height(r.Apogee.Height) + " at " + p.Time(r.Apogee.Time)})
	}
	for i := range r.Canopies {
		add(canopyFinding(p, fl, i))
	}
	if l := r.Landing; l.Happened {
		add(judged(p, "landing", "lands", p.Speed(l.Vertical), l.Vertical, gates.LimitFor(fl.Rocket, gates.LimitLanding)))
		add(judged(p, "landing-energy", "landing energy", p.Energy(l.Energy), l.Energy, gates.LimitFor(fl.Rocket, gates.LimitEnergy)))
		add(Finding{Key: "drift", Label: "drift", Value: p.Drift(l)})
	}
	// The day's inputs are in front of the user already; they are worth a line
	// only when they break a limit.
	for _, f := range []Finding{
		judged(p, "tilt", "tilt", p.Given(fl.Rocket.Rail.Tilt, "deg"), fl.Rocket.Rail.Tilt, gates.LimitFor(fl.Rocket, gates.LimitTilt)),
		judged(p, "wind", "wind", p.Given(fl.Rocket.Wind.Speed, "m/s"), fl.Rocket.Wind.Speed, gates.LimitFor(fl.Rocket, gates.LimitWind)),
	} {
		if f.Level != gates.Good {
			add(f)
		}
	}
	for _, w := range fl.Warnings {
		if w.Code != sim.CanopyNever { // the canopy's own finding says so
			add(warningFinding(p, w))
		}
	}
	return out
}

// judged is a finding with the verdict of a limit.
func judged(p words.Printer, key, label, value string, v float64, l gates.Limit) Finding {
	f := Finding{Key: key, Label: label, Value: value, Detail: p.LimitSentence(l)}
	f.Word, f.Level = l.Judge(v)
	return f
}

// canopyFinding tells when a canopy opens and judges the airspeed it opens at.
func canopyFinding(p words.Printer, fl *sim.Flight, i int) Finding {
	c := fl.Results.Canopies[i]
	key, label := "canopy."+c.Name, page.Printable(c.Name)+" opens"
	if !c.Opened {
		never := sim.Warning{Code: sim.CanopyNever, Canopy: c.Name}
		return Finding{Key: key, Label: label, Word: gates.WordNever, Level: gates.Bad, Detail: WarningText(never, p.System)}
	}
	value := "at " + p.Time(c.Time)
	if top := fl.Results.Apogee; top.Happened {
		value = sinceTop(p, c.Time-top.Time)
	}
	f := judged(p, key, label, value+" at "+p.Speed(c.Airspeed), c.Airspeed, gates.LimitFor(fl.Rocket, gates.LimitOpening))
	f.Detail += " Opening load " + p.Force(c.Load) + ", at most " + p.Force(c.LoadBound) + "."
	return f
}

// sinceTop places a time beside apogee. Below a hundredth of a second it is at it.
func sinceTop(p words.Printer, dt float64) string {
	switch {
	case math.Abs(dt) < 0.01:
		return "at the top"
	case dt < 0:
		return p.Time(-dt) + " before the top"
	}
	return p.Time(dt) + " after the top"
}
