package rocketfile

import (
	"bytes"
	"errors"
	"path/filepath"
	"slices"

	"ullage/sim/fault"
	"ullage/sim/rocket"
)

// File is a rocket file. It does not change: its text is the truth, its rocket
// follows from the text, and every edit makes a new File. Several goroutines
// may use it at once.
type File struct {
	path string
	rd   *reading
	home *home      // shared by all the edits of one file
	open fault.List // what is missing and what is at odds, of a draft
}

// Open reads a rocket file and the files it names. What is wrong with them, or
// with reading them, are a fault.List.
func Open(path string) (*File, error) { return openFile(path, false) }

// OpenDraft is Open for who goes on describing the rocket: what is missing and values that
// disagree are no faults of a draft and its edits, but what [File.Unfinished] tells.
func OpenDraft(path string) (*File, error) { return openFile(path, true) }

func openFile(path string, draft bool) (*File, error) {
	text, err := fault.ReadFile(path, maxBytes, fault.Devices)
	if err != nil {
		return nil, fault.List{{File: path, Problem: fault.Reason(err), Remedy: "name a rocket file, or make one with ullage new", Err: err}}
	}
	f, err := load(path, filepath.Dir(path), text, newFiles(readBeside), draft)
	if err != nil {
		return nil, err
	}
	f.path = path
	return f, nil
}

// Read reads a rocket file from memory. Messages call it by the name; the
// files that it names are looked for in dir.
func Read(name, dir string, text []byte) (*File, error) {
	return load(name, dir, bytes.Clone(text), newFiles(readBeside), false)
}

// ReadDraft is Read for a draft.
func ReadDraft(name, dir string, text []byte) (*File, error) {
	return load(name, dir, bytes.Clone(text), newFiles(readBeside), true)
}

// load reads a text that nobody will change.
func load(name, dir string, text []byte, disk *files, draft bool) (*File, error) {
	doc, faults := parse(name, dir, text)
	if doc == nil {
		return nil, faults.sorted(name)
	}
	rd := read(doc, disk, faults, draft)
	open, err := rd.judged()
	if err != nil {
		return nil, err
	}
	return &File{rd: rd, home: &home{text: text}, open: open}, nil
}

// judged is what a reading leaves open, which only a draft may, or all that is wrong.
func (rd *reading) judged() (open fault.List, err error) {
	name := rd.doc.name
	if rd.draft && len(rd.faults.faults) == 0 {
		open, _ = rd.open.sorted(name).(fault.List)
		return open, nil
	}
	all := &faultList{}
	for _, from := range []*faultList{rd.faults, rd.open} {
		for _, f := range from.faults {
			all.add(f)
		}
	}
	return nil, all.sorted(name)
}

// with is the file with another text. Faults of the text have no line, since
// it is not on disk.
func (f *File) with(doc *document) (*File, error) {
	if bytes.Equal(doc.text, f.rd.doc.text) {
		return f, nil
	}
	faults := &faultList{}
	rd := read(doc, f.rd.disk, faults, f.rd.draft)
	open, err := rd.judged()
	var all fault.List
	if errors.As(err, &all) {
		return nil, unplaced(all, doc.name)
	}
	return &File{path: f.path, rd: rd, home: f.home, open: unplaced(open, doc.name)}, nil
}

// unplaced are faults without their places in a text that is not on disk.
func unplaced(all fault.List, name string) fault.List {
	for i := range all {
		if all[i].File == name {
			all[i].File, all[i].Line = "", 0
		}
	}
	return all
}

// Name is how messages call the file: the path as the user gave it.
func (f *File) Name() string { return f.rd.doc.name }

// Path is where the file is kept; empty for the starter and for standard input.
func (f *File) Path() string { return f.path }

// Paths are the files that the rocket is read from: its own, and the motor file,
// the thrust curve and the field's outline it names. None for what is not on disk.
func (f *File) Paths() []string {
	var paths []string
	if f.path != "" {
		paths = append(paths, f.path)
	}
	for _, named := range namedFiles {
		if path := f.Named(named); path != "" {
			paths = append(paths, path)
		}
	}
	return paths
}

// namedFiles are the inputs that name files without which a rocket is not all there.
var namedFiles = [...]string{"motor.file", "motor.curve", "field.boundary"}

// Named is the path of the file that an input names: "motor.curve". Empty where the text has none.
func (f *File) Named(input string) string {
	at, ok := f.rd.where[input]
	if !ok || at.node.kind != stringNode {
		return ""
	}
	return beside(at.doc.dir, at.node.text)
}

// Text is a copy of the file's text.
func (f *File) Text() []byte { return bytes.Clone(f.rd.doc.text) }

// Rocket is the rocket that the text describes, the caller's own copy. Its
// thrust curve is shared, since it does not change.
func (f *File) Rocket() *rocket.Rocket {
	r := f.rd.rocket.Clone()
	if f.rd.draft {
		for _, s := range f.rd.idle {
			s.drop(r)
		}
	}
	return r
}

// Described is the rocket with all that is described of it, a drive too that does not fly and is not all there.
func (f *File) Described() *rocket.Rocket { return f.rd.rocket.Clone() }

// Draft is the file as one of which something may be missing or at odds.
func (f *File) Draft() *File {
	if f.rd.draft {
		return f
	}
	rd := read(f.rd.doc, f.rd.disk, &faultList{}, true)
	open, _ := rd.judged()
	return &File{path: f.path, rd: rd, home: f.home, open: open}
}

// Missing are the inputs of a draft that have to be there and are not, by their dotted names, where the
// rocket has a place for them.
func (f *File) Missing() []string { return slices.Clone(f.rd.missed) }

// Unfinished is what is missing of a draft and which of its values disagree; nil of any other file.
func (f *File) Unfinished() fault.List { return slices.Clone(f.open) }

// Given tells whether the text, or the motor file that it names, gives an input.
func (f *File) Given(input string) bool {
	_, ok := f.rd.where[input]
	return ok
}

// Modified tells whether the text differs from what was read or saved last.
func (f *File) Modified() bool { return !f.home.holds(f.rd.doc.text) }
