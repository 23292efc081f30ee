package tui

import (
	"context"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/require"

	"ullage/sim/gates"
	"ullage/sim/golden"
	"ullage/sim/long"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
	"ullage/tui/draw"
	"ullage/tui/plot"
	"ullage/tui/view/viewtest"
)

// runes is a key message of characters.
func runes(s string) tea.KeyMsg { return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(s)} }

// named are the keys a test calls by name.
var named = map[string]tea.KeyMsg{
	"up": {Type: tea.KeyUp}, "down": {Type: tea.KeyDown}, "left": {Type: tea.KeyLeft}, "right": {Type: tea.KeyRight},
	"shift+left": {Type: tea.KeyShiftLeft}, "shift+right": {Type: tea.KeyShiftRight},
	"home": {Type: tea.KeyHome}, "end": {Type: tea.KeyEnd}, "pgup": {Type: tea.KeyPgUp}, "pgdown": {Type: tea.KeyPgDown},
	"tab": {Type: tea.KeyTab}, "shift+tab": {Type: tea.KeyShiftTab}, "enter": {Type: tea.KeyEnter}, "esc": {Type: tea.KeyEsc},
	"backspace": {Type: tea.KeyBackspace}, "delete": {Type: tea.KeyDelete}, "space": {Type: tea.KeySpace, Runes: []rune{' '}},
	"ctrl+s": {Type: tea.KeyCtrlS}, "ctrl+r": {Type: tea.KeyCtrlR}, "ctrl+c": {Type: tea.KeyCtrlC},
	"ctrl+z": {Type: tea.KeyCtrlZ}, "ctrl+l": {Type: tea.KeyCtrlL}, "ctrl+u": {Type: tea.KeyCtrlU},
}

func keyNamed(name string) tea.KeyMsg {
	if k, ok := named[name]; ok {
		return k
	}
	return runes(name)
}

// screen drives a Model as the program does, commands run at once.
type screen struct {
	t    testing.TB
	m    Model
	quit bool
	hold bool      // keep commands back
	held []tea.Cmd // the ones kept back
}

// plover is the rocket of the tests.
func plover(t testing.TB) *rocketfile.File {
	t.Helper()
	f, err := rocketfile.Open(filepath.Join("testdata", "plover.toml"))
	require.NoError(t, err)
	return f
}

// copied is a rocket file of the tests in a folder of its own.
func copied(t testing.TB) *rocketfile.File {
	t.Helper()
	dir := t.TempDir()
	for _, name := range []string{"plover.toml", "plover.csv"} {
		data, err := os.ReadFile(filepath.Join("testdata", name))
		require.NoError(t, err)
		require.NoError(t, os.WriteFile(filepath.Join(dir, name), data, 0o600))
	}
	f, err := rocketfile.Open(filepath.Join(dir, "plover.toml"))
	require.NoError(t, err)
	return f
}

// newScreen shows a rocket, calm air and day judged and no corners: most tests are of
// something else.
func newScreen(t testing.TB, f *rocketfile.File, w, h int) *screen {
	t.Helper()
	return newScreenIn(t, f, plot.Braille, w, h, noCorners)
}

func newScreenIn(t testing.TB, f *rocketfile.File, charset plot.Charset, w, h int, judges judge) *screen {
	t.Helper()
	s := &screen{t: t, m: New(Options{File: f, Charset: charset, Output: io.Discard, Clock: viewtest.Day})}
	s.m.judges = judges
	s.run(s.m.Init())
	s.send(tea.WindowSizeMsg{Width: w, Height: h})
	return s
}

// noCorners leaves out what follows a flight on the screen some frames later.
func noCorners(context.Context, *rocket.Rocket, gates.Options) (gates.Verdict, error) {
	return gates.Verdict{}, context.Canceled
}

// verdicts are those of the tests' rockets.
var verdicts = viewtest.Verdicts{}

// judged has corners and remedies looked at now, and from now on.
func (s *screen) judged() {
	s.m.judges = verdicts.Of(s.text)
	s.run(s.m.weigh())
}

func (s *screen) send(msg tea.Msg) {
	m, cmd := s.m.Update(msg)
	s.m = m.(Model)
	s.run(cmd)
}

// run runs a command and sends what it gives. Timers are not waited for.
func (s *screen) run(cmd tea.Cmd) {
	if cmd == nil {
		return
	}
	if s.hold {
		s.held = append(s.held, cmd)
		return
	}
	switch msg := cmd().(type) {
	case nil, keepMsg:
	case tea.BatchMsg:
		for _, c := range msg {
			s.run(c)
		}
	case tea.QuitMsg:
		s.quit = true
	default:
		s.send(msg)
	}
}

// runNow runs commands that were held back; what those ask for is held still.
func (s *screen) runNow(cmds []tea.Cmd) {
	for _, c := range cmds {
		if c == nil {
			continue
		}
		switch msg := c().(type) {
		case nil, keepMsg:
		case tea.BatchMsg:
			s.runNow(msg)
		default:
			s.send(msg)
		}
	}
}

// press presses keys by name, others as characters.
func (s *screen) press(keys ...string) {
	for _, k := range keys {
		s.send(keyNamed(k))
	}
}

// write types a text, character by character.
func (s *screen) write(text string) {
	for _, r := range text {
		if r == ' ' {
			s.press("space")
		} else {
			s.send(runes(string(r)))
		}
	}
}

func (s *screen) view() string { return s.m.View() }

// checkSize holds that the screen is exactly as large as the terminal.
func (s *screen) checkSize() {
	s.t.Helper()
	lines := strings.Split(s.view(), "\n")
	require.Len(s.t, lines, s.m.layout.height)
	for i, l := range lines {
		require.Equal(s.t, s.m.layout.width, draw.Width(l), "row %d: %q", i, l)
	}
}

// golden compares the screen with a file, blanks at the ends of rows aside.
func (s *screen) golden(name string) {
	s.t.Helper()
	s.checkSize()
	lines := strings.Split(s.view(), "\n")
	for i := range lines {
		lines[i] = strings.TrimRight(lines[i], " ")
	}
	golden.Equal(s.t, name+".golden", strings.Join(lines, "\n")+"\n")
}

func TestTooSmall(t *testing.T) {
	s := newScreen(t, plover(t), 60, 10)
	require.Contains(t, s.view(), "80 by 24")
	require.Contains(t, s.view(), "60 by 10")
	for w := range 12 {
		for h := range 6 {
			s.send(tea.WindowSizeMsg{Width: w, Height: h})
			for _, l := range strings.Split(s.view(), "\n") {
				require.LessOrEqual(t, draw.Width(l), max(w, 0))
			}
		}
	}
	s.send(tea.WindowSizeMsg{Width: 80, Height: 24})
	s.checkSize()
	s.send(tea.WindowSizeMsg{Width: 30, Height: 8})
	s.press("q")
	require.True(t, s.quit)
}

// What a terminal claims beyond any window takes no room, and no time.
func TestTooLarge(t *testing.T) {
	s := newScreen(t, plover(t), 80, 24)
	for _, size := range [][2]int{{65535, 24}, {80, 65535}, {10000, 10000}} {
		s.send(tea.WindowSizeMsg{Width: size[0], Height: size[1]})
		rows := s.m.rows()
		require.Len(t, rows, min(size[1], mostHeight))
		require.Equal(t, min(size[0], mostWidth), draw.Width(rows[len(rows)/2]))
	}
}

// Every size from the least up is filled exactly, whatever is on the screen.
func TestSizes(t *testing.T) {
	long.Unraced(t)
	s := newScreen(t, plover(t), 80, 24)
	for _, keys := range [][]string{{}, {"p", "right"}, {"?"}, {"esc", "f"}, {"esc", "5"}, {"esc", "S"}, {"esc", "q"},
		{"esc", "w"}, {"z"}, {"esc", "n", "b"}, {"a"}, {"esc", "esc", "o"}, {"z"}, {"esc", "m"}, {"z"}, {"esc", "h", "a"}, {"z"}, {"j", "]"}, {"esc", "d"}} {
		s.press(keys...)
		for w := 80; w <= 250; w += long.Of(85, 17) {
			for h := 24; h <= 90; h += long.Of(33, 11) {
				s.send(tea.WindowSizeMsg{Width: w, Height: h})
				s.checkSize()
			}
		}
	}
}
