package main

import (
	"io"
	"sync"
	"time"
)

// How long what was written may wait for more of its kind, and how much of it.
const (
	batchTime = 50 * time.Millisecond
	batchSize = 16 << 10
)

// batch is a writer that hands on what comes close together in one piece: a row by itself
// costs more than the flight behind it. What comes after a pause goes at once, what comes sooner
// within batchTime. Writes stay whole.
type batch struct {
	to io.Writer

	mutex   sync.Mutex
	waiting []byte
	flushed time.Time   // when last
	alarm   *time.Timer // set while anything waits
	err     error       // the first of to, which every later Write tells
}

func newBatch(to io.Writer) *batch { return &batch{to: to} }

func (b *batch) Write(p []byte) (int, error) {
	b.mutex.Lock()
	defer b.mutex.Unlock()
	if b.err != nil {
		return 0, b.err
	}
	b.waiting = append(b.waiting, p...)
	now := time.Now()
	if pause := now.Sub(b.flushed); len(b.waiting) >= batchSize || pause >= batchTime {
		b.flush(now)
	} else if b.alarm == nil {
		b.alarm = time.AfterFunc(batchTime-pause, func() { _ = b.Flush() })
	}
	if b.err != nil {
		return 0, b.err
	}
	return len(p), nil
}

// Flush hands on what waits.
func (b *batch) Flush() error {
	b.mutex.Lock()
	defer b.mutex.Unlock()
	b.flush(time.Now())
	return b.err
}

func (b *batch) flush(now time.Time) {
	if b.alarm != nil {
		b.alarm.Stop()
		b.alarm = nil
	}
	if b.err == nil && len(b.waiting) > 0 {
		_, b.err = b.to.Write(b.waiting)
	}
	b.waiting, b.flushed = b.waiting[:0], now
}
