package view

import (
	"context"
	"errors"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/require"
)

// Of work asked for again only the last counts, the one before is called off, and till
// then the old result stays.
func TestWork(t *testing.T) {
	var w Work[int]
	var contexts []context.Context
	ask := func(result int, err error) tea.Cmd {
		return w.Ask(t.Context(), func(ctx context.Context) (int, error) {
			contexts = append(contexts, ctx)
			return result, err
		})
	}
	require.True(t, w.Take(ask(1, nil)()))
	require.True(t, w.Ready)
	require.False(t, w.Busy)
	require.Equal(t, 1, w.Result)

	first, second := ask(2, nil), ask(3, nil)
	late := first()
	require.Error(t, contexts[1].Err(), "called off")
	require.False(t, w.Take(late))
	require.True(t, w.Busy)
	require.Equal(t, 1, w.Result)
	require.True(t, w.Take(second()))
	require.Equal(t, 3, w.Result)
	require.False(t, w.Take(late))
	require.False(t, w.Take("another message"))

	broken := errors.New("it rains")
	require.True(t, w.Take(ask(4, broken)()))
	require.Equal(t, broken, w.Err)
	require.Equal(t, 3, w.Result, "the result before stays")

	require.False(t, w.Take(ask(5, context.Canceled)()), "nothing comes of what is called off")
	require.False(t, w.Busy)

	stopped := ask(6, nil)
	w.Stop()
	require.False(t, w.Busy)
	require.False(t, w.Take(stopped()))
	require.Equal(t, 3, w.Result)
}
