package tui

import (
	"github.com/charmbracelet/bubbles/key"

	"ullage/tui/draw"
	"ullage/tui/view"
)

// KeyMap is every key of the frame, each with its help beside it. Those that views remind
// of, or give another meaning, are among its [Keys].
type KeyMap struct {
	view.Keys
	// Choosing an input.
	First, Last, PageUp, PageDown, NextGroup, PrevGroup, Find, Lack, Fold, FoldAll key.Binding
	// Changing the chosen one.
	FarLess, FarMore, Digit, Default key.Binding
	// While a value or a name is typed.
	Accept, Complete key.Binding
	// The rocket as a whole.
	Guide, AddPart, RemovePart, MoveUp, MoveDown, Uncertain, RemoveCanopy, Redo key.Binding
	// The flight.
	DropKept key.Binding
	// Reading.
	PrevView, Help key.Binding
	// The file and the program.
	SaveAs, Quit, Interrupt, Suspend, Redraw key.Binding
	// Answers to a question.
	AnswerSave, AnswerDiscard, AnswerReplace, AnswerOther, AnswerReload, AnswerRestore, AnswerKeep key.Binding
}

// DefaultKeys is the KeyMap that New uses.
func DefaultKeys() KeyMap {
	return KeyMap{
		Keys: view.DefaultKeys(),

		First:     view.Bind("home", "first input", "home"),
		Last:      view.Bind("end", "last input", "end"),
		PageUp:    view.Bind("pgup", "a page up", "pgup"),
		PageDown:  view.Bind("pgdn", "a page down", "pgdown"),
		NextGroup: view.Bind("tab", "next group", "tab"),
		PrevGroup: view.Bind("shift+tab", "group before", "shift+tab"),
		Find:      view.Bind("/", "find an input by name, label or help; again: the next", "/"),
		Lack:      view.Bind("!", "the next input that is missing or at odds", "!"),
		Fold:      view.Bind("space", "fold or unfold the group", " "),
		FoldAll:   view.Bind("*", "fold all groups, or unfold them", "*"),

		FarLess: view.Bind("shift+← <", "much less", "shift+left", "<"),
		FarMore: view.Bind("shift+→ >", "much more", "shift+right", ">"),
		Digit:   view.Bind("0-9 . -", "type a new value", "0", "1", "2", "3", "4", "5", "6", "7", "8", "9", ".", "-"),
		Default: view.Bind("del", "back to the default", "delete", "backspace"),

		Accept:   view.Bind("⏎", "take what was typed", "enter"),
		Complete: view.Bind("tab", "complete a path", "tab"),

		Guide:        view.Bind("i", "asks for the rocket value by value, from the tube to the site", "i"),
		AddPart:      view.Bind("+", "add a part: section, fins, ply, closure, motor, …", "+"),
		RemovePart:   view.Bind("D", "remove the part that the chosen input is of (undo brings it back)", "D"),
		MoveUp:       view.Bind("(", "move it before the one above, in a list", "("),
		MoveDown:     view.Bind(")", "move it behind the one below", ")"),
		Uncertain:    view.Bind("~", "state how uncertain the chosen input is", "~"),
		RemoveCanopy: view.Bind("C", "remove the canopy chosen (undo brings it back)", "C"),
		Redo:         view.Bind("U ctrl+r", "redo", "U", "ctrl+r"),

		DropKept: view.Bind("P", "drop the kept flight", "P"),

		PrevView: view.Bind("V", "view before", "V"),
		Help:     view.Bind("?", "keys", "?"),

		SaveAs:    view.Bind("S", "save under another name", "S"),
		Quit:      view.Bind("q", "quit", "q"),
		Interrupt: view.Bind("ctrl+c", "quit; twice without asking (unsaved edits are offered next time)", "ctrl+c"),
		Suspend:   view.Bind("ctrl+z", "back to the shell for a while", "ctrl+z"),
		Redraw:    view.Bind("ctrl+l", "draw the screen again", "ctrl+l"),

		AnswerSave:    view.Bind("s", "save", "s"),
		AnswerDiscard: view.Bind("d", "discard", "d"),
		AnswerReplace: view.Bind("w", "write over it", "w"),
		AnswerOther:   view.Bind("n", "another name", "n"),
		AnswerReload:  view.Bind("r", "read it again", "r"),
		AnswerRestore: view.Bind("r", "restore", "r"),
		AnswerKeep:    view.Bind("esc", "leave it for later", "esc"),
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
		{"inputs", []key.Binding{k.Up, k.Down, k.NextGroup, k.PrevGroup, k.First, k.Last, k.PageUp, k.PageDown, k.Find, k.Lack, k.Fold, k.FoldAll}},
		{"values", []key.Binding{k.Less, k.More, k.FarLess, k.FarMore, k.Digit, k.Type, k.Default}},
		{"while typing", []key.Binding{k.Accept, k.Complete, k.Leave}},
		{"rocket", []key.Binding{k.Drive, k.Guide, k.AddPart, k.RemovePart, k.MoveUp, k.MoveDown, k.Uncertain, k.AddCanopy, k.RemoveCanopy, k.Tube, k.Undo, k.Redo}},
		{"flight", []key.Binding{k.Keep, k.DropKept, k.Span, k.SpanBack, k.Earlier, k.Later, k.FarEarlier, k.FarLater, k.NextEvent, k.PrevEvent}},
		{"reading", []key.Binding{k.NextView, k.PrevView, k.Findings, k.Units, k.Help}},
		{"file and program", []key.Binding{k.Save, k.SaveAs, k.Quit, k.Interrupt, k.Suspend, k.Redraw}},
		{"answers", []key.Binding{k.AnswerSave, k.AnswerDiscard, k.AnswerReplace, k.AnswerOther, k.AnswerReload, k.AnswerRestore, k.AnswerKeep}},
	}
}

// always are the reminders that stay however narrow the screen is, and take little of it.
func (k KeyMap) always() []draw.Hint {
	return []draw.Hint{draw.Hint{Key: "^s", Says: k.Save.Help().Desc}, draw.HintOf(k.Help.Help().Desc, k.Help), draw.HintOf(k.Quit.Help().Desc, k.Quit)}
}
