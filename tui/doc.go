// Package tui is the screen: the rocket's inputs, its flight drawn live beside
// them, and what the flight came to.
//
// [Model] is a tea.Model. One key takes one way through it: press (press.go)
// gives the key to whatever is in front (a question, a page, a value being
// typed, the view, the frame); an edit makes a new rocket file and a place in
// the history (edits.go, history.go); a command flies a copy of the rocket
// (outcome.go) and its result, if no later one has been asked for, becomes the
// scene that the view in sight draws (view.go). A flight brings go or no-go in calm air
// and on its day with it; the worst corners and the mends follow in a command of their
// own, whatever view is shown (verdict.go). At the end of every Update the
// rows are painted (screen.go), so that View only joins them.
//
// Adding a way of looking at a rocket is adding a [view] to New: it is given
// its size, the scene and the keys that are its own, which no key of the frame
// but those of the flight may be. What takes longer than drawing it has [work]
// compute: the old result stays, marked, until the new one is there. Adding a
// key of the frame is a field of [KeyMap] with its help beside it, a place in
// its groups, and a trial in the tests. What is painted with is in package draw.
package tui
