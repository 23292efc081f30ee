package plot

// yAxis draws a vertical axis in a column of the grid, its labels left or
// right of that.
func (d *drawing) yAxis(p *panel, s, column int) {
	scale, axis := &p.scales[s], p.axis(s)
	if !scale.labelled(axis) || s == left && d.left == 0 || s == right && d.right == 0 {
		return
	}
	at := func(row int) *Cell { return &d.grid.cells[(p.plotTop()+row)*d.grid.width+column] }
	for row := range p.rows {
		*at(row) = Cell{d.glyphs.vertical, Rule}
	}
	tick := d.glyphs.tickLeft
	if s == right {
		tick = d.glyphs.tickRight
	}
	var room [32]byte
	taken := -1
	for i := range scale.ticks.count {
		row, ok := d.rowOf(p, s, scale.ticks.value(i))
		if !ok || row == taken {
			continue
		}
		taken = row
		*at(row) = Cell{tick, Rule}
		text := scale.ticks.appendText(room[:0], i)
		start := column - len(text)
		if s == right {
			start = column + 1
		}
		d.number(start, p.plotTop()+row, text)
	}
}

// number writes a tick's label, which is ASCII, where all of it is inside the grid.
func (d *drawing) number(column, row int, text []byte) {
	if column < 0 || column+len(text) > d.grid.width {
		return
	}
	cells := d.grid.cells[row*d.grid.width+column:]
	for i, b := range text {
		cells[i] = Cell{rune(b), Label}
	}
}

// xAxis draws the line under the last chart, and the labels: the unit stands
// behind the first of them, the title at the right end.
func (d *drawing) xAxis() {
	if d.rulerRow >= 0 {
		d.ruler()
	}
	if d.labelRow < 0 {
		return
	}
	end := d.grid.width
	if title := cellsOf(d.X.Title, d.Charset); title > 0 && title <= d.grid.width/3 {
		d.write(end-title, d.labelRow, title, d.X.Title, Label)
		end -= title + 2
	}
	var room [32]byte
	free := 0 // first column a label may take
	for i := range d.xTicks.count {
		column, ok := d.columnOf(d.xTicks.value(i))
		if !ok {
			continue
		}
		text := d.xTicks.appendText(room[:0], i)
		start := min(max(d.left+column-len(text)/2, 0), d.grid.width-len(text))
		if start < free || start+len(text) > end {
			continue
		}
		d.number(start, d.labelRow, text)
		past := start + len(text)
		if free == 0 && d.X.Unit != "" {
			if unit := cellsOf(d.X.Unit, d.Charset); past+1+unit <= end {
				d.write(past+1, d.labelRow, unit, d.X.Unit, Label)
				past += 1 + unit
			}
		}
		free = past + 1
	}
}

func (d *drawing) ruler() {
	row := d.grid.cells[d.rulerRow*d.grid.width:][:d.grid.width]
	for column := range d.columns {
		row[d.left+column] = Cell{d.glyphs.horizontal, Rule}
	}
	for i := range d.xTicks.count {
		if column, ok := d.columnOf(d.xTicks.value(i)); ok {
			row[d.left+column].Rune = d.glyphs.tickDown
		}
	}
	if d.left > 0 {
		row[d.left-1] = Cell{d.glyphs.cornerLeft, Rule}
	}
	if d.right > 0 {
		row[d.left+d.columns] = Cell{d.glyphs.cornerRight, Rule}
	}
}

// title writes a chart's title and unit at the left of its first row, the
// right axis's at the right, and the note before that, and tells what room is
// between.
func (d *drawing) title(p *panel) labelRow {
	room := labelRow{hi: d.grid.width}
	if p.head == 0 {
		return room
	}
	if used := d.heading(0, p, &p.Y); used > 0 {
		room.lo = used + 1
	}
	if size := d.headingCells(&p.Right); p.scales[right].used && size > 0 && room.lo+1+size <= room.hi {
		d.heading(room.hi-size, p, &p.Right)
		room.hi -= size + 1
	}
	if size := cellsOf(p.Note, d.Charset); size > 0 && room.lo+1+size <= room.hi {
		d.write(room.hi-size, p.top, size, p.Note, Note)
		room.hi -= size + 1
	}
	return room
}

func (d *drawing) heading(column int, p *panel, a *Axis) int {
	start := column
	column += d.write(column, p.top, d.grid.width, a.Title, Title)
	if a.Unit != "" {
		if column > start {
			column += d.write(column, p.top, 1, " ", Title)
		}
		column += d.write(column, p.top, d.grid.width, a.Unit, Title)
	}
	return column
}

func (d *drawing) headingCells(a *Axis) int {
	n := cellsOf(a.Title, d.Charset)
	if a.Unit != "" {
		if n > 0 {
			n++
		}
		n += cellsOf(a.Unit, d.Charset)
	}
	return n
}
