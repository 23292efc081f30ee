package plot

// DrawTo draws the stack over the whole of g at the size it has, in memory
// that g keeps for the next drawing.
func (s *Stack) DrawTo(g *Grid) {
	g.Resize(g.width, g.height)
	if g.width == 0 || g.height == 0 || len(s.Charts) == 0 {
		return
	}
	d := drawing{Stack: s, grid: g, glyphs: s.Charset.glyphs()}
	d.layout()
	for i := range d.panels {
		d.panel(&d.panels[i])
	}
	d.xAxis()
	g.frame = Frame{Left: d.left, Columns: d.columns, Min: d.xSpan.lo, Max: d.xSpan.hi}
}

// cell is a cell of a plotting area, counted from its top left.
func (d *drawing) cell(p *panel, column, row int) *Cell {
	return &d.grid.cells[(p.plotTop()+row)*d.grid.width+d.left+column]
}

// columnOf is the cell column of the plotting area that shows x, and whether one does.
func (d *drawing) columnOf(x float64) (int, bool) {
	if !finite(x) {
		return 0, false
	}
	across := d.columns * d.glyphs.dotsX
	dot := d.x.dot(x, across)
	return dot / d.glyphs.dotsX, dot >= 0 && dot < across
}

// rowOf is the cell row of the plotting area that shows y, and whether one does.
func (d *drawing) rowOf(p *panel, s int, y float64) (int, bool) {
	if !finite(y) {
		return 0, false
	}
	down := p.rows * d.glyphs.dotsY
	dot := p.scales[s].y.dot(y, down)
	return dot / d.glyphs.dotsY, dot >= 0 && dot < down
}

// panel draws one chart: what lies behind, the dots, then the words.
func (d *drawing) panel(p *panel) {
	for _, bands := range [2][]Band{d.Bands, p.Bands} {
		for _, b := range bands {
			d.band(p, b)
		}
	}
	for _, marks := range [2][]VerticalMark{d.Marks, p.Marks} {
		for i := range marks {
			d.upright(p, marks[i].X, d.glyphs.mark, Mark)
		}
	}
	if d.ShowCursor {
		d.upright(p, d.Cursor, d.glyphs.cursor, Cursor)
	}
	d.traces(p)
	d.yAxis(p, left, d.left-1)
	d.yAxis(p, right, d.left+d.columns)
	d.endLabels(p)
	d.markLabels(p, d.title(p))
	d.pointMarks(p)
	d.limitLabels(p)
}

// band dots every other cell of an x range.
func (d *drawing) band(p *panel, b Band) {
	lo, hi := min(b.From, b.To), max(b.From, b.To)
	if !(lo <= d.xSpan.hi && hi >= d.xSpan.lo) { // NaN too
		return
	}
	from, _ := d.columnOf(max(lo, d.xSpan.lo))
	to, _ := d.columnOf(min(hi, d.xSpan.hi))
	for row := range p.rows {
		for column := from; column <= to; column++ {
			if (column+row)%2 == 0 {
				*d.cell(p, column, row) = Cell{d.glyphs.shade, Shade}
			}
		}
	}
}

// upright draws a vertical line.
func (d *drawing) upright(p *panel, x float64, sign rune, ink Ink) {
	column, ok := d.columnOf(x)
	if !ok {
		return
	}
	for row := range p.rows {
		*d.cell(p, column, row) = Cell{sign, ink}
	}
}

// traces draws limits and series: limits lowest, solid lines topmost.
func (d *drawing) traces(p *panel) {
	r := &d.grid.scratch.raster
	r.reset(d.glyphs, d.columns, p.rows)
	for _, l := range p.Limits {
		if finite(l.Y) {
			r.level(p.scales[side(l.Right)].y.dot(l.Y, r.down), Limited, d.glyphs.dashed)
		}
	}
	if d.glyphs.apart {
		d.show(p, r, d.glyphs.limit)
	}
	for _, onTop := range [2]bool{false, true} {
		for i := range p.Series {
			s := &p.Series[i]
			if (s.Style == Solid) != onTop {
				continue
			}
			y := p.scales[side(s.Right)].y
			switch s.Style {
			case Points:
				r.scatter(s, d.x, y)
			case Dotted:
				r.trace(s, d.x, y, d.glyphs.dotted)
			case Dashed:
				r.trace(s, d.x, y, d.glyphs.dashed)
			default:
				r.trace(s, d.x, y, solid)
			}
			if d.glyphs.apart {
				d.show(p, r, 0)
			}
		}
	}
	if !d.glyphs.apart {
		d.show(p, r, 0)
	}
}

// show puts the dots into the grid, or a sign where there are any, and makes
// them dark again.
func (d *drawing) show(p *panel, r *raster, sign rune) {
	for row := range p.rows {
		masks := r.mask[row*d.columns:][:d.columns]
		inks := r.ink[row*d.columns:][:d.columns]
		cells := d.grid.cells[(p.plotTop()+row)*d.grid.width+d.left:][:d.columns]
		for i, mask := range masks {
			if mask == 0 {
				continue
			}
			cells[i].Rune = d.glyphs.dots[mask]
			if sign != 0 {
				cells[i].Rune = sign
			}
			if cells[i].Ink != Cursor {
				cells[i].Ink = inks[i]
			}
			masks[i] = 0
		}
	}
}
