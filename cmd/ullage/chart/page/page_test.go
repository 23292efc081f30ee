package page

import (
	"bytes"
	"encoding/binary"
	"encoding/xml"
	"errors"
	"image/png"
	"io"
	"math"
	"strconv"
	"strings"
	"testing"

	"ullage/sim/golden"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// sample is a page with one of everything.
func sample() *Page {
	return &Page{
		Title: "Reed Warbler & <friends>",
		Lines: []string{"first line", "second line"},
		Rows: []Row{
			{Weight: 2, Panels: []Panel{{
				X: Axis{Title: "time", Unit: "s", Min: 0, Max: 10, Bare: true},
				Y: Axis{Title: "height", Unit: "m", Zero: true},
				Lines: []Line{
					{X: []float64{0, 2, 4, 6, 8, 10}, Y: []float64{0, 30, 50, 60, 50, 30}, Label: "nine"},
					{X: []float64{0, 5, math.NaN(), 8, 10}, Y: []float64{0, 20, 0, 20, 10}, Pen: 1, Label: "eleven", Dotty: true},
				},
				Dots:   []Dots{{X: []float64{1, 2}, Y: []float64{5, 6}, Sign: Cross, Label: "left over"}},
				Marks:  []Mark{{At: 1, Label: "out"}, {At: 6, Label: "top"}, {At: 9}},
				Points: []Point{{X: 6, Y: 60, Sign: Target, Label: "highest"}},
				Limits: []Limit{{At: 15, Label: "at least 15"}},
			}}},
			{Panels: []Panel{{
				X:     Axis{Title: "gas", Words: []string{"air", "helium"}},
				Y:     Axis{Title: "apogee", Unit: "m"},
				Dots:  []Dots{{X: []float64{0, 1}, Y: []float64{100, 90}, Sign: Square}},
				Title: "gases",
			}, {
				X: Axis{Title: "east", Unit: "m"}, Y: Axis{Title: "north", Unit: "m"}, Equal: true,
				Dots:    []Dots{{X: []float64{1, 12, 7}, Y: []float64{3, -4, 5}, Sign: Dot, Label: "landing"}},
				Rings:   []Ring{{Radius: 10, Label: "10 m"}},
				Compass: &Compass{Wind: true, WindFrom: math.Pi, Label: "wind 3 m/s from 180°"},
				Beside:  []string{"three landings", "", "seed 1"},
			}}},
		},
		Notes: []string{"These are estimates."},
	}
}

// texts reads a document through and gives the texts in it, in order.
func texts(t require.TestingT, svg []byte) []string {
	var out []string
	var here string
	for d := xml.NewDecoder(bytes.NewReader(svg)); ; {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return out
		}
		require.NoError(t, err, "not well-formed")
		switch k := token.(type) {
		case xml.StartElement:
			here = k.Name.Local
			for _, a := range k.Attr {
				assert.NotContains(t, a.Value, "NaN", a.Name.Local)
				assert.NotContains(t, a.Value, "Inf", a.Name.Local)
			}
		case xml.CharData:
			if here == "text" {
				out = append(out, string(k))
			}
		case xml.EndElement:
			here = ""
		}
	}
}

func TestSVGSaysWhatThePageSays(t *testing.T) {
	got := strings.Join(texts(t, sample().SVG()), "\n") + "\n"
	golden.Equal(t, "sample.txt", got)
}

func TestSVGHasTheSizeOfThePaper(t *testing.T) {
	for _, paper := range []Paper{A4, Letter, {}} {
		p := sample()
		p.Paper = paper
		var head struct {
			Width   string `xml:"width,attr"`
			Height  string `xml:"height,attr"`
			ViewBox string `xml:"viewBox,attr"`
			Title   string `xml:"title"`
			Desc    string `xml:"desc"`
		}
		require.NoError(t, xml.Unmarshal(p.SVG(), &head))
		want := map[string][2]string{"a4": {"297mm", "210mm"}, "letter": {"279.4mm", "215.9mm"}, "": {"297mm", "210mm"}}[paper.Name]
		assert.Equal(t, want, [2]string{head.Width, head.Height}, paper.Name)
		assert.Equal(t, p.Title, head.Title)
		assert.Contains(t, head.Desc, "first line")
		assert.Contains(t, head.Desc, "These are estimates.")
	}
}

func TestTheSamePageGivesTheSameBytes(t *testing.T) {
	assert.Equal(t, sample().SVG(), sample().SVG())
	a, err := sample().PNG(LeastResolution)
	require.NoError(t, err)
	b, err := sample().PNG(LeastResolution)
	require.NoError(t, err)
	assert.Equal(t, a, b)
}

func TestPNG(t *testing.T) {
	for _, resolution := range []int{LeastResolution, 96} {
		p := sample()
		p.Paper = Letter
		b, err := p.PNG(resolution)
		require.NoError(t, err)
		img, err := png.Decode(bytes.NewReader(b))
		require.NoError(t, err)
		assert.Equal(t, 11*resolution, img.Bounds().Dx())
		assert.Equal(t, 17*resolution/2, img.Bounds().Dy())
		white, ink := 0, 0
		for y := range img.Bounds().Dy() {
			for x := range img.Bounds().Dx() {
				switch r, g, b, _ := img.At(x, y).RGBA(); {
				case r == 0xffff && g == 0xffff && b == 0xffff:
					white++
				case r+g+b < 3*0x4000:
					ink++
				}
			}
		}
		all := 11 * resolution * 17 * resolution / 2
		assert.Greater(t, white, all*8/10)
		assert.Greater(t, ink, all/500)
		// pHYs: pixels a metre, both ways, and the unit.
		at := bytes.Index(b, []byte("pHYs"))
		require.Positive(t, at)
		assert.InDelta(t, float64(resolution)/0.0254, float64(binary.BigEndian.Uint32(b[at+4:])), 0.5)
		assert.InDelta(t, float64(resolution)/0.0254, float64(binary.BigEndian.Uint32(b[at+8:])), 0.5)
		assert.EqualValues(t, 1, b[at+12])
	}
}

func TestPNGIsHeldToItsResolutions(t *testing.T) {
	b, err := (&Page{}).PNG(0)
	require.NoError(t, err)
	c, err := png.DecodeConfig(bytes.NewReader(b))
	require.NoError(t, err)
	assert.Equal(t, int(math.Round(297/25.4*LeastResolution)), c.Width)
}

func TestPensDifferInBlackAndWhite(t *testing.T) {
	dashes, shapes := map[string]bool{}, map[Sign]bool{}
	for p := range Pen(Pens) {
		key := ""
		for _, d := range p.style().Dashes {
			key += strconv.FormatFloat(float64(d), 'g', -1, 64) + " "
		}
		assert.False(t, dashes[key], "dashes %q twice", key)
		assert.False(t, shapes[p.Sign()], "sign %d twice", p.Sign())
		dashes[key], shapes[p.Sign()] = true, true
		// Relative luminance (WCAG 2.2) low enough for a contrast of 4.5 on white.
		r, g, b, _ := p.style().Color.RGBA()
		linear := func(c uint32) float64 {
			v := float64(c) / 0xffff
			if v <= 0.04045 {
				return v / 12.92
			}
			return math.Pow((v+0.055)/1.055, 2.4)
		}
		l := 0.2126*linear(r) + 0.7152*linear(g) + 0.0722*linear(b)
		assert.GreaterOrEqual(t, 1.05/(l+0.05), 4.5, "pen %d", p)
	}
	assert.Equal(t, Pen(1).style(), Pen(1+Pens).style())
	assert.NotPanics(t, func() { Pen(-1).style() })
}
