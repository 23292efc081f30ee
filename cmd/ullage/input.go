package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"slices"
	"strings"
	"time"

	"ullage/sim/fault"
	"ullage/sim/quantity"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
)

// standardInput is how messages call a rocket read from "-".
const standardInput = "standard input"

// mostInput bounds what is read from standard input, bytes: far more than any
// rocket file.
const mostInput = 4 << 20

// open reads a rocket file; "-" is standard input, its curves looked for in the
// working directory.
func (s *streams) open(path string) (*rocketfile.File, error) {
	if path != "-" {
		return s.opened(s.openWith(rocketfile.Open, path))
	}
	text, err := s.readAll()
	if err != nil {
		return nil, err
	}
	f, err := rocketfile.Read(standardInput, ".", text)
	return s.opened(f, err)
}

// openOrStarter is open, or without a path the rocket built in.
func (s *streams) openOrStarter(path string) (*rocketfile.File, error) {
	if path == "" {
		return rocketfile.Starter(), nil
	}
	return s.open(path)
}

// openDraft is open for who goes on describing the rocket: it may lack anything.
func (s *streams) openDraft(path string) (*rocketfile.File, error) {
	if path == "-" {
		text, err := s.readAll()
		if err != nil {
			return nil, err
		}
		f, err := rocketfile.ReadDraft(standardInput, ".", text)
		return s.opened(f, err)
	}
	return s.opened(s.openWith(rocketfile.OpenDraft, path))
}

// openWith opens a rocket file.
func (s *streams) openWith(open func(path string) (*rocketfile.File, error), path string) (*rocketfile.File, error) {
	return waitFor(s, path, func() (*rocketfile.File, error) { return open(path) })
}

// waitFor reads what is at a path: on a disk at once, which spares a command the start of another thread, anything else, such as a
// pipe that nobody may ever write into, until the user interrupts.
func waitFor[T any](s *streams, path string, read func() (T, error)) (T, error) {
	if _, err := fault.Plain(path, fault.Files); err == nil {
		return read()
	}
	return await(s.ctx, read)
}

// opened notes which files a rocket was read from.
func (s *streams) opened(f *rocketfile.File, err error) (*rocketfile.File, error) {
	if err == nil {
		s.inputs = append(s.inputs, f.Paths()...)
	}
	return f, asInput(err)
}

// readAll reads standard input to its end, or until the user interrupts.
func (s *streams) readAll() ([]byte, error) {
	text, err := await(s.ctx, func() ([]byte, error) { return io.ReadAll(io.LimitReader(s.in, mostInput+1)) })
	if err == nil && len(text) > mostInput {
		err = badInput("%s: more than %d MB; a rocket file is much shorter", standardInput, mostInput>>20)
	}
	return text, err
}

// await is what comes of a call that may never return, such as to open a pipe, or that the
// user interrupted.
func await[T any](ctx context.Context, call func() (T, error)) (T, error) {
	type result struct {
		value T
		err   error
	}
	done := make(chan result, 1)
	go func() {
		v, err := call()
		done <- result{v, err}
	}()
	select {
	case r := <-done:
		return r.value, r.err
	case <-ctx.Done():
	}
	select {
	case r := <-done: // what takes no time is not given up
		return r.value, r.err
	case <-time.After(afterInterrupt):
		var none T
		return none, ctx.Err()
	}
}

// afterInterrupt is how long a call that the user interrupts may still take.
const afterInterrupt = 50 * time.Millisecond

// asInput marks an error of reading as one of the input.
func asInput(err error) error {
	if err == nil {
		return nil
	}
	return inputError{err}
}

// setOptions are the changes to make to a rocket before it is used.
type setOptions struct {
	modelOption

	Set []string `placeholder:"NAME=VALUE" sep:"none" help:"Change an input before the flight, as in --set water.fill=0.33 or --set 'water.pressure=9 bar'. Can be given again. ullage inputs lists the names."`
}

// open reads a rocket and makes the changes.
func (o setOptions) open(s *streams, path string) (*rocketfile.File, error) {
	file, err := s.open(path)
	if err != nil {
		return nil, err
	}
	file, err = o.apply(file)
	if err == nil {
		s.inputs = append(s.inputs, file.Paths()...) // a change may name another file
	}
	return file, err
}

// apply makes the changes, all of them as one.
func (o setOptions) apply(f *rocketfile.File) (*rocketfile.File, error) {
	if err := o.check(); err != nil {
		return nil, err
	}
	if o.Point {
		o.Set = append(slices.Clone(o.Set), pointMass(f)...)
	}
	if len(o.Set) == 0 {
		return f, nil
	}
	var changes []rocketfile.Change
	for _, text := range o.Set {
		name, value, ok := strings.Cut(text, "=")
		name, value = strings.TrimSpace(name), strings.TrimSpace(value)
		if !ok || name == "" || value == "" {
			return nil, badInput("--set %s: a name, =, and a value are needed, as in --set water.fill=0.33", text)
		}
		if name == motorFile { // in place of the motor that is there, whatever else is set of it
			with, err := f.SetPath(name, value)
			if err != nil {
				return nil, badSet(err)
			}
			f = with
			continue
		}
		changes = append(changes, rocketfile.Change{Input: name, Value: value})
	}
	changed, err := f.SetAll(changes...)
	if err != nil {
		return nil, badSet(err)
	}
	return changed, nil
}

// motorFile is the input that names a motor's file.
const motorFile = "motor.file"

// badSet is what is wrong with changes.
func badSet(err error) error {
	return badInput("--set: %s", strings.ReplaceAll(err.Error(), "\n", "\n--set: "))
}

// everythingMissing is an error of opening a rocket that is not all described, with what an answer takes besides, so
// that all of it is told at once; any other error stays as it is, as does that of a pipe, which cannot be read again.
func everythingMissing(path string, a rocket.Answer, err error) error {
	if info, bad := os.Stat(path); bad != nil || !info.Mode().IsRegular() || errors.Is(err, context.Canceled) {
		return err
	}
	f, bad := rocketfile.OpenDraft(path)
	if bad != nil || len(f.Unfinished()) == 0 {
		return err
	}
	all := f.Unfinished()
	for _, o := range f.Rocket().Check(a) {
		told := slices.ContainsFunc(all, func(t fault.Fault) bool { return t.Key == o.Key || strings.HasPrefix(o.Key, t.Key+".") })
		if o.Missing && !told {
			o.File = f.Name()
			all = append(all, o)
		}
	}
	return asInput(all.Err())
}

// unitsOption chooses the units to show.
type unitsOption struct {
	Units string `enum:"metric,us" default:"metric" placeholder:"metric|us" help:"Units to show: metric or us. Files keep their own; JSON and CSV are always SI."`
}

func (o unitsOption) system() quantity.System {
	if o.Units == "us" {
		return quantity.US
	}
	return quantity.Metric
}

// spacing is a time between samples, s.
type spacing float64

// UnmarshalText reads a time with its unit.
func (v *spacing) UnmarshalText(text []byte) error {
	q, err := quantity.Parse(string(text), quantity.Time)
	if err != nil {
		return err
	}
	if q.Value < leastSpacing {
		return fmt.Errorf("%s is too short; samples are at least %s apart", text,
			quantity.Format(leastSpacing, q.Unit, 3))
	}
	*v = spacing(q.Value)
	return nil
}

// leastSpacing is below any use: the engine finds events to about this, s.
const leastSpacing = 1e-6

// lacking is what keeps a file's rocket from an answer, all of it; nil when nothing does.
func lacking(file *rocketfile.File, faults fault.List) error {
	for i := range faults {
		faults[i].File = file.Name()
	}
	return faults.Err()
}
