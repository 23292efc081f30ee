package page

import (
	"bytes"
	"fmt"
	"image/png"
	"math"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
	"gonum.org/v1/plot/vg/vgimg"
)

// Sheets is a drawing laid out on paper.
type Sheets struct {
	drawing       *Drawing
	Width, Height vg.Length // of each sheet, upright or not
	bounds        vg.Rectangle
	cell          vg.Point // what one tile adds; 0 when all is on one sheet
	common        vg.Point // what two neighbours both have
	across, down  int      // tiles
	tiles         []tile   // none when all is on one sheet
}

// tile is a place in the grid, counted from the left and from the top.
type tile struct{ column, row int }

// name is "A1": the row's letter and the column's number.
func (t tile) name() string { return fmt.Sprintf("%s%d", rowName(t.row), t.column+1) }

func rowName(row int) string {
	const letters = 26
	if row < letters {
		return string(rune('A' + row))
	}
	return rowName(row/letters-1) + string(rune('A'+row%letters))
}

// overlap is what two tiles have in common, half of it beyond the line where they are joined.
const overlap = 10 * vg.Millimeter

// MostTiles is how many tiles a drawing may take: more is a mistake in a file, or no
// thing to print at true size.
const MostTiles = 200

// LayOut puts the drawing on one sheet of its paper, upright or not, or else on as few tiles
// as it takes. It fails when it takes more than MostTiles.
func (d *Drawing) LayOut() (*Sheets, error) {
	paper := (&Page{Paper: d.Paper}).paper()
	var best *Sheets
	for _, turned := range []bool{true, false} {
		s := &Sheets{drawing: d, Width: paper.Width, Height: paper.Height, bounds: d.bounds()}
		if turned {
			s.Width, s.Height = paper.Height, paper.Width
		}
		if s.fits() {
			return s, nil
		}
		room := s.room(true).Size()
		s.cell = room
		size := s.bounds.Size()
		columns, rows := 1., 1.
		if size.X > room.X {
			s.common.X, s.cell.X = overlap, room.X-overlap
			columns = math.Ceil(float64(size.X / s.cell.X))
		}
		if size.Y > room.Y {
			s.common.Y, s.cell.Y = overlap, room.Y-overlap
			rows = math.Ceil(float64(size.Y / s.cell.Y))
		}
		if !(columns*rows <= MostTiles) {
			continue
		}
		s.across, s.down = max(int(columns), 1), max(int(rows), 1)
		for row := range s.down {
			for column := range s.across {
				if t := (tile{column, row}); s.holds(t) {
					s.tiles = append(s.tiles, t)
				}
			}
		}
		if best == nil || len(s.tiles) < len(best.tiles) {
			best = s
		}
	}
	if best == nil {
		return nil, fmt.Errorf("it takes more than %d sheets", MostTiles)
	}
	return best, nil
}

// Count is how many sheets there are.
func (s *Sheets) Count() int { return 1 + len(s.tiles) }

// Tiles is how the tiles lie, 0 by 0 when all is on one sheet.
func (s *Sheets) Tiles() (across, down int) { return s.across, s.down }

// room is what a sheet has for a drawing between its borders and the rules; of a tile also
// below a line of text.
func (s *Sheets) room(tile bool) vg.Rectangle {
	r := vg.Rectangle{Min: vg.Point{X: border + ruleStrip, Y: border + ruleStrip}, Max: vg.Point{X: s.Width - border, Y: s.Height - border}}
	if tile {
		r.Max.Y -= lineSize * 1.6
	}
	return r
}

// fits tells whether the drawing has room beside what is written about it.
func (s *Sheets) fits() bool {
	size, room := s.bounds.Size(), s.room(false)
	top, foot := s.written()
	return size.X <= room.Size().X && size.Y <= room.Size().Y-top-foot
}

// written is the height that the text above and the text below take.
func (s *Sheets) written() (top, foot vg.Length) {
	c := vgimg.NewWith(vgimg.UseWH(s.Width, s.Height), vgimg.UseDPI(8)) // to measure by
	room := s.room(false)
	on := sheet{new(draw.Canvas)}
	*on.Canvas = draw.New(c)
	return room.Max.Y - s.head(on, room), s.foot(on, room) - room.Min.Y
}

// head writes what stands above, and gives where it ends.
func (s *Sheets) head(on sheet, room vg.Rectangle) vg.Length {
	y := on.heading(room, &Page{Title: s.drawing.Title, Lines: s.drawing.Lines})
	room.Max.Y = y
	return on.figures(room, s.drawing.Grid)
}

// foot writes what stands below, and gives where it begins.
func (s *Sheets) foot(on sheet, room vg.Rectangle) vg.Length {
	return on.notes(room, s.drawing.Notes)
}

// window is what of the drawing a tile shows, and cell what of that is its own.
func (s *Sheets) window(t tile) (window, cell vg.Rectangle) {
	size := s.bounds.Size()
	// What is left over is shared by both sides.
	left := s.bounds.Min.X - (vg.Length(s.across)*s.cell.X-size.X)/2
	top := s.bounds.Max.Y + (vg.Length(s.down)*s.cell.Y-size.Y)/2
	cell.Min.X = left + vg.Length(t.column)*s.cell.X
	cell.Max.X = cell.Min.X + s.cell.X
	cell.Max.Y = top - vg.Length(t.row)*s.cell.Y
	cell.Min.Y = cell.Max.Y - s.cell.Y
	half := vg.Point{X: s.common.X / 2, Y: s.common.Y / 2}
	return vg.Rectangle{Min: cell.Min.Sub(half), Max: cell.Max.Add(half)}, cell
}

// holds tells whether a tile has any of the drawing's strokes.
func (s *Sheets) holds(t tile) bool {
	window, _ := s.window(t)
	c := draw.Canvas{Rectangle: window}
	for i := range s.drawing.Strokes {
		if len(c.ClipLinesXY(s.drawing.Strokes[i].Points)) > 0 {
			return true
		}
	}
	return false
}

// draw draws one of the sheets.
func (s *Sheets) draw(c draw.Canvas, n int) {
	on := sheet{&c}
	on.fill(white, c.Rectangle)
	on.rules()
	switch {
	case len(s.tiles) == 0:
		s.whole(on)
	case n == 0:
		s.cover(on)
	default:
		s.tile(on, n)
	}
}

// rules draws two lengths by which a print is checked, one each way: printers stretch
// either.
func (s sheet) rules() {
	from := vg.Point{X: border, Y: border}
	for _, way := range []vg.Point{{X: 1}, {Y: 1}} {
		at := func(along, across vg.Length) vg.Point {
			return vg.Point{X: from.X + along*way.X + across*way.Y, Y: from.Y + along*way.Y + across*way.X}
		}
		s.StrokeLines(ruleLine, []vg.Point{at(0, 0), at(ruleLong, 0)})
		for i := range 11 {
			tick := 1.4 * vg.Millimeter
			if i%5 == 0 {
				tick = 2.6 * vg.Millimeter
			}
			s.StrokeLines(ruleLine, []vg.Point{at(vg.Length(i)*10*vg.Millimeter, 0), at(vg.Length(i)*10*vg.Millimeter, tick)})
		}
	}
	s.write(plain(minor), black, vg.Point{X: from.X + ruleLong + 2*vg.Millimeter, Y: from.Y}, atLeft, "100 mm each way: print at 100 %, measure both")
}

// whole draws everything on one sheet.
func (s *Sheets) whole(on sheet) {
	room := s.room(false)
	room.Max.Y = s.head(on, room)
	room.Min.Y = s.foot(on, room)
	middle := vg.Point{X: (room.Min.X + room.Max.X) / 2, Y: (room.Min.Y + room.Max.Y) / 2}
	s.drawing.stroke(on, s.shift(middle), room, room)
}

// shift puts the drawing's middle somewhere.
func (s *Sheets) shift(to vg.Point) func(vg.Point) vg.Point {
	middle := vg.Point{X: (s.bounds.Min.X + s.bounds.Max.X) / 2, Y: (s.bounds.Min.Y + s.bounds.Max.Y) / 2}
	by := to.Sub(middle)
	return func(p vg.Point) vg.Point { return p.Add(by) }
}

// cover tells all that is written and how the tiles are joined.
func (s *Sheets) cover(on sheet) {
	room := s.room(false)
	room.Max.Y = s.head(on, room)
	room.Min.Y = s.foot(on, room)
	text := "The drawing is on the next sheet, at its true size; this is a small picture of it."
	if len(s.tiles) > 1 {
		text = fmt.Sprintf("%d tiles follow; this is a small picture of how they lie. Trim one of two neighbours on the dotted line, "+
			"lay it on the other so that line and crosses meet, and tape.", len(s.tiles))
	}
	y := room.Max.Y - lineSize
	for _, l := range wrap(plain(lineSize), room.Size().X*slack, text) {
		on.write(plain(lineSize), black, vg.Point{X: room.Min.X, Y: y}, atLeft, l)
		y -= lineSize * leading
	}
	room.Max.Y = y
	grid := vg.Point{X: vg.Length(s.across) * s.cell.X, Y: vg.Length(s.down) * s.cell.Y}
	scale := min(room.Size().X/grid.X, room.Size().Y/grid.Y, 0.5)
	if !(scale > 0.01) {
		return
	}
	low := vg.Point{X: (room.Min.X+room.Max.X)/2 - grid.X*scale/2, Y: (room.Min.Y+room.Max.Y)/2 - grid.Y*scale/2}
	_, corner := s.window(tile{0, s.down - 1})
	place := func(p vg.Point) vg.Point {
		return vg.Point{X: low.X + (p.X-corner.Min.X)*scale, Y: low.Y + (p.Y-corner.Min.Y)*scale}
	}
	small := Drawing{Strokes: make([]Stroke, len(s.drawing.Strokes))}
	for i, k := range s.drawing.Strokes {
		small.Strokes[i] = Stroke{Points: k.Points, Pen: k.Pen}
	}
	small.stroke(on, place, room, room)
	for _, t := range s.tiles {
		_, cell := s.window(t)
		a, b := place(cell.Min), place(cell.Max)
		on.StrokeLines(joinLine, []vg.Point{a, {X: b.X, Y: a.Y}, b, {X: a.X, Y: b.Y}, a})
		on.write(plain(minor), dim, vg.Point{X: a.X + 2, Y: b.Y - minor}, atLeft, t.name())
	}
}

// tile draws one of the tiles, sheet n of all.
func (s *Sheets) tile(on sheet, n int) {
	t := s.tiles[n-1]
	room := s.room(true)
	window, cell := s.window(t)
	by := room.Min.Sub(window.Min)
	place := func(p vg.Point) vg.Point { return p.Add(by) }
	moved := func(r vg.Rectangle) vg.Rectangle { return vg.Rectangle{Min: place(r.Min), Max: place(r.Max)} }
	head := fmt.Sprintf("%s · tile %s, sheet %d of %d", clean(s.drawing.Title), t.name(), n+1, s.Count())
	on.write(plain(lineSize), black, vg.Point{X: room.Min.X, Y: s.Height - border - lineSize}, atLeft, fit(plain(lineSize), room.Size().X, head))
	s.drawing.stroke(on, place, moved(window), moved(cell))
	s.joins(on, t, moved(window), moved(cell))
}

// joins draws the lines where a tile meets its neighbours, with crosses that both have.
func (s *Sheets) joins(on sheet, t tile, window, cell vg.Rectangle) {
	const arm = 3 * vg.Millimeter
	cross := func(at vg.Point) {
		on.StrokeLines(joinMark, []vg.Point{{X: at.X - arm, Y: at.Y}, {X: at.X + arm, Y: at.Y}}, []vg.Point{{X: at.X, Y: at.Y - arm}, {X: at.X, Y: at.Y + arm}})
	}
	size := cell.Size()
	for _, side := range []struct {
		next     tile
		from, to vg.Point // of the line
	}{
		{tile{t.column - 1, t.row}, vg.Point{X: cell.Min.X, Y: window.Min.Y}, vg.Point{X: cell.Min.X, Y: window.Max.Y}},
		{tile{t.column + 1, t.row}, vg.Point{X: cell.Max.X, Y: window.Min.Y}, vg.Point{X: cell.Max.X, Y: window.Max.Y}},
		{tile{t.column, t.row - 1}, vg.Point{X: window.Min.X, Y: cell.Max.Y}, vg.Point{X: window.Max.X, Y: cell.Max.Y}},
		{tile{t.column, t.row + 1}, vg.Point{X: window.Min.X, Y: cell.Min.Y}, vg.Point{X: window.Max.X, Y: cell.Min.Y}},
	} {
		if side.next.column < 0 || side.next.row < 0 || side.next.column >= s.across || side.next.row >= s.down || !s.holds(side.next) {
			continue
		}
		on.StrokeLines(joinLine, []vg.Point{side.from, side.to})
		upright := side.from.X == side.to.X
		for _, share := range []vg.Length{0.25, 0.75} {
			at := vg.Point{X: side.from.X, Y: cell.Min.Y + share*size.Y}
			if !upright {
				at = vg.Point{X: cell.Min.X + share*size.X, Y: side.from.Y}
			}
			cross(at)
		}
		first, second := t, side.next
		if side.next.column < t.column || side.next.row < t.row {
			first, second = second, first
		}
		x, y := vg.Length(1), vg.Length(0)
		if upright {
			x, y = 0, 1
		}
		middle := vg.Point{X: (side.from.X + side.to.X) / 2, Y: (side.from.Y + side.to.Y) / 2}
		everywhere := vg.Rectangle{Max: vg.Point{X: s.Width, Y: s.Height}}
		on.along(middle, x, y, first.name()+" meets "+second.name(), everywhere)
	}
}

// figures writes a table in as many blocks side by side as there is room for, and gives where
// it ends.
func (s sheet) figures(room vg.Rectangle, g *Grid) vg.Length {
	y := room.Max.Y
	if g == nil || len(g.Rows) == 0 {
		return y
	}
	y -= noteSize * 0.8
	f := plain(noteSize)
	column := vg.Length(0)
	for _, h := range g.Heads {
		column = max(column, f.Width(h)+8)
	}
	block := column*vg.Length(len(g.Heads)) + 14
	blocks := min(max(int(room.Size().X/block), 1), len(g.Rows))
	tall := (len(g.Rows) + blocks - 1) / blocks
	blocks = (len(g.Rows) + tall - 1) / tall
	s.write(bold(noteSize), black, vg.Point{X: room.Min.X, Y: y}, atLeft, g.Title)
	y -= noteSize * leading
	for b := range blocks {
		left := room.Min.X + vg.Length(b)*block
		for i, h := range g.Heads {
			s.write(f, dim, vg.Point{X: left + column*vg.Length(i+1) - 8, Y: y}, atRight, h)
		}
		for r := range tall {
			if n := b*tall + r; n < len(g.Rows) {
				for i, cell := range g.Rows[n] {
					s.write(f, black, vg.Point{X: left + column*vg.Length(i+1) - 8, Y: y - noteSize*leading*vg.Length(r+1)}, atRight, cell)
				}
			}
		}
	}
	return y - noteSize*leading*vg.Length(tall+1)
}

// SVG is one of the sheets, counted from 0, as an SVG document.
func (s *Sheets) SVG(n int) []byte {
	c := newSVG(s.Width, s.Height)
	s.draw(draw.New(c), n)
	return c.document(clean(s.drawing.Title), s.drawing.description())
}

// PNG is one of the sheets, counted from 0, as an image.
func (s *Sheets) PNG(n, resolution int) ([]byte, error) {
	resolution = min(max(resolution, LeastResolution), GreatestResolution)
	c := vgimg.NewWith(vgimg.UseWH(s.Width, s.Height), vgimg.UseDPI(resolution))
	s.draw(draw.New(c), n)
	var b bytes.Buffer
	if err := png.Encode(&b, c.Image()); err != nil {
		return nil, err
	}
	return withResolution(b.Bytes(), resolution), nil
}

// PDF is all sheets as one PDF document.
func (s *Sheets) PDF() ([]byte, error) {
	c := newPDF(s.Width, s.Height, clean(s.drawing.Title))
	for n := range s.Count() {
		c.page()
		s.draw(draw.New(c), n)
	}
	return c.document()
}
