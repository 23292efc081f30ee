// Package tui is the screen: the rocket's inputs, its flight drawn live beside
// them, and what the flight came to.
package tui

import (
	"context"
	"io"

	tea "github.com/charmbracelet/bubbletea"

	"ullage/sim/quantity"
	"ullage/sim/rocketfile"
	"ullage/tui/plot"
	"ullage/tui/quiet"
)

func init() { quiet.Restore() }

// Options say what the screen shows and how. The zero value of every field but
// File is the usual choice.
type Options struct {
	File    *rocketfile.File
	Charset plot.Charset
	NoColor bool            // attributes only, as NO_COLOR asks for
	Mouse   bool            // take the mouse, and with it the terminal's own selection
	Units   quantity.System // shown; the file keeps its own
	Input   io.Reader       // nil: the terminal
	Output  io.Writer       // nil: standard output
}

// Model is the state of the screen, a tea.Model.
type Model struct{}

// New is a screen showing the file of o.
func New(o Options) Model { return Model{} }

// Init starts the first flight.
func (m Model) Init() tea.Cmd { return nil }

// Update takes one message.
func (m Model) Update(msg tea.Msg) (tea.Model, tea.Cmd) { return m, tea.Quit }

// View is the whole screen as text.
func (m Model) View() string { return "" }

// Run shows the screen until the user quits or ctx ends.
func Run(ctx context.Context, o Options) error {
	_, err := tea.NewProgram(New(o), tea.WithContext(ctx)).Run()
	return err
}
