package report

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"ullage/sim/gates"
	"ullage/sim/quantity"
	"ullage/sim/report/words"
	"ullage/sim/rocket"
	"ullage/sim/study"
)

// WithRail puts what a look along the rail found into the finding of the rail exit: in
// short where the limit is reached or what rail would do, and at length in its detail.
// The findings are those of a flight of the rocket; the list is changed in place.
func WithRail(list []Finding, e study.RailExit, r *rocket.Rocket, sys quantity.System) {
	p := words.In(sys)
	i := slices.IndexFunc(list, func(f Finding) bool { return f.Key == "rail-exit" })
	if i < 0 {
		return
	}
	f := &list[i]
	wanted, asked := p.Given(e.Limit, "m/s"), ""
	if e.Limit > gates.LimitFor(r, gates.LimitRailExit).Min {
		factor := words.Ratio(gates.LimitFor(r, gates.LimitRailExitWind).Min)
		asked = ", " + factor + " × wind"
		wind := r.GroundWind()
		f.Detail += fmt.Sprintf(" The wind asks for it: %s times %s.", factor, p.WindSpeed(wind))
	}
	short := wanted
	if f.Value != "" { // whose unit it has
		short, _, _ = strings.Cut(wanted, " ")
	}
	switch {
	case e.Reached:
		short += " at " + p.Rough(e.At, "m")
		f.Detail += " " + wanted + " is reached " + p.Height(e.At) + " along the rail."
	case !math.IsNaN(e.Enough):
		short += " needs " + p.Rough(e.Enough, "m")
		f.Detail += " A rail of " + p.Height(e.Enough) + " would be enough."
	default:
		short += " on no rail"
		f.Detail += " No rail up to " + p.Given(study.LongestRail, "m") + " is enough."
	}
	f.Value = strings.TrimSpace(f.Value + " (" + short + asked + ")")
	if !math.IsNaN(e.Pressure) {
		f.Detail += " On this rail it takes " + p.Text(e.Pressure, "bar") + "; " + p.ProvedFor(r) + "."
	}
	if e.Exited {
		f.Detail += " The speed is good for a wind up to " + p.WindAtMost(e.Wind) + "."
	}
}

// RailFindings say where along the rail the speed reaches the limit, what rail or
// pressure would be enough when it does not, and the wind that the speed is good for.
func RailFindings(e study.RailExit, r *rocket.Rocket, sys quantity.System) []Finding {
	p := words.In(sys)
	var out []Finding
	add := func(key, label, value, word string, level gates.Level, detail string) {
		out = append(out, Finding{Key: key, Label: label, Value: value, Word: word, Level: level, Detail: detail})
	}
	wanted, has := p.Given(e.Limit, "m/s"), p.Given(e.Guided, "m")
	switch {
	case e.Reached:
		add("rail-reached", "on the rail", wanted+" at "+p.Height(e.At)+" of "+has, gates.WordGood, gates.Good, "")
	case !math.IsNaN(e.Enough):
		add("rail-reached", "on the rail", wanted+" takes "+p.Height(e.Enough)+"; there is "+has+":", gates.WordShort, gates.Bad, "")
	default:
		add("rail-reached", "on the rail", wanted, gates.WordNever, gates.Bad,
			"No rail up to "+p.Given(study.LongestRail, "m")+" is enough for it.")
	}
	if !e.Reached && !math.IsNaN(e.Pressure) {
		add("rail-pressure", "or at", p.Text(e.Pressure, "bar")+" with the rail as it is", "", gates.Plain,
			"Only within the proof: "+p.ProvedFor(r)+".")
	}
	if e.Exited {
		add("rail-wind", "wind for the rail", p.WindAtMost(e.Wind), "", gates.Plain,
			"Above it the rail exit speed is less than "+words.Ratio(e.Factor)+" times the wind; ullage check tells up to which every check passes.")
	}
	return out
}

// findings writes findings as labelled lines.
func (s *sheet) findings(list []Finding) {
	for _, f := range list {
		text := strings.TrimSpace(f.Value + " " + f.Word)
		if f.Detail != "" {
			text += ". " + f.Detail
		}
		s.Field(f.Label, text)
	}
}
