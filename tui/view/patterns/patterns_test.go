package patterns

import (
	"context"
	"errors"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/sim/pattern"
	"ullage/sim/quantity"
	"ullage/sim/rocket"
	"ullage/tui/view"
	"ullage/tui/view/viewtest"
)

type frame = viewtest.Frame[*View]

// pad is a writer that writes down where it was to write.
type pad struct {
	folder string
	system quantity.System
	err    error // told at once
	late   error // told by what writes
}

func (p *pad) write(_ *rocket.Rocket, sys quantity.System, folder string) (func(context.Context) (string, error), error) {
	p.folder, p.system = folder, sys
	return func(context.Context) (string, error) { return "13 patterns written to " + folder + ".", p.late }, p.err
}

func start(t testing.TB, size [2]int, p *pad) *frame {
	t.Helper()
	return viewtest.New(t, New(view.DefaultKeys(), p.write), viewtest.Heron(t), size)
}

var trials = map[string]func(t *testing.T, f *frame){
	"Next": func(t *testing.T, f *frame) {
		require.Contains(t, f.Shown(), "nose: profile")
		f.Press("]")
		require.Contains(t, f.Shown(), "fins tail: one fin")
		for range 30 {
			f.Press("]")
		}
		require.Equal(t, len(f.V.set.Patterns)+len(f.V.set.Lacks)-1, f.V.chosen, "the last one stays")
	},
	"Before": func(t *testing.T, f *frame) {
		f.Press("]", "[", "[")
		require.Contains(t, f.Shown(), "nose: profile")
	},
	"Sheet": func(t *testing.T, f *frame) {
		f.Press("z")
		require.Contains(t, f.Shown(), "Make one; length 230 mm; base 69.4 mm")
		require.Contains(t, f.Shown(), "from the tip")
		f.Press("z")
		require.NotContains(t, f.Shown(), "Make one")
	},
	"Go": func(t *testing.T, f *frame) {
		f.Press("]", "k")
		require.Equal(t, "fins.tail.root", f.Chosen())
	},
	"Write": func(t *testing.T, f *frame) {
		f.Press("s")
		require.Equal(t, "heron-patterns", filepath.Base(f.Text))
		f.Press("enter")
		require.Contains(t, f.Shown(), "written to")
		require.Contains(t, f.Shown(), "measure both rules")
	},
}

func TestKeys(t *testing.T) {
	viewtest.TryKeys(t, newKeys(view.DefaultKeys()), func(t *testing.T) *frame { return start(t, viewtest.Small, &pad{}) }, trials)
}

// What the folder cannot take keeps the line open, what fails later is told, and both are gone with another rocket.
func TestWriting(t *testing.T) {
	p := &pad{err: errors.New("patterns is a file")}
	f := start(t, viewtest.Medium, p)
	f.Press("s", "enter")
	require.NotNil(t, f.Asked)
	require.Contains(t, f.Wrong, "is a file")
	p.err, p.late = nil, errors.New("the disk is full")
	f.Press("enter")
	require.Nil(t, f.Asked)
	require.Contains(t, f.Shown(), "Not written: the disk is full")
	f.Set("fins.tail.span", "80 mm")
	require.NotContains(t, f.Shown(), "the disk is full")
	f.Press("s", "ctrl+u", "enter")
	require.Contains(t, f.Wrong, "name of a folder is missing")
}

// An edit is drawn at once; what the file does not say enough for stands in the list, and a key goes to it.
func TestIsLive(t *testing.T) {
	f := start(t, viewtest.Large, &pad{})
	f.Press("]")
	require.Contains(t, f.Shown(), "span 97 mm")
	f.Set("fins.tail.span", "80 mm")
	require.Contains(t, f.Shown(), "span 80 mm")
	f = viewtest.New(t, New(view.DefaultKeys(), nil), viewtest.Rewritten(t, viewtest.Heron(t), func(text string) string {
		return strings.Replace(text, `wall     = "1.5 mm"`, "", 1)
	}), viewtest.Medium)
	require.Contains(t, f.Shown(), "1 not drawn")
	for range len(f.V.set.Patterns) {
		f.Press("]")
	}
	require.Contains(t, f.Shown(), "Not drawn: centring rings of the motor mount: give motor_mount.wall.")
	f.Press("k")
	require.Contains(t, f.Said, "Not among the inputs: motor_mount.wall. d changes the drive")
	f.Set("power", "motor")
	f.Press("k")
	require.Equal(t, "motor_mount.wall", f.Chosen())
	f.Press("s")
	require.Contains(t, f.Said, "nothing to write")
}

// Every pattern of the example is drawn in its proportions, in every size.
func TestProportions(t *testing.T) {
	f := start(t, viewtest.Medium, &pad{})
	for i := range f.V.set.Patterns {
		f.V.choose(i)
		for _, size := range [][2]int{{40, 3}, {47, 17}, {84, 32}, {199, 69}} {
			f.V.Resize(size[0], size[1])
			f.V.draw()
			require.Len(t, f.V.Lines(), size[1])
		}
	}
	// A square: as many dots across as up, two columns of dots a cell and four rows.
	p := pattern.Pattern{Lines: []pattern.Line{{Points: []pattern.Point{{X: 0, Y: 0}, {X: 0.1, Y: 0}, {X: 0.1, Y: 0.1}, {X: 0, Y: 0.1}, {X: 0, Y: 0}}}}}
	left, right, rows := 1000, 0, 0
	for _, row := range f.V.side(&p, 80, 30) {
		inked := func(r rune) bool { return r > '⠀' && r <= '⣿' }
		cells := []rune(row)
		seen := false
		for i, r := range cells {
			if inked(r) {
				left, right, seen = min(left, i), max(right, i), true
			}
		}
		if seen {
			rows++
		}
	}
	require.InDelta(t, 2*rows, right-left+1, 3)
}
