package rocketfile

import (
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
}

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
	if f.Key != "" {
		b.WriteString(f.Key)
		if f.Value != "" {
			b.WriteString(" = ")
			b.WriteString(f.Value)
		}
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
