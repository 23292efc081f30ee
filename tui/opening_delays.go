package tui

import (
	"fmt"
	"math"

	"ullage/sim/gates"
	"ullage/sim/study"
)

// hadSign marks a delay that can be had.
const hadSign = '+'

// delays are the values listed in a table: a motor's, of which there are few.
func (v *openingView) delays() []study.Delay {
	if o := &v.study.result; v.study.ready && o.number != "" && byCharge(o.rule()) {
		return o.values
	}
	return nil
}

// delaysTable is the whole-second delays of a motor, those that can be had
// marked, and the best of them.
func (v *openingView) delaysTable(w, h int) []string {
	o := &v.study.result
	t := table{tight: w < 70, columns: []tableColumn{
		{title: "delay"}, {left: true}, {title: "airspeed"}, {left: true, rank: 1}, {title: "height"}, {title: "load"},
		{title: "from the top", rank: 4}, {title: "lands", rank: 2}, {title: "drift", rank: 3},
	}}
	now, there := o.now()
	for i, d := range o.values {
		row := tableRow{sign: " "}
		note := ""
		if d.Listed {
			row.sign, note = string(hadSign), "can be had"
		}
		if d.Opened && d.Early {
			note = "under thrust"
		}
		if i == o.best {
			row.role, note = goodWord, "best"
		}
		if there && sameNumber(d.Value, now) {
			t.chosen, row.role = i, strongText
			if note = "as set"; i == o.best {
				note = "as set, best"
			}
		}
		put := func(r role, text string) { row.cells = append(row.cells, tableCell{text, r}) }
		put(plainText, exact(d.Value, v.numberUnit(), 6))
		put(plainText, note)
		if !d.Opened {
			put(dimText, "shut")
			t.rows = append(t.rows, row)
			continue
		}
		word, lv := gates.LimitFor(v.study.result.of.flight.Rocket, gates.LimitOpening).Judge(d.Airspeed)
		put(plainText, v.shown(d.Airspeed, "m/s"))
		put(level(lv), word)
		put(plainText, v.shown(d.Height, "m"))
		put(plainText, v.shown(d.Load, "N"))
		put(plainText, fmt.Sprintf("%+.1f s", d.SinceTop))
		put(plainText, v.shown(d.Landing.Vertical, "m/s"))
		put(plainText, v.shown(math.Hypot(d.Landing.East, d.Landing.North), "m"))
		t.rows = append(t.rows, row)
	}
	return t.draw(v.scene.look, w, h)
}
