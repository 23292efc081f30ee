package opening

import (
	"math"
	"strings"

	"ullage/sim"
	"ullage/sim/gates"
	"ullage/sim/study"
	"ullage/tui/draw"
)

// openingCase is one way of opening, and the flight that comes of it.
type openingCase struct {
	name    string
	flight  *sim.Flight
	problem string // why there is no flight
	planned bool
	best    bool
	falls   bool // nothing opens: ballistic
}

// listed are the ways of opening worth a row: as planned, the best, and what may go
// wrong with the canopy looked at.
func (v *View) listed() []openingCase {
	var out []openingCase
	o := &v.study.Result
	for i := range o.cases {
		if c := &o.cases[i]; c.Canopy == o.canopy {
			out = append(out, v.caseOf(c, string(c.Case)))
			if best, apart := v.bestApart(); apart && c.Case == study.AsPlanned {
				out = append(out, best)
			}
		}
	}
	return out
}

// others are what may go wrong with the other canopies, and with all of them at once.
func (v *View) others() []openingCase {
	var out []openingCase
	o := &v.study.Result
	for i := range o.cases {
		c := &o.cases[i]
		if c.Canopy == o.canopy {
			continue
		}
		who := "all"
		if c.Canopy != study.AllCanopies {
			who = strings.TrimSpace(v.Scene.Theme.Fit(draw.Clean(o.of.Flight.Rocket.Canopies[c.Canopy].Name), mostName))
		}
		out = append(out, v.caseOf(c, who+" "+string(c.Case)))
	}
	return out
}

// mostName is how many cells a name of a canopy takes before what it does.
const mostName = 6

func (v *View) caseOf(c *study.WhatIf, name string) openingCase {
	o := &v.study.Result
	one := openingCase{name: name, flight: c.Flight, problem: c.Problem, planned: c.Case == study.AsPlanned, falls: c.Ballistic()}
	now, there := o.now()
	one.best = one.planned && o.best >= 0 && there && sameNumber(now, o.values[o.best].Value)
	return one
}

// bestApart is the best way, where it is not as planned.
func (v *View) bestApart() (best openingCase, apart bool) {
	o := &v.study.Result
	now, there := o.now()
	if o.best < 0 || there && sameNumber(now, o.values[o.best].Value) {
		return best, false
	}
	b := &o.values[o.best]
	return openingCase{name: "best " + draw.Exact(b.Value, v.numberUnit(), 4), flight: b.Flight, best: true}, true
}

// casesTable is what becomes of the rocket when the canopy opens as planned or
// otherwise. Where there are other canopies it says how fast those open then. The words
// never go: figures do first.
func (v *View) casesTable(cases []openingCase, w, h int) []string {
	several := v.several()
	t := draw.Table{Tight: w < 70, Columns: []draw.Column{
		{Title: "if it opens", Left: true}, {Title: "airspeed"}, {Left: true}, {Title: "height", Rank: 6}, {Title: "load", Rank: 7},
	}}
	land, drift := draw.Column{Title: "landing"}, draw.Column{Title: "drift", Rank: 1}
	if several { // units above leave room for the words
		unit := func(of string) string { return v.Scene.Unit(of).Name }
		opens, other, lands := "airspeed", "others", "landing"
		if t.Tight {
			opens, other, lands = "own", "else", "down"
		}
		t.Columns[0].Title, t.Columns[1].Title, t.Columns[1].Unit = "if", opens, unit("m/s")
		t.Columns[3].Unit, t.Columns[4].Unit = unit("m"), unit("N")
		t.Columns = append(t.Columns, draw.Column{Title: other, Unit: unit("m/s")}, draw.Column{Left: true})
		land.Title, land.Unit, drift.Unit = lands, unit("m/s"), unit("m")
	}
	t.Columns = append(t.Columns, land, draw.Column{Left: true}, drift, draw.Column{Left: true, Rank: 8})
	for _, c := range cases {
		if c.falls && !t.Tight {
			c.name += ", ballistic"
		}
		t.Rows = append(t.Rows, v.caseRow(c, several))
	}
	return t.Draw(v.Scene.Theme, w, h)
}

func (v *View) caseRow(c openingCase, several bool) draw.Row {
	row := draw.Row{Sign: " "}
	if c.planned {
		row.Role = draw.Strong
	}
	if c.best {
		row.Sign = string(draw.BestSign)
	}
	put := func(r draw.Role, text string) { row.Cells = append(row.Cells, draw.Cell{Text: text, Role: r}) }
	figure := v.shown
	if several {
		figure = func(x float64, unit string) string { return draw.Number(v.shown(x, unit), v.Scene.Unit(unit)) }
	}
	judged := func(result string, x float64) {
		word, lv := gates.JudgeResult(v.Scene.Now.Flight.Rocket, result, x)
		if lv == gates.Good {
			put(draw.Plain, figure(x, "m/s"))
		} else {
			put(draw.Level(lv), figure(x, "m/s"))
		}
		put(draw.Level(lv), word)
	}
	put(draw.Plain, c.name)
	if c.flight == nil {
		row.Rest = draw.Cell{Text: c.problem, Role: draw.Dim}
		return row
	}
	res, canopy := &c.flight.Results, v.study.Result.canopy
	if own := res.Canopies[canopy]; own.Opened {
		judged("canopy."+own.Name+".airspeed", own.Airspeed)
		put(draw.Plain, figure(own.Height, "m"))
		put(draw.Plain, figure(own.Load, "N"))
	} else {
		put(draw.Dim, "shut")
		put(draw.Plain, "")
		put(draw.Plain, "")
		put(draw.Plain, "")
	}
	if fastest, any := fastestOther(res, canopy); any {
		judged("canopy."+fastest.Name+".airspeed", fastest.Airspeed)
	} else if several {
		put(draw.Dim, "shut")
		put(draw.Plain, "")
	}
	if land := res.Landing; land.Happened {
		judged("landing.vertical", land.Vertical)
		put(draw.Plain, figure(math.Hypot(land.East, land.North), "m"))
		put(draw.Dim, bearing(land.East, land.North))
	}
	return row
}

// fastestOther is the other canopy that opens at the greatest airspeed.
func fastestOther(res *sim.Results, canopy int) (fastest sim.CanopyResult, any bool) {
	for i, c := range res.Canopies {
		if i != canopy && c.Opened && !(any && c.Airspeed <= fastest.Airspeed) {
			fastest, any = c, true
		}
	}
	return fastest, any
}
