package gates

import (
	"math"

	"ullage/sim/quantity"
)

// scale is what the room of a limit is a share of: its size, or one of its unit where that is 0.
func (l Limit) scale() float64 {
	scale := 0.0
	for _, bound := range []float64{l.Min, l.Max} {
		if !math.IsInf(bound, 0) {
			scale = math.Max(scale, math.Abs(bound))
		}
	}
	if scale > 0 {
		return scale
	}
	if u, ok := quantity.Lookup(l.Unit); ok {
		return u.ToSI(1) - u.ToSI(0)
	}
	return 1
}

// leastRoom is that of what did not happen, or is not known.
const leastRoom = -10

// Room is how far inside its limit the worst case of a check is, over the limit's size, held to ±10; below zero it is
// outside. What did not happen, and what cannot be judged, has the least; what is met and can be met no better the greatest.
func (c *Check) Room() float64 {
	if !c.Judged || math.IsNaN(c.Value) {
		return leastRoom
	}
	if c.Limit.Either && c.Pass {
		return -leastRoom
	}
	room := -c.Limit.badness(Value{true, true, c.Value}) / c.Limit.scale()
	return math.Max(leastRoom, math.Min(-leastRoom, room))
}

// Warns tells of a check outside a limit which only warns.
func (c *Check) Warns() bool { return c.Pass && c.Judged && c.Level != Good }

// Tightest is the check with the least room of those that decide go or no-go: not such as only warn. Nil where there is none.
func (v *Verdict) Tightest() *Check {
	var tightest *Check
	for i := range v.Checks {
		c := &v.Checks[i]
		if c.Warns() {
			continue
		}
		if tightest == nil || c.Room() < tightest.Room() {
			tightest = c
		}
	}
	return tightest
}
