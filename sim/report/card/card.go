// Package card writes the page to take to the field, to weigh, set and tick off by and to
// hand to the range officer: what stands on it, and in which words. How it is laid out is
// in its form.
package card

import (
	"fmt"
	"io"
	"regexp"
	"strings"
	"sync"

	"ullage/sim/gates"
	"ullage/sim/ground"
	"ullage/sim/plan"
	"ullage/sim/quantity"
	"ullage/sim/report/card/form"
	"ullage/sim/report/machine"
	"ullage/sim/report/page"
	"ullage/sim/report/words"
	"ullage/sim/rocket"
)

// WriteText writes a card, a page a day, as plain text.
func WriteText(w io.Writer, days []plan.Day, sys quantity.System) error {
	return form.WriteText(w, fill(days, sys))
}

// WriteMarkdown writes a card as Markdown with task lists.
func WriteMarkdown(w io.Writer, days []plan.Day, sys quantity.System) error {
	return form.WriteMarkdown(w, fill(days, sys))
}

// WriteHTML writes a card as one file of HTML that prints every page on one sheet.
func WriteHTML(w io.Writer, days []plan.Day, sys quantity.System) error {
	return form.WriteHTML(w, fill(days, sys))
}

// fill fills a form, a page a day.
func fill(days []plan.Day, sys quantity.System) form.Form {
	out := make(form.Form, len(days))
	for i := range days {
		out[i] = filler{words.In(sys), &days[i]}.page()
	}
	return out
}

// filler fills one page.
type filler struct {
	words.Printer
	*plan.Day
}

// page has its parts in the order in which they are used on the day.
func (p filler) page() form.Page {
	r, v := p.Rocket, &p.Verdict
	out := form.Page{
		Title: words.Title(r), Kind: "flight card", Verdict: words.Verdict(v), Facts: p.facts(),
		Beside: []form.Block{p.weighIn(), p.settings(), p.predicted()},
	}
	if !v.Pass() {
		out.Alarm = strings.ToUpper(v.Word())
	}
	if r.Power == rocket.WaterPower {
		out.Beside = append(out.Beside, p.chamber(), p.launcher())
	}
	out.Beside = append(out.Beside, p.checks())
	if len(v.Day.Warnings) > 0 {
		out.Beside = append(out.Beside, p.warnings())
	}
	out.Beside = append(out.Beside, p.winds())
	out.Below = []form.Block{p.order(), p.cautions(), {
		Title:  "local law and the range officer decide",
		Blanks: []form.Blank{{Label: "flyer", Text: p.flyer()}, {Label: "range officer"}, {Label: "time"}, {Label: "decision", Choices: []string{gates.WordGo, gates.WordNoGo}}},
	}}
	return out
}

// flyer is who flies and how certified, as far as the file tells.
func (p filler) flyer() string {
	f := &p.Rocket.Flyer
	var said []string
	for _, text := range []string{f.Name, f.Certification} {
		if text != "" {
			said = append(said, page.Printable(text))
		}
	}
	return strings.Join(said, ", ")
}

// facts are the day: what to fill in, the air in force, the wind of the file.
func (p filler) facts() []form.Blank {
	facts := []form.Blank{{Label: "date"}, {Label: "site", Text: fmt.Sprintf("%s above sea level, %s",
		p.Given(p.Rocket.Site.Elevation, "m"), signs(p.Air(p.Rocket.Site)))}}
	wind := "not stated"
	w := &p.Rocket.Wind
	switch speed, from := w.Surface(); {
	case speed == 0 && w.Known():
		wind = "none: calm air"
	case speed > 0:
		wind = fmt.Sprintf("%s from %s, %s up", p.WindSpeed(speed), compass(from), p.Given(w.Reference(), "m"))
	}
	if len(w.Layers) > 1 {
		top := w.Top()
		wind += fmt.Sprintf("; %s from %s at %s", p.WindSpeed(top.Speed), compass(top.From), p.Given(top.Height, "m"))
	}
	if gust := p.Gust(p.Rocket); gust != "" {
		wind += "; " + signs(gust)
	}
	return append(facts, form.Blank{Label: "wind of the file", Text: wind}, form.Blank{Label: "wind limit", Text: p.MostWind(&p.Day.Wind)},
		form.Blank{Label: "clear distance", Text: p.Clear(p.clear(), p.Rocket.Power)})
}

// clear is how far people are kept from the pad.
func (p filler) clear() ground.Kept { return plan.Clear(p.Rocket, p.Verdict.Day) }

// degreeUnits are units of degrees after a figure.
var degreeUnits = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`(\d) deg([CF])?\b`) })

// signs writes degrees with their sign, as print does where files have a word.
func signs(text string) string {
	return degreeUnits().ReplaceAllStringFunc(text, func(s string) string {
		if c := s[len(s)-1:]; c != "g" {
			return s[:1] + " °" + c
		}
		return s[:1] + "°"
	})
}

// compass is a direction to the degree, north 0°.
func compass(v float64) string { return fmt.Sprintf("%.0f°", machine.Degrees(v)) }

// tenths is an angle as a level on the rail shows it.
func tenths(v float64) string { return fmt.Sprintf("%.1f°", machine.Degrees(v)) }

// toward is a distance from the pad with its direction in letters: "77 m NE".
func toward(distance, direction string) string {
	letters := ""
	for _, word := range strings.Split(direction, "-") {
		letters += strings.ToUpper(word[:1])
	}
	return distance + " " + letters
}
