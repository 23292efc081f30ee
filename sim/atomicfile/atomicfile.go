// Package atomicfile writes files whole or not at all.
//
// What is written goes into a file beside the one it is for, with its permissions and a
// name that begins with a dot, and takes its name at the end. It is locked for as long as
// the program writes it: what a program that was killed has left behind is not, and goes
// when the next file is written in that folder.
package atomicfile

import (
	"errors"
	"io/fs"
	"math/rand/v2"
	"os"
	"path/filepath"
	"runtime"
	"strconv"
	"strings"
)

// File is a file being written. It has to be replaced, placed or discarded.
type File struct {
	*os.File
	path string
}

// mark tells names of files being written from those of others.
const mark = ".unfinished-"

// unfinished tells whether a name is one of Begin's.
func unfinished(name string) bool {
	i := strings.LastIndex(name, mark)
	return i > 0 && name[0] == '.' && len(name) > i+len(mark) && strings.Trim(name[i+len(mark):], "0123456789abcdefghijklmnopqrstuvwxyz") == ""
}

// longestBase bounds how much of a name is taken into that of its unfinished file, bytes:
// most systems allow 255 for all of it.
const longestBase = 200

// real is what a path means: what a link points at, be that there or not.
func real(path string) string {
	if whole, err := filepath.EvalSymlinks(path); err == nil {
		return whole
	}
	const most = 40 // links to links, as systems have it
	at := path
	for range most {
		to, err := os.Readlink(at)
		if err != nil {
			return at
		}
		if !filepath.IsAbs(to) {
			to = filepath.Join(filepath.Dir(at), to)
		}
		at = to
	}
	return path
}

// Begin begins a file for a path, through a link to what it points at. It
// has the permissions of the file that is there, else mode less what the user's mask takes
// away. The error is a *fs.PathError for the path.
func Begin(path string, mode fs.FileMode) (*File, error) {
	path = real(path)
	info, err := os.Stat(path)
	there := err == nil
	if there {
		mode = info.Mode().Perm()
	}
	sweep(filepath.Dir(path))
	for tries := 0; ; tries++ {
		f, err := create(path, mode)
		if errors.Is(err, fs.ErrExist) && tries < 100 {
			continue
		}
		if err == nil && there {
			if err = f.Chmod(mode); err != nil { // whatever the mask takes away
				f.Discard()
			}
		}
		if bad := new(fs.PathError); errors.As(err, &bad) {
			err = &fs.PathError{Op: "write", Path: path, Err: bad.Err} // not the name it would have had meanwhile
		}
		if err != nil {
			return nil, err
		}
		return f, nil
	}
}

// create makes an unfinished file and locks it; fs.ErrExist when another is in its place.
func create(path string, mode fs.FileMode) (*File, error) {
	base := filepath.Base(path)
	name := "." + base[:min(len(base), longestBase)] + mark + strconv.FormatUint(rand.Uint64(), 36)
	f, err := os.OpenFile(filepath.Join(filepath.Dir(path), name), os.O_RDWR|os.O_CREATE|os.O_EXCL, mode|0o200)
	if err != nil {
		return nil, err
	}
	// Without a lock, where there are none, nobody else gets it either. Between the two
	// steps another program may have taken it for a leftover.
	err = TryLock(f)
	if _, gone := os.Lstat(f.Name()); errors.Is(err, ErrHeld) || gone != nil {
		_ = f.Close()
		return nil, fs.ErrExist
	}
	return &File{f, path}, nil
}

// sweep removes what programs that have ended left unfinished in a folder.
func sweep(dir string) {
	entries, err := os.ReadDir(dir)
	if err != nil {
		return
	}
	for _, e := range entries {
		if !e.Type().IsRegular() || !unfinished(e.Name()) {
			continue
		}
		name := filepath.Join(dir, e.Name())
		f, err := os.OpenFile(name, os.O_RDWR, 0)
		if err != nil {
			continue
		}
		stale := TryLock(f) == nil
		if runtime.GOOS == "windows" {
			_ = f.Close() // an open file cannot be removed there
		}
		if stale {
			_ = os.Remove(name)
		}
		_ = f.Close()
	}
}

// Write writes to the file. The error is a *fs.PathError for its path.
func (f *File) Write(text []byte) (int, error) {
	n, err := f.File.Write(text)
	if bad := new(fs.PathError); errors.As(err, &bad) {
		err = &fs.PathError{Op: "write", Path: f.path, Err: bad.Err} // not the name it has meanwhile
	}
	return n, err
}

// WriteString is Write.
func (f *File) WriteString(text string) (int, error) { return f.Write([]byte(text)) }

// Replace ends the file and gives it its name, in place of what has it.
func (f *File) Replace() error {
	return f.end(func() error { return os.Rename(f.Name(), f.path) })
}

// Place ends the file and gives it its name, unless another has it: fs.ErrExist.
func (f *File) Place() error {
	return f.end(func() error {
		// A link, unlike a rename, fails when a file has taken the name meanwhile; where
		// there are no links, look once more.
		err := os.Link(f.Name(), f.path)
		if err == nil {
			return nil
		}
		if _, there := os.Lstat(f.path); errors.Is(err, fs.ErrExist) || there == nil {
			return &fs.PathError{Op: "write", Path: f.path, Err: fs.ErrExist}
		}
		return os.Rename(f.Name(), f.path)
	})
}

func (f *File) end(name func() error) error {
	err := f.Sync()
	if runtime.GOOS == "windows" {
		err = errors.Join(err, f.Close()) // an open file cannot be renamed there
	}
	if err == nil {
		err = name()
	}
	f.Discard()
	if bad := new(os.LinkError); errors.As(err, &bad) {
		err = &fs.PathError{Op: "write", Path: f.path, Err: bad.Err}
	}
	return err
}

// Discard drops what is not replaced or placed.
func (f *File) Discard() {
	_ = os.Remove(f.Name())
	_ = f.Close()
}

// Write writes a text to a path, in place of what may be there.
func Write(path string, text []byte, mode fs.FileMode) error {
	f, err := Begin(path, mode)
	if err != nil {
		return err
	}
	if _, err := f.Write(text); err != nil {
		f.Discard()
		return err
	}
	return f.Replace()
}
