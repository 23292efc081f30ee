package rocketfile

import (
	"fmt"
	"math"
	"strings"

	"github.com/stretchr/testify/require"

	"ullage/sim/rocket"
)

// sameRocket holds that two files describe the same rocket.
func sameRocket(t require.TestingT, f, g *File) {
	a, b := f.Rocket(), g.Rocket()
	for _, r := range []*rocket.Rocket{a, b} {
		if r.Motor != nil && math.IsNaN(r.Motor.Delay) {
			r.Motor.Delay = -1 // NaN equals nothing
		}
		if r.Chamber != nil && r.Chamber.Booked != nil && math.IsNaN(r.Chamber.Booked.Hardest) {
			r.Chamber.Booked.Hardest = -1
		}
	}
	require.Equal(t, a, b)
}

// manyLines repeats a line with a number in it.
func manyLines(n int, format string) string {
	var b strings.Builder
	for i := range n {
		fmt.Fprintf(&b, format, i)
	}
	return b.String()
}
