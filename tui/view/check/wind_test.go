package check

import (
	"context"
	"errors"
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/sim/plan"
	"ullage/sim/quantity"
	"ullage/sim/report/words"
	"ullage/sim/rocket"
	"ullage/tui/view/viewtest"
)

// The wind limit follows the corners, is that of every other face, and of the flight on show alone.
func TestWindLimit(t *testing.T) {
	f := start(t, viewtest.Heron(t), viewtest.Medium)
	require.Contains(t, f.Shown(), "do not fly above 4.2 m/s of wind; beyond it wind fails")
	f.Scene.Units = quantity.US
	f.Show()
	require.Contains(t, f.Shown(), "do not fly above 9.39 mph of wind")

	var asked []*rocket.Rocket
	f.V.find = func(ctx context.Context, r *rocket.Rocket, o plan.Options) (plan.WindLimit, error) {
		require.Equal(t, viewtest.Day(), o.Today)
		require.NotEmpty(t, o.Spreads)
		require.NotEmpty(t, o.Respread(r))
		asked = append(asked, r)
		return plan.WindLimit{Passes: true, Most: 3}, ctx.Err()
	}
	f.Hold = true
	f.Set("wind.speed", "5 m/s")
	require.Contains(t, f.Shown(), "before the last edit: do not fly above 9.39 mph")
	require.Empty(t, asked, "before the corners are there")
	f.Release()
	require.Contains(t, f.Shown(), "do not fly above 6.71 mph of wind")
	require.Len(t, asked, 1)
	require.Same(t, f.Scene.Now.Flight.Rocket, asked[0])
	f.Show()
	require.Len(t, asked, 1, "it is asked for once")

	f.V.find = func(context.Context, *rocket.Rocket, plan.Options) (plan.WindLimit, error) {
		return plan.WindLimit{}, errors.New("nothing flies")
	}
	f.Set("wind.speed", "4 m/s")
	require.Contains(t, f.Shown(), "No wind limit: nothing flies")
}

// What the screen says is what plan.MostWind finds.
func TestWindLimitIsThatOfThePlan(t *testing.T) {
	f := start(t, viewtest.Heron(t), viewtest.Large)
	f.V.find = plan.MostWind
	f.Set("field.radius", "120 m")
	found := &f.V.wind.Result
	require.Same(t, f.Scene.Now, found.of)
	require.Contains(t, f.Shown(), words.In(quantity.Metric).MostWind(&found.WindLimit))
	require.Positive(t, found.Most)
}
