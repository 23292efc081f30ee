package tui

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/require"

	"ullage/sim"
	"ullage/sim/quantity"
	"ullage/sim/rocketfile"
	"ullage/tui/plot"
)

// value is the chosen input's value as the list shows it.
func (s *screen) value() string { return s.m.inputs.chosen().value() }

// choose goes to an input by name, with the keys there are for it.
func (s *screen) choose(name string) {
	s.t.Helper()
	s.press("home")
	for range s.m.inputs.fields {
		if s.m.inputs.chosen().Name == name {
			return
		}
		s.press("down")
	}
	require.Equal(s.t, name, s.m.inputs.chosen().Name)
}

// words is the screen as one line, blanks and borders taken together.
func (s *screen) words() string { return strings.Join(strings.Fields(s.view()), " ") }

func (s *screen) text() string { return string(s.m.file().Text()) }

// Every binding is in the help exactly once, has keys and a text, and no two of
// the frame or of one question share a key.
func TestKeyMap(t *testing.T) {
	k := DefaultKeys()
	var listed []string
	for _, g := range k.groups() {
		for _, b := range g.keys {
			listed = append(listed, strings.Join(b.Keys(), " ")+": "+b.Help().Desc)
		}
	}
	var all []string
	used := map[string]string{}
	v := reflect.ValueOf(k)
	for i := range v.NumField() {
		name := v.Type().Field(i).Name
		b := v.Field(i).Interface().(key.Binding)
		require.NotEmpty(t, b.Keys(), name)
		require.NotEmpty(t, b.Help().Key, name)
		require.NotEmpty(t, b.Help().Desc, name)
		all = append(all, strings.Join(b.Keys(), " ")+": "+b.Help().Desc)
		if name == "Accept" || strings.HasPrefix(name, "Answer") {
			continue // while something else does not listen
		}
		for _, one := range b.Keys() {
			require.Empty(t, used[one], "%s and %s share %q", used[one], name, one)
			used[one] = name
		}
	}
	require.ElementsMatch(t, all, listed)
}

// What each key does. A key without a row fails TestEveryKeyIsTried.
var keyTrials = map[string]func(t *testing.T, s *screen){
	"Up":       func(t *testing.T, s *screen) { s.moves(-1, "up") },
	"Down":     func(t *testing.T, s *screen) { s.moves(1, "down") },
	"PageDown": func(t *testing.T, s *screen) { s.moves(s.m.layout.body-2, "pgdown") },
	"PageUp":   func(t *testing.T, s *screen) { s.press("end"); s.moves(-(s.m.layout.body - 2), "pgup") },
	"First":    func(t *testing.T, s *screen) { s.press("home"); require.Zero(t, s.m.inputs.at) },
	"Last":     func(t *testing.T, s *screen) { s.press("end"); require.Equal(t, "wind.from", s.m.inputs.chosen().Name) },
	"NextGroup": func(t *testing.T, s *screen) {
		s.press("tab")
		require.Equal(t, "canopy main", s.m.inputs.chosen().Group)
	},
	"PrevGroup": func(t *testing.T, s *screen) {
		s.press("shift+tab")
		require.Equal(t, "body", s.m.inputs.chosen().Group)
	},
	"Less":    func(t *testing.T, s *screen) { s.press("left"); require.Equal(t, "29 %", s.value()) },
	"More":    func(t *testing.T, s *screen) { s.press("right"); require.Equal(t, "31 %", s.value()) },
	"FarLess": func(t *testing.T, s *screen) { s.press("shift+left", "<"); require.Equal(t, "20 %", s.value()) },
	"FarMore": func(t *testing.T, s *screen) { s.press("shift+right", ">"); require.Equal(t, "40 %", s.value()) },
	"Type": func(t *testing.T, s *screen) {
		s.press("enter", "backspace", "backspace", "backspace", "5", "enter")
		require.Equal(t, "35 %", s.value())
	},
	"Digit": func(t *testing.T, s *screen) {
		s.write("28.5")
		s.press("enter")
		require.Equal(t, "28.5 %", s.value())
	},
	"Accept": func(t *testing.T, s *screen) { s.press("2", "7", "enter"); require.Equal(t, "27 %", s.value()) },
	"Leave":  func(t *testing.T, s *screen) { s.press("2", "7", "esc"); require.Equal(t, "30 %", s.value()) },
	"Default": func(t *testing.T, s *screen) {
		s.choose("rail.tilt")
		s.press("delete")
		require.Equal(t, "0 deg", s.value())
		require.False(t, s.m.inputs.chosen().given)
	},
	"Drive": func(t *testing.T, s *screen) {
		s.press("d")
		require.Equal(t, sim.MotorPower, s.m.now.flight.Rocket.Power)
		s.press("d")
		require.Equal(t, sim.WaterPower, s.m.now.flight.Rocket.Power)
	},
	"AddCanopy": func(t *testing.T, s *screen) {
		s.press("c")
		require.Len(t, s.m.now.flight.Rocket.Canopies, 2)
		require.NotEmpty(t, s.m.inputs.canopy())
	},
	"RemoveCanopy": func(t *testing.T, s *screen) {
		s.press("C")
		require.Empty(t, s.m.now.flight.Rocket.Canopies)
		s.press("u")
		require.Len(t, s.m.now.flight.Rocket.Canopies, 1)
	},
	"Tube": func(t *testing.T, s *screen) {
		s.press("t")
		require.NotNil(t, s.m.now.flight.Rocket.Water.Tube)
		require.Equal(t, "water.tube.length", s.m.inputs.chosen().Name)
		s.press("t")
		require.Nil(t, s.m.now.flight.Rocket.Water.Tube)
	},
	"Undo": func(t *testing.T, s *screen) { s.press("right", "home", "u"); require.Equal(t, "30 %", s.value()) },
	"Redo": func(t *testing.T, s *screen) {
		s.press("right", "right", "u", "u", "U", "ctrl+r")
		require.Equal(t, "32 %", s.value())
	},
	"Keep": func(t *testing.T, s *screen) {
		s.press("p", "right")
		require.NotSame(t, s.m.kept, s.m.now)
		require.Contains(t, s.view(), "(+")
	},
	"DropKept": func(t *testing.T, s *screen) {
		s.press("p", "right", "P")
		require.Nil(t, s.m.kept)
		require.NotContains(t, s.view(), "(+")
	},
	"Span":       func(t *testing.T, s *screen) { s.press("z"); require.Contains(t, s.view(), "whole flight") },
	"SpanBack":   func(t *testing.T, s *screen) { s.press("Z"); require.Contains(t, s.view(), " thrust") },
	"Earlier":    func(t *testing.T, s *screen) { require.Negative(t, s.cursorMove("[")) },
	"Later":      func(t *testing.T, s *screen) { s.press("E"); require.Positive(t, s.cursorMove("]")) },
	"FarEarlier": func(t *testing.T, s *screen) { require.Less(t, s.cursorMove("{"), 5*s.cursorMove("[")) },
	"FarLater": func(t *testing.T, s *screen) {
		s.press("E")
		require.Greater(t, s.cursorMove("}"), 5*s.cursorMove("]"))
	},
	"PrevEvent": func(t *testing.T, s *screen) { s.press("E"); require.Contains(t, s.view(), "gas out at") },
	"NextEvent": func(t *testing.T, s *screen) {
		s.press("e")
		require.Contains(t, s.view(), "main at")
		require.Contains(t, s.view(), "whole flight", "the span follows the cursor")
	},
	"Findings": func(t *testing.T, s *screen) { s.press("f"); require.Contains(t, s.view(), "common practice") },
	"Units":    func(t *testing.T, s *screen) { s.press("x"); require.Contains(t, s.view(), "ft/s") },
	"Help":     func(t *testing.T, s *screen) { s.press("?"); require.Contains(t, s.view(), "input above") },
	"Save": func(t *testing.T, s *screen) {
		s.press("right", "ctrl+s")
		again, err := rocketfile.Open(s.m.lodged.Path())
		require.NoError(t, err)
		require.InDelta(t, 0.31, again.Rocket().Water.Fill, 1e-12)
		require.NotContains(t, s.view(), "•")
	},
	"SaveAs": func(t *testing.T, s *screen) { s.press("S"); require.Contains(t, s.view(), "Save as:") },
	"Quit":   func(t *testing.T, s *screen) { s.press("q"); require.True(t, s.quit) },
	"Interrupt": func(t *testing.T, s *screen) {
		s.press("right", "ctrl+c")
		require.False(t, s.quit)
		s.press("ctrl+c")
		require.True(t, s.quit)
	},
	"Suspend": func(t *testing.T, s *screen) {
		require.Contains(t, s.commands("ctrl+z"), reflect.TypeOf(tea.Suspend()))
	},
	"Redraw": func(t *testing.T, s *screen) {
		require.Contains(t, s.commands("ctrl+l"), reflect.TypeOf(tea.ClearScreen()))
	},
	"AnswerSave": func(t *testing.T, s *screen) {
		s.press("right", "q", "s")
		require.True(t, s.quit)
		require.False(t, s.m.unsaved())
	},
	"AnswerDiscard": func(t *testing.T, s *screen) {
		s.press("right", "q", "d")
		require.True(t, s.quit)
		require.True(t, s.m.unsaved())
	},
	"AnswerReplace": func(t *testing.T, s *screen) {
		s.changedOnDisk()
		s.press("w")
		require.Contains(t, s.onDisk(), "0.31")
	},
	"AnswerOther": func(t *testing.T, s *screen) {
		s.changedOnDisk()
		s.press("n")
		require.Contains(t, s.view(), "Save as:")
	},
	"AnswerReload": func(t *testing.T, s *screen) {
		s.changedOnDisk()
		s.press("r")
		require.Equal(t, "42 %", s.value())
		require.False(t, s.m.unsaved())
		s.press("u")
		require.Equal(t, "31 %", s.value())
		require.True(t, s.m.unsaved())
		s.press("ctrl+s")
		require.Contains(t, s.onDisk(), "0.31")
	},
	"AnswerRestore": func(t *testing.T, s *screen) { s.leftBehind(); s.press("r"); require.Equal(t, "33 %", s.value()) },
	"AnswerKeep":    func(t *testing.T, s *screen) { s.leftBehind(); s.press("esc"); require.Equal(t, "30 %", s.value()) },
}

func TestEveryKeyIsTried(t *testing.T) {
	v := reflect.TypeOf(KeyMap{})
	for i := range v.NumField() {
		name := v.Field(i).Name
		t.Run(name, func(t *testing.T) {
			try := keyTrials[name]
			require.NotNil(t, try, "no trial of this key")
			s := newScreen(t, copied(t), 80, 24)
			try(t, s)
			s.checkSize()
		})
	}
}

// moves presses a key and expects to be so many inputs farther down.
func (s *screen) moves(by int, keys ...string) {
	s.t.Helper()
	before := s.m.inputs.at
	s.press(keys...)
	require.Equal(s.t, min(max(before+by, 0), len(s.m.inputs.fields)-1), s.m.inputs.at)
}

// cursorMove is how far a key moves the time cursor, s.
func (s *screen) cursorMove(k string) float64 {
	v := s.m.view().(*flightView)
	before := v.cursor.time
	s.press(k)
	return v.cursor.time - before
}

// commands are the types of the messages that a key's commands give, those of a
// sequence included.
func (s *screen) commands(k string) []reflect.Type {
	_, cmd := s.m.Update(keyNamed(k))
	var types []reflect.Type
	var collect func(tea.Cmd)
	collect = func(c tea.Cmd) {
		if c == nil {
			return
		}
		msg := c()
		if v := reflect.ValueOf(msg); v.Kind() == reflect.Slice {
			for i := range v.Len() {
				collect(v.Index(i).Interface().(tea.Cmd))
			}
			return
		}
		types = append(types, reflect.TypeOf(msg))
	}
	collect(cmd)
	return types
}

func (s *screen) onDisk() string {
	s.t.Helper()
	text, err := os.ReadFile(s.m.lodged.Path())
	require.NoError(s.t, err)
	return string(text)
}

// changedOnDisk edits, and saves after someone else has changed the file.
func (s *screen) changedOnDisk() {
	s.t.Helper()
	other := strings.Replace(s.text(), "0.30", `"42 %"`, 1)
	require.NotEqual(s.t, s.text(), other)
	require.NoError(s.t, os.WriteFile(s.m.lodged.Path(), []byte(other), 0o600))
	s.press("3", "1", "enter", "ctrl+s")
	require.Contains(s.t, s.words(), "changed by someone else")
	require.Equal(s.t, other, s.onDisk(), "nothing is written before the answer")
}

// leftBehind starts a screen on a file with unsaved edits of an earlier run.
func (s *screen) leftBehind() {
	s.t.Helper()
	dir := s.t.TempDir()
	s.m.keepEdits(dir)
	s.press("3", "3", "enter")
	s.send(keepMsg{})
	require.NoError(s.t, s.m.records.keeper.Close())

	again, err := rocketfile.Open(s.m.lodged.Path())
	require.NoError(s.t, err)
	*s = *newScreen(s.t, again, 80, 24)
	s.m.keepEdits(dir)
	s.send(tea.WindowSizeMsg{Width: 80, Height: 24})
	require.Contains(s.t, s.view(), "were left behind")
	require.Contains(s.t, s.view(), "water.fill: 30 % to 33 %")
}

// A bad value is told of beside its field, and the last good flight stays.
func TestBadValueKeepsTheFlight(t *testing.T) {
	s := newScreen(t, plover(t), 80, 24)
	flight, text := s.m.now, s.text()
	for _, bad := range []string{"5 kg", "-3", "400 %", "NaN", "1e400", "x", "0x1p3", "--1"} {
		s.press("enter", "ctrl+u")
		s.write(bad)
		s.press("enter")
		require.NotNil(t, s.m.typed, "%q stays open", bad)
		require.NotEmpty(t, s.m.fault.says, bad)
		require.Same(t, flight, s.m.now, bad)
		require.Equal(t, text, s.text(), bad)
		s.checkSize()
		s.press("esc")
		require.Nil(t, s.m.typed)
		require.Empty(t, s.m.fault.says)
		require.Equal(t, "30 %", s.value())
	}
}

// A value that another forbids is refused as well: the throat is no wider than
// the bore.
func TestNudgeIntoTheImpossible(t *testing.T) {
	s := newScreen(t, plover(t), 80, 24)
	s.choose("water.throat")
	s.write("67.95")
	s.press("enter", "right")
	require.NotEmpty(t, s.m.fault.says)
	require.Equal(t, "67.95 mm", s.value())
	s.press("left")
	require.Empty(t, s.m.fault.says)
	require.Equal(t, "67.85 mm", s.value())
}

func TestRangeEnds(t *testing.T) {
	s := newScreen(t, plover(t), 80, 24)
	s.choose("site.humidity")
	s.press("left")
	require.Contains(t, s.view(), "goes no further")
	require.False(t, s.m.unsaved())
	s.write("98")
	s.press("enter", "right")
	require.Equal(t, "100 %", s.value())
	s.press("right")
	require.Equal(t, "100 %", s.value())
	require.Contains(t, s.view(), "goes no further: its range is 0 % to 100 %")
}

func TestAnyUnit(t *testing.T) {
	for _, typed := range []string{"65psi", "0.5 MPa", "7", "450 kPa"} {
		s := newScreen(t, plover(t), 80, 24)
		s.choose("water.pressure")
		s.write(typed)
		s.press("enter")
		q, err := quantity.ParseIn(typed, quantity.Pressure, unitNamed("bar"))
		require.NoError(t, err)
		require.InDelta(t, q.Value, s.m.file().Rocket().Water.Pressure, 1e-6)
	}
}

// Another system of units is for the eye: the file keeps its own.
func TestUnitsLeaveTheFileAlone(t *testing.T) {
	s := newScreen(t, plover(t), 80, 24)
	text := s.text()
	s.press("x")
	require.Equal(t, text, s.text())
	s.choose("water.pressure")
	require.Equal(t, "130.5 psi", s.value())
	s.write("120")
	s.press("enter")
	require.InDelta(t, 120*6894.757293168, s.m.file().Rocket().Water.Pressure, 1)
	s.press("right")
	require.Equal(t, "122 psi", s.value(), "a nudge is a round step of the unit shown")
}

func TestChoicesCycle(t *testing.T) {
	s := newScreen(t, plover(t), 80, 24)
	s.choose("water.gas")
	seen := map[string]bool{}
	for range s.m.inputs.chosen().Choices {
		seen[s.value()] = true
		s.press("right")
	}
	require.Equal(t, "air", s.value())
	require.Len(t, seen, len(s.m.inputs.chosen().Choices))
	s.press("left", "right")
	require.Equal(t, "air", s.value())
}

// The number inside an opening rule is nudged, the rule is typed.
func TestRules(t *testing.T) {
	s := newScreen(t, plover(t), 80, 24)
	s.choose("canopy.main.deploy.water")
	s.press("right")
	require.Equal(t, "apogee + 1.1 s", s.value())
	s.press("enter", "ctrl+u")
	s.write("falling through 40 m")
	s.press("enter")
	require.Equal(t, "falling through 40 m", s.value())
	s.press("left")
	require.Equal(t, "falling through 35 m", s.value())
	s.press("d")
	s.choose("canopy.main.deploy.motor")
	s.press("right")
	require.Contains(t, s.view(), "has no steps")
}

// Keys repeated fast come as one message with several characters.
func TestRepeatedKeysInOneMessage(t *testing.T) {
	s := newScreen(t, plover(t), 80, 24)
	s.send(runes(">>>"))
	require.Equal(t, "45 %", s.value())
	s.send(runes("uuu"))
	require.Equal(t, "30 %", s.value())
	s.send(runes("27.5"))
	s.press("enter")
	require.Equal(t, "27.5 %", s.value())
}

// A pasted text is one text.
func TestPaste(t *testing.T) {
	s := newScreen(t, plover(t), 80, 24)
	s.press("enter", "ctrl+u")
	s.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("24 %\n\x1b[31m"), Paste: true})
	require.Equal(t, "24 % [31m", s.m.typed.line.String())
}

// Of several flights asked for only the last counts, in whatever order they
// come; the ones before are called off.
func TestStaleFlights(t *testing.T) {
	s := newScreen(t, plover(t), 80, 24)
	var contexts []context.Context
	s.m.flies = func(ctx context.Context, r *sim.Rocket, o sim.Options) (*sim.Flight, error) {
		contexts = append(contexts, ctx)
		return sim.Fly(context.WithoutCancel(ctx), r, o)
	}
	before := s.m.now
	s.hold = true
	s.press("right", "right", "right")
	require.Same(t, before, s.m.now, "the old flight stays until the new one is there")
	cmds := s.held
	s.hold, s.held = false, nil
	for _, i := range []int{1, 2, 0} {
		s.run(cmds[i])
	}
	require.Len(t, contexts, 3)
	require.Error(t, contexts[0].Err())
	require.InDelta(t, 0.33, s.m.now.flight.Rocket.Water.Fill, 1e-12)
}

// A flight that fails leaves the last good one, and is told of.
func TestFailedFlight(t *testing.T) {
	s := newScreen(t, plover(t), 80, 24)
	before := s.m.now
	s.m.flies = func(context.Context, *sim.Rocket, sim.Options) (*sim.Flight, error) {
		return nil, errors.New("the sky is closed")
	}
	s.press("right")
	require.Same(t, before, s.m.now)
	require.Contains(t, s.words(), "No flight: the sky")
	s.m.flies = sim.Fly
	s.press("right")
	require.NotContains(t, s.view(), "No flight")
}

// A flight comes out the same on the screen and by itself.
func TestSameFlightAsTheEngine(t *testing.T) {
	s := newScreen(t, plover(t), 80, 24)
	fl, err := sim.Fly(context.Background(), s.m.file().Rocket(), sim.Options{})
	require.NoError(t, err)
	require.Equal(t, fl.Results.Apogee, s.m.now.flight.Results.Apogee)
}

// The cursor that stands at an event follows it from flight to flight; one that
// was moved stays at its time.
func TestCursorFollowsItsEvent(t *testing.T) {
	s := newScreen(t, plover(t), 120, 40)
	v := s.m.view().(*flightView)
	s.press("right")
	require.InDelta(t, s.m.now.flight.Results.Apogee.Time, v.cursor.time, 1e-9)
	s.press("[")
	at := v.cursor.time
	s.press("right")
	require.Equal(t, at, v.cursor.time)
}

func TestCursorStaysInTheFlight(t *testing.T) {
	s := newScreen(t, plover(t), 120, 40)
	v := s.m.view().(*flightView)
	for range 30 {
		s.press("{")
	}
	require.Zero(t, v.cursor.time)
	for range 10 {
		s.press("e")
	}
	require.InDelta(t, s.m.now.flight.Duration(), v.cursor.time, 1e-9)
}

// No finding is cut without saying so: what has no room is counted, warnings
// are the last to go.
func TestFindingsAreNeverCutSilently(t *testing.T) {
	s := newScreen(t, plover(t), 80, 24)
	s.choose("rail.tilt")
	s.write("35")
	s.press("enter", "c", "C", "c", "c", "c", "c")
	list := s.m.phrases()
	lines := s.m.findingLines(80, 3)
	require.Len(t, lines, 3)
	shown := strings.Join(lines, "\n")
	hidden, pressing := 0, 0
	for i := range list {
		p := &list[i]
		switch in := strings.Contains(shown, p.piece(s.m.look, 0, false).painted); {
		case in:
			require.True(t, p.pressing(), "%s has room while warnings have none", p.Label)
		case p.pressing():
			pressing++
			fallthrough
		default:
			hidden++
		}
	}
	require.Positive(t, pressing)
	require.Contains(t, shown, fmt.Sprintf("%d more, %d of them warnings: f", hidden, pressing))
	s.press("f")
	for range 60 {
		s.press("down")
	}
	require.Contains(t, s.view(), "Local law")
}

func TestSaveAs(t *testing.T) {
	s := newScreen(t, copied(t), 80, 24)
	dir := t.TempDir()
	first := s.m.lodged.Path()
	s.press("right", "S", "ctrl+u")
	s.write(filepath.Join(dir, "other"))
	s.press("enter")
	path := filepath.Join(dir, "other.toml")
	require.FileExists(t, path)
	require.FileExists(t, filepath.Join(dir, "plover.csv"), "its curve goes with it")
	require.Equal(t, path, s.m.lodged.Path())
	require.False(t, s.m.unsaved())

	// What is undone now belongs to the new file, too.
	s.press("u")
	require.True(t, s.m.unsaved())
	s.press("ctrl+s")
	require.False(t, s.m.unsaved())
	saved, err := os.ReadFile(path)
	require.NoError(t, err)
	untouched, err := os.ReadFile(first)
	require.NoError(t, err)
	require.Equal(t, string(untouched), string(saved))
	s.press("U", "u")
	require.False(t, s.m.unsaved())

	// A file that is there is not replaced without asking.
	s.press("right", "S", "ctrl+u")
	s.write(first)
	s.press("enter")
	require.Contains(t, s.view(), "exists")
	after, err := os.ReadFile(first)
	require.NoError(t, err)
	require.Equal(t, string(untouched), string(after))
	s.press("w")
	require.Equal(t, first, s.m.lodged.Path())
	require.Contains(t, s.onDisk(), "31")
}

func TestSaveAsRules(t *testing.T) {
	s := newScreen(t, copied(t), 80, 24)
	dir := t.TempDir()
	for _, c := range []struct{ typed, says string }{
		{"", "missing"}, {"   ", "missing"}, {"..", "folder"}, {dir + "/", "folder"}, {dir + "/no/", "missing"}, {dir, "folder"},
		{filepath.Join(dir, "no", "such", "folder.toml"), "no folder"},
	} {
		s.press("S", "ctrl+u")
		s.write(c.typed)
		s.press("enter")
		require.Contains(t, s.words(), c.says, "%q", c.typed)
		require.NotNil(t, s.m.asking, "%q", c.typed)
		s.press("esc")
	}
	left, err := os.ReadDir(dir)
	require.NoError(t, err)
	require.Empty(t, left)
}

func TestStarterAsksForAName(t *testing.T) {
	s := newScreen(t, rocketfile.Starter(), 80, 24)
	require.False(t, s.m.unsaved())
	s.press("right", "ctrl+s")
	require.Contains(t, s.view(), "Save as: twin-heron.toml")
	s.press("ctrl+u")
	s.write(filepath.Join(t.TempDir(), "mine.toml"))
	s.press("enter")
	require.Nil(t, s.m.asking)
	require.False(t, s.m.unsaved())
	require.Contains(t, s.view(), "mine.toml")
	s.press("right", "ctrl+s")
	require.False(t, s.m.unsaved())
}

func TestFileName(t *testing.T) {
	for in, want := range map[string]string{
		"Twin Heron": "twin-heron.toml", "": "rocket.toml", "../../x": "x.toml", "---": "rocket.toml", "Ångström 2": "ångström-2.toml",
		"a\x1b[2Jb": "a2jb.toml",
	} {
		require.Equal(t, want, fileName(in))
	}
}

func TestQuitAndStay(t *testing.T) {
	s := newScreen(t, copied(t), 80, 24)
	s.press("right", "q", "esc")
	require.False(t, s.quit)
	require.Nil(t, s.m.asking)
	s.press("right")
	require.Equal(t, "32 %", s.value())
}

// Saving on the way out goes on to quit even when it has to ask first, and
// staying on the way takes that back.
func TestQuitThroughAName(t *testing.T) {
	s := newScreen(t, rocketfile.Starter(), 80, 24)
	s.press("right", "q", "s", "esc", "ctrl+s", "ctrl+u")
	s.write(filepath.Join(t.TempDir(), "a"))
	s.press("enter")
	require.False(t, s.quit, "the first answer was taken back")

	s = newScreen(t, rocketfile.Starter(), 80, 24)
	s.press("right", "q", "s", "ctrl+u")
	s.write(filepath.Join(t.TempDir(), "a"))
	s.press("enter")
	require.True(t, s.quit)
}

// Names from a file cannot move the cursor or break the rows.
func TestOddNames(t *testing.T) {
	taken := 0
	for _, name := range []string{"雪の鶴 いち", "e\u0301\u0301\u0301", "🚀🚀🚀", "\u202eabc", strings.Repeat("long ", 60), "a\u200bb", "־x"} {
		f, err := plover(t).Set("name", name)
		if err != nil {
			continue // no rocket file can have this one
		}
		taken++
		for _, charset := range []plot.Charset{plot.Braille, plot.ASCII} {
			s := newScreen(t, f, 80, 24)
			s.m.charset = charset
			s.m.repaint(anyBackground)
			for w := 80; w < 130; w += 7 {
				s.send(tea.WindowSizeMsg{Width: w, Height: 24})
				s.checkSize()
			}
		}
	}
	require.GreaterOrEqual(t, taken, 4)
}

func TestMouse(t *testing.T) {
	s := newScreen(t, plover(t), 120, 40)
	press := func(x, y int, b tea.MouseButton) {
		s.send(tea.MouseMsg{X: x, Y: y, Button: b, Action: tea.MouseActionPress})
	}
	press(5, 5, tea.MouseButtonLeft)
	require.Equal(t, "body.diameter", s.m.inputs.chosen().Name)
	press(5, 5, tea.MouseButtonWheelDown)
	require.Equal(t, "body.mass", s.m.inputs.chosen().Name)
	v := s.m.view().(*flightView)
	before := v.cursor.time
	press(60, 12, tea.MouseButtonLeft)
	require.Less(t, v.cursor.time, before)
	press(500, 12, tea.MouseButtonLeft)
	require.InDelta(t, v.last, v.cursor.time, v.columnWidth)
	s.press("?")
	press(60, 12, tea.MouseButtonWheelDown)
	require.Equal(t, 1, s.m.page.top)
	press(60, 12, tea.MouseButtonLeft)
	press(-4, -4, tea.MouseButtonLeft)
}
