package report

import (
	"fmt"
	"regexp"
	"strings"

	"ullage/sim/gates"
	"ullage/sim/plan"
	"ullage/sim/quantity"
	"ullage/sim/report/card"
	"ullage/sim/rocket"
)

// NewCard fills a card, a page a day, in a system of units.
func NewCard(days []plan.Day, sys quantity.System) card.Card {
	c := make(card.Card, len(days))
	for i := range days {
		c[i] = cardPage{printer{sys}, &days[i]}.page()
	}
	return c
}

// cardPage fills one page.
type cardPage struct {
	printer
	*plan.Day
}

// page has its parts in the order in which they are used on the day.
func (p cardPage) page() card.Page {
	r, v := p.Rocket, &p.Verdict
	out := card.Page{
		Title: titleOf(r), Kind: "flight card", Verdict: VerdictText(v), Facts: p.facts(),
		Beside: []card.Block{p.weighIn(), p.settings(), p.predicted()},
	}
	if !v.Pass() {
		out.Alarm = strings.ToUpper(gates.WordNoGo)
	}
	if r.Power == rocket.WaterPower {
		out.Beside = append(out.Beside, p.chamber())
	}
	out.Beside = append(out.Beside, p.checks(), p.winds())
	out.Below = []card.Block{p.order(), p.cautions(), {
		Title:  "local law and the range officer decide",
		Blanks: []card.Blank{{Label: "flyer"}, {Label: "range officer"}, {Label: "time"}, {Label: "decision", Choices: []string{gates.WordGo, gates.WordNoGo}}},
	}}
	return out
}

// facts are the day: what to fill in, the air in force, the wind of the file.
func (p cardPage) facts() []card.Blank {
	column := p.Rocket.Site.Column()
	air := column.Air(0)
	facts := []card.Blank{{Label: "date"}, {Label: "site", Text: fmt.Sprintf("%s above sea level, %s, %s",
		p.given(p.Rocket.Site.Elevation, "m"), signs(p.given(air.Temperature, "degC")), p.text(air.Pressure, "hPa"))}}
	wind := "none"
	if w := p.Rocket.Wind; w.Speed > 0 {
		height := w.Height
		if height == 0 {
			height = usualWindHeight
		}
		wind = fmt.Sprintf("%s from %s, %s up", p.given(w.Speed, "m/s"), compass(w.From), p.given(height, "m"))
	}
	return append(facts, card.Blank{Label: "wind of the file", Text: wind})
}

// usualWindHeight is where a wind was measured when the file does not say, m.
const usualWindHeight = 10

// degreeUnits are units of degrees after a figure.
var degreeUnits = regexp.MustCompile(`(\d) deg([CF])?\b`)

// signs writes degrees with their sign, as print does where files have a word.
func signs(text string) string {
	return degreeUnits.ReplaceAllStringFunc(text, func(s string) string {
		if c := s[len(s)-1:]; c != "g" {
			return s[:1] + " °" + c
		}
		return s[:1] + "°"
	})
}

// compass is a direction to the degree, north 0°.
func compass(v float64) string { return fmt.Sprintf("%.0f°", degrees(v)) }

// tenths is an angle as a level on the rail shows it.
func tenths(v float64) string { return fmt.Sprintf("%.1f°", degrees(v)) }

// toward is a distance from the pad with its direction in letters: "77 m NE".
func toward(distance, direction string) string {
	letters := ""
	for _, word := range strings.Split(direction, "-") {
		letters += strings.ToUpper(word[:1])
	}
	return distance + " " + letters
}
