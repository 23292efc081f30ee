package study

import (
	"context"
	"runtime"
	"sync"
	"sync/atomic"
	"time"
)

// workers is how many of n jobs run at once.
func (o Options) workers(n int) int {
	w := o.Workers
	if w <= 0 {
		w = runtime.GOMAXPROCS(0)
	}
	return max(1, min(w, n))
}

// ahead is how many jobs each worker may be ahead of what was taken.
const ahead = 4

// inOrder does jobs 0 to n−1 on the workers and hands their results to take, on the
// caller's goroutine and in order. Results wait in a ring of fixed length: a worker
// that would overtake it waits instead, so that memory does not grow with n. It
// stops at the first error of do, take or the context and returns that.
//
// newDo makes the work of one worker, with what that worker keeps to itself.
func inOrder[T any](ctx context.Context, n int, o Options, newDo func() func(ctx context.Context, i int) (T, error), take func(i int, result T) error) error {
	if err := ctx.Err(); err != nil || n <= 0 {
		return err
	}
	type slot struct {
		result T
		err    error
		ready  chan struct{}
	}
	workers := o.workers(n)
	ring := make([]slot, ahead*workers)
	room := make(chan struct{}, len(ring))
	for i := range ring {
		ring[i].ready = make(chan struct{}, 1)
		room <- struct{}{}
	}
	within, stop := context.WithCancel(ctx)
	var next atomic.Int64
	var running sync.WaitGroup
	defer running.Wait()
	defer stop()
	for range workers {
		running.Go(func() {
			do := newDo()
			for {
				select {
				case <-room:
				case <-within.Done():
					return
				}
				i := int(next.Add(1) - 1)
				if i >= n {
					return
				}
				s := &ring[i%len(ring)]
				s.result, s.err = do(within, i)
				s.ready <- struct{}{}
			}
		})
	}
	report := newMeter(o, n)
	for i := range n {
		s := &ring[i%len(ring)]
		select {
		case <-s.ready:
		case <-ctx.Done():
			return ctx.Err()
		}
		result, err := s.result, s.err
		if err == nil {
			err = take(i, result)
		}
		if err != nil {
			return err
		}
		var none T
		s.result = none
		room <- struct{}{}
		report.done(i + 1)
	}
	return nil
}

// alike is the work of workers that keep nothing to themselves.
func alike[T any](do func(ctx context.Context, i int) (T, error)) func() func(context.Context, int) (T, error) {
	return func() func(context.Context, int) (T, error) { return do }
}

// collect does jobs 0 to n−1 on the workers and gives their results in order: as many as
// there are, when it ends early.
func collect[T any](ctx context.Context, n int, o Options, do func(ctx context.Context, i int) (T, error)) ([]T, error) {
	results := make([]T, 0, n)
	err := inOrder(ctx, n, o, alike(do), func(_ int, result T) error {
		results = append(results, result)
		return nil
	})
	return results, err
}

// meter tells the progress often enough for an eye and no oftener.
type meter struct {
	tell  func(done, total int)
	total int
	last  time.Time
}

const progressEvery = 50 * time.Millisecond

func newMeter(o Options, total int) *meter {
	return &meter{tell: o.Progress, total: total, last: time.Now()}
}

func (m *meter) done(n int) {
	if m.tell == nil {
		return
	}
	if now := time.Now(); n == m.total || now.Sub(m.last) >= progressEvery {
		m.last = now
		m.tell(n, m.total)
	}
}
