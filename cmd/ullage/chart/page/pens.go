package page

import (
	"image/color"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// Pen is a colour with the dashes and the sign that tell it from others in black
// and white. Any whole number will do: they begin anew after Pens.
type Pen int

// Pens is how many pens there are.
const Pens = 6

// pens are dark enough to print on a laser printer.
var pens = [Pens]struct {
	color  color.Color
	dashes []vg.Length
	sign   Sign
}{
	{color.RGBA{0x00, 0x00, 0x00, 0xff}, nil, Disc},
	{color.RGBA{0x0b, 0x4f, 0x8a, 0xff}, []vg.Length{6, 2.5}, Square},
	{color.RGBA{0xa8, 0x38, 0x00, 0xff}, []vg.Length{8, 2, 1.5, 2}, Triangle},
	{color.RGBA{0x00, 0x60, 0x46, 0xff}, []vg.Length{1.8, 1.8}, Ringlet},
	{color.RGBA{0x73, 0x36, 0x78, 0xff}, []vg.Length{12, 3}, Cross},
	{color.RGBA{0x6b, 0x55, 0x00, 0xff}, []vg.Length{8, 2, 1.5, 2, 1.5, 2}, Plus},
}

func (p Pen) index() int { return int(uint(p) % Pens) }

// Sign is the sign that goes with the pen.
func (p Pen) Sign() Sign { return pens[p.index()].sign }

// style is the pen as a line of a plot.
func (p Pen) style() draw.LineStyle {
	n := pens[p.index()]
	return draw.LineStyle{Color: n.color, Width: curveWidth, Dashes: n.dashes}
}

// Widths and colours of what is not a curve.
const (
	curveWidth = vg.Length(1.3)
	frameWidth = vg.Length(0.7)
	gridWidth  = vg.Length(0.4)
)

var (
	black = color.RGBA{0, 0, 0, 0xff}
	white = color.RGBA{0xff, 0xff, 0xff, 0xff}
	dim   = color.RGBA{0x44, 0x44, 0x44, 0xff} // still legible as text
	pale  = color.RGBA{0xd4, 0xd4, 0xd4, 0xff}
	cloud = color.RGBA{0x5a, 0x5a, 0x5a, 0xff} // dots in their thousands
)

var (
	frameLine = draw.LineStyle{Color: black, Width: frameWidth}
	gridLine  = draw.LineStyle{Color: pale, Width: gridWidth}
	markLine  = draw.LineStyle{Color: dim, Width: 0.6, Dashes: []vg.Length{1.2, 2}}
	limitLine = draw.LineStyle{Color: dim, Width: 0.8, Dashes: []vg.Length{4, 3}}
	ringLine  = draw.LineStyle{Color: dim, Width: 0.4, Dashes: []vg.Length{1, 2.5}}
	thread    = draw.LineStyle{Color: dim, Width: 0.4}
	heavyLine = draw.LineStyle{Color: black, Width: 1.6, Dashes: []vg.Length{6, 3}}
	levelLine = draw.LineStyle{Color: black, Width: 0.8}
)
