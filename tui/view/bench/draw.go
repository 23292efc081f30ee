package bench

import (
	"fmt"

	"ullage/tui/draw"
	"ullage/tui/view"
)

// caution closes the view while its own section of cautions is out of sight.
const caution = "Estimates; local law, the range officer and qualified people decide."

// foot is what stands below the sheet: what is older than the last edit, and who decides.
func (v *View) foot() []string {
	var rows []string
	switch {
	case v.study.Busy:
		rows = v.Paragraph(draw.Dim, "As before the last edit; computing"+v.Scene.Theme.Ellipsis)
	case v.study.Err != nil:
		rows = v.Paragraph(draw.Bad, view.FaultText(v.study.Err, "")+".")
	}
	return append(rows, v.Paragraph(draw.Dim, caution)...)
}

// room is how many rows of the sheet are in sight: all but the heading and the foot.
func (v *View) room() int { return max(v.Rows-1-len(v.foot()), 1) }

func (v *View) draw() { v.Draw(v.instead, v.paint) }

// paint shows the sheet from its top row on, below the heading of the section that is there.
func (v *View) paint() {
	v.write()
	rows, foot, theme := v.layOut(), v.foot(), v.Scene.Theme
	v.top = max(0, min(v.top, v.begins[len(v.begins)-1]))
	at, from, place := v.section(), v.top, ""
	if from > v.begins[at] {
		place = " " + theme.Up
	} else {
		from++ // its heading stands above already
	}
	to := min(from+v.room(), len(rows))
	place += fmt.Sprintf(" %d of %d", at+1, len(v.begins))
	if to < len(rows) {
		place += " " + theme.Down
	}
	v.Add(theme.Paint(draw.Strong, theme.Fit(theme.Say(v.doc.Sections[at].Name), v.Columns-draw.Width(place))+place))
	v.Add(rows[min(from, len(rows)):to]...)
	for v.Left() > len(foot) {
		v.Add(draw.Blanks(v.Columns))
	}
	v.Add(foot...)
}

// layOut is the whole sheet in rows, a heading and an empty row between sections.
func (v *View) layOut() []string {
	theme := v.Scene.Theme
	var rows []string
	v.begins = v.begins[:0]
	for i := range v.doc.Sections {
		x := &v.doc.Sections[i]
		if i > 0 {
			rows = append(rows, draw.Blanks(v.Columns))
		}
		v.begins = append(v.begins, len(rows))
		rows = append(rows, theme.Paint(draw.Strong, theme.Fit(theme.Say(x.Name), v.Columns)))
		rows = append(rows, draw.Blocks(theme, x.Blocks, v.Columns)...)
	}
	return rows
}

// instead is what is said while there is no sheet; empty mostly.
func (v *View) instead() string {
	switch {
	case v.study.Ready:
		return ""
	case v.study.Err != nil && !v.study.Busy:
		return "No sheet: " + view.FaultText(v.study.Err, "") + "."
	case v.Scene.Now == nil:
		return "The sheet follows once the rocket is described enough to fly."
	}
	return "The sheet is being computed" + v.Scene.Theme.Ellipsis
}
