package chart

import (
	"fmt"
	"math"
	"strings"

	"ullage/sim"
	"ullage/sim/quantity"
	"ullage/sim/rocket"
)

// Quantity is something of a flight to draw over time.
type Quantity struct {
	Name  string // for the command line
	title string
	unit  string // metric; empty for a ratio
	of    func(sim.Sample) float64
	over  Span   // shown over this if not asked for otherwise; the whole flight if empty
	note  string // what to call the greatest value; empty for none
	least bool   // it is the least that counts
	most  func(*sim.Results) (v, t float64)
	surge func(*sim.Results) float64 // of the first milliseconds, left out of the range
	known func(*sim.Flight) bool     // nil: always
}

// quantities is the table of what can be drawn.
var quantities = []Quantity{
	{Name: "height", title: "height", unit: "m", of: func(s sim.Sample) float64 { return s.Height }},
	{Name: "speed", title: "speed", unit: "m/s", note: "fastest", of: func(s sim.Sample) float64 { return s.Speed },
		most: func(r *sim.Results) (v, t float64) { return r.Max.Speed, r.Max.SpeedTime }},
	{Name: "vertical", title: "upward speed", unit: "m/s", note: "fastest", of: func(s sim.Sample) float64 { return s.Vertical }},
	{Name: "airspeed", title: "airspeed", unit: "m/s", note: "fastest", of: func(s sim.Sample) float64 { return s.Airspeed }},
	{Name: "acceleration", title: "acceleration", unit: "m/s²", note: "greatest", of: func(s sim.Sample) float64 { return s.Acceleration },
		most:  func(r *sim.Results) (v, t float64) { return r.Max.Acceleration, r.Max.AccelerationTime },
		surge: func(r *sim.Results) float64 { return r.Startup.Acceleration }},
	{Name: "mach", title: "Mach number", note: "greatest", of: func(s sim.Sample) float64 { return s.Mach },
		most: func(r *sim.Results) (v, t float64) { return r.Max.Mach, r.Max.MachTime }},
	{Name: "pressure", title: "gauge pressure", unit: "bar", over: ThrustSpan, note: "greatest", of: func(s sim.Sample) float64 { return s.Chamber - s.Air },
		known: func(f *sim.Flight) bool { return f.Rocket.Power == rocket.WaterPower }},
	{Name: "thrust", title: "thrust", unit: "N", over: ThrustSpan, note: "greatest", of: func(s sim.Sample) float64 { return s.Thrust },
		most:  func(r *sim.Results) (v, t float64) { return r.Max.Thrust, r.Max.ThrustTime },
		surge: func(r *sim.Results) float64 { return r.Startup.Thrust }},
	{Name: "drag", title: "drag", unit: "N", note: "greatest", of: func(s sim.Sample) float64 { return s.Drag }},
	{Name: "mass", title: "mass", unit: "kg", over: ThrustSpan, of: func(s sim.Sample) float64 { return s.Mass }},
	{Name: "dynamic-pressure", title: "dynamic pressure", unit: "kPa", note: "greatest", of: func(s sim.Sample) float64 { return s.DynamicPressure },
		most: func(r *sim.Results) (v, t float64) { return r.Max.DynamicPressure, r.Max.DynamicPressureTime }},
	{Name: "attack", title: "angle of attack", unit: "deg", over: AscentSpan, of: func(s sim.Sample) float64 { return s.Attack },
		known: func(f *sim.Flight) bool { return f.Rocket.Rigid() }},
	{Name: "margin", title: "margin, calibres", over: AscentSpan, note: "least", least: true, of: func(s sim.Sample) float64 { return s.Margin },
		most:  func(r *sim.Results) (v, t float64) { return r.Stability.Least, r.Stability.LeastTime },
		known: func(f *sim.Flight) bool { return f.Stability.Known }},
}

// QuantityNames lists what can be drawn.
func QuantityNames() []string {
	var out []string
	for _, q := range quantities {
		out = append(out, q.Name)
	}
	return out
}

// ParseQuantities finds quantities by their names.
func ParseQuantities(names []string) ([]Quantity, error) {
	var out []Quantity
	for _, name := range names {
		q, ok := find(name)
		if !ok {
			return nil, fmt.Errorf("%q is nothing that can be drawn; there are %s", name, strings.Join(QuantityNames(), ", "))
		}
		out = append(out, q)
	}
	return out, nil
}

func find(name string) (Quantity, bool) {
	for _, q := range quantities {
		if q.Name == name {
			return q, true
		}
	}
	return Quantity{}, false
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

// shown is the unit a quantity is shown in.
func (q *Quantity) shown(l Look) quantity.Unit {
	switch q.unit {
	case "":
		return quantity.Usual(quantity.Number)
	case "m/s²": // not a unit of the rocket file; it follows that of length
		u := l.unit("m")
		return quantity.Unit{Name: u.Name + "/s²", Scale: u.Scale}
	}
	return l.unit(q.unit)
}

// extreme is the value to point out, SI, among samples in time order.
func (q *Quantity) extreme(samples []sim.Sample) (v, t float64) {
	v = math.NaN()
	for _, s := range samples {
		x := q.of(s)
		if math.IsNaN(v) || !q.least && x > v || q.least && x < v {
			v, t = x, s.Time
		}
	}
	return v, t
}
