package check

import (
	"fmt"
	"slices"
	"strings"

	"ullage/sim/gates"
	"ullage/sim/plan"
	"ullage/sim/quantity"
	"ullage/sim/report/words"
	"ullage/sim/results"
	"ullage/tui/draw"
	"ullage/tui/view"
)

func (v *View) draw() {
	v.sight = v.sight[:0]
	v.Draw(v.instead, v.paint)
}

// paint draws the verdict, and below it the part of the list that is in sight.
func (v *View) paint() {
	theme, list := v.Scene.Theme, v.list()
	at := v.at(list)
	v.Add(v.verdictLines()...)
	t, shown := v.table(list, at)
	rows := t.Draw(theme, v.Columns, len(list)+1)
	v.Add(rows[0])
	head := len(v.Painted)
	body := make([]string, 0, 2*len(list))
	owners := make([]string, 0, 2*len(list))
	from, to := 0, 0
	for i := range list {
		lines := append([]string{rows[i+1]}, v.below(&list[i], i == at, t.Rows[i].Cells[1].Text != draw.Clean(list[i].Name), shown)...)
		if i == at {
			from, to = len(body), len(body)+len(lines)
		}
		for range lines {
			owners = append(owners, list[i].Key)
		}
		body = append(body, lines...)
	}
	room := max(v.Rows-head, 0)
	// The chosen check is in sight with what stands below it, and with the one before
	// it where there is room.
	top := min(max(0, to+1-room), max(from-1, 0))
	top = max(min(top, len(body)-room), 0)
	v.sight = append(make([]string, head), owners[top:min(top+room, len(owners))]...)
	v.Add(body[top:min(top+room, len(body))]...)
	v.markMore(head-1, top, len(body)-top-room)
}

// markMore says at the end of the heading how many rows are above and below.
func (v *View) markMore(row, above, below int) {
	theme, text := v.Scene.Theme, ""
	if above > 0 {
		text += fmt.Sprintf(" %s%d", theme.Up, above)
	}
	if below > 0 {
		text += fmt.Sprintf(" %s%d", theme.Down, below)
	}
	if w := draw.Width(text); w > 0 && w < v.Columns {
		v.Painted[row] = draw.PadPainted(v.Painted[row], v.Columns-w) + theme.Paint(draw.Dim, text)
	}
}

// instead is what is said where there is nothing to list; empty mostly.
func (v *View) instead() string {
	switch now := v.Scene.Now; {
	case now == nil:
		return " "
	case now.Verdict == nil:
		return "This flight cannot be judged."
	}
	return ""
}

// verdictLines are go or no-go in words, and what it is told of.
func (v *View) verdictLines() []string {
	theme, s := v.Scene.Theme, &v.Scene
	verdict, of := s.Now.Verdict, "Calm air and the day's wind. The corners"
	switch {
	case s.Corners.Ready && s.Corners.Result.Of == s.Now:
		verdict = &s.Corners.Result.Verdict
		of = "Calm air, the day's wind, and for each check the corner in which all that is uncertain is one standard deviation off against it."
	case s.Corners.Err != nil && !s.Corners.Busy:
		of = "Calm air and the day's wind alone. No corners: " + view.FaultText(s.Corners.Err, "")
	case s.Corners.Ready:
		of += " are of the rocket before the last edit; new ones follow" + theme.Ellipsis
	default:
		of += " follow" + theme.Ellipsis
	}
	word, rest, _ := strings.Cut(words.Verdict(verdict), ": ")
	r := draw.Level(verdict.Level())
	first := draw.Wrapped(theme.Say(word+": "+rest), v.Columns)
	out := []string{draw.PadPainted(theme.Paint(r, word)+strings.TrimPrefix(first[0], word), v.Columns)}
	for _, l := range first[1:] {
		out = append(out, draw.Padded(l, v.Columns))
	}
	out = append(out, v.windLines()...)
	out = append(out, v.Paragraph(draw.Caution, "Local law and the range officer decide.")...)
	if v.Rows >= 30 {
		out = append(out, v.Paragraph(draw.Dim, "Everyone "+words.In(s.Units).Stand(plan.Clear(verdict.Rocket, verdict.Day))+".")...)
	}
	if v.Rows >= 30 || !verdict.Cornered {
		out = append(out, v.Paragraph(draw.Dim, of)...)
	}
	return out
}

// below is what stands below a check: of the chosen one what has no column, of one
// that fails or cannot be judged what would mend it.
func (v *View) below(e *checkEntry, chosen, cut bool, shown int) []string {
	const indent = 4
	theme, w := v.Scene.Theme, v.Columns
	var out []string
	add := func(r draw.Role, sign, text string) {
		for i, l := range draw.Wrapped(theme.Say(draw.Clean(text)), w-indent) {
			if i > 0 {
				sign = ""
			}
			out = append(out, theme.Paint(draw.Focused, draw.Aligned(sign, indent-1))+" "+theme.Paint(r, draw.Padded(l, w-indent)))
		}
	}
	if chosen && shown < len(checkColumns) {
		add(draw.Dim, "", v.aside(e, cut, shown))
	}
	can := e.settable()
	for i, m := range e.Remedies {
		sign, r := "", draw.Plain
		if chosen && len(can) > 0 && can[v.among(can)] == i && !e.oldMends {
			sign = theme.Pointer
		}
		if e.oldMends || !e.Judged || e.Pass {
			r = draw.Dim
		}
		text := "mend: " + words.In(v.Scene.Units).Remedy(m)
		if e.oldMends {
			text += " (before the last edit)"
		} else if !slices.Contains(can, i) && m.Kind != gates.NothingFound {
			text += " (by hand)"
		}
		add(r, sign, text)
	}
	if err := v.mends.Err; err != nil && !v.mends.Busy && v.wanted == v.Scene.Now && e.Judged && e.Fails() {
		add(draw.Dim, "", "What would mend it cannot be told: "+view.FaultText(err, ""))
	}
	if e.awaits {
		add(draw.Dim, "", "What would mend it follows"+theme.Ellipsis)
	}
	return out
}

// aside is what the columns left out say of a check.
func (v *View) aside(e *checkEntry, cut bool, shown int) string {
	var parts []string
	if cut {
		parts = append(parts, e.Name)
	}
	if shown < withLimit {
		if b := words.In(v.Scene.Units).Bounds(e.Check.Limit); b != "-" {
			parts = append(parts, b)
		}
	}
	for k, name := range caseNames {
		text := v.valueIn(e, results.Case(k))
		if shown >= allCases || text == "" || text == name || v.still(e) {
			continue
		}
		if results.Case(k) == e.Case {
			text += " (worst)"
		}
		parts = append(parts, name+" "+text)
	}
	if e.SD > 0 {
		parts = append(parts, "one deviation "+quantity.Format(e.SD, v.Scene.Units.Unit(e.Limit.In()), 2))
	}
	if e.Limit.Source != "" {
		parts = append(parts, e.Limit.Source)
	}
	return strings.Join(parts, ", ")
}

// still tells of a check that is about the rocket and has no cases.
func (v *View) still(e *checkEntry) bool { return !e.Values[results.Calm].Flown }
