package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"path/filepath"
	"time"

	"ullage/sim/flown"
	"ullage/sim/flown/logbook"
	"ullage/sim/report/measured"
	"ullage/sim/report/page"
	"ullage/sim/report/words"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
)

// logbookCommand shows the logbook.
type logbookCommand struct {
	File string `arg:"" placeholder:"FILE" help:"The rocket file."`

	Chamber string `placeholder:"SERIAL" help:"Sum up for this chamber; for the file's chamber.serial if not given, and without that for all entries."`
	Book    string `placeholder:"FILE" help:"The logbook; FILE's name with .logbook.toml if not given."`

	printOptions
	unitsOption
	outputOptions
}

// Help teaches by example.
func (logbookCommand) Help() string {
	return helpText(
		"Shows the logbook beside the rocket file: each entry, how often the chamber was under pressure in all and since its proof, and "+
			"what makes a proof due: its age, a pressure it is not for, a landing harder than the limit, damage. Three measured flights and more "+
			"also say whether the uncertainties in [spread] are too wide or too narrow.",
		"ullage logbook heron.toml",
		"ullage logbook heron.toml --chamber TH-1 --markdown -o logbook.md",
		"ullage logbook heron.toml --html -o logbook.html",
		"ullage logbook heron.toml --json")
}

// Run reads and writes.
func (c *logbookCommand) Run(s *streams) error {
	file, err := s.open(c.File)
	if err != nil {
		return err
	}
	path, err := bookOf(file, c.Book)
	if err != nil {
		return err
	}
	book, err := logbook.Open(path)
	if errors.Is(err, fs.ErrNotExist) {
		return badInput("%s: there is no such logbook; ullage record begins one", path)
	}
	if err != nil {
		return err
	}
	s.inputs = append(s.inputs, path)
	r := file.Rocket()
	serial := c.Chamber
	if serial == "" && r.Chamber != nil {
		serial = r.Chamber.Serial
	}
	b := measured.Book{Book: book, Rocket: r, Serial: serial, Today: time.Now(), System: c.system(), Uncounted: uncounted(file, path)}
	if b.Says, err = flown.PastOfBook(s.ctx, file, flown.DaysOf(book, path), study.Spreads(file), study.Options{}); err != nil {
		if s.ctx.Err() != nil {
			return err
		}
		b.Says = nil // the book is shown all the same
		fmt.Fprintln(s.err, "ullage: what the flights say of the uncertainties is not known:", err)
	}
	return c.write(s, func(w io.Writer) error {
		return c.print(w, func() page.Document { return measured.LogbookDocument(b) },
			func(w io.Writer) error { return measured.WriteLogbookJSON(w, b) })
	})
}

// uncounted says what keeps check from counting by a logbook; empty where nothing does.
func uncounted(file *rocketfile.File, path string) string {
	if file.Rocket().Water == nil {
		return "" // no chamber to count for
	}
	named, err := flown.BookOf(file)
	c := file.Rocket().Chamber
	book := path
	folder, bad := filepath.Abs(filepath.Dir(file.Path()))
	at, far := filepath.Abs(path)
	if to, off := filepath.Rel(folder, at); file.Path() != "" && errors.Join(bad, far, off) == nil {
		book = filepath.ToSlash(to)
	}
	return words.Counted(c, book, c != nil && c.Logbook != "" && err == nil && flown.SameFile(named, path))
}
