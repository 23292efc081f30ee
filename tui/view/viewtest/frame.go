// Package viewtest is for tests alone: it tries a view without the screen around it, on a
// frame that keeps a rocket file, flies it after every edit and shows it to the view.
package viewtest

import (
	"context"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/muesli/termenv"
	"github.com/stretchr/testify/require"

	"ullage/sim"
	"ullage/sim/gates"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
	"ullage/tui/draw"
	"ullage/tui/plot"
	"ullage/tui/view"
)

// Sizes of a view, columns and rows, on screens of 80 by 24, 120 by 40 and 200 by 60.
var (
	Small  = [2]int{47, 17}
	Medium = [2]int{84, 32}
	Large  = [2]int{159, 50}
)

// Frame is a [view.Frame] with one view in it. Commands run at once, one after the other,
// unless they are held.
type Frame[V view.View] struct {
	T      testing.TB
	V      V
	Scene  view.Scene // what was last shown
	Today  time.Time
	Judges Judge // has worst corners follow every flight, and mends for a view that asks; nil for none

	Said  string         // the last message
	Asked *view.Question // what waits for an answer; nil when nothing does
	Text  string         // typed so far
	Wrong string         // with what was typed

	Hold bool      // keep commands back
	Held []tea.Cmd // the ones kept back

	states []*rocketfile.File // since the start; the last is the present one
	chosen string
}

// New shows a rocket in a view that has just been chosen. The input chosen before that is
// the amount of water.
func New[V view.View](t testing.TB, v V, f *rocketfile.File, size [2]int) *Frame[V] {
	t.Helper()
	frame := &Frame[V]{T: t, V: v}
	frame.Begin(f, size)
	return frame
}

// Begin is what New does with a frame that has its test and its view.
func (f *Frame[V]) Begin(file *rocketfile.File, size [2]int) {
	f.T.Helper()
	f.Today, f.states, f.chosen = Day(), []*rocketfile.File{file}, "water.fill"
	f.Scene = view.Scene{Ctx: context.Background(), Corners: &view.Work[view.Cornered]{},
		Theme: draw.NewTheme(plot.Braille, termenv.Ascii, false, draw.AnyBackground)}
	f.V.Resize(size[0], size[1])
	f.Enter()
}

// Day is the day of the tests.
func Day() time.Time { return time.Date(2026, time.October, 1, 12, 0, 0, 0, time.UTC) }

// Enter chooses the view again.
func (f *Frame[V]) Enter() {
	f.V.Enter(f)
	f.Fly()
}

// Fly flies the rocket as it stands and shows it.
func (f *Frame[V]) Fly() {
	f.T.Helper()
	fl, err := sim.Fly(f.Scene.Ctx, f.File().Rocket(), sim.Options{Keep: true})
	require.NoError(f.T, err)
	f.Scene.Now = view.NewOutcome(f.Scene.Ctx, f.File(), fl, f.Today)
	var corners tea.Cmd
	if now := f.Scene.Now; f.Judges != nil {
		judging := func(mends bool) func(context.Context) (view.Cornered, error) {
			return func(ctx context.Context) (view.Cornered, error) {
				v, err := f.Judges(ctx, fl.Rocket, gates.Options{Day: fl, Today: f.Today, Spreads: study.Spreads(now.File), Respread: study.Respread(now.File), Remedies: mends})
				return view.Cornered{Of: now, Verdict: v}, err
			}
		}
		f.Scene.Mends = judging(true)
		corners = f.Scene.Corners.Ask(f.Scene.Ctx, judging(false))
	}
	f.Show()
	f.Run(corners)
}

// Show shows the scene as it is, with the file as it stands.
func (f *Frame[V]) Show() {
	f.Scene.File = f.File()
	f.Run(f.V.Show(f.Scene))
}

// Run runs a command and gives the view what comes of it.
func (f *Frame[V]) Run(cmd tea.Cmd) {
	if cmd == nil {
		return
	}
	if f.Hold {
		f.Held = append(f.Held, cmd)
		return
	}
	switch msg := cmd().(type) {
	case nil:
	case tea.BatchMsg:
		for _, c := range msg {
			f.Run(c)
		}
	default:
		if f.Scene.Corners.Take(msg) {
			f.Show()
		} else {
			f.Run(f.V.Receive(msg))
		}
	}
}

// Release runs what was held, in the order it was asked for, and holds nothing from now on.
func (f *Frame[V]) Release() {
	held := f.Held
	f.Hold, f.Held = false, nil
	for _, c := range held {
		f.Run(c)
	}
}

// Press presses keys by name, others as characters. A question asked takes enter, esc,
// ctrl+u and characters; of keys that are none of the view's, u undoes, and left and right
// move the chosen input.
func (f *Frame[V]) Press(keys ...string) {
	f.T.Helper()
	for _, k := range keys {
		before := f.File()
		if f.Asked != nil {
			f.answer(k)
		} else if taken, cmd := f.V.Press(f, message(k)); taken {
			f.Run(cmd)
		} else {
			f.other(k)
		}
		if f.File() != before {
			f.Fly()
		}
		f.check()
	}
}

// Type types a text into what is asked, in place of what is there, and enters it.
func (f *Frame[V]) Type(text string) {
	f.T.Helper()
	require.NotNil(f.T, f.Asked, "nothing is asked")
	f.Text = text
	f.Press("enter")
}

func (f *Frame[V]) answer(k string) {
	switch k {
	case "esc":
		f.Asked = nil
	case "ctrl+u":
		f.Text = ""
	case "enter":
		asked := f.Asked
		wrong, cmd := asked.Submit(f, f.Text)
		if f.Wrong = wrong; wrong == "" {
			f.Asked = nil
		}
		f.Run(cmd)
	default:
		f.Text += k
	}
}

func (f *Frame[V]) other(k string) {
	switch k {
	case "u":
		f.states = f.states[:max(len(f.states)-1, 1)]
	case "left":
		f.Nudge(-1, false)
	case "right":
		f.Nudge(1, false)
	}
}

// Drive lets the other drive fly.
func (f *Frame[V]) Drive() {
	f.T.Helper()
	to := "motor"
	if f.File().Rocket().Power == rocket.MotorPower {
		to = "water"
	}
	f.Set("power", to)
}

// check holds that the view fills its room, and no more.
func (f *Frame[V]) check() {
	f.T.Helper()
	lines := f.V.Lines()
	if len(lines) == 0 {
		return
	}
	w := draw.Width(lines[0])
	for i, l := range lines {
		require.Equal(f.T, w, draw.Width(l), "row %d: %q", i, l)
	}
}

// Shown is the text of the view on one line, blanks taken together.
func (f *Frame[V]) Shown() string {
	return strings.Join(strings.Fields(strings.Join(f.V.Lines(), " ")), " ")
}
