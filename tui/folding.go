package tui

import (
	"maps"
	"strconv"

	"ullage/tui/draw"
)

// folded are fields with one in place of each group that is folded: its first, which stands for all of them.
func folded(all []field, folds map[string]bool) []field {
	if len(folds) == 0 {
		return all
	}
	out := make([]field, 0, len(all))
	for _, d := range all {
		switch last := len(out) - 1; {
		case !folds[d.Group]:
			out = append(out, d)
		case last >= 0 && out[last].Group == d.Group:
			out[last].folded++
		default:
			d.folded = 1
			out = append(out, d)
		}
	}
	return out
}

// fold folds a group, or unfolds it.
func (l *list) fold(group string, is bool) {
	folds := maps.Clone(l.folds)
	if folds == nil {
		folds = map[string]bool{}
	}
	folds[group] = is
	l.folds = folds
	l.sieve()
}

// toggleFold folds the group of the chosen input, or unfolds it.
func (l *list) toggleFold() {
	if d := l.chosen(); d != nil {
		l.fold(d.Group, d.folded == 0)
	}
}

// toggleFolds unfolds every group if one is folded, and folds all of them else.
func (l *list) toggleFolds() {
	folds := map[string]bool{}
	for _, d := range l.all {
		folds[d.Group] = true
	}
	for _, is := range l.folds {
		if is {
			folds = nil
		}
	}
	l.folds = folds
	l.sieve()
}

// unfolded opens the chosen group if it is folded, and tells that it was: what changes an input does so first.
func (m *Model) unfolded() bool {
	d := m.inputs.chosen()
	if d == nil || d.folded == 0 {
		return false
	}
	m.inputs.fold(d.Group, false)
	return true
}

// foldedLine is a heading that stands for its group.
func foldedLine(theme *draw.Theme, d *field, w int, chosen bool) string {
	if !chosen {
		return groupLine(theme, d.Group+" +"+strconv.Itoa(d.folded), w)
	}
	text := theme.Pointer + theme.Say(draw.Clean(d.Group)) + " +" + strconv.Itoa(d.folded)
	return theme.Paint(draw.Focused, draw.Padded(theme.Fit(text, w-1), w-1)) + " "
}
