package report

import (
	"math"

	"ullage/sim"
	"ullage/sim/gates"
	"ullage/sim/quantity"
	"ullage/sim/report/page"
	"ullage/sim/report/words"
	"ullage/sim/results"
)

// Finding is one thing a flight came to: a number and a word.
type Finding struct {
	Key    string // stable: rail-exit, apogee, canopy.main, landing, warning.liquid-left, …
	Result string // dotted name of the result it is about; empty when it is about something else
	Label  string // "rail exit"
	Value  string // with its unit, in the system asked for; empty when the word says it all
	Word   string // one of Words; empty when Level is Plain
	Level  gates.Level
	Detail string // sentences: the limit and its source, or what to do; may be empty
}

// Findings lists what a flight came to by the results of a table, in the order to read it:
// on the way up, at apogee, each canopy, the landing, the day, then the warnings.
func Findings(fl *sim.Flight, t results.Table, sys quantity.System) []Finding {
	p := words.In(sys)
	var out []Finding
	add := func(f Finding) { out = append(out, f) }

	if at, there := gates.PressureOf(fl.Rocket); there && at.Beyond() {
		add(Finding{Key: "pressure", Label: "pressure", Value: p.Pressures(at), Word: gates.WordNoGo, Level: gates.Bad, Detail: p.Beyond(fl.Rocket)})
	}
	if exit := t.Group("rail_exit"); exit.Happened(fl) {
		add(judged(p, "rail-exit", exit.Label, exit.Row("speed"), fl))
		add(judged(p, "thrust-to-weight", exit.Row("thrust_to_weight").Short, exit.Row("thrust_to_weight"), fl))
		if margin := t.Group("margin"); margin.Happened(fl) {
			attack := t.Group("attack")
			add(marginFinding(p, fl, margin))
			angle := judged(p, "attack", attack.Label, attack.Row("rail_exit"), fl)
			angle.Result = "" // like the margin it is judged by its limit, not by another flight's
			add(angle)
			if most := judged(p, "attack-most", attack.Row("most").Label, attack.Row("most"), fl); most.Level == gates.Bad {
				add(most)
			}
		}
	} else {
		add(Finding{Key: "rail-exit", Label: exit.Label, Word: gates.WordNever, Level: gates.Bad,
			Detail: "The rocket did not leave its guide."})
	}
	if top := t.Group("apogee"); top.Happened(fl) {
		height, time := top.Row("height"), top.Row("time")
		add(Finding{Key: "apogee", Result: height.Name, Label: top.Label, Value: p.Row(height, height.Of(fl)) + " at " + p.Row(time, time.Of(fl))})
	}
	for i := range t {
		if t[i].Canopy != "" {
			add(canopyFinding(p, fl, &t[i]))
		}
	}
	if landing := t.Group("landing"); landing.Happened(fl) {
		add(judged(p, "landing", landing.Label, landing.Row("vertical"), fl))
		add(judged(p, "landing-energy", landing.Row("energy").Label, landing.Row("energy"), fl))
		add(Finding{Key: "drift", Result: landing.Row("drift").Name, Label: landing.Row("drift").Label, Value: p.Drift(fl.Landing)})
	}
	// The day's inputs are in front of the user already; they are worth a line
	// only when they break a limit.
	wind := fl.Rocket.GroundWind()
	for _, f := range []Finding{
		ofTheDay(p, "tilt", fl.Rocket.Rail.Tilt, gates.LimitFor(fl.Rocket, gates.LimitTilt)),
		ofTheDay(p, "wind", wind, gates.LimitFor(fl.Rocket, gates.LimitWind)),
	} {
		if f.Level != gates.Good {
			add(f)
		}
	}
	if r := fl.Rocket; r.Balanced() && !r.Rigid() { // the rule goes without saying
		add(Finding{Key: "model", Label: "flown as", Value: words.Model(r), Detail: "flight.model says so."})
	}
	for _, w := range fl.Warnings {
		if w.Code != sim.CanopyNever { // the canopy's own finding says so
			add(warningFinding(p, w))
		}
	}
	return out
}

// judged is a result as a finding, with the verdict of the limit on it.
func judged(p words.Printer, key, label string, r *results.Row, fl *sim.Flight) Finding {
	v := r.Of(fl)
	f := Finding{Key: key, Result: r.Name, Label: label, Value: p.Row(r, v)}
	if l, there := gates.LimitOn(fl.Rocket, r.Name); there {
		f.Word, f.Level = l.Judge(v)
		f.Detail = p.LimitSentence(l)
	}
	return f
}

// ofTheDay is an input with the verdict of its limit.
func ofTheDay(p words.Printer, name string, v float64, l gates.Limit) Finding {
	f := Finding{Key: name, Label: name, Value: p.Stated(v, &l), Detail: p.LimitSentence(l)}
	f.Word, f.Level = l.Judge(v)
	return f
}

// smallMargins are those at small angles: what is judged on both sides, and the least on the way up, which is judged on
// its own.
type smallMargins struct {
	least, most float64
	word        string
	level       gates.Level
}

func marginsOf(fl *sim.Flight, g *results.Group) smallMargins {
	m := smallMargins{least: g.Row("least").Of(fl), most: math.Inf(-1)}
	for _, name := range []string{"rail_exit", "liquid_out", "burnout"} {
		if v, defined := g.Row(name).Defined(fl); defined {
			m.least, m.most = math.Min(m.least, v), math.Max(m.most, v)
		}
	}
	if m.word, m.level = gates.LimitFor(fl.Rocket, gates.LimitMarginLeast).Judge(m.least); m.level == gates.Good {
		m.word, m.level = gates.LimitFor(fl.Rocket, gates.LimitMarginMost).Judge(m.most)
	}
	return m
}

// marginFinding is of the margins at small angles; where those are good and that at the angle of the rail exit is
// not, it is of that one.
func marginFinding(p words.Printer, fl *sim.Flight, g *results.Group) Finding {
	m := marginsOf(fl, g)
	if at := g.Row("at_angle"); m.level == gates.Good {
		if f := judged(p, "margin", g.Label, at, fl); f.Level == gates.Bad {
			f.Result, f.Value = "", at.Short+" "+f.Value
			return f
		}
	}
	low, high := gates.LimitFor(fl.Rocket, gates.LimitMarginLeast), gates.LimitFor(fl.Rocket, gates.LimitMarginMost)
	f := Finding{Key: "margin", Label: g.Label, Word: m.word, Level: m.level, Detail: p.LimitSentence(low) + " " + p.LimitSentence(high)}
	f.Value = p.Row(g.Row("least"), m.least)
	if p.Number(m.most) != p.Number(m.least) {
		f.Value = p.Number(m.least) + " to " + p.Row(g.Row("least"), m.most)
	}
	return f
}

// canopyFinding tells when a canopy opens and judges the airspeed it opens at.
func canopyFinding(p words.Printer, fl *sim.Flight, g *results.Group) Finding {
	label := page.Printable(g.Label) + " opens"
	if !g.Happened(fl) {
		never := sim.Warning{Code: sim.CanopyNever, Canopy: g.Canopy}
		return Finding{Key: g.Name, Label: label, Word: gates.WordNever, Level: gates.Bad, Detail: WarningText(never, p.System)}
	}
	of := func(name string) float64 { return g.Row(name).Of(fl) }
	value := "at " + p.Time(of("time"))
	if since := of("since_apogee"); !math.IsNaN(since) {
		value = sinceApogee(p, since)
	}
	f := judged(p, g.Name, label, g.Row("airspeed"), fl)
	f.Value = value + " at " + f.Value
	f.Detail += " Opening load " + p.Force(of("load")) + ", at most " + p.Force(of("load_bound")) + "."
	return f
}

// sinceApogee places a time beside apogee. Below a hundredth of a second it is at it.
func sinceApogee(p words.Printer, dt float64) string {
	switch {
	case math.Abs(dt) < 0.01:
		return "at apogee"
	case dt < 0:
		return p.Time(-dt) + " before apogee"
	}
	return p.Time(dt) + " after apogee"
}
