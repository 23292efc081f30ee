package view

import (
	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"ullage/tui/draw"
)

// View is one way of looking at the rocket. It fills the room right of the
// inputs, draws when a scene, a size or a key arrives, and keeps what it drew.
// What takes longer than drawing it does in commands ([Work]), whose messages all
// views receive. It embeds a [Pane], which has what most have in common.
type View interface {
	// About is what it is.
	About() About
	// Keys are those it answers to while it is shown, and what they do. None of them is
	// one of the frame's that keep their meaning.
	Keys() []Key
	// Hints are the reminders of the bottom line while it is shown, the most
	// needed first.
	Hints() []draw.Hint
	// Enter tells that the user has just chosen it. A view that is about one
	// input chooses it in the list, so that the keys that change an input walk
	// along the view's curve.
	Enter(frame Frame)
	// Resize gives it its columns and rows.
	Resize(columns, rows int)
	// Show gives it the scene to draw.
	Show(s Scene) tea.Cmd
	// Press offers it a key; taken tells that the key was one of its own.
	Press(frame Frame, k tea.KeyMsg) (taken bool, cmd tea.Cmd)
	// Point tells that a cell of it was pressed with the mouse.
	Point(column, row int)
	// Receive gives it a message that is no key.
	Receive(msg tea.Msg) tea.Cmd
	// Lines are its rows, painted, each of its full width.
	Lines() []string
}

// About is what a view says of itself.
type About struct {
	Name string      // as the title and the help call it
	Open key.Binding // shows it from any other view
	Help string      // a paragraph for the page of keys
	// Whole tells that it has the whole screen, as on paper in daylight. No input is in sight then, and none is changed:
	// of the frame's keys only those answer that show something else, save or leave, so that it may have the others.
	Whole bool
}
