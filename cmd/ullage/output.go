package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strconv"
)

// outputOptions say where a command's result goes.
type outputOptions struct {
	Output string `short:"o" placeholder:"FILE" help:"Write to a file instead of standard output."`
	Force  bool   `help:"Let -o write over a file that exists."`
}

// write sends a result where the options say.
func (o outputOptions) write(s *streams, result func(io.Writer) error) error {
	if o.Output == "" || o.Output == "-" {
		return result(interruptible{s.ctx, s.out})
	}
	if err := o.spare(s); err != nil {
		return err
	}
	return o.writeFile(func(w io.Writer) error { return result(interruptible{s.ctx, w}) })
}

// spare refuses an output that would replace what the command read, forced or not.
func (o outputOptions) spare(s *streams) error {
	to, err := os.Stat(o.Output)
	if err != nil {
		return nil
	}
	for _, path := range s.inputs {
		if from, err := os.Stat(path); err == nil && os.SameFile(from, to) {
			return badInput("%s is what this command reads; give -o another name", o.Output)
		}
	}
	return nil
}

// writeFile writes a file whole or not at all, and not over an existing one
// unless told to. An interrupted result is kept: it holds what there was.
func (o outputOptions) writeFile(result func(io.Writer) error) error {
	if err := o.refuse(); err != nil {
		return err
	}
	path := o.Output
	mode := fs.FileMode(0o666)
	info, err := os.Stat(path)
	switch {
	case err == nil && !info.Mode().IsRegular():
		return writeDevice(path, result)
	case err == nil:
		mode = info.Mode().Perm()
		// A link stays a link; what it points at is replaced.
		if path, err = filepath.EvalSymlinks(path); err != nil {
			return err
		}
	case !errors.Is(err, fs.ErrNotExist):
		return err
	}

	part, err := createBeside(path, mode)
	if err != nil {
		return err
	}
	defer os.Remove(part.Name()) // gone already when all went well
	failed := result(part)
	if failed != nil && !errors.Is(failed, context.Canceled) {
		part.Close()
		return failed
	}
	if err := errors.Join(part.Sync(), part.Close()); err != nil {
		return err
	}
	if err := o.place(part.Name(), path); err != nil {
		return err
	}
	if failed != nil {
		return partialError{o.Output, failed}
	}
	return nil
}

// refuse tells whether the output's name cannot be used, before work that takes long.
func (o outputOptions) refuse() error {
	if o.toStandardOutput() {
		return nil
	}
	info, err := os.Stat(o.Output)
	switch {
	case err == nil && info.IsDir():
		return badInput("%s is a directory; -o needs the name of a file", o.Output)
	case err == nil && info.Mode().IsRegular() && !o.Force:
		return existing(o.Output)
	}
	return nil
}

// place gives the finished file its name. A link, unlike a rename, fails when a
// file has taken the name meanwhile; where there are no links, look once more.
func (o outputOptions) place(part, path string) error {
	if !o.Force {
		err := os.Link(part, path)
		if err == nil {
			return nil
		}
		if _, there := os.Lstat(path); errors.Is(err, fs.ErrExist) || there == nil {
			return existing(path)
		}
	}
	return os.Rename(part, path)
}

// partialError is a result that was cut short and kept.
type partialError struct {
	path string
	err  error
}

func (e partialError) Error() string { return e.path + " is partial: it holds what there was by then" }
func (e partialError) Unwrap() error { return e.err }

func existing(path string) error {
	return badInput("%s exists and is kept; --force writes over it", path)
}

// createBeside opens a new file in the directory of path.
func createBeside(path string, mode fs.FileMode) (*os.File, error) {
	for tries := 0; ; tries++ {
		name := path + "." + strconv.FormatUint(uint64(rand.Uint32()), 36) + ".part"
		f, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, mode)
		if !errors.Is(err, fs.ErrExist) || tries == 100 {
			if bad := new(fs.PathError); errors.As(err, &bad) {
				err = fmt.Errorf("cannot write %s: %w", path, bad.Err) // not the name it would have had meanwhile
			}
			return f, err
		}
	}
}

// writeDevice writes straight to what is not a regular file, such as a pipe.
func writeDevice(path string, result func(io.Writer) error) error {
	f, err := os.OpenFile(path, os.O_WRONLY, 0)
	if err != nil {
		return err
	}
	return errors.Join(result(f), f.Close())
}

// interruptible is a writer that stops when the user interrupts, once what it
// was given is written.
type interruptible struct {
	ctx context.Context
	w   io.Writer
}

func (w interruptible) Write(b []byte) (int, error) {
	n, err := w.w.Write(b)
	if err == nil {
		err = w.ctx.Err()
	}
	return n, err
}
