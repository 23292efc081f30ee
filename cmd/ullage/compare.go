package main

import (
	"io"
	"strconv"

	"github.com/alecthomas/kong"

	"ullage/cmd/ullage/chart"
	"ullage/cmd/ullage/chart/page"
	"ullage/sim/flown"
	"ullage/sim/report/measured"
	"ullage/sim/report/words"
)

// compareCommand holds logs against the predicted flight.
type compareCommand struct {
	File string   `arg:"" placeholder:"FILE" help:"The rocket file; - reads standard input."`
	Log  []string `arg:"" placeholder:"LOG" help:"Logs of the flight: tables of numbers as text."`

	JSON    bool   `name:"json" xor:"form" help:"The figures as one JSON object, in SI units."`
	CSV     bool   `name:"csv" xor:"form" help:"Every sample, measured and predicted, as CSV, in SI units."`
	Plot    string `placeholder:"FILE" help:"Draw both on a page as well, as SVG or PNG, by the name's ending."`
	Flights int    `default:"${draws}" placeholder:"N" help:"How many flights the predicted spread is of; ${draws} if not given."`

	logOptions
	partOptions
	spreadOptions
	studyOptions
}

func (compareCommand) words() kong.Vars { return kong.Vars{"draws": strconv.Itoa(flown.UsualDraws)} }

// Help teaches by example.
func (compareCommand) Help() string {
	return helpText(
		"Holds a recorder's log against the flight that the file predicts: apogee, speeds, openings, descent and landing, each "+
			"measured, predicted, and inside or outside what 90 % of the flights with the file's uncertainties do. A log is any table of "+
			"numbers with a time and a height, pressure, speed or acceleration; how it was understood is printed first. Three logs and more also "+
			"say whether the uncertainties in [spread] are too wide or too narrow.",
		"ullage compare heron.toml flight.csv",
		"ullage compare heron.toml flight.csv --set water.fill=0.28 --plot flight.svg",
		"ullage compare heron.toml dump.txt --column 'time=1 ms' --column 'height=3 ft'",
		"ullage compare heron.toml dump.txt --rate '20 Hz' --column 'pressure=1 hPa' --json",
		"ullage compare heron.toml flight.csv --csv -o both.csv",
		"ullage compare heron.toml may.csv june.csv july.csv")
}

// Run reads, flies and writes the form asked for.
func (c *compareCommand) Run(s *streams) error {
	if c.Flights < 20 || c.Flights > 100_000 {
		return badInput("--flights %d: from 20 to 100000 are meant", c.Flights)
	}
	if c.Plot != "" && len(c.Log) > 1 {
		return badInput("--plot draws one log; give one")
	}
	drawing := outputOptions{Output: c.Plot, Force: c.Force}
	format, known := pageFormat(c.Plot)
	if c.Plot != "" {
		if !known {
			return badInput("--plot %s: plots are SVG or PNG; let the name end in .svg or .png", c.Plot)
		}
		if err := c.apart("--plot", c.Plot); err != nil {
			return err
		}
		if err := drawing.refuse(); err != nil {
			return err
		}
	}
	base, err := s.open(c.File)
	if err != nil {
		return err
	}
	file, err := c.apply(base)
	if err != nil {
		return err
	}
	r := file.Rocket()
	spreads, err := c.spreads(file, r)
	if err != nil {
		return err
	}
	logs, err := c.logs(s, c.Log, base, c.setOptions)
	if err != nil {
		return err
	}
	if logs, err = c.of(logs); err != nil {
		return err
	}
	var all []*flown.Compared
	bar := c.bar(s, false)
	for _, l := range logs {
		compared, err := flown.Compare(s.ctx, l, spreads, c.Flights, c.study(bar))
		bar.clear()
		if err != nil {
			return err
		}
		all = append(all, compared)
	}
	var says *flown.Pasts
	if len(all) >= flown.FewestFlights {
		if says, err = flown.PastOf(s.ctx, base, all, spreads, c.study(bar)); err != nil {
			return err
		}
		bar.clear()
	}
	if c.Plot != "" {
		image, err := pageImage(chart.Measured(all[0], chart.Look{System: c.system(), Paper: pagePaper("", c.Units)}), format, page.DefaultResolution)
		if err != nil {
			return err
		}
		if err := drawing.write(s, func(w io.Writer) error { _, err := w.Write(image); return err }); err != nil {
			return err
		}
	}
	if c.CSV {
		defer tellLines(s, measured.Beyond(words.In(c.system()), all))
	}
	return c.write(s, func(w io.Writer) error {
		switch {
		case c.JSON:
			return measured.WriteCompareJSON(w, all, says)
		case c.CSV:
			return measured.WriteCompareCSV(w, all)
		}
		return measured.WriteCompareText(w, all, says, c.system())
	})
}
