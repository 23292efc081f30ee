package main

import (
	"context"
	"errors"
	"io"
	"strings"

	"github.com/alecthomas/kong"

	"ullage/cmd/ullage/chart"
	"ullage/cmd/ullage/chart/page"
	"ullage/sim"
	"ullage/sim/report"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
)

// plotCommand draws a flight, a sweep or a scatter on a page.
type plotCommand struct {
	File string `arg:"" placeholder:"FILE" help:"The rocket file; - reads standard input."`

	Sweep   []string `sep:"none" xor:"study" placeholder:"NAME=FROM..TO/POINTS" help:"Draw apogee and rail exit speed against an input, as in --sweep water.fill=0.2..0.4/21; given twice, against two."`
	Scatter bool     `xor:"study" help:"Draw where it lands with what is uncertain drawn at random."`
	Flights *int     `placeholder:"N" help:"How many flights --scatter draws; 10000 if not given."`
	Seed    *uint64  `placeholder:"N" help:"What the draws of --scatter follow from; 1 if not given."`

	Show []string `placeholder:"SERIES" help:"What to draw. Of a flight, series over time: ${series}; height, speed, and chamber pressure or thrust if not given. With --sweep, results, of which ullage results lists the names; apogee and rail exit speed if not given."`
	Span string   `enum:",thrust,ascent,flight" default:"" placeholder:"thrust|ascent|flight" help:"How much of a flight to draw: thrust, ascent or flight. If not given, what pushes is drawn over the thrust, angle of attack and margin over the ascent, and the rest over the flight."`

	Format     string `enum:",svg,png" default:"" placeholder:"svg|png" help:"svg or png; what the name after -o ends in, else svg."`
	Paper      string `enum:",a4,letter" default:"" placeholder:"a4|letter" help:"Size of the page, landscape: a4, or letter, which is usual with --units us."`
	Resolution *int   `placeholder:"DPI" help:"Dots an inch of a PNG, 50 to 600; 300 if not given."`

	spreadOptions
	studyOptions
}

func (plotCommand) words() kong.Vars {
	return kong.Vars{"series": strings.Join(chart.QuantityNames(), ", ")}
}

// Help teaches by example.
func (plotCommand) Help() string {
	return helpText(
		"Draws one page to print or to show, as SVG or PNG: a flight over time with its events; with --sweep, "+
			"apogee and rail exit speed against one or two inputs; with --scatter, where the flights land.",
		"ullage plot heron.toml -o flight.svg",
		"ullage plot heron.toml -o thrust.png --span thrust --show pressure,thrust,acceleration",
		"ullage plot heron.toml -o fill.png --sweep water.fill=0.1..0.6/51",
		"ullage plot heron.toml -o throats.svg --sweep water.fill=0.1..0.6/51 --sweep water.throat=11mm,13mm,15mm",
		"ullage plot heron.toml -o wind.svg --sweep 'wind.speed=0..8 m/s/17' --show landing.drift,attack.rail_exit",
		"ullage plot heron.toml -o field.png --scatter --flights 2000 --seed 7",
		"ullage plot heron.toml --units us --set power=motor > flight.svg")
}

// Run flies, and writes the page.
func (c *plotCommand) Run(s *streams) error {
	if err := c.check(); err != nil {
		return err
	}
	format, err := c.format()
	if err != nil {
		return err
	}
	if c.toStandardOutput() && isTerminal(s.out) {
		return badInput("a plot is no text to read on a terminal; give -o FILE.svg or -o FILE.png, or send standard output to a file")
	}
	if err := c.refuse(); err != nil { // before flights that may take a while
		return err
	}
	file, err := c.open(s, c.File)
	if err != nil {
		return err
	}
	drawn, interrupted := c.page(s, file)
	if drawn == nil {
		return interrupted
	}
	resolution := page.DefaultResolution
	if c.Resolution != nil {
		resolution = *c.Resolution
	}
	image, err := pageImage(drawn, format, resolution)
	if err != nil {
		return err
	}
	return c.stream(s, func(w io.Writer) error {
		_, err := w.Write(image)
		return errors.Join(err, interrupted)
	})
}

// check refuses options that do not go together.
func (c *plotCommand) check() error {
	flight := len(c.Sweep) == 0 && !c.Scatter
	switch {
	case len(c.Sweep) > 2:
		return badInput("--sweep is given %d times; a page has room for two inputs", len(c.Sweep))
	case !c.Scatter && (c.Flights != nil || c.Seed != nil || len(c.Spread) > 0):
		return badInput("--flights, --seed and --spread are for --scatter; give it too")
	case !flight && c.Span != "":
		return badInput("--span is for the plot of one flight; leave it or --sweep and --scatter out")
	case c.Scatter && len(c.Show) > 0:
		return badInput("--show is for the plot of one flight and for --sweep; leave it or --scatter out")
	case c.Flights != nil && *c.Flights < 1:
		return badInput("--flights %d: at least 1 is needed", *c.Flights)
	case c.Flights != nil && *c.Flights > study.MaxDispersion:
		return badInput("--flights %d: at most %d", *c.Flights, study.MaxDispersion)
	case len(c.Show) > mostPanels:
		return badInput("--show names %d quantities; a page has room for %d", len(c.Show), mostPanels)
	case c.Resolution != nil && (*c.Resolution < page.LeastResolution || *c.Resolution > page.GreatestResolution):
		return badInput("--resolution %d: from %d to %d dots an inch are meant", *c.Resolution, page.LeastResolution, page.GreatestResolution)
	}
	return nil
}

// mostPanels is how many panels a page has room for.
const mostPanels = 4

// format is the one asked for, or that of the output's name.
func (c *plotCommand) format() (string, error) {
	ending, known := pageFormat(c.Output)
	var format string
	switch {
	case c.Format != "" && known && ending != c.Format:
		return "", badInput("-o %s: the name ends in .%s, but --format says %s; make them agree", c.Output, ending, c.Format)
	case c.Format != "":
		format = c.Format
	case known:
		format = ending
	case c.toStandardOutput():
		format = formatSVG
	default:
		return "", badInput("-o %s: plots are SVG or PNG; let the name end in .svg or .png, or give --format", c.Output)
	}
	if format != formatPNG && c.Resolution != nil {
		return "", badInput("--resolution is for PNG; SVG has no dots")
	}
	return format, nil
}

// look is how the page shows its values.
func (c *plotCommand) look() chart.Look {
	return chart.Look{System: c.system(), Paper: pagePaper(c.Paper, c.Units)}
}

// page draws what is asked for. One that was interrupted comes with the error when
// there is something to show.
func (c *plotCommand) page(s *streams, file *rocketfile.File) (*page.Page, error) {
	switch {
	case len(c.Sweep) > 0:
		return c.sweep(s, file)
	case c.Scatter:
		return c.scatter(s, file)
	}
	show, err := chart.ParseQuantities(c.Show)
	if err != nil {
		return nil, badInput("--show: %w", err)
	}
	flight, err := sim.Fly(s.ctx, file.Rocket(), sim.Options{Keep: true})
	if err != nil {
		return nil, err
	}
	drawn, err := chart.Flight(flight, show, chart.Span(c.Span), c.look())
	if err != nil {
		return nil, badInput("--show: %w", err)
	}
	return drawn, nil
}

// sweep flies over one or two inputs.
func (c *plotCommand) sweep(s *streams, file *rocketfile.File) (*page.Page, error) {
	rocket := file.Rocket()
	axes, err := study.ParseAxes(rocket, c.Sweep)
	if err != nil {
		return nil, asInput(err)
	}
	if n := study.Count(axes); n > chart.MostCells {
		return nil, badInput("that is %d flights; a page shows no more of a grid than %d: take fewer points", n, chart.MostCells)
	}
	show, err := showOption{c.Show}.results(rocket)
	if err != nil {
		return nil, err
	}
	cells := chart.NewCells(rocket, show)
	bar := c.bar(s, false)
	err = study.Sweep(s.ctx, rocket, axes, c.study(bar), func(r study.Row) error {
		cells.Add(r)
		return nil
	})
	bar.clear()
	if err != nil && (!errors.Is(err, context.Canceled) || cells.Len() == 0) {
		return nil, err
	}
	return chart.Sweep(report.Sweep{
		Rocket: rocket, Axes: axes, System: c.system(),
		Units: units(file, axes, func(a study.Axis) rocketfile.Input { return a.Input }),
	}, cells, c.look()), err
}

// scatter draws what is uncertain at random.
func (c *plotCommand) scatter(s *streams, file *rocketfile.File) (*page.Page, error) {
	flights, seed := 10000, uint64(1)
	if c.Flights != nil {
		flights = *c.Flights
	}
	if c.Seed != nil {
		seed = *c.Seed
	}
	rocket := file.Rocket()
	spreads, err := c.spreads(file, rocket)
	if err != nil {
		return nil, err
	}
	var landings chart.Landings
	bar := c.bar(s, false)
	result, err := study.Disperse(s.ctx, rocket, study.Draws{Spreads: spreads, Flights: flights, Seed: seed}, c.study(bar), landings.Add)
	bar.clear()
	if err != nil && (!errors.Is(err, context.Canceled) || result.Landed == 0) {
		return nil, err
	}
	return chart.Dispersion(report.Dispersion{
		Rocket: rocket, Spreads: spreads, Seed: seed, Result: result, System: c.system(),
		Units: units(file, spreads, func(x study.Spread) rocketfile.Input { return x.Input }),
	}, &landings, c.look()), err
}
