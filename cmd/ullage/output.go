package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"

	"ullage/sim/atomicfile"
	"ullage/sim/flown"
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
	return o.writeFile(s.ctx, func(w io.Writer) error { return result(interruptible{s.ctx, w}) })
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
func (o outputOptions) writeFile(ctx context.Context, result func(io.Writer) error) error {
	if err := o.refuse(); err != nil {
		return err
	}
	if info, err := os.Stat(o.Output); err == nil && !info.Mode().IsRegular() {
		return writeDevice(ctx, o.Output, result)
	}
	part, err := atomicfile.Begin(o.Output, 0o666)
	if bad := new(fs.PathError); errors.As(err, &bad) {
		return fmt.Errorf("cannot write %s: %w", o.Output, bad.Err)
	}
	if err != nil {
		return err
	}
	defer part.Discard() // gone already when all went well
	failed := result(part)
	if failed != nil && !errors.Is(failed, context.Canceled) {
		return failed
	}
	if err := o.place(part); err != nil {
		return err
	}
	if failed != nil {
		return partialError{o.Output, failed}
	}
	return nil
}

// apart refuses one name for two outputs, of which the second would replace the first.
func (o outputOptions) apart(option, name string) error {
	if name == "" || o.toStandardOutput() || !flown.SameFile(o.Output, name) {
		return nil
	}
	return badInput("-o and %s both write %s; give two names", option, name)
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

// place gives the finished file its name.
func (o outputOptions) place(part *atomicfile.File) error {
	if o.Force {
		return part.Replace()
	}
	err := part.Place()
	if errors.Is(err, fs.ErrExist) {
		return existing(o.Output)
	}
	return err
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

// writeDevice writes straight to what is not a regular file, such as a pipe, once somebody
// reads it.
func writeDevice(ctx context.Context, path string, result func(io.Writer) error) error {
	f, err := await(ctx, func() (*os.File, error) { return os.OpenFile(path, os.O_WRONLY, 0) })
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
