package plot

// scratch is memory kept between drawings.
type scratch struct {
	panels []panel
	marks  []placedMark
	labels [mostHead]labelRow
	ends   []endLabel
	raster raster
}

// drawing is one drawing of a stack on a grid.
type drawing struct {
	*Stack
	grid   *Grid
	glyphs *glyphs
	panels []panel

	left, columns int // the plotting areas' first cell column, and how many
	right, ends   int // cells for right axes and for labels at the end of traces
	rulerRow      int // of the line under the last chart, −1 for none
	labelRow      int // of the x labels, −1 for none

	xSpan  span
	xTicks ticks
	x      mapping
}

// panel is the place of one chart.
type panel struct {
	*Chart
	first      bool // of its stack
	top        int  // first row
	head, rows int  // rows of title and labels, and below them of the plotting area

	scales [2]yScale // left and right
}

// yScale is a vertical axis as drawn.
type yScale struct {
	used  bool
	span  span
	ticks ticks
	y     mapping
}

const (
	left  = 0
	right = 1
)

func side(isRight bool) int {
	if isRight {
		return right
	}
	return left
}

func (c *Chart) axis(side int) *Axis {
	if side == right {
		return &c.Right
	}
	return &c.Y
}

// plotTop is the first row of the plotting area.
func (p *panel) plotTop() int { return p.top + p.head }

// layout shares out the grid and settles the ranges.
func (d *drawing) layout() {
	d.shareRows()
	d.settleX()
	for i := range d.panels {
		d.panels[i].settleY(d.xSpan, d.glyphs.dotsY)
	}
	d.shareColumns()
	if len(d.panels) == 1 && d.Charts[0].Equal {
		d.equalise(&d.panels[0])
	}
	d.xTicks = d.chooseXTicks()
	dotsX, dotsY := d.glyphs.dotsX, d.glyphs.dotsY
	d.x = mapRange(d.xSpan, d.columns*dotsX, false)
	for i := range d.panels {
		p := &d.panels[i]
		for s := range p.scales {
			p.scales[s].y = mapRange(p.scales[s].span, p.rows*dotsY, true)
		}
	}
}

// shareRows gives each chart its rows.
func (d *drawing) shareRows() {
	charts := d.Charts[:min(len(d.Charts), d.grid.height)]
	n := len(charts)
	body := d.grid.height
	d.rulerRow, d.labelRow = -1, -1
	if !d.X.Hide && body-1 >= 3*n {
		body--
		d.labelRow = body
		if body-1 >= 6*n {
			body--
			d.rulerRow = body
		}
	}
	total := 0
	for i := range charts {
		total += charts[i].weight()
	}
	d.panels = d.grid.scratch.panels[:0]
	above, top := 0, 0
	for i := range charts {
		above += charts[i].weight()
		// Each chart below still needs a row.
		end := min(max(body*above/total, top+1), body-(n-1-i))
		p := panel{Chart: &charts[i], first: i == 0, top: top, rows: end - top}
		p.head = d.headRows(&p)
		p.rows -= p.head
		d.panels = append(d.panels, p)
		top = end
	}
	d.grid.scratch.panels = d.panels
}

// Weights are held below this, so that no sum of them overflows.
const heaviest = 1000

func (c *Chart) weight() int { return min(max(c.Weight, 1), heaviest) }

// headRows is how many rows a chart can spare for its title and mark labels.
func (d *drawing) headRows(p *panel) int {
	marks := len(p.Marks)
	if p.first {
		marks += len(d.Marks)
	}
	switch {
	case p.rows < 3:
		return 0
	case marks > 2 && p.rows >= 8:
		return mostHead
	case marks > 0 || p.Y.Title != "" || p.Y.Unit != "" || p.Right.Title != "" || p.Right.Unit != "" || p.Note != "":
		return 1
	}
	return 0
}

// shareColumns takes columns for labels left and right of the plotting areas
// while that leaves most of the width for these.
func (d *drawing) shareColumns() {
	width := d.grid.width
	d.left, d.right, d.ends = 0, 0, 0
	for i := range d.panels {
		p := &d.panels[i]
		for s := range p.scales {
			if scale := &p.scales[s]; scale.labelled(p.axis(s)) {
				wide := scale.ticks.width() + 1
				if s == left {
					d.left = max(d.left, wide)
				} else {
					d.right = max(d.right, wide)
				}
			}
		}
		for j := range p.Series {
			if end := p.Series[j].End; end != "" {
				d.ends = max(d.ends, cellsOf(end, d.Charset)+1)
			}
		}
	}
	if d.left > width/3 {
		d.left = 0
	}
	if d.right > width/4 {
		d.right = 0
	}
	if d.ends > width/4 {
		d.ends = 0
	}
	d.columns = width - d.left - d.right - d.ends
}

func (s *yScale) labelled(a *Axis) bool { return s.used && !a.Hide }

// settleX is the x range of everything drawn.
func (d *drawing) settleX() {
	var data span
	if !d.X.fixed() {
		for i := range d.Charts {
			c := &d.Charts[i]
			for j := range c.Series {
				c.Series[j].addX(&data)
			}
			for _, p := range c.Points {
				if finite(p.X) && finite(p.Y) {
					data.add(p.X)
				}
			}
		}
	}
	d.xSpan = d.X.settle(data)
	if !d.X.fixed() && data.some && len(d.Charts) == 1 && d.Charts[0].Equal {
		d.xSpan = d.xSpan.widen(1.1 * (d.xSpan.hi - d.xSpan.lo))
	}
}

// settleY is the y ranges of what a chart shows within an x range, in rows of
// so many dots.
func (p *panel) settleY(x span, dots int) {
	for s := range p.scales {
		scale, axis := &p.scales[s], p.axis(s)
		scale.used = s == left
		var data span
		for i := range p.Series {
			if series := &p.Series[i]; side(series.Right) == s {
				scale.used = true
				if !axis.fixed() {
					series.addY(&data, x)
				}
			}
		}
		for _, m := range p.Points {
			if side(m.Right) == s && finite(m.Y) && m.X >= x.lo && m.X <= x.hi {
				data.add(m.Y)
			}
		}
		p.addLimits(&data, s)
		scale.span = axis.settle(data)
		switch {
		case axis.fixed():
			scale.ticks = chooseYTicks(scale.span, p.rows)
		case data.some:
			scale.span, scale.ticks = scale.span.fit(p.rows, dots)
		default:
			scale.ticks = ticks{}
		}
	}
}

// addLimits takes limits into the data's range where that no more than doubles it.
func (p *panel) addLimits(data *span, s int) {
	if !data.some {
		return
	}
	base := p.axis(s).settle(*data)
	size := base.hi - base.lo
	for _, l := range p.Limits {
		if side(l.Right) == s && l.Y >= base.lo-size && l.Y <= base.hi+size {
			data.add(l.Y)
		}
	}
}

// chooseXTicks takes the finest ticks whose labels stand well apart.
func (d *drawing) chooseXTicks() ticks {
	const most, apart = 12, 3
	t := chooseTicks(d.xSpan, min(max(d.columns/7, min(d.columns/5, 3)), most))
	unit := 0
	if d.X.Unit != "" {
		unit = cellsOf(d.X.Unit, d.Charset) + 1
	}
	for t.count > 1 {
		spacing := t.step() / (d.xSpan.hi - d.xSpan.lo) * float64(d.columns)
		if spacing >= float64(t.width()+max(apart, unit+1)) {
			break
		}
		t.coarser()
		t.place(d.xSpan)
	}
	if !d.xSpan.some {
		t.count = 0
	}
	return t
}

// equalise widens the x or the y range until both have one scale on the
// screen, where a cell is taken as twice as high as it is wide. The wider y
// range may have longer labels: then again, with the columns these leave.
func (d *drawing) equalise(p *panel) {
	y := &p.scales[left]
	dataX, dataY := d.xSpan, y.span
	for range 3 {
		wide, high := float64(d.columns), 2*float64(p.rows)
		scale := max((dataX.hi-dataX.lo)/wide, (dataY.hi-dataY.lo)/high)
		d.xSpan = dataX.widen(scale * wide)
		y.span = dataY.widen(scale * high)
		y.ticks = chooseYTicks(y.span, p.rows)
		missing := y.ticks.width() + 1 - d.left
		if d.left == 0 || missing <= 0 || missing >= d.columns {
			return
		}
		d.left, d.columns = d.left+missing, d.columns-missing
	}
}

// widen makes a range so large, about its middle.
func (s span) widen(size float64) span {
	middle := s.lo + (s.hi-s.lo)/2
	half := max(size, s.hi-s.lo) / 2
	return span{max(middle-half, -utmost), min(middle+half, utmost), s.some}
}

// addX adds the x of a series' samples.
func (s *Series) addX(data *span) {
	for i := range s.len() {
		if x, _, ok := s.at(i); ok {
			data.add(x)
		}
	}
}

// addY adds the y of the samples inside an x range, and of its edges where a
// line crosses them.
func (s *Series) addY(data *span, x span) {
	var px, py float64
	joined := false
	for i := range s.len() {
		cx, cy, ok := s.at(i)
		if !ok {
			joined = false
			continue
		}
		if cx >= x.lo && cx <= x.hi {
			data.add(cy)
		}
		if joined && s.Style != Points {
			for _, edge := range [2]float64{x.lo, x.hi} {
				if (px < edge) != (cx < edge) && px != edge && cx != edge {
					if y := py + (cy-py)*((edge-px)/(cx-px)); finite(y) {
						data.add(y)
					}
				}
			}
		}
		px, py, joined = cx, cy, true
	}
}
