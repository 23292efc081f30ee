package rocketfile

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// Fault is one thing wrong with a rocket file.
type Fault struct {
	File    string // as the user named it; empty when the fault is in a value not on disk
	Line    int    // from 1; 0 when no line is to blame
	Key     string // dotted, as in Inputs; empty when the whole file is meant
	Value   string // as written; empty when a key is missing
	Problem string // what is wrong
	Mend    string // what would be right
	Err     error  // that is behind it, such as fs.ErrNotExist; mostly nil
}

// Unwrap is the error behind the fault.
func (f Fault) Unwrap() error { return f.Err }

// Error is one line: file:line: key = value: problem; mend.
func (f Fault) Error() string {
	var b strings.Builder
	if f.File != "" {
		b.WriteString(f.File)
		if f.Line > 0 {
			b.WriteByte(':')
			b.WriteString(strconv.Itoa(f.Line))
		}
		b.WriteString(": ")
	}
	b.WriteString(f.Key)
	if f.Key != "" && f.Value != "" {
		b.WriteString(" = ")
	}
	b.WriteString(f.Value)
	if f.Key != "" || f.Value != "" {
		b.WriteString(": ")
	}
	b.WriteString(f.Problem)
	if f.Mend != "" {
		b.WriteString("; ")
		b.WriteString(f.Mend)
	}
	return b.String()
}

// Faults are all the faults of a file, in the order of its lines.
type Faults []Fault

// Error has one line a fault.
func (fs Faults) Error() string {
	lines := make([]string, len(fs))
	for i, f := range fs {
		lines[i] = f.Error()
	}
	return strings.Join(lines, "\n")
}

// Unwrap gives the faults one by one.
func (fs Faults) Unwrap() []error {
	errs := make([]error, len(fs))
	for i, f := range fs {
		errs[i] = f
	}
	return errs
}

// maxFaults bounds the list for a file that is nothing like a rocket file.
const maxFaults = 50

// faultList gathers faults.
type faultList struct{ faults Faults }

func (l *faultList) add(f Fault) {
	if !l.full() {
		l.faults = append(l.faults, f)
	}
}

// full tells that looking further is of no use.
func (l *faultList) full() bool { return len(l.faults) >= maxFaults }

// has tells whether a key, or the table it is in, has a fault already.
func (l *faultList) has(key string) bool {
	return slices.ContainsFunc(l.faults, func(f Fault) bool {
		return f.Key == key || f.Key != "" && strings.HasPrefix(key, f.Key+".")
	})
}

// sorted are the faults of one file after another, first the file named, each
// in the order of its lines; nil when there are none.
func (l *faultList) sorted(first string) error {
	if len(l.faults) == 0 {
		return nil
	}
	slices.SortStableFunc(l.faults, func(a, b Fault) int {
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
		return append(l.faults, Fault{File: first, Problem: fmt.Sprintf("reading stopped after %d faults", maxFaults), Mend: "mend these first"})
	}
	return l.faults
}
