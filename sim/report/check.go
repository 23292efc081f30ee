package report

import (
	"encoding/json"
	"fmt"
	"io"
	"math"
	"strings"

	"ullage/sim/gates"
	"ullage/sim/quantity"
	"ullage/sim/results"
)

// withinWords is the verdict on a rocket none of whose checks failed. Nothing more is
// meant by it: whether it flies is for people to decide.
const withinWords = "within the limits given"

// VerdictText is go or no-go in one line: "go: 19 checks within the limits given, 2 not
// judged".
func VerdictText(v *gates.Verdict) string {
	n, failed, open := len(v.Checks), v.Failed(), v.Unjudged()
	text := fmt.Sprintf("%s: %d of %d checks outside the limits given", gates.WordNoGo, failed, n)
	if failed == 0 {
		text = fmt.Sprintf("%s: %d checks %s", gates.WordGo, n-open-v.Cautions(), withinWords)
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

// VerdictFinding is go or no-go as a finding of the flight.
func VerdictFinding(v *gates.Verdict, sys quantity.System) Finding {
	p := printer{sys}
	word, text, _ := strings.Cut(VerdictText(v), ": ")
	f := Finding{Key: "gates", Label: "go or no-go", Value: text, Word: word, Level: gates.Good}
	if !v.Pass() {
		f.Level = gates.Bad
	}
	var lines []string
	for i := range v.Checks {
		if c := &v.Checks[i]; !c.Pass {
			lines = append(lines, strings.TrimSpace(c.Name+" "+checkValue(p, c)+" "+c.Word+" "+caseText(c, v)))
		}
	}
	f.Detail = "Against " + withinWords[len("within "):] + " alone; local law and the range officer decide."
	if len(lines) > 0 {
		f.Detail = strings.Join(printables(lines), "; ") + ". " + f.Detail
	}
	return f
}

// CheckValue is the worst value of a check in words, "-" for none.
func CheckValue(c *gates.Check, sys quantity.System) string { return checkValue(printer{sys}, c) }

// CheckBound is the limit of a check: "at least 15 m/s", "1 to 3", "-" without one.
func CheckBound(c *gates.Check, sys quantity.System) string { return bounds(printer{sys}, c.Limit) }

func checkValue(p printer, c *gates.Check) string {
	switch {
	case c.Key == gates.LimitRailExitWind && math.IsInf(c.Value, 1): // over no wind
		return "calm"
	case math.IsNaN(c.Value), math.IsInf(c.Value, 0):
		return "-"
	}
	text := quantityText(p, c.Value, c.Limit.Unit)
	for _, bound := range []float64{c.Limit.Min, c.Limit.Max} {
		if c.Level != gates.Good && c.Judged && !math.IsInf(bound, 0) && text == quantityText(p, bound, c.Limit.Unit) {
			u := quantity.Usual(quantity.Number)
			if c.Limit.Unit != "" {
				u = p.sys.Unit(unitNamed(c.Limit.Unit))
			}
			return spelled(quantity.Format(c.Value, u, 5)) // a hair outside has to be seen
		}
	}
	return text
}

func quantityText(p printer, v float64, unit string) string {
	switch {
	case unit != "":
		return p.text(v, unit)
	case v == math.Trunc(v) && math.Abs(v) >= 10: // days, which are counted
		return ratio(v)
	}
	return p.number(v)
}

func bounds(p printer, l gates.Limit) string { return bounded(p, l, "at least ", "at most ") }

// bounded writes a limit with what stands before either bound.
func bounded(p printer, l gates.Limit, least, most string) string {
	low, high := !math.IsInf(l.Min, 0), !math.IsInf(l.Max, 0)
	shown := func(v float64) string {
		if l.Unit == "" {
			return ratio(v)
		}
		return p.given(v, l.Unit)
	}
	switch {
	case low && high:
		return shown(l.Min) + " to " + shown(l.Max)
	case low:
		return least + shown(l.Min)
	case high:
		return most + shown(l.Max)
	}
	return "-"
}

// caseText is which case was worst, where there is more than one.
func caseText(c *gates.Check, v *gates.Verdict) string {
	n := 0
	for _, x := range c.Values {
		if x.Flown {
			n++
		}
	}
	if n < 2 {
		return ""
	}
	return c.Case.String()
}

type (
	verdictJSON struct {
		Pass   bool        `json:"pass"`
		Checks []checkJSON `json:"checks"`
	}
	checkJSON struct {
		Name   string   `json:"name"`
		Value  *number  `json:"value"`
		Min    *number  `json:"min"`
		Max    *number  `json:"max"`
		Unit   string   `json:"unit"`
		Word   string   `json:"word"`
		Pass   bool     `json:"pass"`
		Source string   `json:"source"`
		Mend   *string  `json:"mend"`
		Key    string   `json:"key"`
		Judged bool     `json:"judged"`
		Case   string   `json:"case"`
		Calm   *number  `json:"calm"`
		Day    *number  `json:"day"`
		Corner *number  `json:"corner"`
		Mends  []string `json:"mends"`
	}
)

// caseNames are the cases as JSON has them.
var caseNames = [...]string{results.Calm: "calm", results.Day: "day", results.Corner: "corner"}

// WriteVerdictJSON writes go or no-go as one JSON object, SI units, angles in degrees.
// pass is true when no check failed; mend is the first of mends, null without one.
func WriteVerdictJSON(w io.Writer, v *gates.Verdict) error {
	doc := verdictJSON{Pass: v.Pass(), Checks: []checkJSON{}}
	for i := range v.Checks {
		c := &v.Checks[i]
		unit, scale := siUnit(c.Limit.Unit)
		shown := func(x float64) *number {
			if math.IsNaN(x) || math.IsInf(x, 0) {
				return nil
			}
			return pointer(x * scale)
		}
		of := func(k results.Case) *number {
			if x := c.Values[k]; x.Flown && x.Known {
				return shown(x.V)
			}
			return nil
		}
		j := checkJSON{Name: printable(c.Name), Value: shown(c.Value), Min: shown(c.Limit.Min), Max: shown(c.Limit.Max), Unit: unit,
			Word: c.Word, Pass: c.Pass, Source: c.Limit.Source, Key: c.Key, Judged: c.Judged, Case: caseNames[c.Case],
			Calm: of(results.Calm), Day: of(results.Day), Corner: of(results.Corner), Mends: []string{}}
		for _, m := range c.Remedies {
			j.Mends = append(j.Mends, MendText(m, quantity.Metric))
		}
		if len(j.Mends) > 0 {
			j.Mend = &j.Mends[0]
		}
		doc.Checks = append(doc.Checks, j)
	}
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	return e.Encode(doc)
}

// siUnit is the unit that JSON has instead of one shown, and what SI values are
// multiplied by for it: angles are in degrees.
func siUnit(shown string) (unit string, scale float64) {
	switch shown {
	case "deg":
		return "deg", 180 / math.Pi
	case "bar":
		return "Pa", 1
	case "g":
		return "kg", 1
	case "mm":
		return "m", 1
	}
	return shown, 1
}

// WriteVerdictText writes go or no-go for people: every check with its worst value, limit,
// source and word, and what would mend those that fail.
func WriteVerdictText(w io.Writer, v *gates.Verdict, sys quantity.System) error {
	p := printer{sys}
	var s sheet
	s.heading(p, v.Rocket)
	s.line("")
	s.hung("  ", VerdictText(v))
	s.line("")
	s.line(fmt.Sprintf("  %-34s%11s  %-9s %-12s %s", "check", "worst", "word", "limit", "case"))
	for i := range v.Checks {
		s.check(p, &v.Checks[i])
	}
	s.line("")
	s.hung("  ", casesText(v))
	s.hung("  ", sources(v))
	for _, c := range Cautions(v.Power) {
		s.hung("  ", c)
	}
	_, err := io.WriteString(w, s.String())
	return err
}

// check writes one check and, below it, what would mend it.
func (s *sheet) check(p printer, c *gates.Check) {
	mark := "  "
	if !c.Pass {
		mark = "! "
	} else if c.Level != gates.Good {
		mark = "? "
	}
	where := ""
	if c.Values[results.Corner].Flown && c.Judged {
		where = caseNames[c.Case]
	}
	s.line(fmt.Sprintf("%s%-34s%11s  %-9s %-12s %s", mark, printable(c.Name), checkValue(p, c), c.Word, bounded(p, c.Limit, "≥ ", "≤ "), where))
	prefix := "      mend: "
	if !c.Judged {
		prefix = "      "
	}
	for _, m := range c.Remedies {
		if m.Kind != gates.LeaveTheRail { // which the rail exit says already
			s.hung(prefix, MendText(m, p.sys))
		}
	}
}

// sources says where the limits come from, each source with the checks that have it.
func sources(v *gates.Verdict) string {
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
			parts = append(parts, source+": "+strings.Join(printables(names[source]), ", "))
		}
	}
	text := "Limits are common practice, without a source"
	if len(parts) > 0 {
		text += ", but for " + strings.Join(parts, "; ")
	}
	return text + "."
}

// casesText says what was looked at.
func casesText(v *gates.Verdict) string {
	text := "The worst is told of calm air and of the day's wind"
	if v.Cornered {
		text += ", and of the corner in which every uncertain input is one standard deviation off against the check at once"
	}
	return text + "; which of them it is stands last. A row without a case is judged as the file has it. [limits] and [field] replace limits. " +
		"After a mend, check again."
}
