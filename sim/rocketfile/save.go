package rocketfile

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"sync"
	"time"

	"ullage/sim/atomicfile"
	"ullage/sim/fault"
)

// Errors of saving; test for them with errors.Is.
var (
	ErrNoPath  = errors.New("the rocket has no file yet; give a name to save it under")
	ErrExists  = errors.New("it exists already; give another name, or say that it may be replaced")
	ErrChanged = errors.New("it was changed by someone else since it was read; save under another name, or say that it may be replaced")
)

const newFileMode = 0o644

// home is what is known of a file on disk. The edits of a file share it, so
// that saving one of them is not taken for a change by someone else.
type home struct {
	mu   sync.Mutex
	text []byte // that was read or written last
}

func (h *home) holds(text []byte) bool {
	h.mu.Lock()
	defer h.mu.Unlock()
	return bytes.Equal(h.text, text)
}

func (h *home) set(text []byte) {
	h.mu.Lock()
	defer h.mu.Unlock()
	h.text = text
}

// Save writes the text to Path, whole or not at all. It keeps the file's
// permissions, and writes through a symbolic link. It fails with ErrNoPath, or
// with ErrChanged when the file holds something else than was read or saved
// last.
func (f *File) Save() error {
	if f.path == "" {
		return ErrNoPath
	}
	f.home.mu.Lock()
	defer f.home.mu.Unlock()
	now, err := readBeside(f.path)
	switch {
	case errors.Is(err, fs.ErrNotExist): // nothing to lose
	case err != nil:
		return fmt.Errorf("saving %s: %s", f.path, fault.Reason(err))
	case !bytes.Equal(now, f.home.text):
		return fmt.Errorf("saving %s: %w", f.path, ErrChanged)
	}
	if err := replace(f.path, f.rd.doc.text); err != nil {
		return err
	}
	f.home.text = f.rd.doc.text
	return nil
}

// SavedAfter tells whether the file on disk was written after a moment, by whomever.
func (f *File) SavedAfter(t time.Time) bool {
	info, err := os.Stat(f.path)
	return f.path != "" && err == nil && info.ModTime().After(t)
}

// SaveAs writes the text to another path, and the thrust curve, the motor file and
// the field's outline it names beside it if they are not there. The file it returns lives there.
// Unless it may overwrite, a file that exists is ErrExists; another of those
// that exists and differs always is.
func (f *File) SaveAs(path string, overwrite bool) (*File, error) {
	text := f.rd.doc.text
	if info, err := os.Stat(path); err == nil {
		switch {
		case info.IsDir():
			return nil, fmt.Errorf("saving %s: it is a folder; give the name of a file", path)
		case !info.Mode().IsRegular():
			return nil, fmt.Errorf("saving %s: it is not a plain file; give the name of one", path)
		case !overwrite:
			return nil, fmt.Errorf("saving %s: %w", path, ErrExists)
		}
	}
	if _, err := os.Stat(filepath.Dir(path)); err != nil {
		return nil, fmt.Errorf("saving %s: there is no such folder; make it first", path)
	}
	made, err := f.copyNamed(filepath.Dir(path))
	if err == nil {
		if overwrite {
			err = replace(path, text)
		} else {
			err = create(path, text)
		}
	}
	if err != nil {
		for _, m := range made {
			os.Remove(m)
		}
		return nil, err
	}
	saved, err := openFile(path, f.rd.draft)
	if err == nil && path == f.path {
		f.home.set(text) // the edits made before are of this file too
		saved.home = f.home
	}
	return saved, err
}

// copyNamed puts the files that the text names into another folder, and
// returns those it made.
func (f *File) copyNamed(dir string) (made []string, err error) {
	for _, named := range namedFiles {
		at, ok := f.rd.where[named]
		if !ok || filepath.IsAbs(at.node.text) {
			continue
		}
		from := beside(at.doc.dir, at.node.text)
		relative, err := filepath.Rel(f.rd.doc.dir, from)
		if err != nil {
			continue
		}
		to := filepath.Join(dir, relative)
		text, err := f.rd.disk.read(from)
		if err != nil {
			continue // an idle motor
		}
		there, err := readBeside(to)
		switch {
		case err == nil && bytes.Equal(there, text):
			continue
		case err == nil:
			return made, fmt.Errorf("saving %s, which the rocket file names: %w", to, ErrExists)
		case !filepath.IsLocal(relative):
			return made, fmt.Errorf("saving: %s would not be found from there; move it there first", relative)
		}
		if err := os.MkdirAll(filepath.Dir(to), 0o755); err != nil {
			return made, fmt.Errorf("saving %s: %s", to, fault.Reason(err))
		}
		if err := create(to, text); err != nil {
			return made, err
		}
		made = append(made, to)
	}
	return made, nil
}

// replace writes a file whole or not at all, over one that may exist.
func replace(path string, text []byte) error {
	if info, err := os.Stat(path); err == nil && info.Mode().Perm()&0o200 == 0 {
		return fmt.Errorf("saving %s: the file is read-only", path)
	}
	if err := atomicfile.Write(path, text, newFileMode); err != nil {
		return unwritten(path, err)
	}
	return nil
}

// unwritten says why a file could not be written. It is written beside its place, so that
// its folder decides.
func unwritten(path string, err error) error {
	why := fault.Reason(err)
	switch {
	case errors.Is(err, fs.ErrPermission):
		why = "its folder may not be written to; save under another name"
	case errors.Is(err, fs.ErrNotExist):
		why = "its folder is gone; save under another name"
	}
	return fmt.Errorf("saving %s: %s", path, why)
}

// create writes a file whole or not at all, never over one that exists.
func create(path string, text []byte) error {
	file, err := atomicfile.Begin(path, newFileMode)
	if err == nil {
		if _, err = file.Write(text); err == nil {
			err = file.Place()
		}
		file.Discard()
	}
	switch {
	case errors.Is(err, fs.ErrExist):
		return fmt.Errorf("saving %s: %w", path, ErrExists)
	case err != nil:
		return unwritten(path, err)
	}
	return nil
}

// readBeside reads what is named by a file, or lies beside one. Only the file that a user names may be a pipe or a device.
func readBeside(path string) ([]byte, error) { return fault.ReadFile(path, maxBytes, fault.Files) }
