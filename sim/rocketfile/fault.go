package rocketfile

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"ullage/sim/fault"
)

// flaw is what is wrong with one value, whatever its key.
func flaw(problem, remedy string) *fault.Fault {
	return &fault.Fault{Problem: problem, Remedy: remedy}
}

// flawOf is what an error says is wrong with a quantity; nil for no error.
func flawOf(err error) *fault.Fault {
	if err == nil {
		return nil
	}
	var bad fault.Fault
	if errors.As(err, &bad) {
		return &bad
	}
	return nil
}

// maxFaults bounds the list for a file that is nothing like a rocket file.
const maxFaults = 50

// faultList gathers faults.
type faultList struct{ faults fault.List }

func (l *faultList) add(f fault.Fault) {
	if !l.full() {
		l.faults = append(l.faults, f)
	}
}

// full tells that looking further is of no use.
func (l *faultList) full() bool { return len(l.faults) >= maxFaults }

// has tells whether a key, or the table it is in, has a fault already.
func (l *faultList) has(key string) bool {
	return slices.ContainsFunc(l.faults, func(f fault.Fault) bool {
		return f.Key == key || f.Key != "" && strings.HasPrefix(key, f.Key+".")
	})
}

// sorted are the faults of one file after another, first the file named, each
// in the order of its lines; nil when there are none.
func (l *faultList) sorted(first string) error {
	if len(l.faults) == 0 {
		return nil
	}
	slices.SortStableFunc(l.faults, func(a, b fault.Fault) int {
		if a.File == b.File {
			return a.Line - b.Line
		}
		switch {
		case a.File == first:
			return -1
		case b.File == first:
			return 1
		}
		return strings.Compare(a.File, b.File)
	})
	if l.full() {
		return append(l.faults, fault.Fault{File: first, Problem: fmt.Sprintf("reading stopped after %d faults", maxFaults), Remedy: "mend these first"})
	}
	return l.faults
}
