package view

import (
	"math"

	"ullage/sim"
)

// Span is how much of the flight a time axis shows.
type Span int

// The spans, from the shortest.
const (
	ThrustSpan Span = iota
	AscentSpan
	WholeSpan
	Spans
)

func (s Span) String() string { return [Spans]string{"thrust", "ascent", "whole flight"}[s] }

// Step is the span so many farther on, in a circle.
func (s Span) Step(by int) Span { return (s + Span(by) + Spans) % Spans }

// End is the last second of the span: a little after what it is named for, and
// the whole flight where that never came.
func (s Span) End(fl *sim.Flight) float64 {
	const after = 1.08
	whole := fl.Duration()
	end := whole
	switch r := &fl.Results; {
	case s == ThrustSpan && r.Burnout.Happened:
		end = r.Burnout.Time * after
	case s == AscentSpan && r.Apogee.Happened:
		end = r.Apogee.Time * after
	}
	if end = min(end, whole); end > 0 && !math.IsInf(end, 0) {
		return end
	}
	return 1
}
