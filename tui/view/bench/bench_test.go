package bench

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/sim/quantity"
	"ullage/sim/report/bench"
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
		require.Contains(t, f.Shown(), "Seal: O-ring")
		f.Press("]")
		require.Contains(t, f.Shown(), "Static ports")
		require.Contains(t, f.Shown(), "3 holes of 1.7 mm")
		for range 9 {
			f.Press("]")
		}
		require.Contains(t, f.Shown(), "prove it with water", "the last one stays")
	},
	"Before": func(t *testing.T, f *frame) {
		f.Press("]", "]", "[")
		require.Contains(t, f.Shown(), "2 of 7")
		f.Press("}", "[")
		require.Contains(t, f.Shown(), "2 of 7", "back to where it begins")
		f.Press("[", "[")
		require.Contains(t, f.Shown(), "1 of 7")
	},
	"On": func(t *testing.T, f *frame) {
		f.Press("}")
		require.Contains(t, f.Shown(), "Seal: O-ring or cord in a groove ↑ 1 of 7 ↓")
		for range 40 {
			f.Press("}")
		}
		require.Contains(t, f.Shown(), "7 of 7")
	},
	"Back": func(t *testing.T, f *frame) {
		f.Press("}", "{", "{")
		require.Contains(t, f.Shown(), "1 of 7")
		require.NotContains(t, f.Shown(), "↑")
	},
	"Go": func(t *testing.T, f *frame) {
		f.Press("]", "]", "]", "k")
		require.Equal(t, "jig.length", f.Chosen())
		f.Press("k")
		require.Equal(t, "field.radius", f.Chosen())
		f.Press("]", "]", "]", "k")
		require.Contains(t, f.Said, "nothing that could be chosen")
	},
}

func TestKeys(t *testing.T) {
	viewtest.TryKeys(t, newKeys(view.DefaultKeys()), func(t *testing.T) *frame { return start(t, viewtest.Small) }, trials)
}

// An edit changes the sheet, and what is lacking is told and gone to.
func TestIsLive(t *testing.T) {
	f := start(t, viewtest.Large)
	require.Equal(t, "seal.cord", f.Chosen())
	require.Contains(t, f.Shown(), "0.05 mm, at most 0.09 mm at the proof of 16.0 bar: good")
	f.Set("seal.plug", "33.8 mm")
	require.Contains(t, f.Shown(), "out of bounds")
	f = viewtest.New(t, New(view.DefaultKeys()), viewtest.Rewritten(t, viewtest.Heron(t), func(text string) string {
		return strings.Replace(text, "width  = \"3.6 mm\"", "", 1)
	}), viewtest.Medium)
	require.Contains(t, f.Shown(), "To judge the one that is cut, give seal.width")
	f.Press("k")
	require.Equal(t, "seal.width", f.Chosen())
}

// All that the command prints is on the sheet, in the same words.
func TestSaysWhatTheCommandSays(t *testing.T) {
	f := start(t, [2]int{500, 200})
	doc := bench.Document(&f.V.study.Result, quantity.Metric)
	shown := strings.Join(strings.Fields(f.Shown()), " ")
	for _, x := range doc.Sections {
		require.Contains(t, shown, x.Name)
	}
	for _, text := range []string{"121 strokes of 0.25 L", "build to less than 1.18 deg", "m, no canopy open", "lock out all events for 10.3 s", "0.9 mm 0.87 mm"} {
		require.Contains(t, shown, text)
	}
}

// Every size is filled, and a point mass or a rocket of one drive is no reason to fail.
func TestSizes(t *testing.T) {
	for _, f := range []*frame{start(t, viewtest.Small), viewtest.New(t, New(view.DefaultKeys()), viewtest.Plover(t), viewtest.Small)} {
		for _, size := range [][2]int{{30, 3}, {47, 17}, {84, 32}, {199, 69}} {
			f.V.Resize(size[0], size[1])
			for range 3 {
				f.Press("]")
				require.Len(t, f.V.Lines(), size[1])
			}
		}
	}
}
