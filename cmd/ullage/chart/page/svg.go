package page

import (
	"bytes"
	"encoding/base64"
	"encoding/xml"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"math"
	"strconv"

	"golang.org/x/image/font"
	plotfont "gonum.org/v1/plot/font"
	"gonum.org/v1/plot/vg"
)

// svgCanvas is a vg.Canvas that writes SVG 1.1. Unlike the one of gonum/plot it
// names fonts to take where Liberation Sans is missing (Arial has the same
// widths), holds every text to the width it was laid out for, and says in words
// what is drawn, for those who hear a page.
type svgCanvas struct {
	width, height vg.Length
	body          bytes.Buffer
	now           svgState
	stack         []svgState
}

// svgState is what Push keeps.
type svgState struct {
	place  matrix
	line   vg.Length
	dashes []vg.Length
	offset vg.Length
	ink    color.Color
}

// fontFamilies are those to try, all with the widths of the first but the last.
const fontFamilies = "Liberation Sans, Arial, Helvetica, sans-serif"

// newSVG is an empty sheet. vg has its origin at the lower left, SVG at the
// upper left.
func newSVG(width, height vg.Length) *svgCanvas {
	c := &svgCanvas{width: width, height: height}
	c.now.place = matrix{1, 0, 0, -1, 0, float64(height)}
	vg.Initialize(c)
	return c
}

// document is the whole SVG file.
func (c *svgCanvas) document(title, description string) []byte {
	var b bytes.Buffer
	fmt.Fprintf(&b, `<?xml version="1.0" encoding="UTF-8"?>
<svg xmlns="http://www.w3.org/2000/svg" width="%smm" height="%smm" viewBox="0 0 %s %s" role="img" font-family="%s" stroke-linejoin="round">
<title>%s</title>
<desc>%s</desc>
`, short(float64(c.width/vg.Millimeter)), short(float64(c.height/vg.Millimeter)), short(float64(c.width)), short(float64(c.height)),
		fontFamilies, escape(title), escape(description))
	b.Write(c.body.Bytes())
	b.WriteString("</svg>\n")
	return b.Bytes()
}

// Size is the size of the sheet.
func (c *svgCanvas) Size() (x, y vg.Length) { return c.width, c.height }

// SetLineWidth implements vg.Canvas.
func (c *svgCanvas) SetLineWidth(w vg.Length) { c.now.line = w }

// SetLineDash implements vg.Canvas.
func (c *svgCanvas) SetLineDash(pattern []vg.Length, offset vg.Length) {
	c.now.dashes, c.now.offset = pattern, offset
}

// SetColor implements vg.Canvas.
func (c *svgCanvas) SetColor(ink color.Color) {
	if ink == nil {
		ink = color.Black
	}
	c.now.ink = ink
}

// Rotate implements vg.Canvas.
func (c *svgCanvas) Rotate(rad float64) {
	sin, cos := math.Sincos(rad)
	c.now.place = c.now.place.times(matrix{cos, sin, -sin, cos, 0, 0})
}

// Translate implements vg.Canvas.
func (c *svgCanvas) Translate(pt vg.Point) {
	c.now.place = c.now.place.times(matrix{1, 0, 0, 1, float64(pt.X), float64(pt.Y)})
}

// Scale implements vg.Canvas. Arcs stay circles only where x and y are equal.
func (c *svgCanvas) Scale(x, y float64) { c.now.place = c.now.place.times(matrix{x, 0, 0, y, 0, 0}) }

// Push implements vg.Canvas.
func (c *svgCanvas) Push() { c.stack = append(c.stack, c.now) }

// Pop implements vg.Canvas.
func (c *svgCanvas) Pop() {
	c.now = c.stack[len(c.stack)-1]
	c.stack = c.stack[:len(c.stack)-1]
}

// Stroke implements vg.Canvas.
func (c *svgCanvas) Stroke(p vg.Path) {
	if c.now.line <= 0 {
		return
	}
	c.path(p)
	fmt.Fprintf(&c.body, ` fill="none" stroke="%s" stroke-width="%s"`, hex(c.now.ink), short(float64(c.now.line)))
	if len(c.now.dashes) > 0 {
		c.body.WriteString(` stroke-dasharray="`)
		for i, d := range c.now.dashes {
			if i > 0 {
				c.body.WriteByte(' ')
			}
			c.body.WriteString(short(float64(d)))
		}
		c.body.WriteByte('"')
		if c.now.offset != 0 {
			fmt.Fprintf(&c.body, ` stroke-dashoffset="%s"`, short(float64(c.now.offset)))
		}
	}
	c.body.WriteString("/>\n")
}

// Fill implements vg.Canvas.
func (c *svgCanvas) Fill(p vg.Path) {
	c.path(p)
	fmt.Fprintf(&c.body, " fill=\"%s\"/>\n", hex(c.now.ink))
}

// path writes the beginning of a path element.
func (c *svgCanvas) path(p vg.Path) {
	c.body.WriteString(`<path d="`)
	for i := range p {
		c.component(&p[i])
	}
	c.body.WriteByte('"')
}

// component writes one piece of a path.
func (c *svgCanvas) component(k *vg.PathComp) {
	switch k.Type {
	case vg.MoveComp:
		c.command('M', k.Pos)
	case vg.LineComp:
		c.command('L', k.Pos)
	case vg.ArcComp:
		c.arc(k)
	case vg.CurveComp:
		name := byte('C')
		if len(k.Control) == 1 {
			name = 'Q'
		}
		c.command(name, append(k.Control[:len(k.Control):len(k.Control)], k.Pos)...)
	case vg.CloseComp:
		c.body.WriteByte('Z')
	}
}

// arc writes an arc in halves, since SVG has none that is a whole circle. The
// line to its beginning has no length where the path is there already.
func (c *svgCanvas) arc(k *vg.PathComp) {
	on := func(angle float64) vg.Point {
		sin, cos := math.Sincos(angle)
		return k.Pos.Add(vg.Point{X: k.Radius * vg.Length(cos), Y: k.Radius * vg.Length(sin)})
	}
	sweep := "1"
	if k.Angle*c.now.place.turn() < 0 {
		sweep = "0"
	}
	r := short(float64(k.Radius) * math.Sqrt(math.Abs(c.now.place.turn())))
	for _, share := range []float64{0.5, 1} {
		c.body.WriteString("A" + r + " " + r + " 0 0 " + sweep)
		c.command(' ', on(k.Start+share*k.Angle))
	}
}

// command writes a letter and points.
func (c *svgCanvas) command(letter byte, points ...vg.Point) {
	for i, p := range points {
		if i > 0 {
			letter = ' '
		}
		x, y := c.now.place.apply(p)
		c.body.WriteByte(letter)
		c.body.WriteString(short(x))
		c.body.WriteByte(' ')
		c.body.WriteString(short(y))
	}
}

// FillString implements vg.Canvas. Text keeps its size whatever the scale.
func (c *svgCanvas) FillString(f plotfont.Face, pt vg.Point, text string) {
	c.fillAnchored(f, pt, atLeft, text)
}

// fillAnchored writes text with its beginning, middle or end at a point.
func (c *svgCanvas) fillAnchored(f plotfont.Face, pt vg.Point, align float64, text string) {
	if text == "" || f.Font.Size == 0 {
		return
	}
	x, y := c.now.place.apply(pt)
	fmt.Fprintf(&c.body, `<text x="%s" y="%s" font-size="%s"`, short(x), short(y), short(float64(f.Font.Size)))
	switch align {
	case atCentre:
		c.body.WriteString(` text-anchor="middle"`)
	case atRight:
		c.body.WriteString(` text-anchor="end"`)
	}
	if f.Font.Weight >= font.WeightBold {
		c.body.WriteString(` font-weight="bold"`)
	}
	if angle := c.now.place.angle(); angle != 0 {
		fmt.Fprintf(&c.body, ` transform="rotate(%s %s %s)"`, short(angle*180/math.Pi), short(x), short(y))
	}
	fmt.Fprintf(&c.body, " fill=\"%s\" textLength=\"%s\" lengthAdjust=\"spacingAndGlyphs\">%s</text>\n",
		hex(c.now.ink), short(float64(f.Width(text))), escape(text))
}

// DrawImage implements vg.Canvas, upright.
func (c *svgCanvas) DrawImage(r vg.Rectangle, img image.Image) {
	var b bytes.Buffer
	if err := png.Encode(&b, img); err != nil {
		return // nothing to show: an image without pixels
	}
	x, y := c.now.place.apply(vg.Point{X: r.Min.X, Y: r.Max.Y})
	size := r.Size()
	fmt.Fprintf(&c.body, "<image x=\"%s\" y=\"%s\" width=\"%s\" height=\"%s\" href=\"data:image/png;base64,%s\"/>\n",
		short(x), short(y), short(float64(size.X)), short(float64(size.Y)), base64.StdEncoding.EncodeToString(b.Bytes()))
}

// short writes a number with as many decimals as print can show, in points.
func short(v float64) string {
	v = math.Round(v*100) / 100
	if v == 0 {
		v = 0 // not −0
	}
	return strconv.FormatFloat(v, 'f', -1, 64)
}

// hex is an opaque colour.
func hex(ink color.Color) string {
	n := color.NRGBAModel.Convert(ink).(color.NRGBA)
	return fmt.Sprintf("#%02x%02x%02x", n.R, n.G, n.B)
}

// escape is text as XML has it.
func escape(s string) string {
	var b bytes.Buffer
	if err := xml.EscapeText(&b, []byte(s)); err != nil {
		return "" // a buffer takes everything
	}
	return b.String()
}

// matrix is an affine map: x' = a·x + c·y + e, y' = b·x + d·y + f.
type matrix struct{ a, b, c, d, e, f float64 }

func (m matrix) apply(p vg.Point) (x, y float64) {
	return m.a*float64(p.X) + m.c*float64(p.Y) + m.e, m.b*float64(p.X) + m.d*float64(p.Y) + m.f
}

// times is the map that does n first.
func (m matrix) times(n matrix) matrix {
	return matrix{
		m.a*n.a + m.c*n.b, m.b*n.a + m.d*n.b,
		m.a*n.c + m.c*n.d, m.b*n.c + m.d*n.d,
		m.a*n.e + m.c*n.f + m.e, m.b*n.e + m.d*n.f + m.f,
	}
}

// turn is the determinant: negative where the map mirrors.
func (m matrix) turn() float64 { return m.a*m.d - m.b*m.c }

// angle is how far the map turns the x axis, clockwise on the sheet.
func (m matrix) angle() float64 { return math.Atan2(m.b, m.a) }
