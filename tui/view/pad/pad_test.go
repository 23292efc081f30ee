package pad

import (
	"context"
	"errors"
	"fmt"
	"strings"
	"sync"
	"testing"

	"github.com/muesli/termenv"
	"github.com/stretchr/testify/require"

	"ullage/sim/gates"
	"ullage/sim/plan"
	"ullage/sim/quantity"
	"ullage/sim/report/checklist"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
	"ullage/tui/draw"
	"ullage/tui/plot"
	"ullage/tui/view"
	"ullage/tui/view/viewtest"
)

type frame = viewtest.Frame[*View]

// Rooms of the page on screens of 80 by 24, 120 by 36, 200 by 60 and a low one.
var (
	small  = [2]int{78, 21}
	medium = [2]int{118, 33}
	large  = [2]int{198, 57}
	low    = [2]int{198, 21}
)

// verdicts are those of the tests' rockets.
var verdicts = viewtest.Verdicts{}

// once finds the wind of the first rocket that asks, with the tests' only search.
func once(ctx context.Context, r *rocket.Rocket, o plan.Options) (plan.WindLimit, error) {
	found.Do(func() { wind, _ = plan.MostWind(ctx, r, o) })
	return wind, nil
}

var (
	found sync.Once
	wind  plan.WindLimit
)

// start shows a rocket on the page, its corners looked at.
func start(t testing.TB, f *rocketfile.File, size [2]int) *frame {
	t.Helper()
	frame := &frame{T: t, V: New(view.DefaultKeys(), viewtest.Day)}
	frame.Judges = verdicts.Of(frame.Source)
	frame.V.most = once
	frame.Begin(f, size)
	return frame
}

// unproved is a rocket without a proof on record.
func unproved(t testing.TB) *rocketfile.File {
	return viewtest.Rewritten(t, viewtest.Heron(t), func(text string) string {
		kept := []string{}
		for _, l := range strings.Split(text, "\n") {
			if !strings.HasPrefix(l, "proof") {
				kept = append(kept, l)
			}
		}
		return strings.Join(kept, "\n")
	})
}

// ticked is how the page says how many steps of the list in sight are ticked; at, which is at hand.
func ticked(f *frame, n int) string { return fmt.Sprintf("filling %d/%d", n, len(f.V.list().steps)) }
func at(f *frame, n int) string     { return fmt.Sprintf("Step %d of %d.", n, len(f.V.list().steps)) }

var trials = map[string]func(t *testing.T, f *frame){
	"Tick": func(t *testing.T, f *frame) {
		f.Press(" ")
		require.Contains(t, f.Shown(), ticked(f, 1))
		require.Contains(t, f.Shown(), at(f, 2))
		f.Press("up", "enter")
		require.NotContains(t, f.Shown(), ticked(f, 1))
		require.Contains(t, f.Shown(), at(f, 1), "what is taken back stays at hand")
		for range f.V.list().steps {
			f.Press(" ")
		}
		require.Contains(t, f.Shown(), "▸launch", "the next list follows a whole one")
	},
	"Before": func(t *testing.T, f *frame) {
		f.Press("down", "up", "up")
		require.Contains(t, f.Shown(), at(f, 1))
	},
	"Next": func(t *testing.T, f *frame) {
		f.Press("]", "down")
		require.Contains(t, f.Shown(), at(f, 3))
		for range f.V.list().steps {
			f.Press("down")
		}
		require.Contains(t, f.Shown(), at(f, len(f.V.list().steps)))
		f.Press(" ")
		require.Contains(t, f.Said, fmt.Sprintf("%d before it are not ticked", len(f.V.list().steps)-1))
		require.Contains(t, f.Shown(), "▸filling", "no launch with steps left out")
	},
	"ListBefore": func(t *testing.T, f *frame) {
		f.Press("}", "left", "left")
		require.Contains(t, f.Shown(), "▸filling")
	},
	"NextList": func(t *testing.T, f *frame) { f.Press("right", "}"); require.Contains(t, f.Shown(), "▸unreleased") },
	"Amiss": func(t *testing.T, f *frame) {
		f.Press("right", "e")
		require.Contains(t, f.Shown(), "▸unreleased")
		require.Contains(t, f.Shown(), "nobody goes near while the gauge reads anything but 0")
		f.Press("e")
		require.Contains(t, f.Shown(), "▸launch", "and back")
	},
	"Wipe": func(t *testing.T, f *frame) {
		f.Press(" ", " ", "A")
		require.NotContains(t, f.Shown(), ticked(f, 2))
		require.Contains(t, f.Said, "2 ticks taken back")
		f.Press("A")
		require.Contains(t, f.Shown(), ticked(f, 2))
		require.Contains(t, f.Shown(), at(f, 3), "the first that is not ticked")
	},
	"Sheet": func(t *testing.T, f *frame) {
		require.Contains(t, f.Shown(), "gauge shows")
		f.Press("z")
		require.NotContains(t, f.Shown(), "gauge shows")
		f.Press("z")
		require.Contains(t, f.Shown(), "do not fly above 3.5 m/s")
		f.Press("z")
		require.Contains(t, f.Shown(), "pump and vent:")
		f.Press("z")
		require.Contains(t, f.Shown(), "gauge shows")
	},
}

func TestKeys(t *testing.T) {
	viewtest.TryKeys(t, newKeys(view.DefaultKeys()), func(t *testing.T) *frame { return start(t, viewtest.Heron(t), small) }, trials)
}

// big is a text in large letters of a size as the page shows them, row by row.
func big(f *frame, rows int, bold bool, text string) []string {
	sizes := draw.BigLetters(f.Scene.Theme, rows)
	at := len(sizes) - 2
	if !bold {
		at++
	}
	return sizes[at].Rows(text)
}

// requireBig holds that the page has it.
func requireBig(f *frame, bold bool, text string) {
	f.T.Helper()
	shown := strings.Join(f.V.Lines(), "\n")
	for _, row := range big(f, 6, bold, text) {
		require.Contains(f.T, shown, strings.TrimRight(row, " "), text)
	}
}

// What matters most is in large letters, and its words are the checklist's own.
func TestShowsAGo(t *testing.T) {
	f := start(t, viewtest.Heron(t), small)
	requireBig(f, true, "GO WATER")
	requireBig(f, true, "10 bar")
	day := checklist.Day{Rocket: f.Scene.Now.Flight.Rocket, Verdict: f.Scene.Corners.Result.Verdict}
	l, ok := checklist.New(&day, "filling", quantity.Metric)
	require.True(t, ok)
	require.Contains(t, f.Shown(), l.Phases[0].Steps[0])
	require.Contains(t, f.Shown(), started)
	for _, size := range [][2]int{medium, low, large, {78, 9}, {40, 12}} {
		f.V.Resize(size[0], size[1])
		f.Show()
		require.Len(t, f.V.Lines(), size[1])
		require.Contains(t, f.Shown(), l.Phases[0].Steps[0][:16])
		f.Press("]", "[")
	}
}

// A closed chamber follows its gas: (10 + 0.977) × 273.15/289.15 − 0.977 = 9.39 bar at 0 °C; what its proof is not for is vented.
func TestPressuresByTemperature(t *testing.T) {
	f := start(t, viewtest.Heron(t), small)
	require.Contains(t, f.Shown(), "-10 0 10 16 20 30 40 50 degC")
	require.Contains(t, f.Shown(), "9.01 9.39 9.77 10.0 10.2 10.5 vent vent bar")
	f.Scene.Units = quantity.US
	f.Show()
	require.Contains(t, f.Shown(), "20 40 61 80 100 120 degF")
	require.Contains(t, f.Shown(), "Nobody fills past 145 psi")
	f.Drive()
	require.NotContains(t, f.Shown(), "gauge shows", "a motor has none")
	requireBig(f, true, "CLASS H")
	require.Contains(t, f.Shown(), "Motor and delay are those of the card")
	f.Press("e")
	require.Contains(t, f.Shown(), "▸misfire")
	require.Contains(t, f.Shown(), "Aloud: misfire")
	requireBig(f, true, "STAY AWAY")
}

// A rocket that is no-go or not judged has no list that fills, arms or launches; what to do about one under pressure it has.
func TestRefuses(t *testing.T) {
	f := start(t, unproved(t), small)
	requireBig(f, false, "NO-GO WATER")
	for range 2 { // filling, launch
		require.Contains(t, f.Shown(), "This is no leave")
		require.NotContains(t, f.Shown(), "[ ]")
		require.NotContains(t, f.Shown(), "gauge shows")
		f.Press(" ")
		require.Contains(t, f.Said, "nothing to tick")
		require.Zero(t, f.V.ticks.all())
		f.Press("right")
	}
	require.Contains(t, f.Shown(), "[ ] Hands off the release")
	f.Press(" ")
	require.Equal(t, 1, f.V.ticks.all())

	// Not before the corners are known, nor where they cannot be.
	f = start(t, viewtest.Heron(t), small)
	f.Judges = nil
	f.Set("water.fill", "29 %")
	requireBig(f, false, waiting+" WATER")
	require.Contains(t, f.Shown(), "Go or no-go is being looked at")
	f.Press(" ")
	require.Zero(t, f.V.ticks.all())
	f.Judges = func(context.Context, *rocket.Rocket, gates.Options) (gates.Verdict, error) {
		return gates.Verdict{}, errors.New("no day")
	}
	f.Fly()
	requireBig(f, false, "NOT JUDGED")
	require.Contains(t, f.Shown(), "Not judged: no day")
}

// Ticks stay while other views are looked at, and are off, which is said, once the rocket is another.
func TestTicksAreOfOneRocket(t *testing.T) {
	f := start(t, viewtest.Heron(t), small)
	f.Press(" ", " ")
	f.Enter()
	require.Contains(t, f.Shown(), ticked(f, 2))
	f.Set("wind.speed", "2 m/s")
	require.Contains(t, f.Shown(), "what was ticked of the one before, 2 steps, is off")
	require.NotContains(t, f.Shown(), ticked(f, 2))
	f.Press("u")
	require.Contains(t, f.Shown(), ticked(f, 2), "undone, they are back")
	require.NotContains(t, f.Shown(), "is off")
	f.Set("wind.speed", "2 m/s")
	f.Press(" ")
	require.NotContains(t, f.Shown(), "is off", "begun anew")
	require.Contains(t, f.Shown(), ticked(f, 1))
	f.Press("u")
	require.Contains(t, f.Shown(), "1 step, is off")
	require.NotContains(t, f.Shown(), ticked(f, 1))

	f.Scene.Older = true
	f.Show()
	requireBig(f, false, "NOT JUDGED")
	require.Contains(t, f.Shown(), "this is of the one before, and no leave")
}

// In colour every cell of the page is black on white or white on black.
func TestIsSunlit(t *testing.T) {
	f := start(t, unproved(t), small)
	f.Scene.Theme = draw.NewTheme(plot.Block, termenv.TrueColor, true, draw.DarkBackground)
	f.Show()
	const ink, ground = "38;2;0;0;0;48;2;255;255;255m", "38;2;255;255;255;48;2;0;0;0m"
	for _, l := range f.V.Lines() {
		for _, piece := range strings.Split(strings.TrimSuffix(l, "\x1b[0m"), "\x1b[0m") {
			require.True(t, strings.HasPrefix(piece, "\x1b[") && (strings.Contains(piece, ink) || strings.Contains(piece, ground)), "%q", piece)
		}
	}
}
