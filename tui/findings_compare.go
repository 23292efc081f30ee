package tui

import (
	"ullage/sim/results"
	"ullage/tui/draw"
)

// difference is how much a result is above or below that of the kept flight, with its
// sign; empty when there is nothing to compare.
func (m *Model) difference(result string) string {
	if m.kept == nil || m.now == nil || m.kept == m.now || result == "" {
		return ""
	}
	is, was := results.For(m.now.Flight.Rocket).Find(result), results.For(m.kept.Flight.Rocket).Find(result)
	if is == nil || was == nil {
		return ""
	}
	now, here := is.Defined(m.now.Flight)
	then, there := was.Defined(m.kept.Flight)
	if !here || !there {
		return ""
	}
	return draw.Signed(now-then, now, m.units.Unit(is.Metric()))
}
