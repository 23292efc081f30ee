package main

import (
	"context"
	"errors"
	"fmt"
	"io"

	"ullage/sim/quantity"
	"ullage/sim/report/words"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
)

// studyOptions are common to the commands that fly a rocket many times.
type studyOptions struct {
	setOptions
	unitsOption
	outputOptions
}

// study are the options of the study, which tells the bar how far it is.
func (o studyOptions) study(bar *progress) study.Options {
	return study.Options{Progress: bar.update}
}

// stream sends a result where the options say, as write does, but leaves it to the
// result when to stop: one that was interrupted can still be brought to a good end.
// Interrupted before there was anything to write, it leaves no file.
func (o outputOptions) stream(s *streams, result func(io.Writer) error) error {
	var out *counted
	counting := func(w io.Writer) error {
		rows := newBatch(w)
		out = &counted{w: rows}
		err := result(out)
		if bad := rows.Flush(); bad != nil && !errors.Is(err, bad) {
			err = errors.Join(bad, err)
		}
		if out.n == 0 && errors.Is(err, context.Canceled) {
			return errNothingYet
		}
		return err
	}
	var err error
	if o.toStandardOutput() {
		err = counting(s.out)
	} else if err = o.spare(s); err == nil {
		err = o.writeFile(s.ctx, counting)
	}
	var partial partialError
	switch {
	case errors.Is(err, errNothingYet):
		return context.Canceled
	case errors.Is(err, context.Canceled) && !errors.As(err, &partial):
		return partialError{"the output", err}
	}
	return err
}

// errNothingYet is an interrupt that came before there was anything to keep.
var errNothingYet = errors.New("nothing was computed yet")

// counted counts what is written.
type counted struct {
	w io.Writer
	n int64
}

func (c *counted) Write(b []byte) (int, error) {
	n, err := c.w.Write(b)
	c.n += int64(n)
	return n, err
}

func (o outputOptions) toStandardOutput() bool { return o.Output == "" || o.Output == "-" }

// tellBeyond says on standard error what a form for programs has no room for: that no proof is
// for the pressure. The other forms say so themselves.
func (o unitsOption) tellBeyond(s *streams, r *rocket.Rocket) {
	if text := words.In(o.system()).Beyond(r); text != "" {
		tellLines(s, []string{text})
	}
}

func tellLines(s *streams, lines []string) {
	for _, text := range lines {
		fmt.Fprintln(s.err, text)
	}
}

// bar is a progress bar where there is someone to look at it. It stays away when the
// rows themselves go to the terminal as they come.
func (o outputOptions) bar(s *streams, rows bool) *progress {
	if !isTerminal(s.err) || rows && o.toStandardOutput() && isTerminal(s.out) {
		return nil
	}
	return newProgress(s.err)
}

// units are the units that a file uses for some inputs.
func units[T any](f *rocketfile.File, of []T, input func(T) rocketfile.Input) []quantity.Unit {
	out := make([]quantity.Unit, len(of))
	for i, x := range of {
		out[i] = f.Unit(input(x).Name)
	}
	return out
}
