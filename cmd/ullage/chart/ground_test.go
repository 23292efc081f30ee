package chart

import (
	"context"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/ground"
	"ullage/sim/plan"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
)

// The map of the field has a panel a drive with every kind of landing, its ellipse and its share outside, the field and the
// ring of the clear distance; a field far beyond all of it is left out of the frame, and said so.
func TestGroundShowsAllOfIt(t *testing.T) {
	r := heron(t, rocketfile.Change{Input: "field.radius", Value: "200 m"}, rocketfile.Change{Input: "field.clear", Value: "60 m"})
	r.Field.Boundary = ground.Polygon{{East: -300, North: -300}, {East: 300, North: -300}, {East: 0, North: 300}}
	draws := study.Draws{Spreads: study.DefaultSpread(r), Flights: 20, Seed: 3}
	x, err := plan.ReachOf(context.Background(), r, draws, study.Options{})
	require.NoError(t, err)
	x.Scatter.Outside = 5
	p := Ground([]plan.Reach{x, x}, metric)
	require.Len(t, p.Rows[0].Panels, 2)
	panel := p.Rows[0].Panels[0]
	var lines []string
	for _, l := range panel.Lines {
		lines = append(lines, l.Label)
		assert.True(t, l.Key)
	}
	assert.Equal(t, []string{"ellipse that holds 90 %", "90 %, ballistic", "field, radius 200 m", "field's boundary", "people beyond 60 m"}, lines)
	ring := panel.Lines[4]
	for i := range ring.X {
		assert.InDelta(t, 60, math.Hypot(ring.X[i], ring.Y[i]), 1e-9)
	}
	assert.Len(t, panel.Dots[0].X, 20)
	assert.Len(t, panel.Dots[1].X, 20)
	beside := strings.Join(panel.Beside, "\n")
	assert.Contains(t, beside, "As planned, 20:\n")
	assert.Contains(t, beside, "outside the field: 5 of 20 (25 %)")
	assert.Contains(t, beside, "Ballistic, no canopy opens, 20:\n")
	assert.NotNil(t, panel.Compass)
	assert.Contains(t, p.Notes[0], "range officer's to say")
	assert.Contains(t, p.Notes[1], "people 60 m away: the field's own rule")
	assert.Contains(t, strings.Join(p.Notes, "\n"), "can burst and kill")
	pdf, err := p.PDF()
	require.NoError(t, err)
	assert.True(t, strings.HasPrefix(string(pdf), "%PDF-"))

	r.Field.Boundary, r.Field.Radius = nil, 9000
	wide := Ground([]plan.Reach{x}, metric).Rows[0].Panels[0]
	assert.Equal(t, "field, beyond the frame", wide.Lines[2].Label)
	assert.Less(t, wide.X.Max, 1000.0)
	r.Field.Radius = 0
	bare := Ground([]plan.Reach{x}, metric).Rows[0].Panels[0]
	assert.Contains(t, strings.Join(bare.Beside, "\n"), "outside: unknown, no field given")
	assert.Len(t, bare.Lines, 3)
}
