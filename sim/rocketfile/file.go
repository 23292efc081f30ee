package rocketfile

import (
	"bytes"
	"errors"
	"path/filepath"

	"ullage/sim/fault"
	"ullage/sim/rocket"
)

// File is a rocket file. It does not change: its text is the truth, its rocket
// follows from the text, and every edit makes a new File. Several goroutines
// may use it at once.
type File struct {
	path string
	rd   *reading
	home *home // shared by all the edits of one file
}

// Open reads a rocket file and the files it names. What is wrong with them, or
// with reading them, are a fault.List.
func Open(path string) (*File, error) {
	text, err := readFile(path, false)
	if err != nil {
		return nil, fault.List{{File: path, Problem: fault.Reason(err), Remedy: "name a rocket file, or make one with ullage new", Err: err}}
	}
	f, err := load(path, filepath.Dir(path), text, newFiles(readBeside))
	if err != nil {
		return nil, err
	}
	f.path = path
	return f, nil
}

// Read reads a rocket file from memory. Messages call it by the name; the
// files that it names are looked for in dir.
func Read(name, dir string, text []byte) (*File, error) {
	return load(name, dir, bytes.Clone(text), newFiles(readBeside))
}

// load reads a text that nobody will change.
func load(name, dir string, text []byte, disk *files) (*File, error) {
	doc, faults := parse(name, dir, text)
	if doc == nil {
		return nil, faults.sorted(name)
	}
	rd := read(doc, disk, faults)
	if err := faults.sorted(name); err != nil {
		return nil, err
	}
	return &File{rd: rd, home: &home{text: text}}, nil
}

// with is the file with another text. Faults of the text have no line, since
// it is not on disk.
func (f *File) with(doc *document) (*File, error) {
	if bytes.Equal(doc.text, f.rd.doc.text) {
		return f, nil
	}
	faults := &faultList{}
	rd := read(doc, f.rd.disk, faults)
	err := faults.sorted(doc.name)
	var all fault.List
	if errors.As(err, &all) {
		for i := range all {
			if all[i].File == doc.name {
				all[i].File, all[i].Line = "", 0
			}
		}
		return nil, all
	}
	return &File{path: f.path, rd: rd, home: f.home}, nil
}

// Name is how messages call the file: the path as the user gave it.
func (f *File) Name() string { return f.rd.doc.name }

// Path is where the file is kept; empty for the starter and for standard input.
func (f *File) Path() string { return f.path }

// Paths are the files that the rocket is read from: its own, and the motor file and
// the thrust curve it names. None for what is not on disk.
func (f *File) Paths() []string {
	var paths []string
	if f.path != "" {
		paths = append(paths, f.path)
	}
	for _, named := range []string{"motor.file", "motor.curve"} {
		if at, ok := f.rd.where[named]; ok {
			paths = append(paths, beside(at.doc.dir, at.node.text))
		}
	}
	return paths
}

// Text is a copy of the file's text.
func (f *File) Text() []byte { return bytes.Clone(f.rd.doc.text) }

// Rocket is the rocket that the text describes, the caller's own copy. Its
// thrust curve is shared, since it does not change.
func (f *File) Rocket() *rocket.Rocket { return f.rd.rocket.Clone() }

// Given tells whether the text, or the motor file that it names, gives an input.
func (f *File) Given(input string) bool {
	_, ok := f.rd.where[input]
	return ok
}

// Modified tells whether the text differs from what was read or saved last.
func (f *File) Modified() bool { return !f.home.holds(f.rd.doc.text) }
