package opening

import (
	"math"

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
}

// listed are the ways of opening worth a row: as planned, the best, and what may
// go wrong.
func (v *View) listed() []openingCase {
	o := &v.study.Result
	var out []openingCase
	now, there := o.now()
	best := o.best >= 0
	for _, c := range o.cases {
		one := openingCase{name: string(c.Case), flight: c.Flight, problem: c.Problem, planned: c.Case == study.AsPlanned}
		one.best = one.planned && best && there && sameNumber(now, o.values[o.best].Value)
		if out = append(out, one); one.planned && best && !one.best {
			b := &o.values[o.best]
			out = append(out, openingCase{name: "best " + draw.Exact(b.Value, v.numberUnit(), 4), flight: b.Flight, best: true})
		}
	}
	return out
}

// casesTable is what becomes of the rocket when the canopy opens as planned or
// otherwise. Where there are other canopies it says how fast those open then.
func (v *View) casesTable(w, h int) []string {
	t := draw.Table{Tight: w < 70, Columns: []draw.Column{
		{Title: "if it opens", Left: true}, {Title: "airspeed"}, {Left: true, Rank: 4}, {Title: "height", Rank: 6}, {Title: "load", Rank: 7},
	}}
	others := len(v.study.Result.of.Flight.Rocket.Canopies) > 1
	if others {
		t.Columns = append(t.Columns, draw.Column{Title: "others"}, draw.Column{Left: true, Rank: 2})
	}
	t.Columns = append(t.Columns, draw.Column{Title: "landing"}, draw.Column{Left: true, Rank: 3}, draw.Column{Title: "drift", Rank: 1},
		draw.Column{Left: true, Rank: 8})
	for _, c := range v.listed() {
		t.Rows = append(t.Rows, v.caseRow(c, others))
	}
	return t.Draw(v.Scene.Theme, w, h)
}

func (v *View) caseRow(c openingCase, others bool) draw.Row {
	row := draw.Row{Sign: " "}
	if c.planned {
		row.Role = draw.Strong
	}
	if c.best {
		row.Sign = string(draw.BestSign)
	}
	put := func(r draw.Role, text string) { row.Cells = append(row.Cells, draw.Cell{Text: text, Role: r}) }
	judged := func(key string, x float64) {
		word, lv := gates.LimitFor(v.Scene.Now.Flight.Rocket, key).Judge(x)
		if lv == gates.Good {
			put(draw.Plain, v.shown(x, "m/s"))
		} else {
			put(draw.Level(lv), v.shown(x, "m/s"))
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
		judged(gates.LimitOpening, own.Airspeed)
		put(draw.Plain, v.shown(own.Height, "m"))
		put(draw.Plain, v.shown(own.Load, "N"))
	} else {
		put(draw.Dim, "shut")
		put(draw.Plain, "")
		put(draw.Plain, "")
		put(draw.Plain, "")
	}
	if fastest, any := fastestOther(res, canopy); any {
		judged(gates.LimitOpening, fastest)
	} else if others {
		put(draw.Dim, "shut")
		put(draw.Plain, "")
	}
	if land := res.Landing; land.Happened {
		judged(gates.LimitLanding, land.Vertical)
		put(draw.Plain, v.shown(math.Hypot(land.East, land.North), "m"))
		put(draw.Dim, bearing(land.East, land.North))
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
