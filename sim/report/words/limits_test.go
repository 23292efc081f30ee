package words

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"ullage/sim/gates"
	"ullage/sim/quantity"
)

// The figures of the table of go and no-go limits, in the units their sources use.
func TestDefaultLimits(t *testing.T) {
	want := map[string]string{
		gates.LimitRailExit:       "At least 15 m/s: common practice.",
		gates.LimitRailExitWind:   "At least 4: common practice.",
		gates.LimitThrustToWeight: "At least 5: common practice.",
		gates.LimitFlutter:        "At most 0.8: common practice.",
		gates.LimitTilt:           "At most 20 deg: US codes (NFPA 1127), from memory.",
		gates.LimitWind:           "At most 8.94 m/s: US codes (NFPA 1127), from memory.",
		gates.LimitOpening:        "At most 20 m/s: common practice.",
		gates.LimitLanding:        "At most 6 m/s: common practice.",
		gates.LimitEnergy:         "At most 102 J: US student practice, from memory.",
		gates.LimitMarginLeast:    "At least 1: common practice.",
		gates.LimitMarginMost:     "At most 3: common practice.",
		gates.LimitMarginAngle:    "At least 0: common practice.",
		gates.LimitAttack:         "At most 15 deg: common practice.",
		gates.LimitAttackMost:     "At most 30 deg: common practice.",
		gates.LimitImpulse:        "At most 640 N·s: US practice, first high-power certification, from memory.",
		gates.LimitMount:          "At least 2: common practice.",
		gates.LimitProof:          "At least 1.5: common practice.",
		gates.LimitProofAge:       "At most 365: common practice.",
		gates.LimitProofCycles:    "At most 50: common practice.",
	}
	limits := gates.DefaultLimits()
	assert.Len(t, limits, len(want))
	for _, l := range limits {
		assert.Equal(t, want[l.Key], In(quantity.Metric).LimitSentence(l), l.Key)
		assert.True(t, math.IsInf(l.Min, -1) != math.IsInf(l.Max, 1), "%s has one bound", l.Key)
		assert.Contains(t, gates.Words(), l.Word)
	}
	limits[0].Min = 0 // a caller's change stays the caller's
	assert.Equal(t, 15.0, gates.DefaultLimits()[0].Min)
}
