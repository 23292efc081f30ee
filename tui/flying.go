package tui

import (
	"context"
	"errors"

	tea "github.com/charmbracelet/bubbletea"

	"ullage/sim"
	"ullage/sim/rocket"
	"ullage/tui/view"
)

// flyer computes a flight: [sim.Fly], or what a test puts in its place.
type flyer func(context.Context, *rocket.Rocket, sim.Options) (*sim.Flight, error)

// flownMsg is what came of a flight that was asked for.
type flownMsg struct {
	number int // of the request: older ones are stale
	now    *view.Outcome
	err    error
}

// fly asks for a flight of the file as it stands and calls off the one before.
func (m *Model) fly() tea.Cmd {
	if m.unfinished() {
		return m.show() // the last good flight stays, and what is under way may still be it
	}
	if m.callOff != nil {
		m.callOff()
	}
	ctx, cancel := context.WithCancel(m.ctx)
	m.callOff = cancel
	m.asked++
	m.corners.Stop() // what was being looked at is no longer wanted, and this is
	number, file, flies, today := m.asked, m.file(), m.flies, m.clock()
	return func() tea.Msg {
		defer cancel()
		fl, err := flies(ctx, file.Rocket(), sim.Options{Keep: true})
		if err != nil {
			return flownMsg{number: number, err: err}
		}
		return flownMsg{number: number, now: view.NewOutcome(ctx, file, fl, today)}
	}
}

// flown takes the result of a flight, unless it is stale.
func (m *Model) flown(msg flownMsg) tea.Cmd {
	if msg.number != m.asked || errors.Is(msg.err, context.Canceled) {
		return nil
	}
	if msg.err != nil {
		m.crash = complaint{says: "No flight: " + view.FaultText(msg.err, "")}
		return m.weigh()
	}
	m.now, m.crash = msg.now, complaint{}
	corners := m.weigh() // before showing: what is shown says that they follow
	return tea.Batch(m.show(), corners)
}
