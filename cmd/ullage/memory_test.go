package main

import (
	"runtime"
	"sync/atomic"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What is in use may always double, as without a limit.
func TestMemoryLimitFollows(t *testing.T) {
	assert.EqualValues(t, leastMemory, limitFor(0))
	assert.EqualValues(t, leastMemory, limitFor(leastMemory/2))
	for live := uint64(1); live < 1<<36; live = live*5/4 + 1 {
		limit := uint64(limitFor(live))
		assert.GreaterOrEqual(t, limit, 2*live)
		assert.LessOrEqual(t, limit, max(leastMemory, 4*live))
	}
}

func TestAfterEachCollection(t *testing.T) {
	var n atomic.Int64
	afterCollections(func() { n.Add(1) })
	for i := range int64(3) {
		runtime.GC()
		require.Eventually(t, func() bool { return n.Load() > i }, 5*time.Second, time.Millisecond)
	}
}
