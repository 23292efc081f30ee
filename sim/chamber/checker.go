package chamber

import (
	"slices"
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

// has tells whether a number has a fault already.
func (c *checker) has(key string) bool {
	return slices.ContainsFunc(c.faults, func(f fault.Fault) bool { return f.Key == key })
}

// mm writes a length for a message in millimetres.
func mm(v float64) string { return rounded(v*1e3) + " mm" }

// bar writes a pressure for a message.
func bar(v float64) string { return rounded(v/1e5) + " bar" }

func rounded(v float64) string { return strconv.FormatFloat(v, 'g', 4, 64) }
