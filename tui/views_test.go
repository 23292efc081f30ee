package tui

import (
	"testing"

	"github.com/charmbracelet/bubbles/key"
	"github.com/stretchr/testify/require"

	"ullage/sim/long"
	"ullage/sim/rocketfile"
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
// flight, nor of other views.
func TestKeysOfViews(t *testing.T) {
	taken, keys := map[string]bool{}, DefaultKeys()
	for _, g := range keys.groups() {
		for _, b := range g.keys {
			for _, k := range b.Keys() {
				flight := g.title == "flight" && !key.Matches(keyNamed(k), keys.Keep, keys.DropKept)
				taken[k] = taken[k] || !flight && g.title != "answers"
			}
		}
	}
	all := New(Options{File: plover(t)}).views
	for _, v := range all {
		for _, k := range v.About().Open.Keys() {
			taken[k] = true
		}
	}
	for _, v := range all {
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
