package plot

// pointMarks draws signs, then labels beside them: to the right, to the left,
// above, below, wherever no trace is hidden.
func (d *drawing) pointMarks(p *panel) {
	for _, m := range p.Points {
		if column, row, ok := d.place(p, m); ok {
			*d.cell(p, column, row) = Cell{d.sign(m.Sign), Mark}
		}
	}
	for _, m := range p.Points {
		size := cellsOf(m.Label, d.Charset)
		column, row, ok := d.place(p, m)
		if size == 0 || !ok {
			continue
		}
		for _, at := range [4][2]int{{column + 2, row}, {column - 1 - size, row}, {column - size/2, row - 1}, {column - size/2, row + 1}} {
			if d.clear(p, at[0], at[0]+size, at[1], None) {
				d.write(d.left+at[0], p.plotTop()+at[1], size, m.Label, Mark)
				break
			}
		}
	}
}

func (d *drawing) place(p *panel, m PointMark) (column, row int, ok bool) {
	column, inX := d.columnOf(m.X)
	row, inY := d.rowOf(p, side(m.Right), m.Y)
	return column, row, inX && inY
}

// sign is a point mark's sign as the charset can show it.
func (d *drawing) sign(r rune) rune {
	for _, s := range spell(r, d.Charset) {
		if s != ' ' {
			return s
		}
	}
	return d.glyphs.sign
}

// clear tells whether cells of the plotting area hold nothing but shading and
// one more ink.
func (d *drawing) clear(p *panel, start, end, row int, but Ink) bool {
	if start < 0 || end > d.columns || row < 0 || row >= p.rows {
		return false
	}
	for column := start; column < end; column++ {
		if ink := d.cell(p, column, row).Ink; ink != None && ink != Shade && ink != but {
			return false
		}
	}
	return true
}

// limitLabels writes limits' labels on their lines.
func (d *drawing) limitLabels(p *panel) {
	for _, l := range p.Limits {
		size := cellsOf(l.Label, d.Charset)
		row, ok := d.rowOf(p, side(l.Right), l.Y)
		if size == 0 || !ok {
			continue
		}
		for start := d.columns - size; start >= 0; start-- {
			if d.clear(p, start, start+size, row, Limited) {
				d.write(d.left+start, p.plotTop()+row, size, l.Label, Limited)
				break
			}
		}
	}
}
