//go:build !unix

package study

import "time"

var begun = time.Now()

// cpuSeconds is the time so far.
func cpuSeconds() float64 { return time.Since(begun).Seconds() }
