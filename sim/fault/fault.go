// Package fault is how every room tells what is wrong with a description, be it a rocket's,
// a file's, a curve's or a quantity's: where, what, and what would be right. It imports
// nothing of ours.
package fault

import (
	"errors"
	"slices"
	"strconv"
	"strings"
)

// Fault is one thing that is wrong, as plain data. Who finds it fills in what it knows:
// a check of numbers the key, a reader of texts the value, the reader of a file its place.
type Fault struct {
	File    string // as the user named it; empty when what is wrong stands in no file
	Line    int    // from 1; 0 when no line is to blame
	Key     string // dotted, as in a rocket file; empty when the whole is meant
	Value   string // as written; empty when a key is missing, or nobody wrote a value
	Problem string // what is wrong; completes a sentence that begins with the key or the value
	Remedy  string // what would be right
	Missing bool   // nothing is wrong with it, it is not there
	With    string // the other input that it is at odds with, by its dotted name; empty mostly
	Err     error  // that is behind it, such as fs.ErrNotExist; mostly nil
}

// Entry is what an entry of a list is called in a key: its name, its number from 1 when it
// has none.
func Entry(name string, i int) string {
	if name != "" {
		return name
	}
	return strconv.Itoa(i + 1)
}

// Unwrap is the error behind the fault.
func (f Fault) Unwrap() error { return f.Err }

// Of is the fault as one of a key with a value.
func (f Fault) Of(key, value string) Fault {
	f.Key, f.Value = key, value
	return f
}

// Error is one line: file:line: key = value: problem; remedy.
func (f Fault) Error() string {
	var b strings.Builder
	line := ""
	if f.Line > 0 {
		line = strconv.Itoa(f.Line)
	}
	switch {
	case f.File != "" && line != "":
		b.WriteString(f.File + ":" + line + ": ")
	case f.File != "":
		b.WriteString(f.File + ": ")
	case line != "":
		b.WriteString("line " + line + ": ")
	}
	b.WriteString(f.Key)
	if f.Key != "" && f.Value != "" {
		b.WriteString(" = ")
	}
	b.WriteString(brief(f.Value))
	if f.Key != "" || f.Value != "" {
		b.WriteString(": ")
	}
	b.WriteString(f.Problem)
	if f.Remedy != "" {
		b.WriteString("; " + f.Remedy)
	}
	return b.String()
}

// brief is a value as far as it takes to find it in a file.
func brief(value string) string {
	const most = 80
	n := 0
	for i := range value {
		if n == most {
			return value[:i] + "…"
		}
		n++
	}
	return value
}

// List is everything that is wrong, told at once.
type List []Fault

// Add adds a fault of a key.
func (l *List) Add(key, problem, remedy string) {
	*l = append(*l, Fault{Key: key, Problem: problem, Remedy: remedy})
}

// Odds adds that two inputs disagree: the key's value, and that of the other.
func (l *List) Odds(key, with, problem, remedy string) {
	*l = append(*l, Fault{Key: key, With: with, Problem: problem, Remedy: remedy})
}

// Need adds that something is missing.
func (l *List) Need(key, remedy string) {
	*l = append(*l, Fault{Key: key, Problem: "is missing", Remedy: remedy, Missing: true})
}

// Has tells whether a key has a fault.
func (l List) Has(key string) bool {
	return slices.ContainsFunc(l, func(f Fault) bool { return f.Key == key })
}

// Err is the list as an error; nil when it is empty.
func (l List) Err() error {
	if len(l) == 0 {
		return nil
	}
	return l
}

// Error has one line a fault.
func (l List) Error() string {
	lines := make([]string, len(l))
	for i, f := range l {
		lines[i] = f.Error()
	}
	return strings.Join(lines, "\n")
}

// Unwrap gives the faults one by one.
func (l List) Unwrap() []error {
	errs := make([]error, len(l))
	for i, f := range l {
		errs[i] = f
	}
	return errs
}

// In are the faults that an error tells: a List, one Fault, or, of any other error, one
// that it is behind. None for no error.
func In(err error) List {
	var list List
	var one Fault
	switch {
	case err == nil:
		return nil
	case errors.As(err, &list):
		return list
	case errors.As(err, &one):
		return List{one}
	}
	return List{{Problem: err.Error(), Err: err}}
}

// OneOf lists words of which one is meant: "a, b or c".
func OneOf[W ~string](words ...W) string {
	var b strings.Builder
	for i, w := range words {
		switch {
		case i == 0:
		case i == len(words)-1:
			b.WriteString(" or ")
		default:
			b.WriteString(", ")
		}
		b.WriteString(string(w))
	}
	return b.String()
}
