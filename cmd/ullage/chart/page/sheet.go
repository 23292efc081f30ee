package page

import (
	"image/color"
	"math"
	"strings"

	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// paper is the page's sheet, A4 if none is named.
func (p *Page) paper() Paper {
	if p.Paper.Width <= 2*border || p.Paper.Height <= 2*border {
		return A4
	}
	return p.Paper
}

// description is the page in words.
func (p *Page) description() string {
	var b strings.Builder
	for _, text := range append(p.Lines[:len(p.Lines):len(p.Lines)], p.Notes...) {
		b.WriteString(strings.TrimSuffix(clean(text), "."))
		b.WriteString(". ")
	}
	return strings.TrimSpace(b.String())
}

// sheet is a page being drawn.
type sheet struct{ *draw.Canvas }

// draw draws the page: its text from the top and from the foot, and the panels
// in what is left between.
func (p *Page) draw(c draw.Canvas) {
	s := sheet{&c}
	s.fill(white, c.Rectangle)
	room := draw.Crop(c, border, -border, border, -border).Rectangle
	room.Max.Y = s.heading(room, p)
	room.Min.Y = s.notes(room, p.Notes)
	for _, a := range layOut(room, p.Rows) {
		s.panel(a)
	}
}

// heading writes the title and the lines below it, and gives where it ends.
func (s sheet) heading(room vg.Rectangle, p *Page) vg.Length {
	y := room.Max.Y - titleSize*0.8
	width := room.Size().X
	wrapped := width * slack
	s.write(bold(titleSize), black, vg.Point{X: room.Min.X, Y: y}, atLeft, fit(bold(titleSize), width, p.Title))
	y -= titleSize * 0.3
	for _, text := range p.Lines {
		for _, l := range wrap(plain(lineSize), wrapped, text) {
			y -= lineSize * leading
			s.write(plain(lineSize), black, vg.Point{X: room.Min.X, Y: y}, atLeft, l)
		}
	}
	return y - lineSize*1.1
}

// slack leaves room at the right of wrapped text: a viewer that has none of the fonts
// may show it wider.
const slack = 0.9

// mostNoteLines keeps room for the panels.
const mostNoteLines = 14

// notes writes the notes at the foot, and gives where they begin.
func (s sheet) notes(room vg.Rectangle, notes []string) vg.Length {
	f := plain(noteSize)
	var lines []string
	for _, n := range notes {
		lines = append(lines, wrap(f, room.Size().X*slack, n)...)
	}
	if left := len(lines) - mostNoteLines; left > 0 {
		// The last lines are the cautions.
		keep := mostNoteLines / 2
		lines = append(append(lines[:keep:keep], "…"), lines[len(lines)-keep:]...)
	}
	y := room.Min.Y + noteSize*0.25
	for i := len(lines) - 1; i >= 0; i-- {
		s.write(f, dim, vg.Point{X: room.Min.X, Y: y}, atLeft, lines[i])
		y += noteSize * leading
	}
	if len(lines) > 0 {
		s.StrokeLine2(gridLine, room.Min.X, y, room.Max.X, y)
		y += noteSize
	}
	return y
}

// Where a text stands against its point.
const (
	atLeft   = 0.0
	atCentre = 0.5
	atRight  = 1.0
)

// write writes a line of text with its base line through a point.
func (s sheet) write(f *font.Face, ink color.Color, at vg.Point, align float64, text string) {
	if text == "" {
		return
	}
	s.SetColor(ink)
	if c, ok := s.Canvas.Canvas.(anchorer); ok {
		c.fillAnchored(*f, at, align, text)
		return
	}
	s.FillString(*f, vg.Point{X: at.X - vg.Length(align)*f.Width(text), Y: at.Y}, text)
}

// anchorer is a canvas that aligns text itself, since the font that is shown in the end
// may be another.
type anchorer interface {
	fillAnchored(f font.Face, at vg.Point, align float64, text string)
}

// writeUp writes a line of text upwards, centred on a point.
func (s sheet) writeUp(f *font.Face, ink color.Color, at vg.Point, text string) {
	s.Push()
	s.Translate(at)
	s.Rotate(math.Pi / 2)
	s.write(f, ink, vg.Point{Y: -f.Font.Size * middle}, atCentre, text)
	s.Pop()
}

// fill fills a rectangle.
func (s sheet) fill(ink color.Color, r vg.Rectangle) {
	s.SetColor(ink)
	s.Fill(r.Path())
}
