package chart

import (
	"fmt"
	"math"
	"strings"

	"ullage/sim"
	"ullage/sim/quantity"
	"ullage/sim/results"
	"ullage/sim/rocket"
)

// Quantity is something of a flight to draw over time.
type Quantity struct{ results.Series }

// quantities are what can be drawn: every series but time itself.
func quantities() []Quantity {
	var out []Quantity
	for _, s := range results.Over() {
		if s.Name != "time" {
			out = append(out, Quantity{s})
		}
	}
	return out
}

// QuantityNames lists what can be drawn.
func QuantityNames() []string {
	var out []string
	for _, q := range quantities() {
		out = append(out, q.Name)
	}
	return out
}

// ParseQuantities finds quantities by their names.
func ParseQuantities(names []string) ([]Quantity, error) {
	var out []Quantity
	for _, name := range names {
		s := results.FindSeries(name)
		if s == nil || name == "time" {
			return nil, fmt.Errorf("%q is nothing that can be drawn; there are %s", name, strings.Join(QuantityNames(), ", "))
		}
		out = append(out, Quantity{*s})
	}
	return out, nil
}

// usual is what is drawn when nothing is asked for: height, speed, and what pushes.
func usual(p rocket.Power) []Quantity {
	push := "pressure"
	if p == rocket.MotorPower {
		push = "thrust"
	}
	out, err := ParseQuantities([]string{"height", "speed", push})
	if err != nil {
		panic("chart: a usual quantity is missing from the table")
	}
	return out
}

// title is what stands beside the axis.
func (q *Quantity) title() string {
	if q.Suffix != "" {
		return q.Label + ", " + q.Suffix
	}
	return q.Label
}

// shown is the unit a quantity is shown in.
func (q *Quantity) shown(l Look) quantity.Unit { return l.System.Unit(q.Metric()) }

// extreme is the value to point out, SI, among samples in time order: the flight's own
// where the samples reach that far.
func (q *Quantity) extreme(fl *sim.Flight, samples []sim.Sample, end float64) (v, t float64) {
	v = math.NaN()
	for i := range samples {
		x := q.Of(&samples[i])
		if math.IsNaN(v) || !q.Least && x > v || q.Least && x < v {
			v, t = x, samples[i].Time
		}
	}
	if most, at, ok := q.most(fl); ok && at <= end {
		return most, at
	}
	return v, t
}

// most is the result that is the quantity's extreme, and its time; not ok without one.
func (q *Quantity) most(fl *sim.Flight) (v, t float64, ok bool) {
	if q.Most == "" {
		return 0, 0, false
	}
	table := results.For(fl.Rocket)
	v, t = table.Must(q.Most).Of(fl), table.Must(q.At()).Of(fl)
	return v, t, !math.IsNaN(v)
}

// surge is what the start-up surge comes to, which most leaves out; NaN without one.
func (q *Quantity) surge(fl *sim.Flight) float64 {
	if q.Surge == "" {
		return math.NaN()
	}
	return results.For(fl.Rocket).Must(q.Surge).Of(fl)
}
