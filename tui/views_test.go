package tui

import (
	"regexp"
	"strings"
	"testing"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"
	"github.com/muesli/termenv"
	"github.com/stretchr/testify/require"

	"ullage/sim/long"
	"ullage/sim/rocketfile"
	"ullage/tui/draw"
	"ullage/tui/plot"
	"ullage/tui/view/viewtest"
)

// Every view says what it is, on the page of keys too; its key is nobody else's and shows
// it, and a rocket with little described is no reason to fail.
func TestEveryViewDescribesItself(t *testing.T) {
	long.Unraced(t)
	names, opens := map[string]bool{}, map[string]string{}
	for i, v := range New(Options{File: plover(t)}).views {
		about := v.About()
		require.Regexp(t, `^[a-z]+$`, about.Name)
		require.False(t, names[about.Name], about.Name)
		names[about.Name] = true
		require.Regexp(t, `(?s)^[A-Z].{80,}\.$`, about.Help, about.Name)
		require.NotEmpty(t, about.Open.Help().Desc, about.Name)
		for _, k := range about.Open.Keys() {
			require.Empty(t, opens[k], "%s and %s share %q", opens[k], about.Name, k)
			opens[k] = about.Name
		}
		for _, f := range []*rocketfile.File{plover(t), rocketfile.Starter()} {
			s := newScreen(t, f, 80, 24)
			s.press(about.Open.Keys()[0])
			require.Equal(t, i, s.m.active)
			require.Contains(t, s.view(), about.Open.Help().Key+" "+about.Name)
			s.checkSize()
			s.press("?")
			require.Contains(t, s.words(), about.Help)
		}
	}
}

// A view's keys have a help of their own and are no keys of the frame, but those of the
// flight, nor of other views; one that has the whole screen may have those of the inputs too.
func TestKeysOfViews(t *testing.T) {
	aside, whole, keys := map[string]bool{}, map[string]bool{}, DefaultKeys()
	for _, g := range keys.groups() {
		for _, b := range g.keys {
			for _, k := range b.Keys() {
				flight := g.title == "flight" && !key.Matches(keyNamed(k), keys.Keep, keys.DropKept)
				aside[k] = aside[k] || !flight && g.title != "answers"
				whole[k] = whole[k] || g.title == "reading" || g.title == "file and program"
			}
		}
	}
	all := New(Options{File: plover(t)}).views
	for _, v := range all {
		for _, k := range v.About().Open.Keys() {
			aside[k], whole[k] = true, true
		}
	}
	for _, v := range all {
		taken := aside
		if v.About().Whole {
			taken = whole
		}
		name, used := v.About().Name, map[string]bool{}
		for _, b := range v.Keys() {
			require.NotEmpty(t, b.Help().Key, name)
			require.NotEmpty(t, b.Help().Desc, name)
			for _, k := range b.Keys() {
				require.False(t, used[k], "%s: %q twice", name, k)
				used[k] = true
				require.False(t, taken[k], "%s: %q is a key of the frame or shows a view", name, k)
			}
		}
	}
}

// Where no input is in sight none is changed, whatever is pressed or pasted, and the screen is as large as ever; what shows something
// else, saves or leaves does.
func TestNoInputChangesOutOfSight(t *testing.T) {
	s := newScreenIn(t, viewtest.Heron(t), plot.Braille, 80, 24, noCorners)
	before := s.text()
	s.press("R")
	shown := s.m.active
	for _, g := range DefaultKeys().groups() {
		for _, b := range g.keys {
			if g.title == "reading" || g.title == "file and program" || g.title == "answers" || g.title == "while typing" {
				continue
			}
			for _, k := range b.Keys() {
				s.press(k)
				s.checkSize()
				require.Equal(t, before, s.text(), k)
				require.Equal(t, shown, s.m.active, k)
				require.Nil(t, s.m.typed, k)
			}
		}
	}
	s.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("12 bar"), Paste: true})
	require.Nil(t, s.m.typed)
	s.press("d")
	require.Contains(t, s.view(), "No input is changed from here")
	s.m.pointer = true
	s.send(tea.MouseMsg{X: 3, Y: 5, Button: tea.MouseButtonWheelDown, Action: tea.MouseActionPress})
	s.press("x")
	require.Contains(t, s.view(), "psi")
	s.press("q") // nothing to save: it ends
	require.True(t, s.quit)
	s.press("esc")
	require.NotEqual(t, shown, s.m.active)
}

// All of the screen is black on white then, title and keys too, and nothing of it once it is left.
func TestSunlitScreen(t *testing.T) {
	s := newScreenIn(t, viewtest.Heron(t), plot.Braille, 80, 24, noCorners)
	s.m.profile, s.m.colour = termenv.TrueColor, true
	s.m.repaint(draw.DarkBackground)
	ground := regexp.MustCompile(`48;2;(255;255;255|0;0;0)m`)
	s.press("R")
	for i, row := range strings.Split(s.view(), "\n") {
		require.Regexp(t, ground, row, "row %d", i)
	}
	s.press("esc")
	require.NotRegexp(t, ground, s.view())
}
