package measured

import (
	"fmt"
	"math"

	"ullage/sim/fault"
	"ullage/sim/flown"
	"ullage/sim/flown/logfile"
	"ullage/sim/quantity"
	"ullage/sim/report/page"
	"ullage/sim/report/words"
)

// understood is how a log was read, so that a wrong guess is seen.
func understood(p words.Printer, l *flown.Logged, release float64) page.Section {
	x := page.Section{Name: page.Printable(l.Log.Name)}
	facts, remarks := Understood(p, l, release)
	x.Add(facts)
	for _, text := range remarks {
		x.Add(page.Prose(text))
	}
	return x
}

// Understood is how a log was read: what is known of it, and remarks in sentences.
func Understood(p words.Printer, l *flown.Logged, release float64) (facts page.Facts, remarks []string) {
	log := l.Log
	header := "no header"
	if log.HeaderLine > 0 {
		header = fmt.Sprintf("header in line %d", log.HeaderLine)
	}
	comma := ""
	if log.DecimalComma {
		comma = ", decimal commas"
	}
	facts = page.Facts{{"read as", fmt.Sprintf("%d rows, cells parted by %s%s, %s, %s", log.Rows, log.Separator, comma, header, log.Encoding)}}
	if log.Rate > 0 {
		facts = append(facts, [2]string{"time", fmt.Sprintf("%.4g samples a second, as told", log.Rate)})
	} else if k := log.Find(logfile.Time); k >= 0 {
		facts = append(facts, [2]string{"time", page.Printable(log.Columns[k].Name()) + ", " + unitOf(&log.Columns[k])})
	}
	for i := range l.Channels {
		c := &l.Channels[i]
		facts = append(facts, [2]string{string(c.Column.Quantity), page.Printable(c.Column.Name()) + ", " + unitOf(&c.Column) + "; " + channel(p, c)})
	}
	rest := fmt.Sprintf("%.2f s by the log's clock", release)
	if l.Pinned && release == l.LiftOff {
		rest += ", as told"
	}
	if math.IsNaN(l.Landing) {
		rest += "; it does not show the landing"
	} else {
		rest += fmt.Sprintf(", at rest again at %.1f s", l.Landing)
	}
	facts = append(facts, [2]string{"release", rest})
	if len(l.LeftOut) > 0 {
		facts = append(facts, [2]string{"left out", leftOut(l.Reading)})
	}
	if l.Day != "" {
		facts = append(facts, [2]string{"the day", l.Day})
	}
	if text := heights(p, l); text != "" {
		remarks = append(remarks, text)
	}
	if len(log.Others) > 0 {
		remarks = append(remarks, "Not used: "+page.Printable(some(log.Others))+".")
	}
	for _, n := range append(append(fault.List(nil), log.Notes...), l.Notes...) {
		remarks = append(remarks, page.Printable(note(n)))
	}
	return facts, remarks
}

// leftOut are the stretches that have no part.
func leftOut(l *flown.Reading) string {
	var parts []string
	for _, s := range l.LeftOut {
		parts = append(parts, fmt.Sprintf("%.6g to %.6g s", s.From, s.To))
	}
	return page.Listed(parts) + " by the log's clock: " + words.Plural(l.Lost, "sample")
}

func some(names []string) string {
	const most = 12
	if len(names) > most {
		return page.Listed(names[:most]) + fmt.Sprintf(" and %d more", len(names)-most)
	}
	return page.Listed(names)
}

// note is a remark as a sentence.
func note(n fault.Fault) string {
	n.File = ""
	text := n.Error()
	return text + "."
}

// unitOf is a column's unit, and that nobody told it.
func unitOf(c *logfile.Column) string {
	text := c.Unit.Name
	switch {
	case c.Told:
		text += " as told"
	case c.Guessed != "":
		text += " as guessed"
	}
	return text
}

// channel is how often and how finely a column was written, in its own unit.
func channel(p words.Printer, c *flown.Channel) string {
	u := c.Column.Unit
	if c.Column.Quantity == logfile.Pressure { // turned into heights
		u, _ = quantity.LookupIn("m", quantity.Length)
		u = p.System.Unit(u)
	}
	u.Offset = 0
	text := "a value every " + p.Given(c.Every, "s")
	if c.Step > 0 {
		text += ", steps of " + quantity.Format(c.Step, u, 2)
	}
	text += ", noise " + quantity.Format(c.Noise, u, 2)
	if c.PadCount == 0 {
		text += " by its roughness"
	} else {
		text += fmt.Sprintf(" over %d at rest", c.PadCount)
	}
	return text
}

func second() quantity.Unit {
	u, _ := quantity.LookupIn("s", quantity.Time)
	return u
}

// heights says what heights were taken for, and what that changed.
func heights(p words.Printer, l *flown.Logged) string {
	c := l.Best()
	if c == nil {
		return ""
	}
	switch {
	case c.Column.Quantity == logfile.Pressure:
		return fmt.Sprintf("Pressures are turned into heights by the air of the site: the greatest is %s, where the standard atmosphere makes it %s.",
			p.Height(l.Turned), p.Height(l.Told))
	case c.Column.Measured || l.Heights == flown.MeasuredHeights:
		return "Heights are taken as measured, with no pressure behind them."
	case l.Heights == flown.PadHeights:
		return fmt.Sprintf("Heights are taken as made from pressure by the standard atmosphere with the pad's pressure for that of sea level: %s told are %s in the site's air.", p.Height(l.Told), p.Height(l.Turned))
	}
	return fmt.Sprintf("Heights are taken as made from pressure by the standard atmosphere: %s told are %s in the site's air. If they are measured otherwise, say so: --height measured.",
		p.Height(l.Told), p.Height(l.Turned))
}
