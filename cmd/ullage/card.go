package main

import (
	"errors"
	"fmt"
	"io"
	"strings"
	"time"

	"ullage/sim/plan"
	"ullage/sim/report/card"
	"ullage/sim/report/words"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
)

// cardCommand writes the page to take to the field.
type cardCommand struct {
	File string `arg:"" placeholder:"FILE" help:"The rocket file; - reads standard input."`

	JSON     bool `name:"json" xor:"form" help:"With --certification: one JSON object, in SI units."`
	Markdown bool `xor:"form" help:"Write Markdown."`
	HTML     bool `name:"html" xor:"form" help:"Write HTML that prints on one sheet, A4 or US Letter."`
	Both     bool `xor:"pages" help:"Water and motor, a page each, of an airframe that takes both."`

	Certification bool `xor:"pages" help:"In place of the card: what a first and a second flight for high power usually ask, which motors of the folder are for which, lines for witness and result."`

	Flights int    `default:"1000" placeholder:"N" help:"How many flights to draw for the spread; ${default} if not given."`
	Seed    uint64 `default:"1" placeholder:"N" help:"What the draws follow from; ${default} if not given."`

	setOptions
	unitsOption
	outputOptions
}

// Help teaches by example.
func (cardCommand) Help() string {
	return helpText(
		"One page for the field, to hand to the range officer: what to weigh and set, what is predicted and how sure that "+
			"is, every check, how to tilt the rail in which wind, the order of the day to tick off, and lines to sign. What "+
			"is no-go or not judged still prints, says so at the top, and makes the exit status 1. The same file, seed and day give the same card. "+
			"With --certification the page for a flight that certifies the flyer: US practice from memory, which defers to the body that certifies. "+
			"Local law and the range officer decide.",
		"ullage card heron.toml",
		"ullage card heron.toml --html -o heron.html",
		"ullage card heron.toml --both --html -o heron.html",
		"ullage card heron.toml --certification",
		"ullage card heron.toml --set 'wind.speed=5 m/s' --markdown")
}

// Bounds of the draws: of fewer, one in twenty is no flight; of more, a card says no more.
const (
	leastCardFlights = 20
	mostCardFlights  = 1_000_000
)

// Run flies and writes the form asked for.
func (c *cardCommand) Run(s *streams) error {
	if c.Flights < leastCardFlights || c.Flights > mostCardFlights {
		return badInput("--flights %d: give %d to %d", c.Flights, leastCardFlights, mostCardFlights)
	}
	file, err := c.open(s, c.File)
	if err != nil {
		return everythingMissing(c.File, rocket.ForCard, err)
	}
	if c.Certification {
		return c.certify(s, file)
	}
	if c.JSON {
		return badInput("--json: a card is for people; leave it out, or take ullage check %s --json and ullage scatter", c.File)
	}
	files, err := c.drives(file)
	if err != nil {
		return err
	}
	if err := errors.Join(c.spare(s), c.refuse()); err != nil { // before work that takes a while
		return err
	}
	days, err := c.fly(s, files)
	if err != nil {
		return err
	}
	if err := c.write(s, func(w io.Writer) error { return c.form(w, days) }); !readEnough(err) {
		return err
	}
	return failedCards(file.Name(), days)
}

// drives is the file, or the file on each of its drives.
func (c *cardCommand) drives(file *rocketfile.File) ([]*rocketfile.File, error) {
	if !c.Both {
		return []*rocketfile.File{file}, nil
	}
	if r := file.Rocket(); r.Water == nil || r.Motor == nil {
		return nil, badInput("--both: %s has %s only; leave --both out", file.Name(), r.Power)
	}
	var files []*rocketfile.File
	for _, power := range []rocket.Power{rocket.WaterPower, rocket.MotorPower} {
		f, err := file.Set("power", string(power))
		if err != nil {
			return nil, asInput(err)
		}
		files = append(files, f)
	}
	return files, nil
}

// fly makes the flights of each page.
func (c *cardCommand) fly(s *streams, files []*rocketfile.File) ([]plan.Day, error) {
	bar := c.bar(s, false)
	defer bar.clear()
	var all []plan.Day
	for _, f := range files {
		day, err := plan.DayOf(s.ctx, f.Rocket(), plan.Options{
			Spreads: study.Spreads(f), Respread: study.Respread(f), Flights: c.Flights, Seed: c.Seed, Today: time.Now(), Progress: bar.update})
		if err != nil {
			return nil, err
		}
		all = append(all, day)
	}
	return all, nil
}

func (c *cardCommand) form(w io.Writer, days []plan.Day) error {
	switch {
	case c.HTML:
		return card.WriteHTML(w, days, c.system())
	case c.Markdown:
		return card.WriteMarkdown(w, days, c.system())
	}
	return card.WriteText(w, days, c.system())
}

// failedCards tells of the drives that are no-go; nil when none is.
func failedCards(name string, all []plan.Day) error {
	var failed []string
	for i := range all {
		v := &all[i].Verdict
		if v.Pass() {
			continue
		}
		text := words.Verdict(v)
		if len(all) > 1 {
			text = string(v.Power) + ": " + text
		}
		failed = append(failed, text)
	}
	if len(failed) == 0 {
		return nil
	}
	return failedError{fmt.Errorf("%s: %s", name, strings.Join(failed, "\n"))}
}
