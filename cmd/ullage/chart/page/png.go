package page

import (
	"bytes"
	"encoding/binary"
	"hash/crc32"
	"image/png"
	"math"

	"gonum.org/v1/plot/vg/draw"
	"gonum.org/v1/plot/vg/vgimg"
)

// Resolutions of PNG, dots an inch. Memory goes with the square: a page at the
// greatest takes about 170 MB.
const (
	DefaultResolution  = 300
	LeastResolution    = 50
	GreatestResolution = 600
)

// SVG is the page as an SVG document.
func (p *Page) SVG() []byte {
	paper := p.paper()
	c := newSVG(paper.Width, paper.Height)
	p.draw(draw.New(c))
	return c.document(clean(p.Title), p.description())
}

// PNG is the page as an image, of LeastResolution to GreatestResolution dots an
// inch, which it says in a pHYs chunk, so that it prints at its size.
func (p *Page) PNG(resolution int) ([]byte, error) {
	resolution = min(max(resolution, LeastResolution), GreatestResolution)
	paper := p.paper()
	c := vgimg.NewWith(vgimg.UseWH(paper.Width, paper.Height), vgimg.UseDPI(resolution))
	p.draw(draw.New(c))
	var b bytes.Buffer
	if err := png.Encode(&b, c.Image()); err != nil {
		return nil, err
	}
	return withResolution(b.Bytes(), resolution), nil
}

// PDF is the page as a document of one page, with its fonts in it.
func (p *Page) PDF() ([]byte, error) {
	paper := p.paper()
	c := newPDF(paper.Width, paper.Height, clean(p.Title))
	c.page()
	p.draw(draw.New(c))
	return c.document()
}

// withResolution adds a pHYs chunk (PNG specification, third edition, 11.3.4.3)
// to an image, which image/png does not write.
func withResolution(image []byte, resolution int) []byte {
	const header = 8 + 25 // signature and IHDR, which is always first
	perMetre := uint32(math.Round(float64(resolution) / 0.0254))
	chunk := binary.BigEndian.AppendUint32(nil, 9)
	chunk = append(chunk, "pHYs"...)
	chunk = binary.BigEndian.AppendUint32(chunk, perMetre)
	chunk = binary.BigEndian.AppendUint32(chunk, perMetre)
	chunk = append(chunk, 1) // the unit is the metre
	chunk = binary.BigEndian.AppendUint32(chunk, crc32.ChecksumIEEE(chunk[4:]))
	return bytes.Join([][]byte{image[:header], chunk, image[header:]}, nil)
}
