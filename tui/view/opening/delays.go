package opening

import (
	"fmt"
	"math"

	"ullage/sim/gates"
	"ullage/sim/study"
	"ullage/tui/draw"
)

// hadSign marks a delay that can be had.
const hadSign = '+'

// delays are the values listed in a table: a motor's, of which there are few.
func (v *View) delays() []study.Delay {
	if o := &v.study.Result; v.study.Ready && o.number != "" && o.rule().Trigger.ByCharge() {
		return o.values
	}
	return nil
}

// delaysTable is the whole-second delays of a motor, those that can be had
// marked, and the best of them.
func (v *View) delaysTable(w, h int) []string {
	o := &v.study.Result
	t := draw.Table{Tight: w < 70, Columns: []draw.Column{
		{Title: "delay"}, {Left: true}, {Title: "airspeed"}, {Left: true}, {Title: "height", Rank: 1}, {Title: "load", Rank: 2},
		{Title: "from apogee", Rank: 5}, {Title: "landing", Rank: 3}, {Left: true, Rank: 3}, {Title: "drift", Rank: 4},
	}}
	now, there := o.now()
	for i, d := range o.values {
		row := draw.Row{Sign: " "}
		note := ""
		if d.Listed {
			row.Sign, note = string(hadSign), "can be had"
		}
		if d.Opened && d.Early {
			note = "under thrust"
		}
		if d.OutOfTurn {
			note = "out of turn"
		}
		if i == o.best {
			row.Role, note = draw.Good, "best"
		}
		if there && sameNumber(d.Value, now) {
			t.Chosen, row.Role = i, draw.Strong
			if note = "as set"; i == o.best {
				note = "as set, best"
			}
		}
		put := func(r draw.Role, text string) { row.Cells = append(row.Cells, draw.Cell{Text: text, Role: r}) }
		put(draw.Plain, draw.Exact(d.Value, v.numberUnit(), 6))
		put(draw.Plain, note)
		if !d.Opened {
			put(draw.Dim, "shut")
			t.Rows = append(t.Rows, row)
			continue
		}
		r := v.study.Result.of.Flight.Rocket
		word, lv := gates.JudgeResult(r, "canopy."+r.Canopies[o.canopy].Name+".airspeed", d.Airspeed)
		put(draw.Plain, v.shown(d.Airspeed, "m/s"))
		put(draw.Level(lv), word)
		put(draw.Plain, v.shown(d.Height, "m"))
		put(draw.Plain, v.shown(d.Load, "N"))
		put(draw.Plain, fmt.Sprintf("%+.1f s", d.SinceTop))
		word, lv = gates.JudgeResult(r, "landing.vertical", d.Landing.Vertical)
		put(draw.Plain, v.shown(d.Landing.Vertical, "m/s"))
		put(draw.Level(lv), word)
		put(draw.Plain, v.shown(math.Hypot(d.Landing.East, d.Landing.North), "m"))
		t.Rows = append(t.Rows, row)
	}
	return t.Draw(v.Scene.Theme, w, h)
}
