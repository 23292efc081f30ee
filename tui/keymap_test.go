package tui

import (
	"os"
	"reflect"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/require"

	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
	"ullage/tui/view"
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

// said is what the view in sight says, on one line.
func (s *screen) said() string {
	return strings.Join(strings.Fields(strings.Join(s.m.view().Lines(), " ")), " ")
}

func (s *screen) text() string { return string(s.m.file().Text()) }

// keyFields are the fields of the KeyMap that are keys.
func keyFields() []reflect.StructField {
	return slices.DeleteFunc(reflect.VisibleFields(reflect.TypeOf(KeyMap{})), func(f reflect.StructField) bool { return f.Anonymous })
}

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
	for _, field := range keyFields() {
		name := field.Name
		b := v.FieldByIndex(field.Index).Interface().(key.Binding)
		require.NotEmpty(t, b.Keys(), name)
		require.NotEmpty(t, b.Help().Key, name)
		require.NotEmpty(t, b.Help().Desc, name)
		all = append(all, strings.Join(b.Keys(), " ")+": "+b.Help().Desc)
		if name == "Accept" || name == "Complete" || strings.HasPrefix(name, "Answer") {
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
	"Last": func(t *testing.T, s *screen) {
		s.press("end")
		require.Equal(t, "limits.proof_days", s.m.inputs.chosen().Name)
	},
	"NextGroup": func(t *testing.T, s *screen) {
		s.press("tab")
		require.Equal(t, "canopy main", s.m.inputs.chosen().Group)
	},
	"PrevGroup": func(t *testing.T, s *screen) {
		s.press("shift+tab")
		require.Equal(t, "body", s.m.inputs.chosen().Group)
	},
	"Find": func(t *testing.T, s *screen) {
		s.press("/")
		s.write("discharge")
		require.Equal(t, "water.discharge", s.m.inputs.chosen().Name)
		s.press("enter", "0", ".", "9", "enter")
		require.InDelta(t, 0.9, s.m.file().Rocket().Water.Discharge, 1e-12)
	},
	"Lack": func(t *testing.T, s *screen) {
		s.press("!") // the plover flies, and nothing is told of its shape
		require.Contains(t, s.words(), "for stability, card: body.length is missing")
		s.press("!")
		require.Contains(t, s.words(), "2 of ")
	},
	"Fold": func(t *testing.T, s *screen) {
		n := len(s.m.inputs.fields)
		s.press("space")
		require.Contains(t, s.words(), "water +")
		require.Less(t, len(s.m.inputs.fields), n-5)
		before := s.text()
		s.press("right") // unfolds, and changes nothing unseen
		require.Equal(t, before, s.text())
		require.Len(t, s.m.inputs.fields, n)
	},
	"FoldAll": func(t *testing.T, s *screen) {
		s.press("*")
		for _, d := range s.m.inputs.fields {
			require.Positive(t, d.folded)
		}
		s.press("*")
		require.Len(t, s.m.inputs.fields, len(s.m.inputs.all))
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
	"Complete": func(t *testing.T, s *screen) {
		t.Chdir(t.TempDir())
		for _, name := range []string{"one-may.toml", "one-june.toml", ".hidden.toml"} {
			require.NoError(t, os.WriteFile(name, nil, 0o600))
		}
		require.NoError(t, os.Mkdir("logs", 0o700))
		s.press("S", "ctrl+u", "tab")
		require.Contains(t, s.words(), "logs/ one-june.toml one-may.toml")
		require.NotContains(t, s.words(), "hidden")
		s.press("o", "tab", "m", "tab")
		require.Equal(t, "one-may.toml", s.m.asking.typed.String())
		s.press("ctrl+u", "l", "tab", "n", "tab")
		require.Equal(t, "logs/n", s.m.asking.typed.String())
		require.Contains(t, s.words(), "Nothing there begins so.")
	},
	"Leave": func(t *testing.T, s *screen) { s.press("2", "7", "esc"); require.Equal(t, "30 %", s.value()) },
	"Default": func(t *testing.T, s *screen) {
		s.choose("rail.tilt")
		s.press("delete")
		require.Equal(t, "0 deg", s.value())
		require.False(t, s.m.inputs.chosen().given)
	},
	"Drive": func(t *testing.T, s *screen) {
		s.press("d")
		require.Equal(t, rocket.MotorPower, s.m.now.Flight.Rocket.Power)
		s.press("d")
		require.Equal(t, rocket.WaterPower, s.m.now.Flight.Rocket.Power)
	},
	"Guide": func(t *testing.T, s *screen) {
		s.press("i")
		require.Contains(t, s.words(), "airframe length:")
		s.checkSize()
		s.press("1", "2", "0", "0", "enter", "esc")
		require.InDelta(t, 1.2, s.m.file().Described().Shape.Length, 1e-12)
	},
	"AddPart": func(t *testing.T, s *screen) {
		s.press("+")
		require.Contains(t, s.words(), "Add to the rocket")
		s.checkSize()
		s.write("heat")
		s.press("enter")
		require.Contains(t, s.words(), "shown on the other drive")
		s.press("+", "t", "h", "r", "enter")
		require.Equal(t, "chamber.thread.diameter", s.m.inputs.chosen().Name)
		require.Contains(t, s.words(), "Thread added")
	},
	"RemovePart": func(t *testing.T, s *screen) {
		before := s.text()
		s.press("+", "t", "h", "r", "enter", "D")
		require.Equal(t, before, s.text())
		require.Contains(t, s.words(), "Thread removed")
		s.choose("body.mass")
		s.press("D")
		require.Contains(t, s.words(), "every rocket has")
	},
	"MoveUp": func(t *testing.T, s *screen) {
		s.press("c", "(")
		require.Equal(t, "drogue", s.m.file().Rocket().Canopies[0].Name)
		require.Equal(t, "drogue", view.CanopyOf(s.m.inputs.chosen().Name))
	},
	"MoveDown": func(t *testing.T, s *screen) {
		s.press("c", "(", ")")
		require.Equal(t, "main", s.m.file().Rocket().Canopies[0].Name)
	},
	"Uncertain": func(t *testing.T, s *screen) {
		s.choose("water.fill")
		s.press("~", "2", "enter")
		require.Equal(t, "spread.water.fill", s.m.inputs.chosen().Name)
		require.Equal(t, "2 %", s.value())
		s.press("right", "3", "enter")
		require.InDelta(t, 0.03, s.m.file().Spreads()[0].SD, 1e-12)
		s.press("u")
		require.Contains(t, s.words(), "Undone: water.fill 2.1 % to 3 %")
		s.press("delete")
		require.Empty(t, s.m.file().Spreads())
	},
	"AddCanopy": func(t *testing.T, s *screen) {
		s.press("c")
		require.Len(t, s.m.now.Flight.Rocket.Canopies, 2)
		require.NotEmpty(t, view.CanopyOf(s.m.inputs.chosen().Name))
	},
	"RemoveCanopy": func(t *testing.T, s *screen) {
		s.press("C")
		require.Empty(t, s.m.now.Flight.Rocket.Canopies)
		s.press("u")
		require.Len(t, s.m.now.Flight.Rocket.Canopies, 1)
	},
	"Tube": func(t *testing.T, s *screen) {
		s.press("t")
		require.NotNil(t, s.m.now.Flight.Rocket.Water.Tube)
		require.Equal(t, "water.tube.length", s.m.inputs.chosen().Name)
		s.press("t")
		require.Nil(t, s.m.now.Flight.Rocket.Water.Tube)
	},
	"Undo": func(t *testing.T, s *screen) { s.press("right", "home", "u"); require.Equal(t, "30 %", s.value()) },
	"Redo": func(t *testing.T, s *screen) {
		s.press("right", "right", "u", "u", "U", "ctrl+r")
		require.Equal(t, "32 %", s.value())
	},
	"Keep": func(t *testing.T, s *screen) {
		s.press("p", "right")
		require.NotSame(t, s.m.kept, s.m.now)
		s.press("f") // all of the findings
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
	"PrevEvent": func(t *testing.T, s *screen) { s.press("E"); require.Contains(t, s.view(), "end of thrust at") },
	"NextEvent": func(t *testing.T, s *screen) {
		s.press("e")
		require.Contains(t, s.view(), "main at")
		require.Contains(t, s.view(), "whole flight", "the span follows the cursor")
	},
	"NextView": func(t *testing.T, s *screen) {
		for i := range s.m.views {
			require.Equal(t, i, s.m.active)
			s.press("v")
		}
		require.Zero(t, s.m.active)
	},
	"PrevView": func(t *testing.T, s *screen) {
		s.press("V")
		require.Equal(t, len(s.m.views)-1, s.m.active)
		s.press("esc")
		require.Zero(t, s.m.active)
	},
	"Findings": func(t *testing.T, s *screen) { s.press("f"); require.Contains(t, s.view(), "common practice") },
	"Units":    func(t *testing.T, s *screen) { s.press("x"); require.Contains(t, s.view(), "ft/s") },
	"Help":     func(t *testing.T, s *screen) { s.press("?", "pgdown"); require.Contains(t, s.view(), "input above") },
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
		require.Contains(t, s.commands("ctrl+z"), reflect.TypeOf(suspendMsg{}))
	},
	"Redraw": func(t *testing.T, s *screen) {
		require.Contains(t, s.commands("ctrl+l"), reflect.TypeOf(redrawMsg{}))
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
	for _, field := range keyFields() {
		name := field.Name
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
	before := s.cursor()
	s.press(k)
	return s.cursor() - before
}

// cursor is the time that the flight's cursor reads, s.
func (s *screen) cursor() float64 {
	s.t.Helper()
	read := regexp.MustCompile(`at ([0-9.]+) s`).FindStringSubmatch(s.said())
	require.NotNil(s.t, read)
	at, err := strconv.ParseFloat(read[1], 64)
	require.NoError(s.t, err)
	return at
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
	s.send(s.m.findRecord(dir)())
	s.press("3", "3", "enter")
	s.send(keepMsg{})
	require.NoError(s.t, s.m.records.keeper.Close())

	again, err := rocketfile.Open(s.m.lodged.Path())
	require.NoError(s.t, err)
	*s = *newScreen(s.t, again, 80, 24)
	s.send(s.m.findRecord(dir)())
	s.send(tea.WindowSizeMsg{Width: 80, Height: 24})
	require.Contains(s.t, s.view(), "were left behind")
	require.Contains(s.t, s.view(), "water.fill: 30 % to 33 %")
}
