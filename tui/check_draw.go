package tui

import (
	"fmt"
	"slices"
	"strings"

	"ullage/sim/gates"
	"ullage/sim/quantity"
	"ullage/sim/report"
)

// draw draws the verdict, and below it the part of the list that is in sight.
func (v *checkView) draw() {
	v.painted, v.sight = v.painted[:0], v.sight[:0]
	look := v.scene.look
	if v.rows < 2 || v.columns < 1 || look == nil {
		return
	}
	if text := v.instead(); text != "" {
		v.painted = centred(look, text, v.columns, v.rows)
		return
	}
	list := v.list()
	at := v.at(list)
	v.painted = append(v.painted, v.verdictLines()...)
	t, shown := v.table(list, at)
	rows := t.draw(look, v.columns, len(list)+1)
	v.painted = append(v.painted, rows[0])
	head := len(v.painted)
	body := make([]string, 0, 2*len(list))
	owners := make([]string, 0, 2*len(list))
	from, to := 0, 0
	for i := range list {
		lines := append([]string{rows[i+1]}, v.below(&list[i], i == at, t.rows[i].cells[1].text != clean(list[i].Name), shown)...)
		if i == at {
			from, to = len(body), len(body)+len(lines)
		}
		for range lines {
			owners = append(owners, list[i].Key)
		}
		body = append(body, lines...)
	}
	room := max(v.rows-head, 0)
	// The chosen check is in sight with what stands below it, and with the one before
	// it where there is room.
	top := min(max(0, to+1-room), max(from-1, 0))
	top = max(min(top, len(body)-room), 0)
	v.sight = append(make([]string, head), owners[top:min(top+room, len(owners))]...)
	v.painted = append(v.painted, body[top:min(top+room, len(body))]...)
	v.markMore(head-1, top, len(body)-top-room)
	for len(v.painted) < v.rows {
		v.painted = append(v.painted, blanks(v.columns))
	}
	v.painted = v.painted[:v.rows]
}

// markMore says at the end of the heading how many rows are above and below.
func (v *checkView) markMore(row, above, below int) {
	look, text := v.scene.look, ""
	if above > 0 {
		text += fmt.Sprintf(" %s%d", look.up, above)
	}
	if below > 0 {
		text += fmt.Sprintf(" %s%d", look.down, below)
	}
	if w := width(text); w > 0 && w < v.columns {
		v.painted[row] = padPainted(v.painted[row], v.columns-w) + look.in(dimText, text)
	}
}

// instead is what is said where there is nothing to list; empty mostly.
func (v *checkView) instead() string {
	switch now := v.scene.now; {
	case now == nil:
		return " "
	case now.verdict == nil:
		return "This flight cannot be judged."
	}
	return ""
}

// verdictLines are go or no-go in words, and what it is told of.
func (v *checkView) verdictLines() []string {
	look, s := v.scene.look, &v.scene
	verdict, of := s.now.verdict, "Calm air and the day's wind. The corners and mends"
	switch {
	case s.corners.ready && s.corners.result.of == s.now:
		verdict = &s.corners.result.verdict
		of = "Calm air, the day's wind, and for each check the corner in which all that is uncertain is one standard deviation off against it."
	case s.corners.err != nil && !s.corners.busy:
		of = "Calm air and the day's wind alone. No corners: " + faultText(s.corners.err, "")
	case s.corners.ready:
		of += " are of the rocket before the last edit; new ones follow" + look.ellipsis
	default:
		of += " follow" + look.ellipsis
	}
	word, rest, _ := strings.Cut(report.VerdictText(verdict), ": ")
	r := goodWord
	if !verdict.Pass() {
		r = badWord
	}
	first := wrapped(look.say(word+": "+rest), v.columns)
	out := []string{padPainted(look.in(r, word)+strings.TrimPrefix(first[0], word), v.columns)}
	for _, l := range first[1:] {
		out = append(out, padded(l, v.columns))
	}
	for _, l := range wrapped("Local law and the range officer decide.", v.columns) {
		out = append(out, look.in(cautionWord, padded(l, v.columns)))
	}
	if v.rows >= 30 || !verdict.Cornered {
		for _, l := range wrapped(look.say(clean(of)), v.columns) {
			out = append(out, look.in(dimText, padded(l, v.columns)))
		}
	}
	return out
}

// below is what stands below a check: of the chosen one what has no column, of one
// that fails or cannot be judged what would mend it.
func (v *checkView) below(e *checkEntry, chosen, cut bool, shown int) []string {
	const indent = 4
	look, w := v.scene.look, v.columns
	var out []string
	add := func(r role, sign, text string) {
		for i, l := range wrapped(look.say(clean(text)), w-indent) {
			if i > 0 {
				sign = ""
			}
			out = append(out, look.in(focused, aligned(sign, indent-1))+" "+look.in(r, padded(l, w-indent)))
		}
	}
	if chosen && shown < len(checkColumns) {
		add(dimText, "", v.aside(e, cut, shown))
	}
	can := e.settable()
	for i, m := range e.Remedies {
		sign, r := "", plainText
		if chosen && len(can) > 0 && can[v.among(can)] == i && !e.old {
			sign = look.pointer
		}
		if e.old || !e.Judged || e.Pass {
			r = dimText
		}
		text := "mend: " + report.MendText(m, v.scene.units)
		if e.old {
			text += " (before the last edit)"
		} else if !slices.Contains(can, i) && m.Kind != gates.NothingFound {
			text += " (by hand)"
		}
		add(r, sign, text)
	}
	return out
}

// aside is what the columns left out say of a check.
func (v *checkView) aside(e *checkEntry, cut bool, shown int) string {
	var parts []string
	if cut {
		parts = append(parts, e.Name)
	}
	if shown < withLimit {
		if b := report.CheckBound(&e.Check, v.scene.units); b != "-" {
			parts = append(parts, b)
		}
	}
	for k, name := range caseNames {
		text := v.valueIn(e, gates.Case(k))
		if shown >= allCases || text == "" || text == name || v.still(e) {
			continue
		}
		if gates.Case(k) == e.Case {
			text += " (worst)"
		}
		parts = append(parts, name+" "+text)
	}
	if e.SD > 0 {
		parts = append(parts, "one deviation "+quantity.Format(e.SD, v.scene.units.Unit(unitNamed(e.Limit.Unit)), 2))
	}
	if e.Limit.Source != "" {
		parts = append(parts, e.Limit.Source)
	}
	return strings.Join(parts, ", ")
}

// still tells of a check that is about the rocket and has no cases.
func (v *checkView) still(e *checkEntry) bool { return !e.Values[gates.Calm].Flown }
