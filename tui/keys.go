package tui

import (
	"github.com/charmbracelet/bubbles/key"

	"ullage/tui/draw"
)

// KeyMap is every key of the screen, each with its help beside it.
type KeyMap struct {
	// Choosing an input.
	Up, Down, First, Last, PageUp, PageDown, NextGroup, PrevGroup key.Binding
	// Changing the chosen one.
	Less, More, FarLess, FarMore, Type, Digit, Default key.Binding
	// While a value or a name is typed.
	Accept, Leave key.Binding
	// The rocket as a whole.
	Drive, AddCanopy, RemoveCanopy, Tube, Undo, Redo key.Binding
	// The flight.
	Keep, DropKept, Span, SpanBack, Earlier, Later, FarEarlier, FarLater, NextEvent, PrevEvent key.Binding
	// Reading.
	NextView, PrevView, Findings, Units, Help key.Binding
	// The file and the program.
	Save, SaveAs, Quit, Interrupt, Suspend, Redraw key.Binding
	// Answers to a question.
	AnswerSave, AnswerDiscard, AnswerReplace, AnswerOther, AnswerReload, AnswerRestore, AnswerKeep key.Binding
}

func bind(help, says string, keys ...string) key.Binding {
	return key.NewBinding(key.WithKeys(keys...), key.WithHelp(help, says))
}

// DefaultKeys is the KeyMap that New uses.
func DefaultKeys() KeyMap {
	return KeyMap{
		Up:        bind("↑", "input above", "up"),
		Down:      bind("↓", "input below", "down"),
		First:     bind("home", "first input", "home"),
		Last:      bind("end", "last input", "end"),
		PageUp:    bind("pgup", "a page up", "pgup"),
		PageDown:  bind("pgdn", "a page down", "pgdown"),
		NextGroup: bind("tab", "next group", "tab"),
		PrevGroup: bind("shift+tab", "group before", "shift+tab"),

		Less:    bind("←", "less, or the choice before", "left"),
		More:    bind("→", "more, or the next choice", "right"),
		FarLess: bind("shift+← <", "much less", "shift+left", "<"),
		FarMore: bind("shift+→ >", "much more", "shift+right", ">"),
		Type:    bind("⏎", "type a value", "enter"),
		Digit:   bind("0-9 . -", "type a new value", "0", "1", "2", "3", "4", "5", "6", "7", "8", "9", ".", "-"),
		Default: bind("del", "back to the default", "delete", "backspace"),

		Accept: bind("⏎", "take what was typed", "enter"),
		Leave:  bind("esc", "leave, change nothing", "esc"),

		Drive:        bind("d", "water or motor", "d"),
		AddCanopy:    bind("c", "add a canopy", "c"),
		RemoveCanopy: bind("C", "remove the canopy chosen (undo brings it back)", "C"),
		Tube:         bind("t", "add or remove the launch tube", "t"),
		Undo:         bind("u", "undo", "u"),
		Redo:         bind("U ctrl+r", "redo", "U", "ctrl+r"),

		Keep:       bind("p", "keep this flight to compare with", "p"),
		DropKept:   bind("P", "drop the kept flight", "P"),
		Span:       bind("z", "longer span: thrust, ascent, whole flight", "z"),
		SpanBack:   bind("Z", "shorter span", "Z"),
		Earlier:    bind("[", "time cursor back", "["),
		Later:      bind("]", "time cursor on", "]"),
		FarEarlier: bind("{", "time cursor far back", "{"),
		FarLater:   bind("}", "time cursor far on", "}"),
		NextEvent:  bind("e", "to the next event", "e"),
		PrevEvent:  bind("E", "to the event before", "E"),

		NextView: bind("v", "next view", "v"),
		PrevView: bind("V", "view before", "V"),
		Findings: bind("f", "all findings and warnings", "f"),
		Units:    bind("x", "metric or US units", "x"),
		Help:     bind("?", "keys", "?"),

		Save:      bind("ctrl+s", "save", "ctrl+s"),
		SaveAs:    bind("S", "save under another name", "S"),
		Quit:      bind("q", "quit", "q"),
		Interrupt: bind("ctrl+c", "quit; twice without asking (unsaved edits are offered next time)", "ctrl+c"),
		Suspend:   bind("ctrl+z", "back to the shell for a while", "ctrl+z"),
		Redraw:    bind("ctrl+l", "draw the screen again", "ctrl+l"),

		AnswerSave:    bind("s", "save", "s"),
		AnswerDiscard: bind("d", "discard", "d"),
		AnswerReplace: bind("w", "write over it", "w"),
		AnswerOther:   bind("n", "another name", "n"),
		AnswerReload:  bind("r", "read it again", "r"),
		AnswerRestore: bind("r", "restore", "r"),
		AnswerKeep:    bind("esc", "leave it for later", "esc"),
	}
}

// keyGroup is a part of the help.
type keyGroup struct {
	title string
	keys  []key.Binding
}

// groups lists every binding for the help, in the order to read them.
func (k KeyMap) groups() []keyGroup {
	return []keyGroup{
		{"inputs", []key.Binding{k.Up, k.Down, k.NextGroup, k.PrevGroup, k.First, k.Last, k.PageUp, k.PageDown}},
		{"values", []key.Binding{k.Less, k.More, k.FarLess, k.FarMore, k.Digit, k.Type, k.Default}},
		{"while typing", []key.Binding{k.Accept, k.Leave}},
		{"rocket", []key.Binding{k.Drive, k.AddCanopy, k.RemoveCanopy, k.Tube, k.Undo, k.Redo}},
		{"flight", []key.Binding{k.Keep, k.DropKept, k.Span, k.SpanBack, k.Earlier, k.Later, k.FarEarlier, k.FarLater, k.NextEvent, k.PrevEvent}},
		{"reading", []key.Binding{k.NextView, k.PrevView, k.Findings, k.Units, k.Help}},
		{"file and program", []key.Binding{k.Save, k.SaveAs, k.Quit, k.Interrupt, k.Suspend, k.Redraw}},
		{"answers", []key.Binding{k.AnswerSave, k.AnswerDiscard, k.AnswerReplace, k.AnswerOther, k.AnswerReload, k.AnswerRestore, k.AnswerKeep}},
	}
}

// hints are the keys to remind of while nothing is asked or typed, the most
// needed first.
func (k KeyMap) hints() []draw.Hint {
	return []draw.Hint{
		draw.HintOf("choose", k.Up, k.Down), draw.HintOf("change", k.Less, k.More), draw.HintOf("type", k.Type),
		draw.HintOf("undo", k.Undo), draw.HintOf("view", k.NextView), draw.HintOf("keep", k.Keep), draw.HintOf("span", k.Span), draw.HintOf("time", k.Earlier, k.Later),
		draw.HintOf("drive", k.Drive), draw.HintOf("save", k.Save), draw.HintOf("findings", k.Findings),
		draw.HintOf("canopy", k.AddCanopy), draw.HintOf("tube", k.Tube), draw.HintOf("event", k.NextEvent), draw.HintOf("units", k.Units),
	}
}

// always are the reminders that stay however narrow the screen is.
func (k KeyMap) always() []draw.Hint {
	return []draw.Hint{draw.HintOf(k.Help.Help().Desc, k.Help), draw.HintOf(k.Quit.Help().Desc, k.Quit)}
}
