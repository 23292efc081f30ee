package plot

import (
	"cmp"
	"slices"
)

const (
	mostLabels = 64 // no width has room for more; marks of lower priority go without
	stray      = 6  // columns between a label and its line, at most
	mostHead   = 2  // rows over a plotting area
)

// placedMark is a vertical mark in sight, and its label once that has a place.
type placedMark struct {
	*VerticalMark
	column int // of its line in the grid
	text   string
	start  int // the label's first column
	size   int
	row    *labelRow // nil: none
}

// labelRow is the labels in one row, in the order of their lines, between two columns.
type labelRow struct {
	lo, hi int
	marks  []*placedMark
}

// markLabels writes the labels of vertical marks into the rows above the
// plotting area, the lowest first, of which the top one also holds the title.
func (d *drawing) markLabels(p *panel, title labelRow) {
	if p.head == 0 {
		return
	}
	marks := d.marksInSight(p)
	rows := d.grid.scratch.labels[:p.head]
	for i := range rows {
		rows[i].lo, rows[i].hi, rows[i].marks = d.left, d.grid.width, rows[i].marks[:0]
	}
	rows[0].lo, rows[0].hi = max(title.lo, d.left), title.hi
	d.placeMarks(marks, rows)
	for i := len(rows) - 1; i >= 0; i-- {
		for _, m := range rows[i].marks {
			d.write(m.start, p.top+i, m.size, m.text, Mark)
			d.lead(p, m, i)
		}
	}
}

// marksInSight is the marks that are drawn, highest priority first.
func (d *drawing) marksInSight(p *panel) []placedMark {
	marks := d.grid.scratch.marks[:0]
	collect := func(list []VerticalMark) {
		for i := range list {
			if column, ok := d.columnOf(list[i].X); ok {
				marks = append(marks, placedMark{VerticalMark: &list[i], column: d.left + column})
			}
		}
	}
	if p.first {
		collect(d.Marks)
	}
	collect(p.Marks)
	d.grid.scratch.marks = marks
	slices.SortStableFunc(marks, func(a, b placedMark) int { return cmp.Compare(b.Priority, a.Priority) })
	return marks[:min(len(marks), mostLabels)]
}

// placeMarks finds places for labels: first in their short forms, so that as
// many marks as can be have one, then at length where there is room for that.
func (d *drawing) placeMarks(marks []placedMark, rows []labelRow) {
	for i := range marks {
		m := &marks[i]
		text := m.Short
		if text == "" {
			text = m.Label
		}
		m.place(rows, text, d.Charset)
	}
	for i := range marks {
		m := &marks[i]
		if m.Label == "" || m.text == m.Label {
			continue
		}
		row, short := m.row, m.text
		if row != nil {
			row.remove(m)
		}
		if !m.place(rows, m.Label, d.Charset) && row != nil {
			m.text, m.size, m.row = short, cellsOf(short, d.Charset), row
			row.accept(m)
		}
	}
}

// place finds a place for a text as the mark's label, in the lowest row that has one.
func (m *placedMark) place(rows []labelRow, text string, c Charset) bool {
	m.text, m.size, m.row = text, cellsOf(text, c), nil
	if m.size == 0 {
		return false
	}
	for i := len(rows) - 1; i >= 0; i-- {
		if rows[i].accept(m) {
			m.row = &rows[i]
			return true
		}
	}
	return false
}

// accept takes a label into the row if there is room.
func (r *labelRow) accept(m *placedMark) bool {
	at := len(r.marks)
	for at > 0 && m.before(r.marks[at-1]) {
		at--
	}
	r.marks = slices.Insert(r.marks, at, m)
	if r.arrange() {
		return true
	}
	r.remove(m)
	return false
}

// before orders marks by their lines, and those of one column by their x.
func (m *placedMark) before(other *placedMark) bool {
	return m.column < other.column || m.column == other.column && m.X < other.X
}

// remove takes a label out of the row.
func (r *labelRow) remove(m *placedMark) {
	if at := slices.Index(r.marks, m); at >= 0 {
		r.marks = slices.Delete(r.marks, at, at+1)
	}
	r.arrange()
}

// arrange centres each label over its line, pushes it right as far as the one
// before demands, and left as far as the end of the row does. It tells whether
// all stand near their lines.
func (r *labelRow) arrange() bool {
	lo, hi := r.lo, r.hi
	for _, m := range r.marks {
		m.start = max(m.column-(m.size-1)/2, lo)
		lo = m.start + m.size + 1
	}
	for i := len(r.marks) - 1; i >= 0; i-- {
		m := r.marks[i]
		m.start = min(m.start, hi-m.size)
		hi = m.start - 1
		if m.start < r.lo || m.start > m.column+stray || m.start+m.size-1 < m.column-stray {
			return false
		}
	}
	return true
}

// lead leads a mark's line up to a label that stands over it.
func (d *drawing) lead(p *panel, m *placedMark, row int) {
	if m.column < m.start || m.column >= m.start+m.size {
		return
	}
	for below := p.top + row + 1; below < p.plotTop(); below++ {
		if c := &d.grid.cells[below*d.grid.width+m.column]; c.Ink == None {
			*c = Cell{d.glyphs.mark, Mark}
		}
	}
}
