package tui

import (
	"context"
	"errors"

	tea "github.com/charmbracelet/bubbletea"
)

// work is something a view has computed in commands, such as a curve: the last
// result there is, and whether a later one is under way. Asking again calls off
// what is under way, and what still comes of that is dropped.
type work[T any] struct {
	result  T
	ready   bool  // there is a result
	err     error // of the last that was asked for; the result before it stays
	busy    bool  // another is under way: the result is an older rocket's
	asked   int
	callOff context.CancelFunc
}

// workMsg is what came of work that was asked for.
type workMsg[T any] struct {
	of     *work[T]
	number int // of the request: older ones are stale
	result T
	err    error
}

// ask starts computing anew.
func (w *work[T]) ask(ctx context.Context, compute func(context.Context) (T, error)) tea.Cmd {
	w.stop()
	ctx, w.callOff = context.WithCancel(ctx)
	w.asked++
	w.busy = true
	number, cancel := w.asked, w.callOff
	return func() tea.Msg {
		defer cancel()
		result, err := compute(ctx)
		return workMsg[T]{w, number, result, err}
	}
}

// stop calls off what is under way.
func (w *work[T]) stop() {
	if w.callOff != nil {
		w.callOff()
	}
	w.callOff, w.busy = nil, false
	w.asked++
}

// take takes a message that may be the result asked for, and tells whether it
// was.
func (w *work[T]) take(msg tea.Msg) bool {
	m, ok := msg.(workMsg[T])
	if !ok || m.of != w || m.number != w.asked {
		return false
	}
	w.callOff, w.busy = nil, false
	if errors.Is(m.err, context.Canceled) {
		return false
	}
	if w.err = m.err; m.err == nil {
		w.result, w.ready = m.result, true
	}
	return true
}
