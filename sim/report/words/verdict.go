package words

import (
	"fmt"
	"math"
	"strings"

	"ullage/sim/gates"
	"ullage/sim/quantity"
	"ullage/sim/report/page"
)

// Within is what a check passed against. Nothing more is meant by it: whether a rocket
// flies is for people to decide.
const Within = "the limits given"

// Verdict is go or no-go in one line: "go: 19 checks within the limits given, 2 not
// judged".
func Verdict(v *gates.Verdict) string {
	n, failed, open := len(v.Checks), v.Failed(), v.Unjudged()
	text := fmt.Sprintf("%s: %d of %d checks outside %s", v.Word(), failed, n, Within)
	if failed == 0 {
		text = fmt.Sprintf("%s: %d of %d checks within %s", v.Word(), n-open-v.Cautions(), n, Within)
		if v.Pass() {
			text = fmt.Sprintf("%s: %d checks within %s", v.Word(), n-v.Cautions(), Within)
		}
	}
	switch c := v.Cautions(); {
	case c == 1:
		text += ", 1 caution"
	case c > 1:
		text += fmt.Sprintf(", %d cautions", c)
	}
	if open > 0 {
		text += fmt.Sprintf(", %d not judged", open)
	}
	return text
}

// Outside tells those of some checks of a verdict that fail or are not judged; empty where there are none.
func (p Printer) Outside(v *gates.Verdict, of func(c *gates.Check) bool) string {
	var failed, open, parts []string
	for i := range v.Checks {
		switch c := &v.Checks[i]; {
		case !of(c):
		case c.Fails():
			failed = append(failed, p.Told(c))
		case !c.Judged:
			open = append(open, c.Name)
		}
	}
	if len(failed) > 0 {
		parts = append(parts, page.Listed(failed))
	}
	if len(open) > 0 {
		parts = append(parts, gates.WordOpen+": "+page.Listed(open))
	}
	return strings.Join(parts, "; ")
}

// Told says what a check came to, with its worst value where there is one.
func (p Printer) Told(c *gates.Check) string {
	if value := p.CheckValue(c); value != "-" {
		return c.Name + " " + value + " " + c.Word
	}
	return c.Name + ": " + c.Word
}

// CheckValue is the worst value of a check, "-" for none.
func (p Printer) CheckValue(c *gates.Check) string {
	switch {
	case c.Key == gates.LimitRailExitWind && math.IsInf(c.Value, 1): // over no wind
		return "calm"
	case math.IsNaN(c.Value), math.IsInf(c.Value, 0):
		return "-"
	}
	text := p.checked(c.Value, &c.Limit)
	for _, bound := range []float64{c.Limit.Min, c.Limit.Max} {
		if c.Level != gates.Good && c.Judged && !math.IsInf(bound, 0) && text == p.checked(bound, &c.Limit) {
			return spelled(quantity.Format(c.Value, p.System.Unit(c.Limit.In()), 5)) // a hair outside has to be seen
		}
	}
	return text
}

func (p Printer) checked(v float64, l *gates.Limit) string {
	switch {
	case l.Unit != "":
		return figure(v, p.System.Unit(l.In()))
	case v == math.Trunc(v) && math.Abs(v) >= 10: // days, which are counted
		return Ratio(v)
	}
	return p.Number(v)
}

// Sources says where the limits of a verdict come from, each source with the checks that
// have it.
func Sources(v *gates.Verdict) string {
	var order []string
	names := map[string][]string{}
	for i := range v.Checks {
		l := &v.Checks[i].Limit
		if math.IsInf(l.Min, 0) && math.IsInf(l.Max, 0) {
			continue
		}
		if names[l.Source] == nil {
			order = append(order, l.Source)
		}
		names[l.Source] = append(names[l.Source], l.Name)
	}
	var parts []string
	for _, source := range order {
		if source != gates.CommonPractice {
			parts = append(parts, source+": "+strings.Join(page.Printables(names[source]), ", "))
		}
	}
	text := "Limits are common practice, without a source"
	if len(parts) > 0 {
		text += ", but for " + strings.Join(parts, "; ")
	}
	return text + "."
}
