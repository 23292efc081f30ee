// Package tui is the screen: the rocket's inputs, its flight drawn live beside
// them, and what the flight came to.
//
// [Model] is a tea.Model. One key takes one way through it: press (press.go)
// gives the key to whatever is in front (a question, a page, a value being
// typed, the view, the frame); an edit makes a new rocket file and a place in
// the history (edits.go, history.go); a command flies a copy of the rocket
// (flying.go) and its result, if no later one has been asked for, becomes the
// scene that the view in sight draws. A flight brings go or no-go in calm air
// and on its day with it; the worst corners follow in a command of their
// own, whatever view is shown (verdict.go), and mends in the view that shows them. At the end of every Update the
// rows are painted (screen.go), and package terminal writes what of them differs
// (program.go, run.go).
//
// The rooms, from top to bottom: this package is the frame, with inputs, findings, keys,
// questions, pages, saving and undo. A folder of tui/view is a way of looking at the
// rocket; package view is what all of them are, and what they may ask of the frame
// (frame.go). Package draw is what is painted with; package terminal is what the screen is
// on; package plot draws text plots and knows no terminal.
//
// Adding a view is a folder in tui/view and a line in views.go. Its keys may be none of
// the frame's but those of the flight. Adding a key of the frame is a field of [KeyMap]
// with its help beside it, or of view.Keys where views remind of it, a place in its
// groups, and a trial in the tests.
package tui
