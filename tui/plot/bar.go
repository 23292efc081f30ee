package plot

import "strings"

// Bar is a horizontal bar of so many cells, filled from the left to a share
// from 0 to 1 and padded with blanks: in eighths of a cell with blocks, in
// whole cells in ASCII. A share above 1 fills it and ends with '>'; a share
// above 0 shows at least the smallest step; NaN and negative shares are empty.
func Bar(share float64, cells int, charset Charset) string {
	if cells <= 0 {
		return ""
	}
	steps, full, part := 8, "█", []string{"", "▏", "▎", "▍", "▌", "▋", "▊", "▉"}
	if charset >= ASCII {
		steps, full, part = 1, "#", []string{""}
	}
	if share > 1 {
		return strings.Repeat(full, cells-1) + ">"
	}
	filled := 0
	if share > 0 {
		filled = max(int(share*float64(cells*steps)+0.5), 1)
	}
	whole, rest := filled/steps, filled%steps
	used := whole
	if rest > 0 {
		used++
	}
	return strings.Repeat(full, whole) + part[rest] + strings.Repeat(" ", cells-used)
}
