package flown

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"math"
	"os"
	"path/filepath"

	"ullage/sim/fault"
	"ullage/sim/flown/logbook"
	"ullage/sim/flown/logfile"
	"ullage/sim/quantity"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
)

// Told is how a log is to be read where it does not tell it itself, in the words of the command
// line.
type Told struct {
	Columns []string // as --column takes them
	Rate    string   // as --rate takes it
	Options
}

// Reading are the options for the reader of files.
func (t Told) Reading() (logfile.Options, error) {
	var out logfile.Options
	for _, text := range t.Columns {
		told, err := logfile.ParseColumn(text)
		if err != nil {
			return out, err
		}
		out.Columns = append(out.Columns, told)
	}
	if t.Rate != "" {
		var err error
		if out.Rate, err = logfile.ParseRate(t.Rate); err != nil {
			return out, err
		}
	}
	return out, nil
}

// For is it with what an entry of the logbook keeps of the log's columns and of its part in the log, where nothing
// else is told.
func (t Told) For(e *logbook.Entry) Told {
	if e == nil {
		return t
	}
	if len(t.Columns) == 0 && t.Rate == "" {
		t.Columns, t.Rate = e.Columns, e.Rate
	}
	if e.Heights != "" && (t.Heights == "" || t.Heights == StandardHeights) {
		t.Heights = Heights(e.Heights)
	}
	if part, err := ParseStretch(e.Part); err == nil && !(t.To > t.From) {
		t.From, t.To = part.From, part.To
	}
	return t
}

// Days is the logbook of a rocket file, for what its entries say of logs; none says anything where
// it is empty.
type Days struct {
	*logbook.Book
	folder string
}

// OpenDays opens the logbook of a file; one that is not there names no log.
func OpenDays(file *rocketfile.File) (Days, error) {
	none := Days{}
	if file.Path() == "" {
		return none, nil
	}
	path, err := BookOf(file)
	if err != nil {
		return none, err
	}
	book, err := logbook.Open(path)
	if errors.Is(err, fs.ErrNotExist) {
		return none, nil
	}
	return DaysOf(book, path), err
}

// DaysOf are those of a book that lies at a path.
func DaysOf(book *logbook.Book, path string) Days { return Days{book, filepath.Dir(path)} }

// BookOf is where a rocket's logbook is: as its file names it, else beside the file.
func BookOf(file *rocketfile.File) (string, error) {
	if file.Path() == "" {
		return "", fault.Fault{File: file.Name(), Problem: "has no name beside which a logbook could be", Remedy: "give --book FILE"}
	}
	if c := file.Rocket().Chamber; c != nil && c.Logbook != "" {
		return beside(filepath.Dir(file.Path()), c.Logbook), nil
	}
	return rocketfile.BookBeside(file.Path()), nil
}

// naming is the entry that names a log, the last of those whose part in it may be the one told; nil when
// none does.
func (d Days) naming(path string, told Options) *logbook.Entry {
	if d.Book == nil {
		return nil
	}
	for i := len(d.Entries) - 1; i >= 0; i-- {
		e := &d.Entries[i]
		if e.Log == "" || !SameFile(beside(d.folder, e.Log), path) {
			continue
		}
		part, err := ParseStretch(e.Part)
		if elsewhere := err == nil && told.To > told.From && (part.To <= told.From || part.From >= told.To); !elsewhere {
			return e
		}
	}
	return nil
}

// readable finds fault with how an entry says that its log is read.
func (d Days) readable(e *logbook.Entry) error {
	_, err := ParseHeights(e.Heights)
	bad := fault.Fault{}
	if e.Heights != "" && err != nil {
		bad = fault.In(err)[0].Of("heights", e.Heights)
	} else if _, err := ParseStretch(e.Part); e.Part != "" && err != nil {
		bad = fault.In(err)[0].Of("part", e.Part)
	}
	if bad.Problem == "" {
		return nil
	}
	bad.File, bad.Line = d.Name, e.Line
	return bad
}

// digest is that of the log that an entry names.
func (d Days) digest(e *logbook.Entry) (string, error) {
	if e.Log == "" {
		return "", fs.ErrNotExist
	}
	return logfile.DigestOf(beside(d.folder, e.Log))
}

// beside is a path as a file in a folder names it.
func beside(folder, name string) string {
	if name = filepath.FromSlash(name); filepath.IsAbs(name) {
		return name
	}
	return filepath.Join(folder, name)
}

// SameFile tells whether two paths lead to one file: by the file where both are there, else by name.
func SameFile(a, b string) bool {
	one, err := os.Stat(a)
	two, second := os.Stat(b)
	if err == nil && second == nil {
		return os.SameFile(one, two)
	}
	a, err = filepath.Abs(a)
	b, second = filepath.Abs(b)
	return err == nil && second == nil && a == b
}

// Open reads a log of a flight of a file's rocket. What the day set is the log's own: from the
// entry of the logbook that names it, with what change makes of that, else the file's. The error is
// a fault, or NoFlight.
func (d Days) Open(path string, file *rocketfile.File, told Told, change func(*rocketfile.File) (*rocketfile.File, error)) (Logged, error) {
	x, err := d.open(path, file, told, change)
	if err != nil {
		return Logged{}, err
	}
	rd, err := Read(x.log, x.rocket, x.told.Options)
	if err != nil {
		return Logged{}, err
	}
	return Logged{Reading: rd, Rocket: x.rocket, Entry: x.entry}.Dated(x.day), nil
}

// OpenStand is the same of the log of a static test.
func (d Days) OpenStand(ctx context.Context, path string, file *rocketfile.File, mount Mount, told Told, change func(*rocketfile.File) (*rocketfile.File, error)) (*Stand, error) {
	x, err := d.open(path, file, told, change)
	if err != nil {
		return nil, err
	}
	stand, err := ReadStand(ctx, x.log, x.rocket, mount, x.told.Options)
	if err != nil {
		return nil, err
	}
	*stand.Logged = stand.Logged.Dated(x.day)
	stand.Entry = x.entry
	return stand, nil
}

// opened is a log with the rocket of its day.
type opened struct {
	log    *logfile.Log
	rocket *rocket.Rocket
	entry  *logbook.Entry // nil when none names it
	told   Told
	day    string // where its settings are from, for people
}

func (d Days) open(path string, file *rocketfile.File, told Told, change func(*rocketfile.File) (*rocketfile.File, error)) (opened, error) {
	x := opened{entry: d.naming(path, told.Options), told: told, day: "as in " + file.Name()}
	if e := x.entry; e != nil {
		if err := d.readable(e); err != nil {
			return x, err
		}
		x.told = told.For(e)
		x.day = fmt.Sprintf("as entered on %s in %s", e.Date, d.Name)
	}
	options, err := x.told.Reading()
	if err != nil {
		return x, err
	}
	flies, err := AsEntered(file, x.entry)
	if err != nil {
		return x, err
	}
	if flies, err = change(flies); err != nil {
		return x, err
	}
	x.rocket = flies.Rocket()
	x.log, err = logfile.Open(path, options)
	return x, err
}

// AsEntered is a rocket file with the settings of an entry of its logbook; the file as it is where
// there is no entry.
func AsEntered(file *rocketfile.File, e *logbook.Entry) (*rocketfile.File, error) {
	if e == nil {
		return file, nil
	}
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
	if wind, _ := r.Wind.Surface(); wind > 0 { // of layers, which that is no input of
		set("wind.factor", r.Wind.Scale()*e.Wind/wind)
	}
	if len(changes) == 0 {
		return file, nil
	}
	changed, err := file.SetAll(changes...)
	if err != nil {
		return nil, fmt.Errorf("the entry of %s: %w", e.Date, err)
	}
	return changed, nil
}
