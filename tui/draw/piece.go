package draw

import "slices"

// Piece is a painted text and the cells it takes.
type Piece struct {
	Painted string
	Cells   int
}

// Packed puts pieces into an order that takes fewer rows of w cells: what is left of a
// row goes to the first of the later ones that fits. The last piece stays the last.
func Packed(theme *Theme, pieces []Piece, w int) []Piece {
	rest := slices.Clone(pieces)
	out := make([]Piece, 0, len(pieces))
	sep := Width(theme.Dot) + 2
	for used := 0; len(rest) > 0; {
		i := slices.IndexFunc(rest[:max(len(rest)-1, 1)], func(p Piece) bool { return used > 0 && used+sep+p.Cells <= w })
		if i < 0 {
			i, used = 0, 0
		} else {
			used += sep
		}
		used += rest[i].Cells
		out, rest = append(out, rest[i]), slices.Delete(rest, i, i+1)
	}
	return out
}

// Flow sets pieces one after the other, parted by dots, in rows of w cells.
func Flow(theme *Theme, pieces []Piece, w int) []string {
	sep := " " + theme.Dot + " "
	var lines []string
	line, used := "", 0
	for _, p := range pieces {
		if used > 0 && used+Width(sep)+p.Cells > w {
			lines = append(lines, line)
			line, used = "", 0
		}
		if used > 0 {
			line, used = line+theme.Paint(RuleLine, sep), used+Width(sep)
		}
		line, used = line+p.Painted, used+p.Cells
	}
	if used > 0 {
		lines = append(lines, line)
	}
	return lines
}
