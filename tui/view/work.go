package view

import (
	"context"
	"errors"

	tea "github.com/charmbracelet/bubbletea"
)

// Work is something a view has computed in commands, such as a curve: the last
// result there is, and whether a later one is under way. Asking again calls off
// what is under way, and what still comes of that is dropped.
type Work[T any] struct {
	Result  T
	Ready   bool  // there is a result
	Err     error // of the last that was asked for; the result before it stays
	Busy    bool  // another is under way: the result is an older rocket's
	asked   int
	callOff context.CancelFunc
}

// workMsg is what came of work that was asked for.
type workMsg[T any] struct {
	of     *Work[T]
	number int // of the request: older ones are stale
	result T
	err    error
}

// Ask starts computing anew.
func (w *Work[T]) Ask(ctx context.Context, compute func(context.Context) (T, error)) tea.Cmd {
	w.Stop()
	ctx, w.callOff = context.WithCancel(ctx)
	w.asked++
	w.Busy = true
	number, cancel := w.asked, w.callOff
	return func() tea.Msg {
		defer cancel()
		result, err := compute(ctx)
		return workMsg[T]{w, number, result, err}
	}
}

// Stop calls off what is under way.
func (w *Work[T]) Stop() {
	if w.callOff != nil {
		w.callOff()
	}
	w.callOff, w.Busy = nil, false
	w.asked++
}

// Take takes a message that may be the result asked for, and tells whether it
// was.
func (w *Work[T]) Take(msg tea.Msg) bool {
	m, ok := msg.(workMsg[T])
	if !ok || m.of != w || m.number != w.asked {
		return false
	}
	w.callOff, w.Busy = nil, false
	if errors.Is(m.err, context.Canceled) {
		return false
	}
	if w.Err = m.err; m.err == nil {
		w.Result, w.Ready = m.result, true
	}
	return true
}
