package card

import (
	"fmt"
	"math"

	"ullage/sim/gates"
	"ullage/sim/plan"
	"ullage/sim/report/card/form"
	"ullage/sim/report/page"
	"ullage/sim/report/words"
	"ullage/sim/study"
)

// manyFailed is from how many failed checks on each has its first mend alone: so many
// call for the workshop, where check tells the rest.
const manyFailed = 5

// checks is every check, and below a failed one what would mend it.
func (p filler) checks() form.Block {
	v := &p.Verdict
	t := &form.Table{Columns: []form.Column{{Head: "check"}, {Head: "worst", Kind: form.Figures}, {Head: "limit"}, {Head: "verdict"}}}
	for i := range v.Checks {
		c := &v.Checks[i]
		row := form.Row{Cells: []string{page.Printable(c.Name), signs(p.CheckValue(c)), signs(p.Bounds(c.Limit)), c.Word}}
		switch {
		case c.Fails():
			row.Mark = form.Failed
			for j, m := range c.Remedies {
				if j > 0 && v.Failed() >= manyFailed {
					break
				}
				row.Below = append(row.Below, "mend: "+signs(p.Remedy(m)))
			}
		case c.Level != gates.Good:
			row.Mark = form.Doubt
			if len(c.Remedies) > 0 && c.Remedies[0].Kind != gates.LeaveTheRail { // which the rail exit says already
				row.Below = append(row.Below, signs(p.Remedy(c.Remedies[0])))
			}
		}
		t.Rows = append(t.Rows, row)
	}
	note := "Worst of calm air and the day's wind"
	if v.Cornered {
		note = "Worst of calm air, the day's wind and the corner where all that is uncertain goes against the check"
	}
	return form.Block{Title: "checks", Table: t, Notes: []string{note + "; the chamber's as the file has it."}}
}

// warnings are all that the flight of the day warns of. What a check above fails by is said
// there; a note is marked as one.
func (p filler) warnings() form.Block {
	var notes []string
	for _, w := range p.Verdict.Day.Warnings {
		text := signs(p.Warning(w))
		if gates.NoteOn(w.Code) != "" {
			text = "To note: " + text
		}
		notes = append(notes, text)
	}
	return form.Block{Title: "warnings", Notes: notes}
}

// winds is how to tilt the rail into each wind, and what comes of it.
func (p filler) winds() form.Block {
	_, from := p.Rocket.Wind.Surface()
	tilt, direction := "tilt to "+compass(from), "from the direction in the file"
	if p.layered() {
		tilt, direction = "tilt", "in the layers of the file, made stronger or weaker as a whole"
	}
	t := &form.Table{Columns: []form.Column{
		{Head: "wind", Unit: p.WindUnit()}, {Head: tilt, Kind: form.Figures},
		{Head: "rail exit", Unit: p.Unit("m/s")}, {Head: "angle"}, {Head: "apogee", Unit: p.Unit("m")}, {Head: "landing", Unit: p.Unit("m")}}}
	for _, l := range p.Tilts {
		t.Rows = append(t.Rows, p.wind(l))
	}
	return form.Block{Title: "rail and wind", Table: t, Notes: []string{fmt.Sprintf(
		"The tilt into the wind, at most %s, that lands nearest the pad (common practice, no source), and where it "+
			"lands then. For a wind %s; turn the rail with the wind. The rail exit is judged by "+
			"the wind too; opening and landing are not judged here. Marked too is what the wind limit above does not hold.", tenths(plan.MostTilt(p.Rocket)), direction), words.Direction}}
}

// layered tells that the wind comes from several directions, each height its own.
func (p filler) layered() bool { return len(p.Rocket.Wind.Layers) > 1 }

// wind is the row of one wind: words that grade the rail exit and its angle always, the
// others where they are outside a limit.
func (p filler) wind(l study.WindTilt) form.Row {
	fl := l.Flight
	r := fl.Rocket
	outside := !p.Day.Wind.Holds(l.Wind) // the checks look at more than the columns do, and at the worst corners
	judge := func(text string, limit gates.Limit, v float64) string {
		word, level := limit.Judge(v)
		if level == gates.Bad {
			outside = true
		}
		return text + " " + word
	}
	quiet := func(text string, limit gates.Limit, v float64) string {
		if _, level := limit.Judge(v); level != gates.Bad {
			return text
		}
		return judge(text, limit, v)
	}
	tilt := tenths(l.Tilt)
	if p.layered() && l.Tilt > 0 {
		tilt += " to " + compass(l.Heading)
	}
	cells := []string{quiet(p.WindFigure(l.Wind), gates.LimitFor(r, gates.LimitWind), l.Wind), tilt,
		gates.WordNever, "-", "-", "-"}
	if e := fl.RailExit; e.Happened {
		cells[2] = judge(p.Bare(e.Speed, "m/s"), gates.RailExit(r), e.Speed)
		if s := &fl.Stability; s.Known {
			cells[3] = judge(tenths(s.RailExitAngle), gates.LimitFor(r, gates.LimitAttack), s.RailExitAngle)
		}
	} else {
		outside = true
	}
	if fl.Apogee.Happened {
		cells[4] = quiet(p.Bare(fl.Apogee.Height, "m"), fieldLimit(r.Field.Ceiling, gates.WordHigh), fl.Apogee.Height)
	}
	if x := fl.Landing; x.Happened {
		where := p.Bare(l.Drift, "m")
		if l.Drift >= words.AtPad {
			where = toward(where, words.Bearing(x.East, x.North))
		}
		cells[5] = where
		if !r.Field.Holds(x.East, x.North) {
			cells[5], outside = where+" "+gates.WordFar, true
		}
	}
	row := form.Row{Cells: cells}
	if outside {
		row.Mark = form.Failed
	}
	return row
}

// fieldLimit is a bound of the field; one that is not given bounds nothing.
func fieldLimit(most float64, word string) gates.Limit {
	if most == 0 {
		most = math.Inf(1)
	}
	return gates.Limit{Min: math.Inf(-1), Max: most, Word: word}
}
