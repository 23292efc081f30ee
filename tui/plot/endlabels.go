package plot

import (
	"cmp"
	"slices"
)

// endLabel is the label of a trace's end and the row it stands in.
type endLabel struct {
	*Series
	at  float64 // where the trace ends, in dots from the top
	row int
}

// endLabels writes the labels right of the plotting area: in the order in
// which the traces end, each level with its trace or as near as the others
// allow. Where there are more than rows, the earlier series go without.
func (d *drawing) endLabels(p *panel) {
	if d.ends == 0 {
		return
	}
	ends := d.grid.scratch.ends[:0]
	for i := range p.Series {
		s := &p.Series[i]
		if y, ok := s.last(d.xSpan); s.End != "" && ok {
			ends = append(ends, endLabel{Series: s, at: p.scales[side(s.Right)].y.at(y)})
		}
	}
	d.grid.scratch.ends = ends
	ends = ends[max(len(ends)-p.rows, 0):]
	slices.SortStableFunc(ends, func(a, b endLabel) int { return cmp.Compare(a.at, b.at) })
	arrangeEnds(ends, p.rows, d.glyphs.dotsY)
	for _, e := range ends {
		d.write(d.left+d.columns+d.right+1, p.plotTop()+e.row, d.ends-1, e.End, e.Ink)
	}
}

// arrangeEnds pushes labels down as far as those above demand, and up as far
// as the last row does.
func arrangeEnds(ends []endLabel, rows, dots int) {
	free := 0
	for i := range ends {
		e := &ends[i]
		e.row = max(max(dotAt(e.at, rows*dots), 0)/dots, free)
		free = e.row + 1
	}
	free = rows - 1
	for i := len(ends) - 1; i >= 0; i-- {
		ends[i].row = min(ends[i].row, free)
		free = ends[i].row - 1
	}
}

// last is the y of the last sample in an x range.
func (s *Series) last(x span) (float64, bool) {
	for i := s.len() - 1; i >= 0; i-- {
		if px, py, ok := s.at(i); ok && px >= x.lo && px <= x.hi {
			return py, true
		}
	}
	return 0, false
}
