package study

import (
	"context"
	"errors"
	"runtime"
	"sync/atomic"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// squares does i² on the workers, those of even i slowly.
func squares(_ context.Context, i int) (int, error) {
	if i%2 == 0 {
		time.Sleep(time.Microsecond)
	}
	return i * i, nil
}

func TestInOrder(t *testing.T) {
	for _, workers := range []int{0, 1, 2, 7, 64} {
		for _, n := range []int{0, 1, 2, 63, 500} {
			var got []int
			err := inOrder(background, n, Options{Workers: workers}, squares, func(i, v int) error {
				require.Equal(t, i*i, v)
				got = append(got, i)
				return nil
			})
			require.NoError(t, err)
			require.Len(t, got, n)
			for i := range got {
				require.Equal(t, i, got[i])
			}
		}
	}
}

// Nobody may run further ahead of what is taken than the ring is long.
func TestInOrderWaits(t *testing.T) {
	const workers, n = 3, 400
	var begun, worst atomic.Int64
	err := inOrder(background, n, Options{Workers: workers},
		func(_ context.Context, i int) (int, error) { begun.Add(1); return i, nil },
		func(i, _ int) error {
			worst.Store(max(worst.Load(), begun.Load()-int64(i)))
			if i%20 == 0 {
				time.Sleep(time.Millisecond)
			}
			return nil
		})
	require.NoError(t, err)
	require.LessOrEqual(t, worst.Load(), int64(ahead*workers+1))
	require.Greater(t, worst.Load(), int64(workers))
}

func TestInOrderEnds(t *testing.T) {
	before := runtime.NumGoroutine()
	stop := errors.New("enough")
	taken := 0
	err := inOrder(background, 1000, Options{Workers: 4}, squares, func(i, _ int) error {
		if taken++; i == 10 {
			return stop
		}
		return nil
	})
	require.ErrorIs(t, err, stop)
	require.Equal(t, 11, taken)

	err = inOrder(background, 1000, Options{Workers: 4},
		func(_ context.Context, i int) (int, error) {
			if i >= 20 {
				return 0, stop
			}
			return i, nil
		},
		func(i, _ int) error { require.Less(t, i, 20); return nil })
	require.ErrorIs(t, err, stop)

	ctx, cancel := context.WithCancel(background)
	err = inOrder(ctx, 1000, Options{Workers: 4}, squares, func(i, _ int) error {
		if i == 5 {
			cancel()
		}
		return nil
	})
	require.ErrorIs(t, err, context.Canceled)
	require.ErrorIs(t, inOrder(ctx, 10, Options{}, squares, func(int, int) error { return nil }), context.Canceled)
	// Every worker has gone when inOrder returns.
	for n := 0; n < 1000 && runtime.NumGoroutine() > before; n++ {
		time.Sleep(time.Millisecond) // a goroutine that is done may still be seen
	}
	require.LessOrEqual(t, runtime.NumGoroutine(), before)
}

func TestProgress(t *testing.T) {
	var done []int
	o := Options{Workers: 2, Progress: func(n, total int) {
		require.Equal(t, 300, total)
		done = append(done, n)
	}}
	require.NoError(t, inOrder(background, 300, o, squares, func(i, _ int) error {
		if i%100 == 0 {
			time.Sleep(2 * progressEvery)
		}
		return nil
	}))
	require.IsIncreasing(t, done)
	require.Equal(t, 300, done[len(done)-1])
	require.GreaterOrEqual(t, len(done), 3)
	require.Less(t, len(done), 100, "now and then")
}
