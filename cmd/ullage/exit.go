package main

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"

	"ullage/sim/fault"
	"ullage/tui"
)

// The exit statuses.
const (
	statusDone        = 0
	statusCheckFailed = 1
	statusInput       = 2 // bad input or usage
	statusFailed      = 3 // any other failure
	statusInterrupted = 130
)

// statusHelp is the statuses as help tells them.
const statusHelp = "0 done, 1 a check failed or could not be judged, or nothing was learned, 2 bad input or usage, 3 any other failure, 130 interrupted"

// inputError is what the user gave that cannot be used.
type inputError struct{ err error }

func (e inputError) Error() string { return e.err.Error() }
func (e inputError) Unwrap() error { return e.err }

// badInput makes an inputError of a message.
func badInput(format string, args ...any) error { return inputError{fmt.Errorf(format, args...)} }

// status is the exit status that an error of a command calls for.
func status(err error) int {
	var input inputError
	var bad fault.Fault
	switch {
	case err == nil, readerLeft(err):
		return statusDone // the reader has all it wanted
	case errors.Is(err, context.Canceled):
		return statusInterrupted
	case isFailedCheck(err):
		return statusCheckFailed
	case errors.As(err, &input), errors.As(err, &bad):
		return statusInput
	}
	return statusFailed
}

// finish tells the user of an error and gives the status to exit with.
func finish(s *streams, err error) int {
	code := status(err)
	switch code {
	case statusDone:
	case statusInterrupted:
		fmt.Fprintln(s.err, interruption(err))
	default:
		fmt.Fprintln(s.err, message(err))
	}
	return code
}

// interruption says that the user interrupted, and what became of a result.
func interruption(err error) string {
	var p partialError
	if errors.As(err, &p) {
		return "ullage: interrupted; " + p.Error()
	}
	var screen tui.Interrupted
	if errors.As(err, &screen) && (screen.Kept || screen.Err != nil) {
		return "ullage: interrupted; " + screen.Error()
	}
	return "ullage: interrupted"
}

// message is an error as the user reads it: faults of a file begin with its name
// and line, as editors know them; everything else with the program's name.
func message(err error) string {
	var faults fault.List
	if errors.As(err, &faults) && slices.ContainsFunc(faults, func(f fault.Fault) bool { return f.File != "" }) {
		return err.Error()
	}
	return "ullage: " + strings.ReplaceAll(err.Error(), "\n", "\n        ")
}
