package view

import (
	"ullage/sim"
	"ullage/sim/results"
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

// End is the last second of the span.
func (s Span) End(fl *sim.Flight) float64 {
	return [Spans]results.Part{results.UnderThrust, results.WayUp, results.Whole}[s].End(fl)
}
