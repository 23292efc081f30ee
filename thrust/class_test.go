package thrust

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Bounds of NFPA 1125 for A, H and I: A 1.26 to 2.50 N·s, H 160.01 to 320, I
// 320.01 to 640. The others follow by doubling.
func TestClass(t *testing.T) {
	for _, c := range []struct {
		impulse float64
		want    string
	}{
		{0, ""}, {1.25, ""}, {1.2549, ""}, {1.26, "A"}, {2.50, "A"}, {2.51, "B"}, {5, "B"}, {5.01, "C"},
		{10, "C"}, {20, "D"}, {40, "E"}, {80, "F"}, {80.01, "G"}, {160, "G"}, {160.004, "G"},
		{160.01, "H"}, {219.8, "H"}, {320, "H"}, {320.01, "I"}, {640, "I"}, {640.01, "J"},
		{40960, "O"}, {40960.01, "P"}, // past O from memory
		{2.5 * (1 << 25), "Z"}, {2.5*(1<<25) + 1, "AA"},
		{-3, ""}, {math.NaN(), ""}, {math.Inf(1), ""},
	} {
		assert.Equal(t, c.want, Class(c.impulse), "%v N·s", c.impulse)
	}
	assert.NotEmpty(t, Class(1e300)) // it ends
}
