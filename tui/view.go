package tui

import (
	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"ullage/sim/quantity"
	"ullage/sim/rocketfile"
)

// scene is what every view shows: the rocket as it stands and how it flies.
// What it points to is never changed.
type scene struct {
	file  *rocketfile.File
	now   *outcome // the last good flight; nil before the first
	kept  *outcome // kept for comparison; nil when there is none
	units quantity.System
	look  *look
}

// view is one way of looking at the rocket. It fills the room right of the
// inputs, draws when a scene, a size or a key arrives, and keeps what it drew.
// What takes longer than drawing it does in commands, whose messages all views
// receive.
type view interface {
	// name is how the help calls it.
	name() string
	// keys are the bindings it answers to while it is shown.
	keys() []key.Binding
	// resize gives it its columns and rows.
	resize(columns, rows int)
	// show gives it the scene to draw.
	show(s scene) tea.Cmd
	// press offers it a key; taken tells that the key was one of its own.
	press(k tea.KeyMsg) (taken bool, cmd tea.Cmd)
	// point tells that a cell of it was pressed with the mouse.
	point(column, row int)
	// receive gives it a message that is no key.
	receive(msg tea.Msg) tea.Cmd
	// lines are its rows, painted, each of its full width.
	lines() []string
}
