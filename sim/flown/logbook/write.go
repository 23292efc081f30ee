package logbook

import (
	"errors"
	"fmt"
	"io/fs"
	"math"
	"os"
	"slices"
	"strings"

	"ullage/sim/fault"
	"ullage/sim/quantity"
)

// heading is what a new book begins with.
const heading = `# Logbook of %s. Each entry is one time that the chamber was under pressure, or a flight.
# ullage record adds entries at the end and changes none; add and correct by hand as you like.
# The kinds are %s.
`

// text is an entry as a book has it.
func (e *Entry) text() string {
	var b strings.Builder
	b.WriteString("\n[[entry]]\n")
	line := func(key, value string) { fmt.Fprintf(&b, "%-16s = %s\n", key, value) }
	for _, f := range Fields() {
		switch {
		case f.Number != nil:
			if v := *f.Number(e); !math.IsNaN(v) {
				u, _ := quantity.LookupIn(f.Unit, f.Dimension)
				line(f.Key, quoted(written(v, u)))
			}
		case f.Text != nil:
			if v := *f.Text(e); v != "" {
				line(f.Key, quoted(v))
			}
		case f.List != nil:
			var all []string
			for _, v := range *f.List(e) {
				all = append(all, quoted(v))
			}
			if len(all) > 0 {
				line(f.Key, "["+strings.Join(all, ", ")+"]")
			}
		case f.Results != nil:
			var all []string
			for name, v := range *f.Results(e) {
				all = append(all, quoted(name)+" = "+quoted(v))
			}
			if len(all) > 0 {
				slices.Sort(all)
				line(f.Key, "{ "+strings.Join(all, ", ")+" }")
			}
		}
	}
	return b.String()
}

// written is a quantity with no more digits than anybody measured.
func written(v float64, u quantity.Unit) string {
	const digits = 6
	text := quantity.Format(v, u, digits)
	figure, unit, _ := strings.Cut(text, " ")
	if strings.Contains(figure, ".") && !strings.Contains(figure, "e") {
		figure = strings.TrimRight(strings.TrimRight(figure, "0"), ".")
	}
	return strings.TrimSpace(figure + " " + unit)
}

// quoted is a text as a TOML string.
func quoted(text string) string {
	var b strings.Builder
	b.WriteByte('"')
	for _, r := range text {
		switch {
		case r == '"' || r == '\\':
			b.WriteByte('\\')
			b.WriteRune(r)
		case r < ' ' || r == 0x7f:
			fmt.Fprintf(&b, `\u%04X`, r)
		default:
			b.WriteRune(r)
		}
	}
	b.WriteByte('"')
	return b.String()
}

// Append adds an entry at the end of a book, which is made if there is none. A book that cannot be
// read takes no entry, so that nobody writes on behind a fault; what is in it stays as it is, to the last byte.
// The entry is written in one piece at the file's end, so that two who write at once lose nothing.
func Append(path, rocket string, e Entry) error {
	before, err := fault.ReadFile(path, mostBytes, fault.Files)
	switch {
	case errors.Is(err, fs.ErrNotExist):
	case err != nil:
		return unwritten(path, err)
	default:
		if _, err := Read(path, before); err != nil {
			return err
		}
	}
	text := e.text()
	if _, err := Read("", []byte(text)); err != nil {
		faults := fault.In(err)
		for i := range faults {
			faults[i].Line = 0 // of an entry that is in no book yet
		}
		return faults
	}
	if errors.Is(err, fs.ErrNotExist) {
		if err := begin(path, rocket); err != nil {
			return err
		}
	} else if n := len(before); n > 0 && before[n-1] != '\n' {
		text = "\n" + text
	}
	file, err := os.OpenFile(path, os.O_APPEND|os.O_WRONLY, 0)
	if err != nil {
		return unwritten(path, err)
	}
	_, err = file.WriteString(text) // one write: the system puts it behind whatever is there by then
	return errors.Join(err, file.Sync(), file.Close())
}

// begin makes a book, unless another did meanwhile.
func begin(path, rocket string) error {
	file, err := os.OpenFile(path, os.O_CREATE|os.O_EXCL|os.O_WRONLY|os.O_APPEND, 0o644)
	if errors.Is(err, fs.ErrExist) {
		return nil
	}
	if err != nil {
		return unwritten(path, err)
	}
	if rocket == "" {
		rocket = "a rocket without a name"
	}
	_, err = fmt.Fprintf(file, heading, strings.Join(strings.Fields(rocket), " "), strings.Join(Kinds(), ", "))
	return errors.Join(err, file.Close())
}

// unwritten is why an entry cannot be added.
func unwritten(path string, err error) error {
	why := fault.Reason(err)
	switch {
	case errors.Is(err, fs.ErrPermission):
		why = "it may not be written to"
	case errors.Is(err, fs.ErrNotExist):
		why = "there is no such folder"
	}
	return fault.List{{File: path, Problem: "nothing was added to the logbook: " + why, Remedy: "give another with --book", Err: err}}
}
