package tui

import (
	"math"

	"ullage/sim"
	"ullage/sim/gates"
	"ullage/sim/study"
)

// openingCase is one way of opening, and the flight that comes of it.
type openingCase struct {
	name    string
	flight  *sim.Flight
	problem string // why there is no flight
	planned bool
	best    bool
}

// listed are the ways of opening worth a row: as planned, the best, and what may
// go wrong.
func (v *openingView) listed() []openingCase {
	o := &v.study.result
	var out []openingCase
	now, there := o.now()
	best := o.best >= 0
	for _, c := range o.cases {
		one := openingCase{name: string(c.Case), flight: c.Flight, problem: c.Problem, planned: c.Case == study.AsPlanned}
		one.best = one.planned && best && there && sameNumber(now, o.values[o.best].Value)
		if out = append(out, one); one.planned && best && !one.best {
			b := &o.values[o.best]
			out = append(out, openingCase{name: "best " + exact(b.Value, v.numberUnit(), 4), flight: b.Flight, best: true})
		}
	}
	return out
}

// casesTable is what becomes of the rocket when the canopy opens as planned or
// otherwise. Where there are other canopies it says how fast those open then.
func (v *openingView) casesTable(w, h int) []string {
	t := table{tight: w < 70, columns: []tableColumn{
		{title: "if it opens", left: true}, {title: "airspeed"}, {left: true, rank: 4}, {title: "height", rank: 6}, {title: "load", rank: 7},
	}}
	others := len(v.study.result.of.flight.Rocket.Canopies) > 1
	if others {
		t.columns = append(t.columns, tableColumn{title: "others"}, tableColumn{left: true, rank: 2})
	}
	t.columns = append(t.columns, tableColumn{title: "lands"}, tableColumn{left: true, rank: 3}, tableColumn{title: "drift", rank: 1},
		tableColumn{left: true, rank: 8})
	for _, c := range v.listed() {
		t.rows = append(t.rows, v.caseRow(c, others))
	}
	return t.draw(v.scene.look, w, h)
}

func (v *openingView) caseRow(c openingCase, others bool) tableRow {
	row := tableRow{sign: " "}
	if c.planned {
		row.role = strongText
	}
	if c.best {
		row.sign = string(bestSign)
	}
	put := func(r role, text string) { row.cells = append(row.cells, tableCell{text, r}) }
	judged := func(key string, x float64) {
		word, lv := gates.LimitFor(v.scene.now.flight.Rocket, key).Judge(x)
		if lv == gates.Good {
			put(plainText, v.shown(x, "m/s"))
		} else {
			put(level(lv), v.shown(x, "m/s"))
		}
		put(level(lv), word)
	}
	put(plainText, c.name)
	if c.flight == nil {
		row.rest = tableCell{c.problem, dimText}
		return row
	}
	res, canopy := &c.flight.Results, v.study.result.canopy
	if own := res.Canopies[canopy]; own.Opened {
		judged(gates.LimitOpening, own.Airspeed)
		put(plainText, v.shown(own.Height, "m"))
		put(plainText, v.shown(own.Load, "N"))
	} else {
		put(dimText, "shut")
		put(plainText, "")
		put(plainText, "")
		put(plainText, "")
	}
	if fastest, any := fastestOther(res, canopy); any {
		judged(gates.LimitOpening, fastest)
	} else if others {
		put(dimText, "shut")
		put(plainText, "")
	}
	if land := res.Landing; land.Happened {
		judged(gates.LimitLanding, land.Vertical)
		put(plainText, v.shown(math.Hypot(land.East, land.North), "m"))
		put(dimText, bearing(land.East, land.North))
	}
	return row
}

// fastestOther is the greatest airspeed at which another canopy opens.
func fastestOther(res *sim.Results, canopy int) (airspeed float64, any bool) {
	for i, c := range res.Canopies {
		if i != canopy && c.Opened {
			airspeed, any = max(airspeed, c.Airspeed), true
		}
	}
	return airspeed, any
}
