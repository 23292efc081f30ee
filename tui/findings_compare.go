package tui

import (
	"ullage/sim/results"
	"ullage/tui/draw"
)

// comparing tells, of a result, how much it is above or below that of the kept flight, with
// its sign; empty when there is nothing to compare.
func (m *Model) comparing() func(result string) string {
	if m.kept == nil || m.now == nil || m.kept == m.now {
		return func(string) string { return "" }
	}
	table, older := results.For(m.now.Flight.Rocket), results.For(m.kept.Flight.Rocket)
	return func(result string) string {
		is, was := table.Find(result), older.Find(result)
		if result == "" || is == nil || was == nil {
			return ""
		}
		now, here := is.Defined(m.now.Flight)
		then, there := was.Defined(m.kept.Flight)
		if !here || !there {
			return ""
		}
		return draw.Signed(now-then, now, m.units.Unit(is.Metric()))
	}
}
