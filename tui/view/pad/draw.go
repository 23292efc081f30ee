package pad

import (
	"fmt"
	"slices"
	"strings"

	"ullage/sim/report/checklist"
	"ullage/sim/report/words"
	"ullage/sim/rocket"
	"ullage/tui/draw"
	"ullage/tui/view"
)

// started is what the page is not.
const started = "It starts and commands nothing. Local law and the range officer decide."

// waiting is what stands while go or no-go is not known yet.
const waiting = "WAIT"

// draw fills the page: what must be there first, then as much of the rest as there is room for.
func (v *View) draw() {
	v.Painted = v.Painted[:0]
	if v.Rows < 2 || v.Columns < 1 || v.Scene.Theme == nil {
		return
	}
	if v.Scene.Now != nil && v.list() != nil {
		v.paint()
	}
	for v.Left() > 0 {
		v.Add(v.row(draw.Sunlit, ""))
	}
	v.Painted = v.Painted[:v.Rows]
}

func (v *View) paint() {
	foot := v.row(draw.SunlitStrong, started)
	must := append(v.changed(), v.alarms()...)
	step := v.stepLines()
	v.Add(v.headline(v.Rows - len(must) - len(step) - 4)...)
	v.Add(must...)
	v.Add(v.listLines()...)
	sheets, turned := v.sheets()
	if !turned {
		v.Add(v.largeStep(v.Left() - len(step) - 4)...)
	}
	v.Add(step...)
	for _, s := range sheets {
		if room := v.Left() - 1; room > 0 {
			v.Add(s[:min(len(s), room)]...)
		}
	}
	v.Painted = v.Painted[:min(len(v.Painted), v.Rows-1)]
	for v.Left() > 1 {
		v.Add(v.row(draw.Sunlit, ""))
	}
	v.Add(foot)
}

// row is a text in a row of its own.
func (v *View) row(r draw.Role, text string) string {
	theme := v.Scene.Theme
	return theme.Paint(r, theme.Fit(theme.Say(draw.Clean(text)), v.Columns))
}

// para is a text in as many rows as it takes, those after the first set in by the width of what the first begins with.
func (v *View) para(r draw.Role, first, text string) []string {
	theme := v.Scene.Theme
	first = theme.Say(first)
	in := draw.Width(first)
	lines := draw.Wrapped(theme.Say(draw.Clean(text)), v.Columns-in)
	for i, l := range lines {
		lines[i] = theme.Paint(r, draw.Padded(first+l, v.Columns))
		first = draw.Blanks(in)
	}
	return lines
}

// word is go or no-go in large letters, and how it is painted; a list that has nothing to do with that has a word of its own, so that a go
// is not read as leave to go near.
func (v *View) word() (string, draw.Role) {
	verdict, l := v.judged(), v.list()
	switch {
	case slices.Contains(checklist.Amiss(), l.Named.Name):
		return "STAY AWAY", draw.SunlitReverse
	case !l.leads:
		return strings.ToUpper(l.Named.Name), draw.Sunlit
	case v.follows():
		return waiting, draw.Sunlit
	case verdict == nil:
		return "NOT JUDGED", draw.SunlitReverse
	case verdict.Pass():
		return strings.ToUpper(verdict.Word()), draw.Sunlit
	}
	return strings.ToUpper(verdict.Word()), draw.SunlitReverse
}

// figure is what else is large: the pressure to fill to, or the class of the motor, of a rocket that is go.
func (v *View) figure() string {
	fl := v.Scene.Now.Flight
	if verdict := v.judged(); verdict == nil || !verdict.Pass() || !v.list().leads {
		return ""
	}
	if fl.Rocket.Power == rocket.WaterPower {
		return words.In(v.Scene.Units).FillTo(fl.Rocket.Water.Pressure)
	}
	if class := fl.Results.Drive.Class; class != "" {
		return "CLASS " + class
	}
	return ""
}

// headline is verdict, drive and figure in large letters, in at most so many rows: on one line or two, as large as leaves the page
// to the rest; in plain text where there is no room for letters.
func (v *View) headline(most int) []string {
	word, role := v.word()
	drive, figure := strings.ToUpper(string(v.Scene.Now.Flight.Rocket.Power)), v.figure()
	all := strings.TrimSpace(word + " " + drive + " " + figure)
	tries := [][2]string{{all, ""}, {word + " " + drive, figure}}
	if figure == "" {
		tries = [][2]string{{all, ""}, {word, drive}}
	}
	const line, forSteps = 6, 32 // rows of the smallest letters with what hangs below the line; what the steps have on a page of many
	rows := min(v.Rows-forSteps, v.Rows*2/5)
	if small := draw.BigLetters(v.Scene.Theme, line); small[len(small)-1].Width(all) <= v.Columns {
		rows = max(rows, line)
	}
	if out := v.large(tries, role, min(max(rows, line), most)); out != nil {
		return out
	}
	if figure != "" || most > 3*line {
		if out := v.large(tries, role, min(2*line+1, most)); out != nil {
			return out
		}
	}
	plain := v.row(draw.SunlitStrong, strings.TrimSpace("  "+drive+"  "+figure))
	if out := v.large([][2]string{{word, ""}}, role, min(line, most)-1); out != nil {
		return append(out, plain)
	}
	if role == draw.Sunlit {
		role = draw.SunlitStrong
	}
	return []string{v.row(role, word), plain}
}

// large are one line or two of large letters, the first painted as a role, in the largest that fit; nil where none do.
func (v *View) large(tries [][2]string, first draw.Role, rows int) []string {
	for _, b := range draw.BigLetters(v.Scene.Theme, rows) {
		for _, try := range tries {
			if max(b.Width(try[0]), b.Width(try[1])) > v.Columns {
				continue
			}
			var out []string
			for i, text := range try {
				role := draw.SunlitStrong
				if i == 0 && first != draw.Sunlit {
					role = first
				}
				if text == "" {
					continue
				}
				if i > 0 {
					out = append(out, v.row(draw.Sunlit, ""))
				}
				text = draw.ASCII(text)
				blanks := draw.Blanks(v.Columns - b.Width(text))
				for _, l := range b.Rows(text) {
					out = append(out, v.Scene.Theme.Paint(role, l+blanks))
				}
			}
			if len(out) <= rows {
				return append(out, v.row(draw.Sunlit, ""))
			}
		}
	}
	return nil
}

// changed tells that the rocket is another than the one that was ticked for, or than the one that flew.
func (v *View) changed() []string {
	var out []string
	if v.Scene.Older {
		out = append(out, v.para(draw.SunlitReverse, "", "The rocket was changed and has no flight, or none yet: this is of the one before, and no leave. esc shows what is wrong.")...)
	}
	if lost := v.ticks.lost; lost != nil {
		out = append(out, v.para(draw.SunlitReverse, "", fmt.Sprintf(
			"The rocket was changed: what was ticked of the one before, %s, is off. Undone (esc, u), it comes back; else begin anew.", words.Plural(lost.all(), "step")))...)
	}
	return out
}

// alarms are those of the list in sight, and why there is none.
func (v *View) alarms() []string {
	l := v.list()
	var out []string
	if l.leads && v.judged() == nil {
		text := "Go or no-go is being looked at: no list that fills, arms or launches before it is known."
		switch corners := v.Scene.Corners; {
		case v.follows():
		case !v.Scene.Older && corners.Err != nil:
			text = "Not judged: " + view.FaultText(corners.Err, "") + ". There is no list for " + l.Named.Title + "."
		default:
			text = "This flight cannot be judged. There is no list for " + l.Named.Title + "."
		}
		out = append(out, v.para(draw.SunlitStrong, "", text)...)
	}
	for _, a := range l.Alarms {
		out = append(out, v.para(draw.SunlitReverse, "! ", a)...)
	}
	return out
}

// listLines name the lists, the one in sight among them, and where in it the step at hand is.
func (v *View) listLines() []string {
	theme, painted, cells := v.Scene.Theme, "", 0
	add := func(r draw.Role, text string) {
		painted, cells = painted+theme.Paint(r, text), cells+draw.Width(text)
	}
	for i := range v.lists {
		name, l := v.lists[i].Named.Name, &v.lists[i]
		if n := v.ticks.count(name); n > 0 && !l.refused && len(l.steps) > 0 {
			name += fmt.Sprintf(" %d/%d", n, len(l.steps))
		}
		r := draw.Sunlit
		if l.Named.Name == v.name {
			r = draw.SunlitReverse
			name = theme.Say(theme.Pointer) + name
		}
		add(r, " "+name+" ")
	}
	l := v.list()
	out := []string{painted + theme.Paint(draw.Sunlit, draw.Blanks(v.Columns-cells))}
	if cells > v.Columns {
		out[0] = v.row(draw.SunlitReverse, theme.Pointer+l.Named.Title)
	}
	if len(l.steps) == 0 {
		return append(out, v.row(draw.SunlitStrong, l.Named.Title))
	}
	at := v.at()
	text := fmt.Sprintf("Step %d of %d. %s", at+1, len(l.steps), l.steps[at].phase)
	if l.refused {
		text = l.steps[at].phase + fmt.Sprintf(", %d of %d", at+1, len(l.steps))
	}
	return append(out, v.row(draw.SunlitStrong, text))
}

// box is what is before a step: whether it is ticked.
func (v *View) box(l *list, i int) string {
	switch {
	case l.refused:
		return fmt.Sprintf("%d. ", i+1)
	case v.ticks.has(l.Named.Name, i):
		return "[x] "
	}
	return "[ ] "
}

// stepLines are the step at hand in letters of the terminal's own.
func (v *View) stepLines() []string {
	l := v.list()
	if len(l.steps) == 0 {
		return nil
	}
	at := v.at()
	return v.para(draw.SunlitStrong, v.Scene.Theme.Pointer+" "+v.box(l, at), l.steps[at].does)
}

// largeStep is what the step at hand is about, its first words, in large letters where they fit in so many rows.
func (v *View) largeStep(rows int) []string {
	l := v.list()
	if len(l.steps) == 0 || l.refused {
		return nil
	}
	const once, twice = 6, 11 // rows of letters
	most := once
	if v.Rows >= 50 {
		most = twice
	}
	text := draw.ASCII(firstWords(l.steps[v.at()].does))
	for _, b := range draw.BigLetters(v.Scene.Theme, min(rows, most)) {
		lines := draw.Wrapped(text, b.Letters(v.Columns))
		if len(lines)*(b.Height()+1) > rows {
			continue
		}
		var out []string
		for _, line := range lines {
			blanks := draw.Blanks(v.Columns - b.Width(line))
			for _, row := range b.Rows(line) {
				out = append(out, v.Scene.Theme.Paint(draw.SunlitStrong, row+blanks))
			}
			out = append(out, v.row(draw.Sunlit, ""))
		}
		if len(out) <= rows {
			return out
		}
	}
	return nil
}

// firstWords are a step up to its first stop, or up to a colon where there are words enough before it to say what is done.
func firstWords(text string) string {
	const enough = 3
	if i := strings.IndexAny(text, ":;"); i > 0 && len(strings.Fields(text[:i])) >= enough {
		text = text[:i]
	}
	if i := strings.Index(text, ". "); i > 0 {
		text = text[:i]
	}
	return strings.TrimSuffix(text, ".")
}
