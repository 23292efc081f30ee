package tui

import (
	"os"
	"path/filepath"
	"runtime"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ullage/sim/long"
	"ullage/sim/rocketfile"
	"ullage/tui/view"
)

// However a text is changed, going back and forth gives every state again to the byte.
func TestHistory(t *testing.T) {
	first := plover(t)
	open := func(_ *step, text string) (*rocketfile.File, error) { return first.WithText([]byte(text)) }
	rapid.Check(t, func(t *rapid.T) {
		h, states, at := newHistory(first), []string{string(first.Text())}, 0
		for range rapid.IntRange(1, 12).Draw(t, "steps") {
			var err error
			switch rapid.SampledFrom([]string{"edit", "edit", "undo", "redo"}).Draw(t, "what") {
			case "edit":
				text := states[at]
				from := rapid.IntRange(0, len(text)).Draw(t, "from")
				for from > 0 && text[from-1] != '\n' {
					from--
				}
				comment := rapid.SampledFrom([]string{"# a\n", "# aa\n", "\n", "# ü\n"}).Draw(t, "comment")
				f, err := first.WithText([]byte(text[:from] + comment + text[from:]))
				if err != nil {
					continue // within a value
				}
				h = h.done(view.Edit{}, f, first)
				states, at = append(states[:at+1:at+1], string(f.Text())), at+1
			case "undo":
				if h, _, err = h.undone(open); at > 0 {
					at--
				}
			case "redo":
				if h, _, err = h.redone(open); at < len(states)-1 {
					at++
				}
			}
			require.NoError(t, err)
			require.Equal(t, states[at], string(h.file.Text()))
		}
	})
}

// An edit kept takes some hundred bytes, not a rocket.
func TestHistoryTakesNoRoom(t *testing.T) {
	long.Unraced(t)
	const presses = 2000
	s := newScreen(t, plover(t), 80, 24)
	s.hold = true
	used := func() uint64 {
		runtime.GC()
		var m runtime.MemStats
		runtime.ReadMemStats(&m)
		return m.HeapAlloc
	}
	s.press("right", "left")
	s.held = nil
	before := used()
	for i := range presses {
		s.press([]string{"right", "left"}[i%2])
		s.held = nil
	}
	require.Less(t, int(used())-int(before), presses*1000)
	for range presses {
		s.press("u")
		s.held = nil
	}
	require.Equal(t, "30 %", s.value())
}

// A state that cannot be read any more, since the curve it names is gone, is not lost
// silently.
func TestUndoOfAStateThatIsGone(t *testing.T) {
	f := copied(t)
	s := newScreen(t, f, 80, 24)
	before := string(f.Text())
	require.Contains(t, before, "plover.csv")
	moved := filepath.Join(filepath.Dir(f.Path()), "other.csv")
	require.NoError(t, os.Rename(filepath.Join(filepath.Dir(f.Path()), "plover.csv"), moved))
	g, err := s.m.file().Set("motor.curve", "other.csv")
	require.NoError(t, err)
	require.True(t, s.m.take(g, nil, view.Edit{Input: "motor.curve", Says: "curve"}))
	reopened, err := rocketfile.Read("plover.toml", filepath.Dir(f.Path()), g.Text())
	require.NoError(t, err)
	s.m.hist = s.m.hist.moved(reopened)
	s.m.lodged, s.m.hist.past.home = reopened, reopened // read anew: the old curve is nowhere
	s.press("u")
	require.Contains(t, s.m.notice.says, "Not undone: ")
	require.Contains(t, s.m.notice.says, "no such file")
	require.Equal(t, string(g.Text()), s.text())
}
