package page

import (
	"bytes"
	"image"
	"image/color"
	"image/png"
	"math"
	"strconv"
	"time"

	"codeberg.org/go-fonts/liberation/liberationsansbold"
	"codeberg.org/go-fonts/liberation/liberationsansregular"
	"codeberg.org/go-pdf/fpdf"
	"golang.org/x/image/font"
	plotfont "gonum.org/v1/plot/font"
	"gonum.org/v1/plot/vg"
)

// pdfCanvas is a vg.Canvas that writes PDF, a page at a time. Unlike the one of gonum/plot it
// has fonts of all letters, of which the document keeps those it uses, needs no
// files beside it, and gives the same bytes each time.
type pdfCanvas struct {
	width, height vg.Length
	doc           *fpdf.Fpdf
	now           svgState
	stack         []svgState
	images        int
}

// newPDF is a document without pages.
func newPDF(width, height vg.Length, title string) *pdfCanvas {
	c := &pdfCanvas{width: width, height: height}
	c.doc = fpdf.NewCustom(&fpdf.InitType{UnitStr: "pt", Size: fpdf.SizeType{Wd: float64(width), Ht: float64(height)}})
	c.doc.SetMargins(0, 0, 0)
	c.doc.SetAutoPageBreak(false, 0)
	c.doc.SetTitle(title, true)
	c.doc.SetCatalogSort(true)
	c.doc.SetCreationDate(time.Unix(0, 0).UTC())
	c.doc.SetModificationDate(time.Unix(0, 0).UTC())
	c.doc.AddUTF8FontFromBytes(pdfFont, "", bytes.Clone(liberationsansregular.TTF)) // it may write into them
	c.doc.AddUTF8FontFromBytes(pdfFont, "B", bytes.Clone(liberationsansbold.TTF))
	return c
}

const pdfFont = "Liberation"

// page begins a page.
func (c *pdfCanvas) page() {
	c.doc.AddPage()
	c.stack = nil
	c.now = svgState{place: matrix{1, 0, 0, -1, 0, float64(c.height)}, ink: color.Black}
	vg.Initialize(c)
	c.doc.SetLineJoinStyle("round")
}

// document is the whole PDF file.
func (c *pdfCanvas) document() ([]byte, error) {
	var b bytes.Buffer
	err := c.doc.Output(&b)
	return b.Bytes(), err
}

// Size is the size of the sheet.
func (c *pdfCanvas) Size() (x, y vg.Length) { return c.width, c.height }

// SetLineWidth implements vg.Canvas.
func (c *pdfCanvas) SetLineWidth(w vg.Length) {
	c.now.line = w
	c.doc.SetLineWidth(float64(w))
}

// SetLineDash implements vg.Canvas.
func (c *pdfCanvas) SetLineDash(pattern []vg.Length, offset vg.Length) {
	c.now.dashes, c.now.offset = pattern, offset
	dashes := make([]float64, len(pattern))
	for i, d := range pattern {
		dashes[i] = float64(d)
	}
	c.doc.SetDashPattern(dashes, float64(offset))
}

// SetColor implements vg.Canvas.
func (c *pdfCanvas) SetColor(ink color.Color) {
	if ink == nil {
		ink = color.Black
	}
	c.now.ink = ink
	n := color.NRGBAModel.Convert(ink).(color.NRGBA)
	r, g, b := int(n.R), int(n.G), int(n.B)
	c.doc.SetDrawColor(r, g, b)
	c.doc.SetFillColor(r, g, b)
	c.doc.SetTextColor(r, g, b)
}

// Rotate implements vg.Canvas.
func (c *pdfCanvas) Rotate(rad float64) {
	sin, cos := math.Sincos(rad)
	c.now.place = c.now.place.times(matrix{cos, sin, -sin, cos, 0, 0})
}

// Translate implements vg.Canvas.
func (c *pdfCanvas) Translate(pt vg.Point) {
	c.now.place = c.now.place.times(matrix{1, 0, 0, 1, float64(pt.X), float64(pt.Y)})
}

// Scale implements vg.Canvas.
func (c *pdfCanvas) Scale(x, y float64) { c.now.place = c.now.place.times(matrix{x, 0, 0, y, 0, 0}) }

// Push implements vg.Canvas.
func (c *pdfCanvas) Push() { c.stack = append(c.stack, c.now) }

// Pop implements vg.Canvas.
func (c *pdfCanvas) Pop() {
	c.now = c.stack[len(c.stack)-1]
	c.stack = c.stack[:len(c.stack)-1]
	c.SetLineWidth(c.now.line)
	c.SetLineDash(c.now.dashes, c.now.offset)
	c.SetColor(c.now.ink)
}

// Stroke implements vg.Canvas.
func (c *pdfCanvas) Stroke(p vg.Path) {
	if c.now.line > 0 {
		c.path(p, "D")
	}
}

// Fill implements vg.Canvas.
func (c *pdfCanvas) Fill(p vg.Path) { c.path(p, "F") }

// path draws a path.
func (c *pdfCanvas) path(p vg.Path, how string) {
	at := func(p vg.Point) (x, y float64) { return c.now.place.apply(p) }
	for i := range p {
		k := &p[i]
		x, y := at(k.Pos)
		switch k.Type {
		case vg.MoveComp:
			c.doc.MoveTo(x, y)
		case vg.LineComp:
			c.doc.LineTo(x, y)
		case vg.ArcComp:
			c.arc(k, i == 0)
		case vg.CurveComp:
			x0, y0 := at(k.Control[0])
			if len(k.Control) == 1 {
				c.doc.CurveTo(x0, y0, x, y)
				break
			}
			x1, y1 := at(k.Control[1])
			c.doc.CurveBezierCubicTo(x0, y0, x1, y1, x, y)
		case vg.CloseComp:
			c.doc.ClosePath()
		}
	}
	c.doc.DrawPath(how)
}

// arc draws an arc in pieces of a sixteenth of a turn at most, as cubic curves that stay
// within 1e-6 of their radius.
func (c *pdfCanvas) arc(k *vg.PathComp, first bool) {
	pieces := int(math.Ceil(math.Abs(k.Angle) / (math.Pi / 8)))
	on := func(angle, out float64) (x, y float64) { // out along the tangent
		sin, cos := math.Sincos(angle)
		r := float64(k.Radius)
		return c.now.place.apply(k.Pos.Add(vg.Point{X: vg.Length(r * (cos - out*sin)), Y: vg.Length(r * (sin + out*cos))}))
	}
	x, y := on(k.Start, 0)
	if first {
		c.doc.MoveTo(x, y)
	} else {
		c.doc.LineTo(x, y)
	}
	for i := range pieces {
		from, turn := k.Start+k.Angle*float64(i)/float64(pieces), k.Angle/float64(pieces)
		out := 4. / 3 * math.Tan(turn/4)
		x0, y0 := on(from, out)
		x1, y1 := on(from+turn, -out)
		x, y := on(from+turn, 0)
		c.doc.CurveBezierCubicTo(x0, y0, x1, y1, x, y)
	}
}

// FillString implements vg.Canvas. Text keeps its size whatever the scale.
func (c *pdfCanvas) FillString(f plotfont.Face, pt vg.Point, text string) {
	if text == "" || f.Font.Size == 0 {
		return
	}
	style := ""
	if f.Font.Weight >= font.WeightBold {
		style = "B"
	}
	c.doc.SetFont(pdfFont, style, float64(f.Font.Size))
	x, y := c.now.place.apply(pt)
	angle := c.now.place.angle()
	if angle == 0 {
		c.doc.Text(x, y, text)
		return
	}
	c.doc.TransformBegin()
	c.doc.TransformRotate(-angle*180/math.Pi, x, y)
	c.doc.Text(x, y, text)
	c.doc.TransformEnd()
}

// DrawImage implements vg.Canvas, upright.
func (c *pdfCanvas) DrawImage(r vg.Rectangle, img image.Image) {
	var b bytes.Buffer
	if err := png.Encode(&b, img); err != nil {
		return // nothing to show: an image without pixels
	}
	c.images++
	name := "image" + strconv.Itoa(c.images)
	options := fpdf.ImageOptions{ImageType: "png"}
	c.doc.RegisterImageOptionsReader(name, options, &b)
	x, y := c.now.place.apply(vg.Point{X: r.Min.X, Y: r.Max.Y})
	size := r.Size()
	c.doc.ImageOptions(name, x, y, float64(size.X), float64(size.Y), false, options, 0, "")
}
