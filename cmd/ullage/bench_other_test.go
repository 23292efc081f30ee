//go:build !unix

package main

import "time"

// cpuSeconds is the time that something takes.
func cpuSeconds(do func()) float64 {
	from := time.Now()
	do()
	return time.Since(from).Seconds()
}
