package chamber

import (
	"math"
	"strconv"

	"ullage/sim/fault"
)

// checker gathers faults. Its ranges are written so that NaN and infinities fail.
type checker struct{ faults fault.List }

func (c *checker) add(name, problem, remedy string) { c.faults.Add(name, problem, remedy) }

func (c *checker) within(name string, v, low, high float64, remedy string) bool {
	ok := v >= low && v <= high
	if !ok {
		c.add(name, "out of range", remedy)
	}
	return ok
}

// optional is within, or 0 for what is not given.
func (c *checker) optional(name string, v, low, high float64, remedy string) bool {
	return v == 0 || c.within(name, v, low, high, remedy)
}

// mm writes a length for a message in millimetres.
func mm(v float64) string { return rounded(v*1e3) + " mm" }

// bar writes a pressure for a message.
func bar(v float64) string { return rounded(v/1e5) + " bar" }

// degrees writes an angle for a message.
func degrees(v float64) string { return rounded(v*180/math.Pi) + " deg" }

func rounded(v float64) string { return strconv.FormatFloat(v, 'g', 4, 64) }
