//go:build unix

package main

import "syscall"

// cpuSeconds is the processor time that something takes, on every core together: what else
// the machine does is not in it.
func cpuSeconds(do func()) float64 {
	now := func() float64 {
		var u syscall.Rusage
		_ = syscall.Getrusage(syscall.RUSAGE_SELF, &u)
		return float64(u.Utime.Nano()+u.Stime.Nano()) / 1e9
	}
	from := now()
	do()
	return now() - from
}
