package main

import (
	"errors"
	"io/fs"
	"math"
	"os"
	"path/filepath"

	"ullage/sim/flown"
	"ullage/sim/flown/logbook"
	"ullage/sim/quantity"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
)

// days are the logbook beside a rocket file, for what its entries say of logs.
type days struct {
	*logbook.Book
	folder string
}

// besides opens the logbook beside a file; one that is not there names no log.
func besides(file *rocketfile.File) (days, error) {
	none := days{Book: &logbook.Book{}}
	if file.Path() == "" {
		return none, nil
	}
	path, err := bookOf(file, "")
	if err != nil {
		return none, err
	}
	book, err := logbook.Open(path)
	if errors.Is(err, fs.ErrNotExist) {
		return none, nil
	}
	return days{book, filepath.Dir(path)}, err
}

// naming is the entry that names a log; nil when none does.
func (d days) naming(path string) *logbook.Entry {
	for i := len(d.Entries) - 1; i >= 0; i-- {
		e := &d.Entries[i]
		if e.Log != "" && sameFile(beside(d.folder, e.Log), path) {
			return e
		}
	}
	return nil
}

// beside is a path as a file in a folder names it.
func beside(folder, name string) string {
	if name = filepath.FromSlash(name); filepath.IsAbs(name) {
		return name
	}
	return filepath.Join(folder, name)
}

// sameFile tells whether two paths lead to one file: by the file where both are there, else by name.
func sameFile(a, b string) bool {
	one, err := os.Stat(a)
	two, second := os.Stat(b)
	if err == nil && second == nil {
		return os.SameFile(one, two)
	}
	a, err = filepath.Abs(a)
	b, second = filepath.Abs(b)
	return err == nil && second == nil && a == b
}

// as are the options with what an entry keeps of the log's columns, where nothing else is told.
func (o logOptions) as(e *logbook.Entry) logOptions {
	if len(o.Column) == 0 && o.Rate == "" {
		o.Column, o.Rate = e.Columns, e.Rate
	}
	if e.Heights != "" && o.Height == string(flown.StandardHeights) {
		o.Height = e.Heights
	}
	return o
}

// asEntered is a rocket file with the settings of an entry.
func asEntered(file *rocketfile.File, e *logbook.Entry) (*rocketfile.File, error) {
	r := file.Rocket()
	var changes []rocketfile.Change
	set := func(name string, v float64) {
		in, err := rocketfile.Find(r, name)
		if err == nil && !math.IsNaN(v) {
			changes = append(changes, rocketfile.Change{Input: name, Value: quantity.Exact(v, in.Unit)})
		}
	}
	if r.Power == rocket.WaterPower {
		set("water.fill", e.Fill)
		set("water.pressure", e.Pressure)
		set("water.throat", e.Throat)
	} else {
		set("motor.delay", e.Delay)
	}
	if e.Rail > 0 {
		set("rail.length", e.Rail)
	}
	set("rail.tilt", e.Tilt)
	set("wind.speed", e.Wind)
	if len(changes) == 0 {
		return file, nil
	}
	changed, err := file.SetAll(changes...)
	if err != nil {
		return nil, badInput("the entry of %s: %w", e.Date, err)
	}
	return changed, nil
}
