package plot

// raster is the dots of one plotting area: a mask and an ink for each cell.
type raster struct {
	glyphs        *glyphs
	columns, rows int // cells
	across, down  int // dots
	mask          []uint8
	ink           []Ink
}

// reset makes all dots dark, reusing memory.
func (r *raster) reset(g *glyphs, columns, rows int) {
	r.glyphs, r.columns, r.rows = g, columns, rows
	r.across, r.down = columns*g.dotsX, rows*g.dotsY
	n := columns * rows
	if cap(r.mask) < n {
		r.mask, r.ink = make([]uint8, n), make([]Ink, n)
	}
	r.mask, r.ink = r.mask[:n], r.ink[:n]
	clear(r.mask)
	clear(r.ink)
}

// light lights one dot, which must lie inside.
func (r *raster) light(column, row int, ink Ink) {
	i := row/r.glyphs.dotsY*r.columns + column/r.glyphs.dotsX
	r.mask[i] |= r.glyphs.bit[row%r.glyphs.dotsY][column%r.glyphs.dotsX]
	r.ink[i] = ink
}

// scatter lights a dot for each sample inside.
func (r *raster) scatter(s *Series, x, y mapping) {
	for i := range s.len() {
		px, py, ok := s.at(i)
		if !ok {
			continue
		}
		column, row := x.dot(px, r.across), y.dot(py, r.down)
		if column >= 0 && column < r.across && row >= 0 && row < r.down {
			r.light(column, row, s.Ink)
		}
	}
}

// trace draws a series' line. NaN and infinities break it.
func (r *raster) trace(s *Series, x, y mapping, p pattern) {
	l := line{raster: r, ink: s.Ink, pattern: p}
	for i := range s.len() {
		if px, py, ok := s.at(i); ok {
			l.to(x.at(px), y.at(py))
		} else {
			l.lift()
		}
	}
	l.lift()
}

// level draws a horizontal line across the plotting area.
func (r *raster) level(row int, ink Ink, p pattern) {
	if row < 0 || row >= r.down {
		return
	}
	for column := range r.across {
		if column%p.period < p.lit {
			r.light(column, row, ink)
		}
	}
}

// line is a pen that joins points. It keeps the rows reached in the column of
// dots it is in, lowest to highest, and lights them all on leaving it, so that
// no sample is lost and a crowd of them in one column costs little. Neighbouring
// columns meet at the row where the line crosses their border, which keeps the
// line joined and yet one dot thick where it is not steep.
//
// Columns and rows just outside the raster (−1 and the number of dots) stand
// for everything beyond; what is there is not lit.
type line struct {
	raster  *raster
	ink     Ink
	pattern pattern
	walked  int // dots along the line so far, for the pattern

	drawing bool
	x, y    float64 // the last point, in dots
	column  int
	row     int // the row last reached in column
	lo, hi  int // the rows reached in column
	rising  bool
}

// to joins a point, in dots, to the line.
func (l *line) to(x, y float64) {
	column, row := dotAt(x, l.raster.across), dotAt(y, l.raster.down)
	switch {
	case !l.drawing:
		l.drawing = true
		l.enter(column, row, row)
	case column == l.column:
		l.reach(row)
	default:
		l.cross(x, y, column, row)
	}
	l.x, l.y = x, y
}

// cross draws from the last point to one in another column.
func (l *line) cross(x, y float64, column, row int) {
	slope := (y - l.y) / (x - l.x)
	step := 1
	if column < l.column {
		step = -1
	}
	for l.column != column {
		next := l.column + step
		border := float64(max(l.column, next))
		nextRow := row
		if next != column {
			nextRow = dotAt(l.y+(float64(next)+0.5-l.x)*slope, l.raster.down)
		}
		from := nextRow
		if d := nextRow - l.row; d > 1 || d < -1 {
			meet := dotAt(l.y+(border-l.x)*slope, l.raster.down)
			meet = max(min(meet, max(l.row, nextRow)), min(l.row, nextRow))
			l.reach(meet)
			switch {
			case meet < nextRow:
				from = meet + 1
			case meet > nextRow:
				from = meet - 1
			}
		}
		l.leave()
		l.enter(next, from, nextRow)
	}
}

func (l *line) enter(column, from, to int) {
	l.column, l.row = column, to
	l.lo, l.hi = min(from, to), max(from, to)
	l.rising = to < from
}

func (l *line) reach(row int) {
	l.rising = row < l.row
	l.lo, l.hi, l.row = min(l.lo, row), max(l.hi, row), row
}

// lift ends the line.
func (l *line) lift() {
	if l.drawing {
		l.leave()
		l.drawing = false
	}
}

// leave lights the column's dots.
func (l *line) leave() {
	r := l.raster
	if l.column < 0 || l.column >= r.across {
		return
	}
	lo, hi := max(l.lo, 0), min(l.hi, r.down-1)
	if l.pattern == solid {
		for row := lo; row <= hi; row++ {
			r.light(l.column, row, l.ink)
		}
		return
	}
	l.leaveBroken(lo, hi)
}

// leaveBroken lights a broken line's dots, and always the ends of a tall span:
// a peak keeps its height.
func (l *line) leaveBroken(lo, hi int) {
	tall := hi-lo >= l.pattern.period
	for i := range hi - lo + 1 {
		row := lo + i
		if l.rising {
			row = hi - i
		}
		if l.walked%l.pattern.period < l.pattern.lit || tall && (row == lo || row == hi) {
			l.raster.light(l.column, row, l.ink)
		}
		l.walked++
	}
}

// len is the number of samples.
func (s *Series) len() int {
	if s.X == nil {
		return len(s.Y)
	}
	return min(len(s.X), len(s.Y))
}

// at is a sample, and whether both its numbers are finite.
func (s *Series) at(i int) (x, y float64, ok bool) {
	x, y = float64(i), s.Y[i]
	if s.X != nil {
		x = s.X[i]
	}
	// A difference of a number with itself is 0 unless it is NaN or infinite.
	return x, y, x-x == 0 && y-y == 0
}
