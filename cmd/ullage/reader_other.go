//go:build !windows

package main

import (
	"errors"
	"syscall"
)

// readerLeft tells that what was written to is read no more, as when head has enough.
func readerLeft(err error) bool { return errors.Is(err, syscall.EPIPE) }
