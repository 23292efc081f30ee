package rocketfile

import (
	"path/filepath"
	"strings"

	"ullage/sim/fault"
	"ullage/sim/rocket"
)

// Inputs lists what a user of the file can change, in the order of the screen: the [Inputs] of all that is described,
// and with them the files that the text names, which the rocket does not hold, and the inputs of sections that stand in
// the text with nothing in them yet.
func (f *File) Inputs() []Input {
	r := f.rd.rocket
	inputs := make([]Input, 0, mostInputs(r))
	for _, s := range schema() {
		if s.quiet != nil && s.quiet(r) && len(f.rd.tables[s]) == 0 {
			continue
		}
		for i := range s.count(r) {
			p := place{r, i}
			for _, row := range s.fields {
				switch {
				case row.fileOnly:
					inputs = append(inputs, f.named(s, row, p))
				case has(r, s, row):
					inputs = append(inputs, input(s, row, p))
				}
			}
		}
	}
	return inputs
}

// Find gives one of the Inputs by its dotted name. The error is a fault.List and suggests the nearest name.
func (f *File) Find(name string) (Input, error) {
	if s, row, p := resolve(f.rd.rocket, name); row != nil && row.fileOnly && p.item < s.count(f.rd.rocket) {
		return f.named(s, row, p), nil
	}
	return Find(f.rd.rocket, name)
}

// named is the input of a file that the text names.
func (f *File) named(s *section, row *field, p place) Input {
	in := input(s, row, p)
	in.Text = func(*rocket.Rocket) string { return f.textOf(in.Name) }
	alone := func() error {
		return fault.List{{Key: in.Name, Problem: "no part of a rocket, but a file that its own file names", Remedy: "change it in the file"}}
	}
	in.Set = func(*rocket.Rocket, float64) error { return alone() }
	in.SetText = func(*rocket.Rocket, string) error { return alone() }
	return in
}

// SetPath names another file, by its path from the rocket file's folder; an empty one takes the input out. A motor file
// takes the place of what the text says of a motor, as with [File.WithMotor].
func (f *File) SetPath(input, path string) (*File, error) {
	switch path = strings.TrimSpace(path); {
	case path == "":
		return f.Reset(input)
	case input == "motor.file":
		return f.WithMotor(beside(f.rd.doc.dir, filepath.ToSlash(path)))
	}
	return f.Set(input, filepath.ToSlash(path))
}

// Dir is the folder in which the files that the text names are looked for.
func (f *File) Dir() string { return f.rd.doc.dir }
