package main

import (
	"os"
	"runtime"
	"runtime/debug"
)

// leastMemory is what the screen may take before the collector works for it: twice what it has in
// use without logs, with the runtime's own.
const leastMemory = 16 << 20 // bytes

// limitMemory has the runtime give back what a screen of a long day no longer needs, by a soft
// limit that follows what is in use, so that one that holds large logs is not collected more
// often than every program is. Who says GOGC or GOMEMLIMIT knows better.
func limitMemory() {
	if os.Getenv("GOGC") != "" || os.Getenv("GOMEMLIMIT") != "" {
		return
	}
	limit := int64(0)
	afterCollections(func() {
		var now runtime.MemStats
		runtime.ReadMemStats(&now)
		if is := limitFor(now.HeapAlloc); is != limit {
			limit = is
			debug.SetMemoryLimit(limit)
		}
	})
}

// limitFor is the limit with so many bytes in use: they may double, the runtime's own with them.
func limitFor(live uint64) int64 {
	limit := int64(leastMemory)
	for uint64(limit) < 2*live {
		limit *= 2
	}
	return limit
}

// afterCollections has a function called after every collection of garbage from now on, by one
// goroutine at a time.
func afterCollections(do func()) {
	var again func(struct{})
	watch := func() { runtime.AddCleanup(new([64]byte), again, struct{}{}) }
	again = func(struct{}) {
		do()
		watch()
	}
	watch()
}
