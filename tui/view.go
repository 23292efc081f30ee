package tui

import (
	"context"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"ullage/sim/quantity"
	"ullage/sim/rocketfile"
	"ullage/tui/draw"
)

// scene is what every view shows: the rocket as it stands and how it flies.
// What it points to is never changed.
type scene struct {
	ctx     context.Context // ends with the program
	file    *rocketfile.File
	now     *outcome        // the last good flight; nil before the first
	kept    *outcome        // kept for comparison; nil when there is none
	corners *work[cornered] // go or no-go with the worst corners, often of the same flight
	units   quantity.System
	theme   *draw.Theme
}

// view is one way of looking at the rocket. It fills the room right of the
// inputs, draws when a scene, a size or a key arrives, and keeps what it drew.
// What takes longer than drawing it does in commands, whose messages all views
// receive.
type view interface {
	// name is how the help calls it.
	name() string
	// opens is the key that shows it from any other view.
	opens() key.Binding
	// keys are the bindings it answers to while it is shown.
	keys() []key.Binding
	// hints are the reminders of the bottom line while it is shown, the most
	// needed first.
	hints() []draw.Hint
	// enter tells that the user has just chosen it. A view that is about one
	// input chooses it in the list, so that the keys that change an input walk
	// along the view's curve.
	enter(m *Model)
	// resize gives it its columns and rows.
	resize(columns, rows int)
	// show gives it the scene to draw.
	show(s scene) tea.Cmd
	// press offers it a key; taken tells that the key was one of its own. It
	// may edit the rocket, say something or ask through m, as the frame does.
	press(m *Model, k tea.KeyMsg) (taken bool, cmd tea.Cmd)
	// point tells that a cell of it was pressed with the mouse.
	point(column, row int)
	// receive gives it a message that is no key.
	receive(msg tea.Msg) tea.Cmd
	// lines are its rows, painted, each of its full width.
	lines() []string
}
