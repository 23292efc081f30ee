package main

import (
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"ullage/cmd/ullage/chart"
	"ullage/cmd/ullage/chart/page"
	"ullage/sim/plan"
	"ullage/sim/report"
	"ullage/sim/report/fieldmap"
	"ullage/sim/report/words"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
)

// mapCommand puts on a map where the rocket flies and may come down.
type mapCommand struct {
	File string `arg:"" placeholder:"FILE" help:"The rocket file; - reads standard input."`

	Drive   []string `placeholder:"DRIVE" help:"Only on this drive, water or motor; without it on all that the file has."`
	Flights int      `default:"1000" placeholder:"N" help:"How many flights to draw on each drive; ${default} if not given."`
	Seed    uint64   `default:"1" placeholder:"N" help:"What the draws follow from; ${default} if not given."`

	JSON       bool   `name:"json" help:"The figures as one JSON object, in SI units."`
	Format     string `enum:",geojson,kml,svg,png,pdf" default:"" placeholder:"geojson|kml|svg|png|pdf" help:"GeoJSON (RFC 7946), KML 2.3 (OGC) for a globe, or a page as SVG, PNG or PDF; what the name after -o ends in, else a short text."`
	Paper      string `enum:",a4,letter" default:"" placeholder:"a4|letter" help:"Size of the page, landscape: a4, or letter, which is usual with --units us."`
	Resolution *int   `placeholder:"DPI" help:"Dots an inch of a PNG, 50 to 600; 300 if not given."`

	spreadOptions
	studyOptions
}

// Help teaches by example.
func (mapCommand) Help() string {
	return helpText(
		"Where the rocket may come down on each of its drives: as planned, if the main does not open, and ballistic; each with the ellipse "+
			"that holds 90 % of it and its share outside the field, beside the field and the distance that people keep. As GeoJSON or KML with "+
			"the tracks of the day's flights in three dimensions, for which [site] needs latitude and longitude; or as a page to print, in metres "+
			"from the pad. Which direction is clear is the range officer's to say.",
		"ullage map heron.toml",
		"ullage map heron.toml -o field.svg",
		"ullage map heron.toml --drive motor -o field.png",
		"ullage map heron.toml -o field.kml --set site.latitude=50.5 --set site.longitude=-1.25",
		"ullage map heron.toml -o field.geojson --set field.boundary=meadow.geojson",
		"ullage map heron.toml --format geojson --flights 200 > field.geojson")
}

// The formats of maps beside those of pages.
const (
	formatGeoJSON = "geojson"
	formatKML     = "kml"
)

// Run flies, and writes the map.
func (c *mapCommand) Run(s *streams) error {
	format, err := c.format()
	if err != nil {
		return err
	}
	if err := c.check(s, format); err != nil {
		return err
	}
	if err := c.refuse(); err != nil { // before flights that may take a while
		return err
	}
	file, err := c.open(s, c.File)
	if err != nil {
		return err
	}
	r := file.Rocket()
	drives, err := drivesOf(r, c.Drive, false)
	if err != nil {
		return err
	}
	pad := padOf(r)
	if format == formatGeoJSON || format == formatKML {
		if !r.Site.Located {
			return badInput("the site has no place on the map, which %s needs\ngive latitude and longitude in the file's [site], or "+
				"--set site.latitude=50.5 --set site.longitude=-1.25; -o FILE.svg draws the map in metres from the pad without", format)
		}
		if err := mappable(pad); err != nil {
			return err
		}
	}
	all, err := c.fly(s, file, drives)
	if err != nil {
		return err
	}
	var image []byte
	if drawn := c.drawn(format); drawn != nil {
		if image, err = drawn(chart.Ground(all, chart.Look{System: c.system(), Paper: pagePaper(c.Paper, c.Units)})); err != nil {
			return err
		}
	}
	err = c.write(s, func(w io.Writer) error {
		switch format {
		case formatGeoJSON:
			return onMap(fieldmap.NewGeoJSON(w, pad), pad, all)
		case formatKML:
			return onMap(fieldmap.NewKML(w, pad, words.Name(r)), pad, all)
		case "":
			if c.JSON {
				return report.WriteReachJSON(w, all)
			}
			return report.WriteReachText(w, all, c.system())
		}
		_, err := w.Write(image)
		return err
	})
	if format != "" { // a text says so itself
		c.tell(s, all)
	}
	return err
}

// format is the one asked for, or that of the output's name; none of text and JSON.
func (c *mapCommand) format() (string, error) {
	ending := strings.ToLower(strings.TrimPrefix(filepath.Ext(c.Output), "."))
	known := ending == formatGeoJSON || ending == formatKML || ending == formatSVG || ending == formatPNG || ending == formatPDF
	switch {
	case c.JSON && c.Format != "":
		return "", badInput("--json and --format exclude each other; give one of them")
	case c.JSON && known:
		return "", badInput("-o %s: the name ends in .%s, but --json is none; let it end in .json, or leave --json out", c.Output, ending)
	case c.JSON:
		return "", nil
	case c.Format != "" && known && ending != c.Format:
		return "", badInput("-o %s: the name ends in .%s, but --format says %s; make them agree", c.Output, ending, c.Format)
	case c.Format != "":
		return c.Format, nil
	case known && !c.toStandardOutput():
		return ending, nil
	case c.toStandardOutput() || ending == "txt":
		return "", nil
	}
	return "", badInput("-o %s: maps are GeoJSON, KML, SVG, PNG or PDF; let the name end in .geojson, .kml, .svg, .png or .pdf, or give --format or --json", c.Output)
}

// check refuses options that do not go together.
func (c *mapCommand) check(s *streams, format string) error {
	switch {
	case c.Flights < 1 || c.Flights > plan.MostReach:
		return badInput("--flights %d: give 1 to %d", c.Flights, plan.MostReach)
	case c.Resolution != nil && format != formatPNG:
		return badInput("--resolution is for PNG; nothing else has dots")
	case c.Resolution != nil && (*c.Resolution < page.LeastResolution || *c.Resolution > page.GreatestResolution):
		return badInput("--resolution %d: from %d to %d dots an inch are meant", *c.Resolution, page.LeastResolution, page.GreatestResolution)
	case c.Paper != "" && c.drawn(format) == nil:
		return badInput("--paper is for pages; let -o end in .svg, .png or .pdf")
	case (format == formatPNG || format == formatPDF) && c.toStandardOutput() && isTerminal(s.out):
		return badInput("a %s is no text to read on a terminal; give -o FILE.%s, or send standard output to a file", strings.ToUpper(format), format)
	}
	return nil
}

// fly flies every drive.
func (c *mapCommand) fly(s *streams, file *rocketfile.File, drives []rocket.Power) ([]plan.Reach, error) {
	bar := c.bar(s, false)
	defer bar.clear()
	var all []plan.Reach
	for _, power := range drives {
		f := file
		if power != file.Rocket().Power {
			var err error
			if f, err = file.Set("power", string(power)); err != nil {
				return nil, asInput(err)
			}
		}
		r := f.Rocket()
		spreads, err := c.spreads(f, r)
		if err != nil {
			return nil, err
		}
		reach, err := plan.ReachOf(s.ctx, r, study.Draws{Spreads: spreads, Flights: c.Flights, Seed: c.Seed}, c.study(bar))
		if err != nil {
			return nil, err
		}
		all = append(all, reach)
	}
	return all, nil
}

// drawn is how a page is written in a format; nil of what is no page.
func (c *mapCommand) drawn(format string) func(*page.Page) ([]byte, error) {
	switch format {
	case formatSVG, formatPNG:
		resolution := page.DefaultResolution
		if c.Resolution != nil {
			resolution = *c.Resolution
		}
		return func(p *page.Page) ([]byte, error) { return pageImage(p, format, resolution) }
	case formatPDF:
		return (*page.Page).PDF
	}
	return nil
}

// tell says on standard error what maps have no room for.
func (c *mapCommand) tell(s *streams, all []plan.Reach) {
	for i := range all {
		tellDraws(s, all[i].Scatter)
		c.tellBeyond(s, all[i].Rocket)
	}
	fmt.Fprintln(s.err, words.Direction)
}

// onMap puts everything on a map: what every drive shares, then drive by drive.
func onMap(m *fieldmap.Map, pad fieldmap.Pad, all []plan.Reach) error {
	failed := []error{m.Pad(pad), m.Field(&all[0].Rocket.Field)}
	for i := range all {
		x := &all[i]
		m.Of(x.Rocket.Power)
		for _, course := range x.Courses {
			failed = append(failed, m.Course(course.Kind, course.Flight))
		}
		failed = append(failed, m.Ellipses(&x.Scatter, &x.Rocket.Field), m.Clear(x.Clear))
		for _, l := range x.Landings {
			if err := m.Landing(l); err != nil {
				return err
			}
		}
	}
	return errors.Join(append(failed, m.Close(false))...)
}
