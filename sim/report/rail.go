package report

import (
	"math"
	"strings"

	"ullage/sim"
	"ullage/sim/quantity"
	"ullage/sim/study"
)

// RailExitLimit is the least rail exit speed for a rocket and its day, m/s.
func RailExitLimit(r *sim.Rocket) float64 { return railExitLimit(r).Min }

// RailFindings say where along the rail the speed reaches the limit, what rail or
// pressure would be enough when it does not, and the wind that the speed is good for.
func RailFindings(e study.RailExit, sys quantity.System) []Finding {
	p := printer{sys}
	var out []Finding
	add := func(key, label, value, word string, level Level, detail string) {
		out = append(out, Finding{key, label, value, word, level, detail})
	}
	wanted := p.given(e.Limit, "m/s")
	switch {
	case e.Reached:
		add("rail-reached", wanted+" reached", p.height(e.At)+" along the rail", WordGood, Good, "")
	case !math.IsNaN(e.Enough):
		add("rail-reached", wanted+" reached", "with a rail of "+p.height(e.Enough), WordShort, Bad,
			"The rail is too short for the limit.")
	default:
		add("rail-reached", wanted+" reached", "", WordNever, Bad,
			"No rail up to "+p.given(study.LongestRail, "m")+" is enough for the limit.")
	}
	if !e.Reached && !math.IsNaN(e.Pressure) {
		add("rail-pressure", "or pressure", p.text(e.Pressure, "bar"), "", Plain,
			"Within what the chamber is proved for only.")
	}
	if e.Exited {
		add("rail-wind", "rail exit wind", "good up to "+p.speed(e.Wind), "", Plain,
			"The rail exit speed is to be at least "+p.number(study.WindFactor)+" times the wind: "+commonPractice+".")
	}
	return out
}

// findings writes findings as labelled lines.
func (s *sheet) findings(list []Finding) {
	for _, f := range list {
		text := f.Value
		if f.Word != "" {
			text = strings.TrimSpace(text + " " + f.Word)
		}
		if f.Detail != "" {
			text += ". " + f.Detail
		}
		s.field(f.Label, text)
	}
}
