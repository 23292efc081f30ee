package rocketfile

import (
	"errors"

	"ullage/sim"
	"ullage/sim/quantity"
)

// Errors of saving. Test for them with errors.Is.
var (
	ErrNoPath  = errors.New("this rocket has no file yet; give a name to save it under")
	ErrExists  = errors.New("the file exists")
	ErrChanged = errors.New("the file was changed by someone else since it was read")
)

var errNotYet = errors.New("not there yet")

// File is a rocket file. It is immutable: its text is the truth, its rocket
// follows from the text, and every edit gives a new File.
type File struct {
	name, path string
	text       []byte
	rocket     *sim.Rocket
}

// Open reads a rocket file. The error is Faults when the content is to blame.
func Open(path string) (*File, error) { return nil, errNotYet }

// Read reads a rocket file from memory: name is how messages call it, dir is
// where the curves it names are looked for.
func Read(name, dir string, text []byte) (*File, error) { return nil, errNotYet }

// Starter is the rocket built into the program. It has no path.
func Starter() *File { return nil }

// WriteStarter writes the starter rocket to path and its curve beside it,
// never over a file that exists.
func WriteStarter(path string) error { return errNotYet }

// Name is how messages call the file: the path as the user gave it.
func (f *File) Name() string { return f.name }

// Path is where the file is kept; empty for the starter and standard input.
func (f *File) Path() string { return f.path }

// Text is a copy of the file's bytes.
func (f *File) Text() []byte { return append([]byte(nil), f.text...) }

// Rocket is the rocket the text describes, the caller's own copy.
func (f *File) Rocket() *sim.Rocket { return f.rocket }

// Given tells whether the text (or the motor file it names) has this input.
func (f *File) Given(input string) bool { return false }

// Modified tells whether the text differs from what was last read or saved.
func (f *File) Modified() bool { return false }

// Unit is the unit the file uses for an input, else the input's default.
func (f *File) Unit(input string) quantity.Unit { return quantity.Unit{} }

// Change is one edit: an input and its new value as a file would write it.
type Change struct{ Input, Value string }

// Set changes one input to a value written as in a file: 0.33, 9 bar, motor,
// apogee + 2 s.
func (f *File) Set(input, value string) (*File, error) { return nil, errNotYet }

// SetAll makes several changes as one: only the outcome has to be a valid rocket.
func (f *File) SetAll(changes ...Change) (*File, error) { return nil, errNotYet }

// SetIn is Set for a screen: a bare number takes the unit given, and is
// written in the unit the file uses.
func (f *File) SetIn(input, value string, bare quantity.Unit) (*File, error) { return nil, errNotYet }

// SetValue changes a numeric input to an SI value, written in the file's unit.
func (f *File) SetValue(input string, v float64) (*File, error) { return nil, errNotYet }

// Reset takes an input out of the text, so that its default holds.
func (f *File) Reset(input string) (*File, error) { return nil, errNotYet }

// AddCanopy adds a canopy and returns its name.
func (f *File) AddCanopy() (*File, string, error) { return nil, "", errNotYet }

// RemoveCanopy takes a canopy out of the text.
func (f *File) RemoveCanopy(name string) (*File, error) { return nil, errNotYet }

// AddTube adds a launch tube that suits the throat and the chamber.
func (f *File) AddTube() (*File, error) { return nil, errNotYet }

// RemoveTube takes the launch tube out of the text.
func (f *File) RemoveTube() (*File, error) { return nil, errNotYet }

// Save writes the text to Path, whole or not at all, and keeps its permissions.
// It fails with ErrNoPath, or with ErrChanged when the file on disk is no
// longer what was read or saved last.
func (f *File) Save() error { return errNotYet }

// SaveAs writes the text to another path; the result lives there. With
// overwrite false an existing file is ErrExists. With overwrite true whatever
// is there is replaced, changed by others or not.
func (f *File) SaveAs(path string, overwrite bool) (*File, error) { return nil, errNotYet }
