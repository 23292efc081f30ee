package draw

import (
	"strings"

	"ullage/tui/plot"
)

// paintRow is a row of a drawing as painted text.
func paintRow(theme *Theme, g *plot.Grid, row int) string {
	var b strings.Builder
	b.Grow(g.Width() * 4)
	for ink, text := range g.Runs(row) {
		brush := theme.inks[ink]
		if strings.TrimLeft(text, " ") == "" {
			brush.on, brush.off = "", ""
		}
		b.WriteString(brush.on)
		b.WriteString(text)
		b.WriteString(brush.off)
	}
	return b.String()
}

// SideBySideFrom is how many columns two plots beside each other need.
const SideBySideFrom = 76

// Beside sets two blocks of rows side by side, h rows of w cells.
func Beside(left, right []string, leftCells, gap, w, h int) []string {
	rows := make([]string, h)
	for i := range rows {
		l, r := "", ""
		if i < len(left) {
			l = left[i]
		}
		if i < len(right) {
			r = right[i]
		}
		rows[i] = PadPainted(PadPainted(l, leftCells)+Blanks(gap)+r, w)
	}
	return rows
}

// PaintStack draws a stack on a grid and paints it.
func PaintStack(theme *Theme, g *plot.Grid, s *plot.Stack, w, h int) []string {
	g.Resize(w, max(h, 0))
	s.DrawTo(g)
	rows := make([]string, g.Height())
	for i := range rows {
		rows[i] = paintRow(theme, g, i)
	}
	return rows
}
