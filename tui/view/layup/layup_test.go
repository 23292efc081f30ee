package layup

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/tui/view"
	"ullage/tui/view/viewtest"
)

type frame = viewtest.Frame[*View]

func start(t testing.TB, size [2]int) *frame {
	t.Helper()
	return viewtest.New(t, New(view.DefaultKeys()), viewtest.Heron(t), size)
}

var trials = map[string]func(t *testing.T, f *frame){
	"Next": func(t *testing.T, f *frame) {
		require.Contains(t, f.Shown(), "Cut for the tube")
		f.Press("]")
		require.Contains(t, f.Shown(), "Cut for the forward closure")
		require.Contains(t, f.Shown(), "8 gores")
		f.Press("]", "]", "]")
		require.Contains(t, f.Shown(), "Cut for the aft closure", "the last one stays")
	},
	"Before": func(t *testing.T, f *frame) {
		f.Press("]", "[", "[")
		require.Contains(t, f.Shown(), "Cut for the tube")
	},
	"Sheet": func(t *testing.T, f *frame) {
		f.Press("z")
		require.Contains(t, f.Shown(), "Pots for the tube")
		f.Press("z")
		require.Contains(t, f.Shown(), "Cut for the tube")
	},
}

func TestKeys(t *testing.T) {
	viewtest.TryKeys(t, newKeys(view.DefaultKeys()), func(t *testing.T) *frame { return start(t, viewtest.Small) }, trials)
}

// An edit changes what is cut, mixed and expected at once; what was weighed is told with what follows.
func TestIsLive(t *testing.T) {
	f := start(t, viewtest.Large)
	require.Equal(t, "layup.hardener", f.Chosen(), "what is missing most")
	require.Contains(t, f.Shown(), "give layup.hardener")
	require.Contains(t, f.Shown(), "1160 × 656 mm")
	require.Contains(t, f.Shown(), "Pots for the tube", "room for both lists")
	f.Set("layup.hardener", "40 %")
	require.NotContains(t, f.Shown(), "give layup.hardener")
	require.Contains(t, f.Shown(), "61.5 g of hardener")
	f.Set("layup.trim", "20 mm")
	require.Contains(t, f.Shown(), "1180 × 656 mm")
	f.Set("layup.tube", "340 g")
	require.Contains(t, f.Shown(), "rich in resin")
	require.Contains(t, f.Shown(), "built 45")
}

func TestNothingToLayUp(t *testing.T) {
	f := viewtest.New(t, New(view.DefaultKeys()), viewtest.Plover(t), viewtest.Small)
	require.Contains(t, f.Shown(), "nothing to lay up")
	f.Press("]", "z")
}
