package words

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"ullage/sim/gates"
	"ullage/sim/quantity"
)

// A check that fails for want of a value names no value.
func TestFailed(t *testing.T) {
	p := In(quantity.Metric)
	c := gates.Check{Name: "rail exit speed", Judged: true, Value: 12, Word: gates.WordLow, Limit: gates.Limit{Min: 15, Max: math.Inf(1), Unit: "m/s"}}
	assert.Equal(t, "rail exit speed 12.0 m/s low", p.Told(&c))
	c = gates.Check{Name: "proof on record over the pressure", Judged: true, Value: math.NaN(), Word: gates.WordNone}
	assert.Equal(t, "proof on record over the pressure: none", p.Told(&c))
}
