package tui

import (
	"math"
	"slices"
	"strings"

	"ullage/sim"
	"ullage/tui/draw"
)

// compared is how a finding's number is had from a flight, SI, and the unit
// its difference is told in.
type compared struct {
	key  string
	unit string
	of   func(r *sim.Results) (v float64, happened bool)
}

var comparisons = []compared{
	{"rail-exit", "m/s", func(r *sim.Results) (float64, bool) { return r.RailExit.Speed, r.RailExit.Happened }},
	{"thrust-to-weight", "", func(r *sim.Results) (float64, bool) { return r.RailExit.ThrustToWeight, r.RailExit.Happened }},
	{"apogee", "m", func(r *sim.Results) (float64, bool) { return r.Apogee.Height, r.Apogee.Happened }},
	{"landing", "m/s", func(r *sim.Results) (float64, bool) { return r.Landing.Vertical, r.Landing.Happened }},
	{"landing-energy", "J", func(r *sim.Results) (float64, bool) { return r.Landing.Energy, r.Landing.Happened }},
	{"drift", "m", func(r *sim.Results) (float64, bool) {
		return math.Hypot(r.Landing.East, r.Landing.North), r.Landing.Happened
	}},
}

// comparison finds how a finding's number is had. Of a canopy it is the
// airspeed it opens at.
func comparison(key string) (compared, bool) {
	if name, ok := strings.CutPrefix(key, "canopy."); ok {
		return compared{key, "m/s", func(r *sim.Results) (float64, bool) {
			for _, c := range r.Canopies {
				if c.Name == name {
					return c.Airspeed, c.Opened
				}
			}
			return 0, false
		}}, true
	}
	i := slices.IndexFunc(comparisons, func(c compared) bool { return c.key == key })
	if i < 0 {
		return compared{}, false
	}
	return comparisons[i], true
}

// difference is how much a finding's number is above or below that of the kept
// flight, with its sign; empty when there is nothing to compare.
func (m *Model) difference(key string) string {
	c, ok := comparison(key)
	if m.kept == nil || m.now == nil || m.kept == m.now || !ok {
		return ""
	}
	is, here := c.of(&m.now.Flight.Results)
	was, there := c.of(&m.kept.Flight.Results)
	if !here || !there {
		return ""
	}
	return draw.Signed(is-was, is, m.units.Unit(draw.Unit(c.unit)))
}
