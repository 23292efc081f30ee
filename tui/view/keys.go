package view

import (
	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"ullage/tui/draw"
)

// Keys are the frame's keys that concern views.
type Keys struct {
	// Those that mean the same everywhere: a view reminds of some.
	Up, Down, Less, More, Type, Leave, Drive, AddCanopy, Tube, Undo, Keep, NextView, Findings, Units, Save key.Binding
	// Those of the flight: every view may give them a meaning of its own.
	Span, SpanBack, Earlier, Later, FarEarlier, FarLater, NextEvent, PrevEvent key.Binding
}

// Bind is a key with its help: how it is called, what it does, and the names it has in
// messages.
func Bind(help, says string, keys ...string) key.Binding {
	return key.NewBinding(key.WithKeys(keys...), key.WithHelp(help, says))
}

// DefaultKeys are the Keys there are.
func DefaultKeys() Keys {
	return Keys{
		Up:    Bind("↑", "input above", "up"),
		Down:  Bind("↓", "input below", "down"),
		Less:  Bind("←", "less, or the choice before", "left"),
		More:  Bind("→", "more, or the next choice", "right"),
		Type:  Bind("⏎", "type a value", "enter"),
		Leave: Bind("esc", "leave, change nothing", "esc"),

		Drive:     Bind("d", "water or motor", "d"),
		AddCanopy: Bind("c", "add a canopy", "c"),
		Tube:      Bind("t", "add or remove the launch tube", "t"),
		Undo:      Bind("u", "undo", "u"),
		Keep:      Bind("p", "keep this flight to compare with", "p"),

		NextView: Bind("v", "next view", "v"),
		Findings: Bind("f", "all findings and warnings", "f"),
		Units:    Bind("x", "metric or US units", "x"),
		Save:     Bind("ctrl+s", "save", "ctrl+s"),

		Span:       Bind("z", "longer span: thrust, ascent, whole flight", "z"),
		SpanBack:   Bind("Z", "shorter span", "Z"),
		Earlier:    Bind("[", "time cursor back", "["),
		Later:      Bind("]", "time cursor on", "]"),
		FarEarlier: Bind("{", "time cursor far back", "{"),
		FarLater:   Bind("}", "time cursor far on", "}"),
		NextEvent:  Bind("e", "to the next event", "e"),
		PrevEvent:  Bind("E", "to the event before", "E"),
	}
}

// Key is a key of a view and what it does there.
type Key struct {
	key.Binding
	Do func(frame Frame)
}

// On pairs a key with what it does.
func On(b key.Binding, do func(frame Frame)) Key { return Key{b, do} }

// Press has the first of some keys that matches do what it does; taken tells that there
// is one.
func Press(keys []Key, frame Frame, k tea.KeyMsg) (taken bool) {
	for _, one := range keys {
		if key.Matches(k, one.Binding) {
			one.Do(frame)
			return true
		}
	}
	return false
}

// Hints are the reminders of a view without keys of its own, the most needed first.
func (k Keys) Hints() []draw.Hint {
	return []draw.Hint{
		draw.HintOf("choose", k.Up, k.Down), draw.HintOf("change", k.Less, k.More), draw.HintOf("type", k.Type),
		draw.HintOf("undo", k.Undo), draw.HintOf("view", k.NextView), draw.HintOf("keep", k.Keep), draw.HintOf("span", k.Span), draw.HintOf("time", k.Earlier, k.Later),
		draw.HintOf("drive", k.Drive), draw.HintOf("findings", k.Findings),
		draw.HintOf("canopy", k.AddCanopy), draw.HintOf("tube", k.Tube), draw.HintOf("event", k.NextEvent), draw.HintOf("units", k.Units),
	}
}
