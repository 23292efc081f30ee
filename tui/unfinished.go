package tui

import (
	"fmt"
	"strings"

	"ullage/sim/fault"
	"ullage/sim/gates"
	"ullage/sim/report"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
	"ullage/tui/draw"
)

// openness is what is open about an input: it is missing, or it is at odds with another.
type openness struct {
	missing bool
	odds    bool
	says    string // below the input that is to blame; empty at the other one
}

// opens are the inputs that something is open about, by name.
func opens(f *rocketfile.File) map[string]openness {
	all := f.Unfinished()
	out := make(map[string]openness, 2*len(all))
	for _, name := range f.Missing() {
		out[name] = openness{missing: true}
	}
	for _, o := range all {
		if o.Missing {
			continue
		}
		is := out[o.Key]
		is.odds = true
		if is.says == "" {
			is.says = sentenceOf(o)
		}
		out[o.Key] = is
		if o.With != "" {
			with := out[o.With]
			with.odds = true
			out[o.With] = with
		}
	}
	return out
}

// sentenceOf says what is open and what would close it, without the name of the input.
func sentenceOf(f fault.Fault) string {
	text := draw.Clean(f.Problem)
	if f.With != "" {
		text += " (" + draw.Clean(f.With) + ")"
	}
	if f.Remedy != "" {
		text += "; " + draw.Clean(f.Remedy)
	}
	return text
}

// unfinished tells that something is missing for a flight, or at odds: the flight on show, if there is one, is
// the last good one.
func (m *Model) unfinished() bool { return len(m.gaps) > 0 }

// blank tells that nothing has flown yet because the rocket is not all described.
func (m *Model) blank() bool { return m.now == nil && m.unfinished() }

// counted says how much is open: "2 at odds, 3 missing".
func counted(all fault.List) string {
	missing := 0
	for _, f := range all {
		if f.Missing {
			missing++
		}
	}
	var parts []string
	if odds := len(all) - missing; odds > 0 {
		parts = append(parts, fmt.Sprintf("%d at odds", odds))
	}
	if missing > 0 {
		parts = append(parts, fmt.Sprintf("%d missing", missing))
	}
	return strings.Join(parts, ", ")
}

// openFinding is what is open among the findings, above all of them.
func (m *Model) openFinding() report.Finding {
	f := report.Finding{Label: "rocket", Value: counted(m.gaps), Word: "last good flight shown", Level: gates.Bad}
	if m.now == nil {
		f.Word = "no flight yet"
	}
	var all []string
	for _, o := range m.gaps {
		all = append(all, draw.Clean(o.Key)+": "+sentenceOf(o))
	}
	f.Detail = strings.Join(all, ". ") + "."
	return f
}

// lack is something missing or at odds, and the answers that it keeps from being given.
type lack struct {
	fault.Fault
	answers []rocket.Answer
}

// lacks are all that is open of the rocket, for every answer, in the order of the answers: once each.
func lacks(f *rocketfile.File) []lack {
	var out []lack
	add := func(a rocket.Answer, all fault.List) {
		for _, o := range all {
			known := false
			for i := range out {
				if out[i].Key == o.Key || strings.HasPrefix(o.Key, out[i].Key+".") && out[i].Missing {
					if last := len(out[i].answers) - 1; out[i].answers[last] != a {
						out[i].answers = append(out[i].answers, a)
					}
					known = true
					break
				}
			}
			if !known {
				out = append(out, lack{o, []rocket.Answer{a}})
			}
		}
	}
	r := f.Rocket()
	for _, a := range rocket.Answers() {
		if a == rocket.ForFlight {
			add(a, f.Unfinished())
		}
		add(a, r.Check(a))
	}
	return out
}

// words are the answers as one text: "flight, card".
func (l *lack) words() string {
	names := make([]string, len(l.answers))
	for i, a := range l.answers {
		names[i] = a.String()
	}
	return strings.Join(names, ", ")
}

// nextLack goes to the next input that is missing or at odds, and says what for.
func (m *Model) nextLack() {
	all := lacks(m.file())
	if len(all) == 0 {
		m.say(draw.Plain, "Nothing is missing for flight, stability, chamber and card, and nothing is at odds. What is not judged is in the check view.")
		return
	}
	at := 0
	for i := range all {
		if all[i].Key == m.lastLack {
			at = (i + 1) % len(all)
		}
	}
	l := all[at]
	m.lastLack = l.Key
	m.inputs.choose(m.inputNear(l.Key))
	role := draw.Caution
	if !l.Missing {
		role = draw.Bad
	}
	m.say(role, fmt.Sprintf("%d of %d, for %s: %s %s", at+1, len(all), l.words(), l.Key, strings.TrimPrefix(sentenceOf(l.Fault), ": ")))
}

// inputNear is the input of a key: itself, or the first that is missing of the section or canopy it names, or
// the first of that.
func (m *Model) inputNear(key string) string {
	first := ""
	for _, d := range m.inputs.all {
		switch {
		case d.Name == key:
			return key
		case strings.HasPrefix(d.Name, key+"."):
			if m.inputs.open[d.Name].missing {
				return d.Name
			}
			if first == "" {
				first = d.Name
			}
		}
	}
	return first
}

// blankLines is what stands in the place of a view before there is a flight: what each answer still takes.
func (m *Model) blankLines() []string {
	w, rows := m.layout.view, m.layout.body
	theme := m.theme
	var lines []string
	add := func(r draw.Role, text string) { lines = append(lines, draw.Paragraph(theme, r, theme.Say(text), w)...) }
	add(draw.Heading, "Not all described yet")
	all := lacks(m.file())
	for _, a := range rocket.Answers() {
		var names []string
		for _, l := range all {
			for _, b := range l.answers {
				if a == b {
					names = append(names, draw.Clean(l.Key))
				}
			}
		}
		add(draw.Plain, fmt.Sprintf("%s takes %d more: %s", a, len(names), strings.Join(names, ", ")))
	}
	lines = append(lines, draw.Blanks(w))
	add(draw.Dim, m.keys.Lack.Help().Key+" goes to the next of them and says how to mend it; "+m.keys.Guide.Help().Key+" asks for all of it in a workshop's order. It can be saved as it stands.")
	for len(lines) < rows {
		lines = append(lines, draw.Blanks(w))
	}
	return lines[:rows]
}
