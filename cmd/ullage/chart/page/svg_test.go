package page

import (
	"image"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"gonum.org/v1/plot/vg"
)

// drawn is what a canvas of 100 by 50 points holds after some drawing.
func drawn(do func(c *svgCanvas)) string {
	c := newSVG(100, 50)
	do(c)
	return strings.TrimSpace(c.body.String())
}

func TestSVGCanvas(t *testing.T) {
	for name, c := range map[string]struct {
		do   func(c *svgCanvas)
		want string
	}{
		"stroke": {func(c *svgCanvas) {
			var p vg.Path
			p.Move(vg.Point{X: 1, Y: 2})
			p.Line(vg.Point{X: 3.14159, Y: 4})
			p.QuadTo(vg.Point{X: 5, Y: 5}, vg.Point{X: 6, Y: 6})
			p.CubeTo(vg.Point{X: 7, Y: 7}, vg.Point{X: 8, Y: 8}, vg.Point{X: 9, Y: 9})
			c.SetLineDash([]vg.Length{3, 1.5}, 1)
			c.Stroke(p)
		}, `<path d="M1 48L3.14 46Q5 45 6 44C7 43 8 42 9 41" fill="none" stroke="#000000" stroke-width="1" stroke-dasharray="3 1.5" stroke-dashoffset="1"/>`},
		"circle": {func(c *svgCanvas) {
			var p vg.Path
			circle(&p, vg.Point{X: 10, Y: 10}, 2)
			c.SetColor(white)
			c.Fill(p)
		}, `<path d="M12 40A2 2 0 0 0 8 40A2 2 0 0 0 12 40Z" fill="#ffffff"/>`},
		"nothing to stroke": {func(c *svgCanvas) {
			c.SetLineWidth(0)
			c.Stroke(vg.Path{{Type: vg.MoveComp}})
		}, ""},
		"moved, turned, and back": {func(c *svgCanvas) {
			c.Push()
			c.Translate(vg.Point{X: 10, Y: 20})
			c.Rotate(math.Pi / 2)
			c.Scale(2, 2)
			c.Stroke(vg.Path{{Type: vg.MoveComp, Pos: vg.Point{X: 1}}, {Type: vg.LineComp, Pos: vg.Point{Y: 1}}})
			c.Pop()
			c.Stroke(vg.Path{{Type: vg.MoveComp, Pos: vg.Point{X: 1}}})
		}, "<path d=\"M10 28L8 30\" fill=\"none\" stroke=\"#000000\" stroke-width=\"1\"/>\n<path d=\"M1 50\" fill=\"none\" stroke=\"#000000\" stroke-width=\"1\"/>"},
		"image": {func(c *svgCanvas) {
			c.DrawImage(vg.Rectangle{Min: vg.Point{X: 5, Y: 5}, Max: vg.Point{X: 15, Y: 25}}, image.NewGray(image.Rect(0, 0, 1, 1)))
		}, `<image x="5" y="25" width="10" height="20" href="data:image/png;base64,`},
	} {
		assert.True(t, strings.HasPrefix(drawn(c.do), c.want) && (c.want != "" || drawn(c.do) == ""), "%s: %s", name, drawn(c.do))
	}
}

func TestSVGText(t *testing.T) {
	f := plain(10)
	got := drawn(func(c *svgCanvas) { c.FillString(*f, vg.Point{X: 5, Y: 5}, `a < "b"`) })
	assert.Contains(t, got, `<text x="5" y="45" font-size="10" fill="#000000" textLength="`)
	assert.Contains(t, got, `>a &lt; &#34;b&#34;</text>`)
	got = drawn(func(c *svgCanvas) { c.fillAnchored(*bold(8), vg.Point{X: 5, Y: 5}, atRight, "end") })
	assert.Contains(t, got, `text-anchor="end" font-weight="bold"`)
	got = drawn(func(c *svgCanvas) {
		c.Rotate(math.Pi / 2)
		c.fillAnchored(*f, vg.Point{X: 5, Y: -5}, atCentre, "up")
	})
	assert.Contains(t, got, `x="5" y="45" font-size="10" text-anchor="middle" transform="rotate(-90 5 45)"`)
	assert.Empty(t, drawn(func(c *svgCanvas) { c.FillString(*f, vg.Point{}, "") }))
}
