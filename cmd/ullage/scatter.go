package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"math"
	"slices"
	"strings"

	"ullage/sim"
	"ullage/sim/report"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
)

// scatterCommand flies with everything uncertain drawn at random.
type scatterCommand struct {
	File string `arg:"" placeholder:"FILE" help:"The rocket file; - reads standard input."`

	Flights   int      `default:"10000" placeholder:"N" help:"How many flights to draw; 10000 if not given."`
	Seed      uint64   `default:"1" placeholder:"N" help:"What the draws follow from; 1 if not given."`
	JSON      bool     `name:"json" xor:"form" help:"The figures as one JSON object, in SI units."`
	CSV       bool     `name:"csv" xor:"form" help:"Every landing as CSV, in SI units."`
	GeoJSON   bool     `name:"geojson" xor:"form" help:"Every landing, and the ellipse that holds 90 % of them, as a map (RFC 7946)."`
	KML       bool     `name:"kml" xor:"form" help:"The same, with the day's track in three dimensions, as KML 2.3 (OGC) for a globe."`
	Latitude  *float64 `placeholder:"DEG" help:"Of the pad on the map, decimal degrees, north positive; the file's if not given."`
	Longitude *float64 `placeholder:"DEG" help:"Of the pad on the map, decimal degrees, east positive; the file's if not given."`

	showOption
	spreadOptions
	studyOptions
}

// Help teaches by example.
func (scatterCommand) Help() string {
	return helpText(
		"Draws what is uncertain at random and flies each: the spread of apogee and rail exit speed, where "+
			"it comes down, and which input matters most. [spread] in the rocket file gives one standard deviation for any input by its "+
			"name; common figures stand in for what it leaves out, and the report shows all of them. The same seed gives the same flights.",
		"ullage scatter heron.toml",
		"ullage scatter heron.toml --flights 100000 --seed 7 --json",
		"ullage scatter heron.toml --spread 'wind.speed=1.5 m/s' --spread water.fill=0",
		"ullage scatter heron.toml --show margin.least,landing.energy",
		"ullage scatter heron.toml --csv -o landings.csv",
		"ullage scatter heron.toml --geojson --latitude=50.5 --longitude=-1.25",
		"ullage scatter heron.toml --kml --latitude=50.5 --longitude=-1.25 -o field.kml")
}

// Run draws, flies and writes the form asked for.
func (c *scatterCommand) Run(s *streams) error {
	switch {
	case c.Flights < 1:
		return badInput("--flights %d: at least 1 is needed", c.Flights)
	case c.Flights > study.MaxDispersion:
		return badInput("--flights %d: at most %d", c.Flights, study.MaxDispersion)
	}
	file, err := c.open(s, c.File)
	if err != nil {
		return err
	}
	rocket := file.Rocket()
	pad, err := c.pad(rocket)
	if err != nil {
		return err
	}
	spreads, err := c.spreads(file, rocket)
	if err != nil {
		return err
	}
	rows, err := c.results(rocket)
	if err != nil {
		return err
	}
	var day *sim.Flight
	if c.KML {
		if day, err = sim.Fly(s.ctx, rocket, sim.Options{Keep: true}); err != nil {
			return err
		}
	}
	draws := study.Draws{Spreads: spreads, Flights: c.Flights, Seed: c.Seed, Show: rows}
	var result study.Dispersion
	err = c.stream(s, func(w io.Writer) error {
		form := c.form(w, pad, day)
		bar := c.bar(s, form.each != nil)
		var failed error
		result, failed = study.Disperse(s.ctx, rocket, draws, c.study(bar), form.each)
		bar.clear()
		if failed != nil && !errors.Is(failed, context.Canceled) {
			return failed
		}
		return errors.Join(form.end(report.Dispersion{
			Rocket: rocket, Spreads: spreads, Seed: c.Seed, Result: result, System: c.system(),
			Units: units(file, spreads, func(x study.Spread) rocketfile.Input { return x.Input }),
		}), failed)
	})
	if c.CSV || c.mapped() { // the other forms say so themselves
		tellDraws(s, result)
		c.tellBeyond(s, rocket)
	}
	return err
}

// spreadOptions say what is uncertain.
type spreadOptions struct {
	Spread []string `placeholder:"NAME=SD" sep:"none" help:"One standard deviation of an input, in place of the file's, as in --spread 'wind.speed=1 m/s'; 0 for none. Can be given again."`
}

// spreads are the file's uncertainties over the usual ones, and those of --spread over
// both.
func (c spreadOptions) spreads(file *rocketfile.File, r *rocket.Rocket) ([]study.Spread, error) {
	spreads := study.Spreads(file)
	for _, text := range c.Spread {
		name, value, ok := strings.Cut(text, "=")
		if !ok {
			return nil, badInput("--spread %s: a name, =, and a deviation are needed, as in --spread body.drag_factor=0.05", text)
		}
		spread, err := rocketfile.ParseSpread(r, strings.TrimSpace(name), value)
		if err != nil {
			return nil, badInput("--spread: %s", err)
		}
		if !study.Depends(r, spread.Input) {
			return nil, badInput("--spread %s: no flight on %s power depends on it; leave it out", spread.Input.Name, r.Power)
		}
		spreads = slices.DeleteFunc(spreads, func(s study.Spread) bool { return s.Input.Name == spread.Input.Name })
		if spread.SD > 0 {
			spreads = append(spreads, spread)
		}
	}
	return spreads, nil
}

// scatterForm writes a scatter: each landing as it comes, nil when they are not
// wanted, and what there is to say at the end.
type scatterForm struct {
	each func(study.LandingPoint) error
	end  func(report.Dispersion) error
}

// mapped tells that a map is asked for.
func (c *scatterCommand) mapped() bool { return c.GeoJSON || c.KML }

func (c *scatterCommand) form(w io.Writer, pad report.Place, day *sim.Flight) scatterForm {
	switch {
	case c.CSV:
		rows := report.NewLandingsCSV(w)
		return scatterForm{rows.Add, func(report.Dispersion) error { return rows.Close() }}
	case c.KML:
		globe := report.NewLandingsKML(w, pad, day.Rocket)
		return scatterForm{globe.Add, func(sc report.Dispersion) error { return globe.Close(sc.Result, &sc.Rocket.Field, day) }}
	case c.GeoJSON:
		field := report.NewLandingsMap(w, pad)
		return scatterForm{field.Add, func(sc report.Dispersion) error { return field.Close(sc.Result, &sc.Rocket.Field) }}
	case c.JSON:
		return scatterForm{nil, func(sc report.Dispersion) error { return report.WriteDispersionJSON(w, sc) }}
	}
	return scatterForm{nil, func(sc report.Dispersion) error { return report.WriteDispersionText(w, sc) }}
}

// pad is where on the map the rocket starts.
func (c *scatterCommand) pad(r *rocket.Rocket) (report.Place, error) {
	given := c.Latitude != nil || c.Longitude != nil
	p := report.Place{Latitude: r.Site.Latitude, Longitude: r.Site.Longitude}
	switch {
	case given && !c.mapped():
		return p, badInput("--latitude and --longitude are for --geojson and --kml; give one")
	case !c.mapped():
		return p, nil
	case c.Latitude != nil && c.Longitude != nil:
		p = report.Place{Latitude: *c.Latitude, Longitude: *c.Longitude}
	case given:
		return p, badInput("--latitude and --longitude go together; give both")
	case !r.Site.Located:
		return p, badInput("the site has no place on the map\ngive --latitude and --longitude, or latitude and longitude in the file's [site]")
	}
	switch {
	case !(math.Abs(p.Latitude) <= report.MostLatitude):
		return p, badInput("latitude %v: a map needs one from -%v to %v degrees", p.Latitude, report.MostLatitude, report.MostLatitude)
	case !(math.Abs(p.Longitude) <= 180):
		return p, badInput("longitude %v: from -180 to 180 degrees are meant", p.Longitude)
	}
	return p, nil
}

// tellDraws says of draws that are not among the landings.
func tellDraws(s *streams, r study.Dispersion) {
	if r.Invalid > 0 {
		fmt.Fprintf(s.err, "%d of %d draws made no rocket; the first: %v\n", r.Invalid, r.Drawn, r.FirstInvalid)
	}
	if n := r.Drawn - r.Invalid - r.Landed; n > 0 {
		fmt.Fprintf(s.err, "%d of %d flights did not land\n", n, r.Drawn)
	}
}
