package chamber

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestMount(t *testing.T) {
	m := &Mount{Pin: 0.005, PinStrength: 100e6, Planes: 2, BondArea: 4e-4, Bond: 5e6, Line: 1500}
	assert.Empty(t, m.Check())
	uses := m.Uses(750)
	require.Len(t, uses, 3)
	assert.InEpsilon(t, 2*math.Pi/4*25e-6*100e6, uses[0].Strength, 1e-12) // two planes of π/4 d²
	assert.InEpsilon(t, 2000, uses[1].Strength, 1e-12)
	assert.Equal(t, Hold{"line", 1500, 0.5, false}, uses[2])
	newtons, weakest, typical := m.Strength()
	assert.Equal(t, 1500., newtons)
	assert.Equal(t, "line", weakest)
	assert.False(t, typical)

	m.Planes, m.PinStrength, m.Bond = 1, 0, 0
	newtons, weakest, _ = m.Strength()
	assert.Equal(t, "line", weakest)
	assert.Equal(t, 1500., newtons)
	m.Line = 0
	newtons, weakest, typical = m.Strength()
	assert.InEpsilon(t, 3200, newtons, 1e-12, "8 MPa on 4 cm²")
	assert.Equal(t, "bond", weakest)
	assert.True(t, typical)
	m.Pin = 0.003
	newtons, weakest, _ = m.Strength()
	assert.InEpsilon(t, math.Pi/4*9e-6*TypicalPin, newtons, 1e-12)
	assert.Equal(t, "pin", weakest)

	newtons, weakest, _ = (&Mount{}).Strength()
	assert.True(t, math.IsNaN(newtons))
	assert.Empty(t, weakest)
	assert.Empty(t, (&Mount{}).Uses(100))
}

// ½ m v² is what the line takes up, ½ F²/k with k = F_b/(L ε_b).
func TestSnatch(t *testing.T) {
	m := &Mount{Line: 1500, LineLength: 3, LineStretch: 0.2, CanopyMass: 0.1}
	f, typical := m.Snatch(12)
	assert.InEpsilon(t, 0.5*0.1*144, f*f/2/(1500/(3*0.2)), 1e-12)
	assert.False(t, typical)
	m.LineStretch = 0
	g, typical := m.Snatch(12)
	assert.InEpsilon(t, f*math.Sqrt(0.2/0.15), g, 1e-12)
	assert.True(t, typical)
	m.CanopyMass = 0
	f, _ = m.Snatch(12)
	assert.True(t, math.IsNaN(f))
}
