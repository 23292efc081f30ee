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

// inPlace does jobs 0 to n−1 on the workers and hands their results to take, on the
// caller's goroutine and in order. Results stand in a ring of fixed length: a worker
// that would overtake it waits instead, so that memory does not grow with n, and a job finds
// in its result's place what an earlier job left there, whose memory it may use again. It
// stops at the first error of do, take or the context and returns that.
//
// newDo makes the work of one worker, with what that worker keeps to itself.
func inPlace[T any](ctx context.Context, n int, o Options, newDo func() func(ctx context.Context, i int, result *T) error, take func(i int, result *T) error) error {
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
				s.err = do(within, i, &s.result)
				s.ready <- struct{}{}
				runtime.Gosched() // what a key of the screen asks for goes first
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
		err := s.err
		if err == nil {
			err = take(i, &s.result)
		}
		if err != nil {
			return err
		}
		room <- struct{}{}
		report.done(i + 1)
	}
	return nil
}

// inOrder is inPlace for results that are kept, of workers that keep nothing to themselves.
func inOrder[T any](ctx context.Context, n int, o Options, do func(ctx context.Context, i int) (T, error), take func(i int, result T) error) error {
	newDo := func() func(context.Context, int, *T) error {
		return func(ctx context.Context, i int, result *T) (err error) {
			*result, err = do(ctx, i)
			return err
		}
	}
	return inPlace(ctx, n, o, newDo, func(i int, result *T) error { return take(i, *result) })
}

// flightsAJob bounds the flights of one job: one alone is little work to hand over.
const flightsAJob = 16

// jobs parts n flights into jobs of so many, few enough that every worker has its share of a
// short row.
func (o Options) jobs(n int) (jobs, each int) {
	each = max(1, min(flightsAJob, n/(16*o.workers(n))))
	return (n + each - 1) / each, each
}

// inFlights tells the progress of jobs in flights.
func (o Options) inFlights(n, each int) Options {
	if tell := o.Progress; tell != nil {
		o.Progress = func(done, _ int) { tell(min(done*each, n), n) }
	}
	return o
}

// Collect does jobs 0 to n−1 on the workers and gives their results in order: as many as
// there are, when it ends early.
func Collect[T any](ctx context.Context, n int, o Options, do func(ctx context.Context, i int) (T, error)) ([]T, error) {
	results := make([]T, 0, n)
	err := inOrder(ctx, n, o, do, func(_ int, result T) error {
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
