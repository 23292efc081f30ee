package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"ullage/sim"
	"ullage/sim/fault"
	"ullage/sim/flown"
	"ullage/sim/flown/logbook"
	"ullage/sim/quantity"
	"ullage/sim/report/words"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
	"ullage/thrust"
)

// recordCommand adds an entry to the logbook.
type recordCommand struct {
	File string   `arg:"" placeholder:"FILE" help:"The rocket file."`
	Kind string   `arg:"" placeholder:"KIND" help:"What it was: proof, leak test, static test, flight or abort."`
	With []string `arg:"" optional:"" placeholder:"WHAT=VALUE" help:"What there is to tell, as in pressure='9 bar' held='300 s' note='wet grass'."`

	Date string `placeholder:"DAY" help:"When, as in --date 2026-05-17 or --date '2026-05-17 14:30'; today if not given."`
	Log  string `placeholder:"FILE" help:"The recorder's log of a flight or a static test; what it tells is entered beside what was predicted."`
	Book string `placeholder:"FILE" help:"The logbook; FILE's name with .logbook.toml if not given."`

	logOptions
	setOptions
}

// Help teaches by example.
func (recordCommand) Help() string {
	var keys []string
	for _, f := range logbook.Told() {
		keys = append(keys, f.Key)
	}
	return helpText(
		"Adds one dated entry to the logbook beside the rocket file: each time the chamber was under pressure, and each flight. Of a flight "+
			"fill, pressure, throat, motor, rail and wind are the file's (or --set's) unless told otherwise. What can be told: "+strings.Join(keys, ", ")+". "+
			"Older entries are never changed; correct them by hand. On a terminal what is missing is asked for.",
		"ullage record heron.toml proof pressure='16 bar' held='300 s' wall_temperature='15 degC'",
		"ullage record heron.toml 'leak test' pressure='2 bar' held='600 s' note='holds'",
		"ullage record heron.toml flight --log may.csv --set 'water.pressure=8 bar' landing='5.4 m/s'",
		"ullage record heron.toml abort pressure='4 bar' note='hose came off' --date 2026-05-17")
}

// Run gathers the entry and adds it.
func (c *recordCommand) Run(s *streams) error {
	file, err := s.open(c.File)
	if err != nil {
		return err
	}
	flies, err := c.apply(file)
	if err != nil {
		return err
	}
	path, err := bookOf(flies, c.Book)
	if err != nil {
		return err
	}
	if err := c.check(); err != nil {
		return err
	}
	if _, err := logbook.Open(path); err != nil && !errors.Is(err, fs.ErrNotExist) {
		return err
	}
	e := logbook.New()
	e.Date, e.Kind = c.Date, logbook.Kind(c.Kind)
	if e.Date == "" {
		e.Date = time.Now().Format("2006-01-02 15:04")
	}
	r := flies.Rocket()
	if r.Chamber != nil {
		e.Chamber = r.Chamber.Serial
	}
	fromRocket(&e, flies)
	if err := c.told(&e); err != nil {
		return err
	}
	if e.Kind == logbook.Flight || e.Kind == logbook.StaticTest {
		if e.Motor != "" && r.Power == rocket.WaterPower {
			return badInput("motor=%s: the file flies on water; add --set power=motor", e.Motor)
		}
		if flies, err = flown.AsEntered(flies, &e); err != nil {
			return asInput(err)
		}
	}
	switch {
	case c.Log != "" && e.Kind == logbook.StaticTest:
		if err := c.fromStand(s, &e, flies, path); err != nil {
			return err
		}
	case c.Log != "":
		if err := c.fromLog(s, &e, flies, path); err != nil {
			return err
		}
	case e.Kind == logbook.Flight:
		if fl, err := sim.Fly(s.ctx, flies.Rocket(), sim.Options{}); err == nil { // a rocket that cannot be predicted may have flown
			e.Predicted = predictedResults(fl)
		}
	}
	if err := c.ask(s, &e); err != nil {
		return err
	}
	if lacksPressure(&e) {
		return badInput("%s: %s", c.Kind, noPressure(&e, "add pressure='9 bar'"))
	}
	if err := logbook.Append(path, r.Name, e); err != nil {
		return asInput(err)
	}
	book, err := logbook.Open(path)
	if err != nil {
		return err
	}
	state := book.Of(e.Chamber, r.ProofWanted())
	since := words.Plural(state.Since, "time") + " since the last proof"
	switch {
	case state.Proof == nil:
		since = "no proof in the book"
	case !state.Enough:
		since = words.Plural(state.Since, "time") + " since a proof to " + words.In(quantity.Metric).AtLeast(r.ProofWanted()) + ", which the pressure of the file asks for"
	}
	text := fmt.Sprintf("%s: %s of %s added; under pressure %s in all, %s\n", path, e.Kind, e.Date, words.Plural(state.Cycles, "time"), since)
	if not := uncounted(flies, path); not != "" {
		text += not + "\n"
	}
	_, err = io.WriteString(s.out, text)
	return err
}

// check refuses what does not go together.
func (c *recordCommand) check() error {
	kind := logbook.Kind(c.Kind)
	switch {
	case !slices.Contains(logbook.Kinds(), c.Kind):
		return badInput("%q is no kind of entry; there are %s", c.Kind, strings.Join(logbook.Kinds(), ", "))
	case c.Log == "" && c.logOptions.given():
		return badInput("--column, --rate, --height, --from and --to say how a log is read: give --log FILE too, or leave them out")
	case c.Log != "" && kind != logbook.Flight && kind != logbook.StaticTest:
		return badInput("--log is for a flight or a static test; leave it out")
	case c.Point && kind != logbook.Flight:
		return badInput("--point is for a flight, which is predicted; leave it out")
	case kind == logbook.Proof || kind == logbook.LeakTest:
		for _, set := range c.Set {
			if !strings.HasPrefix(set, "chamber.") {
				return badInput("--set %s: only the chamber's serial and logbook are taken from the file for a %s; tell the rest as in pressure='9 bar'", set, c.Kind)
			}
		}
	}
	return nil
}

// bookOf is where a rocket's logbook is: as told, else as the file names it, else beside it.
func bookOf(file *rocketfile.File, told string) (string, error) {
	if told != "" {
		return told, nil
	}
	path, err := flown.BookOf(file)
	return path, asInput(err)
}

// fromRocket takes over what a flight was set to.
func fromRocket(e *logbook.Entry, file *rocketfile.File) {
	r := file.Rocket()
	if e.Kind != logbook.Flight && e.Kind != logbook.StaticTest && e.Kind != logbook.Abort {
		return
	}
	if r.Power == rocket.WaterPower && r.Water != nil {
		e.Fill, e.Throat = r.Water.Fill, r.Water.Throat
		if e.Kind != logbook.Abort { // how far it got is for the user to tell
			e.Pressure = r.Water.Pressure
		}
	} else if r.Motor != nil {
		e.Motor, e.Delay = motorOf(file), r.Motor.Delay
	}
	if e.Kind == logbook.Flight {
		e.Rail, e.Tilt = r.Rail.Length, r.Rail.Tilt
		if r.Wind.Known() {
			e.Wind, _ = r.Wind.Surface()
		}
	}
}

// motorOf is a motor by the name of its curve and its class.
func motorOf(file *rocketfile.File) string {
	name := "a motor"
	if path := file.Named("motor.curve"); path != "" {
		curve := filepath.Base(path)
		name = strings.TrimSuffix(curve, filepath.Ext(curve))
	}
	if class := thrust.Class(file.Rocket().Motor.Impulse()); class != "" {
		name += ", class " + class
	}
	return name
}

// told takes what the user tells.
func (c *recordCommand) told(e *logbook.Entry) error {
	for _, text := range c.With {
		key, value, ok := strings.Cut(text, "=")
		if !ok || value == "" {
			return badInput("%s: a name, =, and a value are needed, as in pressure='9 bar'", text)
		}
		if err := tell(e, strings.TrimSpace(key), strings.TrimSpace(value)); err != nil {
			return asInput(err)
		}
	}
	return nil
}

// tell sets one field.
func tell(e *logbook.Entry, key, value string) error {
	var keys []string
	for _, f := range logbook.Told() {
		keys = append(keys, f.Key)
		if f.Key != key {
			continue
		}
		if bad := f.Take(e, value); bad != nil {
			return *bad
		}
		return nil
	}
	remedy := "there are " + strings.Join(keys, ", ")
	if word, ok := quantity.Nearest(key, keys); ok {
		remedy = "perhaps " + word + " is meant"
	}
	return fault.Fault{Key: key, Problem: "an entry has no such field", Remedy: remedy}
}
