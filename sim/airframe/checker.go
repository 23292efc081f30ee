package airframe

import (
	"math"
	"strconv"

	"ullage/sim/fault"
)

// checker gathers faults.
type checker struct{ faults fault.List }

func (c *checker) add(name, problem, remedy string) { c.faults.Add(name, problem, remedy) }

// odds adds that two inputs disagree.
func (c *checker) odds(name, with, problem, remedy string) {
	c.faults.Odds(name, with, problem, remedy)
}

// mm writes a length for a message: in millimetres, or metres from a hundred on.
func mm(v float64) string {
	if math.Abs(v) >= 100 {
		return strconv.FormatFloat(v, 'g', 6, 64) + " m"
	}
	return strconv.FormatFloat(math.Round(v*1e5)/100, 'f', -1, 64) + " mm"
}
