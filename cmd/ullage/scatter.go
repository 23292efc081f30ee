package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"

	"ullage/sim"
	"ullage/sim/ground"
	"ullage/sim/plan"
	"ullage/sim/report"
	"ullage/sim/report/fieldmap"
	"ullage/sim/report/words"
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
	GeoJSON   bool     `name:"geojson" xor:"form" help:"Every landing, the ellipses that hold 90 % of each kind, the field, the clear distance and the day's track, as a map (RFC 7946)."`
	KML       bool     `name:"kml" xor:"form" help:"The same as KML 2.3 (OGC) for a globe; ullage map has all drives and other tracks."`
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
	if c.mapped() {
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

func (c *scatterCommand) form(w io.Writer, pad fieldmap.Pad, day *sim.Flight) scatterForm {
	switch {
	case c.CSV:
		rows := report.NewLandingsCSV(w)
		return scatterForm{rows.Add, func(report.Dispersion) error { return rows.Close() }}
	case c.KML:
		return mapForm(fieldmap.NewKML(w, pad, words.Title(day.Rocket)), day)
	case c.GeoJSON:
		return mapForm(fieldmap.NewGeoJSON(w, pad), day)
	case c.JSON:
		return scatterForm{nil, func(sc report.Dispersion) error { return report.WriteDispersionJSON(w, sc) }}
	}
	return scatterForm{nil, func(sc report.Dispersion) error { return report.WriteDispersionText(w, sc) }}
}

// mapForm is a map of landings as they come, then of all else.
func mapForm(m *fieldmap.Map, day *sim.Flight) scatterForm {
	return scatterForm{m.Landing, func(sc report.Dispersion) error {
		r := sc.Rocket
		return errors.Join(m.Rest(&sc.Result, &r.Field, plan.Clear(r, day)), m.Course(study.Planned, day), m.Close(sc.Result.Partial))
	}}
}

// pad is where on the map the rocket starts.
func (c *scatterCommand) pad(r *rocket.Rocket) (fieldmap.Pad, error) {
	given := c.Latitude != nil || c.Longitude != nil
	p := padOf(r)
	switch {
	case given && !c.mapped():
		return p, badInput("--latitude and --longitude are for --geojson and --kml; give one")
	case !c.mapped():
		return p, nil
	case c.Latitude != nil && c.Longitude != nil:
		p.Place = ground.Place{Latitude: *c.Latitude, Longitude: *c.Longitude}
		if len(r.Field.Boundary) > 0 && p != padOf(r) {
			return p, badInput("--latitude and --longitude are not those of the file's [site], around which its field.boundary lies; leave them out")
		}
	case given:
		return p, badInput("--latitude and --longitude go together; give both")
	case !r.Site.Located:
		return p, badInput("the site has no place on the map\ngive --latitude and --longitude, or latitude and longitude in the file's [site]")
	}
	return p, mappable(p)
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
