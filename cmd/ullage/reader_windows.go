package main

import (
	"errors"
	"slices"
	"syscall"

	"golang.org/x/sys/windows"
)

// readerLeft tells that what was written to is read no more, as when more has enough.
func readerLeft(err error) bool {
	var number syscall.Errno
	return errors.As(err, &number) &&
		slices.Contains([]syscall.Errno{syscall.EPIPE, windows.ERROR_BROKEN_PIPE, windows.ERROR_NO_DATA, windows.ERROR_PIPE_NOT_CONNECTED}, number)
}
