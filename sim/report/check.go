package report

import (
	"fmt"
	"io"
	"math"
	"strings"
	"unicode/utf8"

	"ullage/sim/gates"
	"ullage/sim/plan"
	"ullage/sim/quantity"
	"ullage/sim/report/machine"
	"ullage/sim/report/page"
	"ullage/sim/report/words"
	"ullage/sim/results"
)

// VerdictFinding is go or no-go as a finding of the flight.
func VerdictFinding(v *gates.Verdict, sys quantity.System) Finding {
	p := words.In(sys)
	word, text, _ := strings.Cut(words.Verdict(v), ": ")
	f := Finding{Key: "gates", Label: "go or no-go", Value: text, Word: word, Level: v.Level()}
	var lines, open []string
	for i := range v.Checks {
		switch c := &v.Checks[i]; {
		case c.Fails():
			lines = append(lines, strings.TrimSpace(p.Told(c)+" "+caseText(c, v)))
		case !c.Judged:
			open = append(open, c.Name)
		}
	}
	if len(open) > 0 {
		lines = append(lines, gates.WordOpen+": "+page.Listed(open))
	}
	f.Detail = "Against " + words.Within + " alone; local law and the range officer decide."
	if len(lines) > 0 {
		f.Detail = strings.Join(page.Printables(lines), "; ") + ". " + f.Detail
	}
	return f
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
		Word   string      `json:"verdict"`
		Checks []checkJSON `json:"checks"`

		Wind *windLimitJSON `json:"wind_limit"`

		Clear clearJSON `json:"clear_distance"`
		Air   bool      `json:"air_temperature_stated"` // else all of it is for the standard atmosphere's
	}
	windLimitJSON struct {
		Most     *number  `json:"most_mps"`
		Least    *number  `json:"least_mps"`
		Above    []string `json:"fails_above"`
		Fails    []string `json:"fails"`
		Unjudged []string `json:"not_judged"`
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
// pass is true when every check was judged and none failed; mend is the first of mends, null without one; so is the
// wind up to which all pass where none does.
func WriteVerdictJSON(w io.Writer, v *gates.Verdict, wind *plan.WindLimit) error {
	doc := verdictJSON{Pass: v.Pass(), Word: v.Word(), Checks: []checkJSON{}, Clear: newClear(plan.Clear(v.Rocket, v.Day)), Air: v.Rocket.Site.Temperature != 0}
	if wind != nil {
		doc.Wind = &windLimitJSON{Above: page.Printables(wind.Above), Fails: page.Printables(wind.Fails), Unjudged: page.Printables(wind.Unjudged)}
		if wind.Passes {
			doc.Wind.Most, doc.Wind.Least = machine.Pointer(wind.Most), machine.Pointer(wind.Least)
		}
	}
	for i := range v.Checks {
		c := &v.Checks[i]
		unit, scale := siUnit(c.Limit.Unit)
		shown := func(x float64) *number {
			if math.IsNaN(x) || math.IsInf(x, 0) {
				return nil
			}
			return machine.Pointer(x * scale)
		}
		of := func(k results.Case) *number {
			if x := c.Values[k]; x.Flown && x.Known {
				return shown(x.V)
			}
			return nil
		}
		j := checkJSON{Name: page.Printable(c.Name), Value: shown(c.Value), Min: shown(c.Limit.Min), Max: shown(c.Limit.Max), Unit: unit,
			Word: c.Word, Pass: c.Pass, Source: c.Limit.Source, Key: c.Key, Judged: c.Judged, Case: caseNames[c.Case],
			Calm: of(results.Calm), Day: of(results.Day), Corner: of(results.Corner), Mends: []string{}}
		for _, m := range c.Remedies {
			j.Mends = append(j.Mends, words.In(quantity.Metric).Remedy(m))
		}
		if len(j.Mends) > 0 {
			j.Mend = &j.Mends[0]
		}
		doc.Checks = append(doc.Checks, j)
	}
	return machine.WriteDocument(w, doc)
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
func WriteVerdictText(w io.Writer, v *gates.Verdict, wind *plan.WindLimit, sys quantity.System) error {
	p := words.In(sys)
	var s sheet
	s.heading(p, v.Rocket)
	s.Line("")
	s.Hung("  ", words.Verdict(v))
	if wind != nil {
		s.Hung("  ", p.MostWind(wind))
	}
	s.Hung("  ", "clear distance: "+p.Clear(plan.Clear(v.Rocket, v.Day), v.Power))
	s.Hung("  ", casesText(v))
	if text := p.StandardDay(v.Rocket); text != "" {
		s.Hung("  ", text)
	}
	s.Line("")
	s.Line(checkRow("  ", "check", "worst", "verdict", "limit", "case"))
	for i := range v.Checks {
		s.check(p, &v.Checks[i])
	}
	for _, text := range words.Booked(v.Rocket.Chamber) {
		s.Hung("! ", text)
	}
	s.Line("")
	s.Hung("  ", "A row without a case is judged as the file has it. [limits] and [field] replace limits. After a mend, check again.")
	s.Hung("  ", words.Sources(v))
	for _, c := range words.Cautions(v.Power) {
		s.Hung("  ", c)
	}
	_, err := io.WriteString(w, s.String())
	return err
}

// namedAndWorst is how many columns the name of a check and its worst number share.
const namedAndWorst = 45

// checkRow is a row of the table of checks: a name that is longer than most comes nearer to its number.
func checkRow(mark, name, worst, word, limit, where string) string {
	return fmt.Sprintf("%s%s%*s  %-9s %-12s %s", mark, name, namedAndWorst-utf8.RuneCountInString(name), worst, word, limit, where)
}

// check writes one check and, below it, what would mend it.
func (s *sheet) check(p words.Printer, c *gates.Check) {
	mark := "  "
	if c.Fails() {
		mark = "! "
	} else if c.Level != gates.Good {
		mark = "? "
	}
	where := ""
	if c.Values[results.Corner].Flown && c.Judged {
		where = caseNames[c.Case]
	}
	worst := p.CheckValue(c)
	name := page.Wrap(page.Printable(c.Name), namedAndWorst-1-utf8.RuneCountInString(worst))
	s.Line(checkRow(mark, name[0], worst, c.Word, p.Bounded(c.Limit, "≥ ", "≤ "), where))
	for _, more := range name[1:] {
		s.Line("  " + more)
	}
	prefix := "      mend: "
	if !c.Judged {
		prefix = "      "
	}
	for _, m := range c.Remedies {
		if m.Kind != gates.LeaveTheRail { // which the rail exit says already
			s.Hung(prefix, p.Remedy(m))
		}
	}
}

// casesText says what was looked at, before its words stand in the table.
func casesText(v *gates.Verdict) string {
	text := "The worst is told of calm air and of the day's wind"
	if v.Cornered {
		text += ", and of the corner in which every uncertain input is one standard deviation off against the check at once"
	}
	return text + "; which of them it is stands last."
}
