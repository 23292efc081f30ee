package airframe

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

// positive is for lengths up to most, which what explains.
func (c *checker) positive(name string, v, most float64, what string) bool {
	switch {
	case v >= shortest && v <= most:
		return true
	case v > most:
		c.add(name, "is too much", "give at most "+what+mm(most))
	case v > 0:
		c.add(name, "is less than "+mm(shortest), "check its unit")
	default:
		c.add(name, "must be above zero", "give a length above zero")
	}
	return false
}

// mm writes a length for a message: in millimetres, or metres from a hundred on.
func mm(v float64) string {
	if math.Abs(v) >= 100 {
		return strconv.FormatFloat(v, 'g', 6, 64) + " m"
	}
	return strconv.FormatFloat(math.Round(v*1e5)/100, 'f', -1, 64) + " mm"
}
