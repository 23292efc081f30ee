package log

import (
	"fmt"
	"math"
	"path/filepath"
	"strings"

	"ullage/sim/flown"
	"ullage/sim/flown/logfile"
	"ullage/sim/quantity"
	"ullage/tui/draw"
)

// sheet is what stands with the plots.
type sheet int

// The sheets, in the order in which a key shows them.
const (
	plotSheet sheet = iota // little, so that the plots have the room
	resultSheet
	readSheet
	fitSheet
	sheets
)

// Rows of the view.
const (
	leastPlot = 11 // that make a plot and its residual worth drawing
	fewWords  = 3  // below the plots, where they have the room
	roomyRows = 26 // from which plots and a sheet stand together
)

func (v *View) draw() { v.Draw(v.instead, v.paint) }

// instead is what is said where there is no log; empty mostly.
func (v *View) instead() string {
	b := &v.bindings
	e, h := v.entry(), v.held()
	switch {
	case e == nil:
		return "No log yet. Press " + b.Add.Help().Key + " to open a recorder's log by its path: a table of numbers as text, with a time " +
			"and a height, a pressure, a speed or an acceleration. More of them may follow."
	case h == nil && v.work.Err != nil:
		return "No comparison: " + v.work.Err.Error()
	case h == nil:
		return filepath.Base(e.Path) + " is being read" + v.Scene.Theme.Ellipsis
	case h.compared == nil && h.none == nil:
		text := ended(strings.Replace(h.fault, draw.Clean(e.Path), draw.Clean(filepath.Base(e.Path)), 1))
		if len(v.entries) > 1 {
			text += " Press " + b.Next.Help().Key + " for the next log, " + b.Remove.Help().Key + " to take this one off the list."
		} else {
			text += " Press " + b.Tell.Help().Key + " to say how it is to be read, " + b.Add.Help().Key + " for another log."
		}
		return text
	}
	return ""
}

// ended is a text with a full stop at its end.
func ended(text string) string { return strings.TrimRight(text, ". ") + "." }

// paint draws the log's line, the plots, and what stands with them.
func (v *View) paint() {
	h := v.held()
	v.Add(v.headline(h))
	if h.compared == nil {
		v.paintTrace(h)
		return
	}
	sheet := v.sheet
	if sheet == plotSheet && v.roomy() {
		sheet = resultSheet
	}
	if sheet == plotSheet {
		words := draw.Sentences(v.Scene.Theme, v.reading(h), v.Columns, min(fewWords, max(v.Left()-leastPlot, 1)))
		v.Add(v.plots(h, v.Left()-len(words))...)
		v.Add(words...)
		return
	}
	rows := v.sheetRows(sheet, h, v.Columns)
	if v.roomy() {
		words := draw.Sentences(v.Scene.Theme, v.reading(h), v.Columns, fewWords)
		below := min(len(rows), v.Left()-len(words)-leastPlot-2)
		v.Add(v.plots(h, v.Left()-len(words)-below)...)
		v.Add(words...)
		rows = rows[:below]
	}
	v.Add(rows...)
}

// roomy tells whether plots and a sheet have room together.
func (v *View) roomy() bool { return v.Rows >= roomyRows }

// headline says which log is shown, what of it, and where its lift-off is.
func (v *View) headline(h *held) string {
	theme, e := v.Scene.Theme, h.entry
	name := draw.Clean(filepath.Base(e.Path))
	const short = 70 // columns
	if n := len(v.entries); n > 1 && v.Columns < short {
		name += fmt.Sprintf(" %d/%d", v.at+1, n)
	} else if n > 1 {
		name += fmt.Sprintf(" (%d of %d)", v.at+1, n)
	}
	var parts []string
	tail := ""
	if c := h.compared; c != nil {
		parts = append(parts, told(v.course(h).Channel, v.Columns < short))
		lift := fmt.Sprintf("lift-off %.2f s", c.Release)
		if c.Pinned {
			lift += ", by hand"
		}
		parts = append(parts, lift)
		if !math.IsNaN(c.Landing) {
			parts = append(parts, fmt.Sprintf("landing %.1f s", c.Landing))
		} else {
			parts = append(parts, "no landing")
		}
		if c.Lost > 0 {
			parts = append(parts, samples(c.Lost)+" left out")
		}
		if c.Entry != nil {
			parts = append(parts, "day of "+c.Entry.Date)
		}
		tail = v.span.String()
	}
	if len(parts) > 1 && draw.Width(theme.Say(name+"  "+parts[0]+"  "+parts[1]+" "+tail)) > v.Columns {
		tail = "" // where the lift-off is matters more
	}
	return line(theme, name, parts, tail, v.Columns)
}

// line is a heading, as many parts as there is room for, and a tail at the right end.
func line(theme *draw.Theme, head string, parts []string, tail string, w int) string {
	head, tail = theme.Say(head), theme.Say(tail)
	room := w - draw.Width(tail) - 1
	if draw.Width(head) > room {
		head = strings.TrimRight(theme.Fit(head, room), " ")
	}
	painted, used := theme.Paint(draw.Focused, head), draw.Width(head)
	for _, p := range parts {
		p = theme.Say(p)
		if used+2+draw.Width(p) > room {
			break
		}
		painted, used = painted+"  "+p, used+2+draw.Width(p)
	}
	return painted + draw.Blanks(w-used-draw.Width(tail)) + theme.Paint(draw.Dim, tail)
}

// course is the column that is drawn.
func (v *View) course(h *held) *course { return &h.courses[min(v.channel, len(h.courses)-1)] }

// named is what a column tells, in words.
func named(c *flown.Channel) string {
	switch c.Column.Quantity {
	case logfile.Pressure:
		return "height from pressure"
	case logfile.Chamber:
		return "chamber pressure"
	}
	return string(c.Column.Quantity)
}

// told is a column with its place and unit in the log, in short without its place.
func told(c *flown.Channel, short bool) string {
	if short {
		return fmt.Sprintf("%s (%s)", named(c), c.Column.Unit.Name)
	}
	text := fmt.Sprintf("%s (column %d", named(c), c.Column.At)
	if c.Column.Unit.Name != "" {
		text += ", " + c.Column.Unit.Name
	}
	return text + ")"
}

// unit is what a column is shown in.
func (v *View) unit(c *flown.Channel) quantity.Unit {
	switch c.Column.Quantity {
	case logfile.Height, logfile.Pressure:
		return v.Scene.Unit("m")
	case logfile.Speed:
		return v.Scene.Unit("m/s")
	case logfile.Acceleration:
		return v.Scene.Unit("m/s2")
	case logfile.Chamber:
		return v.Scene.Unit("bar")
	}
	return c.Column.Unit
}
