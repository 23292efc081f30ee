package page

import (
	"bytes"
	"compress/zlib"
	"image"
	"image/png"
	"io"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/plot/vg"
)

const mm = vg.Millimeter

// oblong is a rectangle to cut, with a diagonal to mark and its sizes.
func oblong(width, height vg.Length) *Drawing {
	corner := func(x, y vg.Length) vg.Point { return vg.Point{X: x, Y: y} }
	return &Drawing{
		Paper: A4, Title: "Oblong · 1°", Lines: []string{"True size."}, Notes: []string{"A note."},
		Strokes: []Stroke{
			{Pen: Heavy, Points: []vg.Point{corner(0, 0), corner(width, 0), corner(width, height), corner(0, height), corner(0, 0)}},
			{Pen: Light, Word: "diagonal", Points: []vg.Point{corner(0, 0), corner(width, height)}},
		},
		Measures: []Measure{{From: corner(0, 0), To: corner(width, 0), Off: -8 * mm, Text: "width"}},
		Grid:     &Grid{Title: "Radii", Heads: []string{"at", "radius"}, Rows: [][]string{{"1", "2"}, {"3", "4"}}},
	}
}

func laidOut(t *testing.T, d *Drawing) *Sheets {
	t.Helper()
	s, err := d.LayOut()
	require.NoError(t, err)
	return s
}

// strokesOf are the straight strokes of an SVG of a width, each as numbers x, y, x, y …, mm.
func strokesOf(svg []byte, width vg.Length) (all [][]float64) {
	path := regexp.MustCompile(`<path d="([^"]*)" fill="none" stroke="[^"]*" stroke-width="([^"]*)"`)
	number := regexp.MustCompile(`-?[0-9.]+`)
	for _, m := range path.FindAllSubmatch(svg, -1) {
		if string(m[2]) != short(float64(width)) {
			continue
		}
		var points []float64
		for _, x := range number.FindAllString(string(m[1]), -1) {
			v, _ := strconv.ParseFloat(x, 64)
			points = append(points, v*25.4/72)
		}
		all = append(all, points)
	}
	return all
}

// extent is from where to where numbers go that stand at every second place.
func extent(strokes [][]float64, first int) float64 {
	low, high := math.Inf(1), math.Inf(-1)
	for _, s := range strokes {
		for i := first; i < len(s); i += 2 {
			low, high = math.Min(low, s[i]), math.Max(high, s[i])
		}
	}
	return high - low
}

// The numbers of an SVG, in the unit that its width in mm gives them, are the drawing's size,
// and the rules are 100 mm long each way.
func TestSVGIsTrueToScale(t *testing.T) {
	s := laidOut(t, oblong(120*mm, 70*mm))
	require.Equal(t, 1, s.Count())
	svg := s.SVG(0)
	assert.Contains(t, string(svg), `width="210mm" height="297mm" viewBox="0 0 595.28 841.89"`)
	assert.InDelta(t, 210, 595.28*25.4/72, 0.002, "a point is 1/72 in")
	cut := strokesOf(svg, nibs[Heavy].Width)
	assert.InDelta(t, 120, extent(cut, 0), 0.01)
	assert.InDelta(t, 70, extent(cut, 1), 0.01)
	rules := strokesOf(svg, ruleLine.Width)
	require.Len(t, rules, 24)
	assert.InDelta(t, 100, extent(rules, 0), 0.01)
	assert.InDelta(t, 100, extent(rules, 1), 0.01)
	for _, text := range []string{"Oblong · 1°", "True size.", "A note.", "diagonal", "width", "Radii", "100 mm each way"} {
		assert.Contains(t, string(svg), text)
	}
	wide := laidOut(t, oblong(220*mm, 70*mm))
	assert.Equal(t, 1, wide.Count())
	assert.Greater(t, wide.Width, wide.Height, "lies on its side where that has room")
}

// streams are the contents of a PDF, unpacked.
func streams(t *testing.T, pdf []byte) (all []string) {
	t.Helper()
	for rest := pdf; ; {
		begin := bytes.Index(rest, []byte("stream\n"))
		if begin < 0 {
			return all
		}
		rest = rest[begin+len("stream\n"):]
		end := bytes.Index(rest, []byte("\nendstream"))
		require.Positive(t, end)
		if z, err := zlib.NewReader(bytes.NewReader(rest[:end])); err == nil {
			text, err := io.ReadAll(z)
			require.NoError(t, err)
			if strings.Contains(string(text), " re") || strings.Contains(string(text), " m\n") {
				all = append(all, string(text))
			}
		}
		rest = rest[end+len("\nendstream"):]
	}
}

// The operators of a PDF, whose unit is the point, are the drawing's size.
func TestPDFIsTrueToScale(t *testing.T) {
	s := laidOut(t, oblong(120*mm, 70*mm))
	pdf, err := s.PDF()
	require.NoError(t, err)
	again, err := laidOut(t, oblong(120*mm, 70*mm)).PDF()
	require.NoError(t, err)
	assert.True(t, bytes.Equal(pdf, again), "the same drawing gives the same bytes")
	assert.True(t, bytes.Contains(pdf, []byte("/MediaBox [0 0 595.28 841.89]")))
	pages := streams(t, pdf)
	require.NotEmpty(t, pages) // the sheet, before its fonts
	// What is drawn after a width is set and before the next.
	byWidth := map[string][][]float64{}
	point := regexp.MustCompile(`^(-?[0-9.]+) (-?[0-9.]+) [ml]$`)
	width, begins := "", regexp.MustCompile(`^([0-9.]+) w$`)
	for _, line := range strings.Split(pages[0], "\n") {
		line = strings.TrimSpace(line)
		if m := begins.FindStringSubmatch(line); m != nil {
			width = m[1]
		}
		if m := point.FindStringSubmatch(line); m != nil {
			x, _ := strconv.ParseFloat(m[1], 64)
			y, _ := strconv.ParseFloat(m[2], 64)
			byWidth[width] = append(byWidth[width], []float64{x * 25.4 / 72, y * 25.4 / 72})
		}
	}
	assert.InDelta(t, 120, extent(byWidth["0.85"], 0), 0.01)
	assert.InDelta(t, 70, extent(byWidth["0.85"], 1), 0.01)
	assert.InDelta(t, 100, extent(byWidth["0.75"], 0), 0.01)
	assert.InDelta(t, 100, extent(byWidth["0.75"], 1), 0.01)
}

// dark is the extent of what is nearly black in part of an image, whose edges are in mm, in mm.
func dark(img image.Image, left, top, right, bottom int) (width, height float64) {
	const perMM = 5
	var found image.Rectangle
	for y := top * perMM; y < bottom*perMM; y++ {
		for x := left * perMM; x < right*perMM; x++ {
			if r, _, _, _ := img.At(x, y).RGBA(); r < 0x6000 {
				found = found.Union(image.Rect(x, y, x+1, y+1))
			}
		}
	}
	return float64(found.Dx()) / perMM, float64(found.Dy()) / perMM
}

// The same drawing as pixels at a known resolution: 127 dots an inch are 5 a millimetre.
func TestPixelsAreTrueToScale(t *testing.T) {
	d := oblong(120*mm, 70*mm)
	d.Measures, d.Grid, d.Notes, d.Lines, d.Strokes = nil, nil, nil, nil, d.Strokes[:1]
	b, err := laidOut(t, d).PNG(0, 127)
	require.NoError(t, err)
	img, err := png.Decode(bytes.NewReader(b))
	require.NoError(t, err)
	pixel := 0.2
	pen := float64(nibs[Heavy].Width / mm)
	width, height := dark(img, 30, 60, 205, 250) // between title and rules
	assert.InDelta(t, 120+pen, width, 1.5*pixel)
	assert.InDelta(t, 70+pen, height, 1.5*pixel)
	pen = float64(ruleLine.Width / mm)
	width, _ = dark(img, 5, 283, 113, 288)
	assert.InDelta(t, 100+pen, width, 1.5*pixel)
	_, height = dark(img, 10, 180, 14, 290)
	assert.InDelta(t, 100+pen, height, 1.5*pixel)
}

// Tiles have together all of the drawing, once and in its place: what each shows, moved back
// by where its joins are, adds up to the whole.
func TestTiles(t *testing.T) {
	s := laidOut(t, oblong(500*mm, 400*mm))
	across, down := s.Tiles()
	require.Equal(t, s.Count()-1, len(s.tiles))
	require.True(t, across >= 2 && down >= 2)
	total := 0.0
	diagonal := 0.0
	for n := 1; n < s.Count(); n++ {
		svg := s.SVG(n)
		assert.Contains(t, string(svg), "tile "+s.tiles[n-1].name())
		assert.InDelta(t, 100, extent(strokesOf(svg, ruleLine.Width), 0), 0.01, "each sheet has its rule")
		window, cell := s.window(s.tiles[n-1])
		assert.InDelta(t, float64(overlap), float64(window.Max.X-cell.Max.X)*2, 1e-9)
		for _, k := range strokesOf(svg, nibs[Light].Width) {
			diagonal += math.Hypot(k[2]-k[0], k[3]-k[1])
		}
		for _, k := range strokesOf(svg, nibs[Heavy].Width) {
			for i := 2; i < len(k); i += 2 {
				total += math.Hypot(k[i]-k[i-2], k[i+1]-k[i-1])
			}
		}
		crosses := strokesOf(svg, joinMark.Width)
		assert.NotEmpty(t, crosses)
		assert.Contains(t, string(svg), " meets ")
	}
	// Neighbours both have what lies in their overlap.
	assert.Greater(t, total, 1800.0)
	assert.Less(t, total, 1800.0+10*2*float64(across+down))
	assert.Greater(t, diagonal, math.Hypot(500, 400)-0.1)
	cover := string(s.SVG(0))
	assert.Contains(t, cover, "tiles follow")
	for _, tile := range s.tiles {
		assert.Contains(t, cover, ">"+tile.name()+"<")
	}
}

// A cross at a join is at the same place of the drawing on both its tiles.
func TestJoinsMeet(t *testing.T) {
	s := laidOut(t, oblong(450*mm, 100*mm))
	_, down := s.Tiles()
	require.Equal(t, 1, down)
	middles := func(n int) (all [][2]float64) {
		room, _ := s.room(true), 0
		window, _ := s.window(s.tiles[n-1])
		by := room.Min.Sub(window.Min)
		for _, k := range strokesOf(s.SVG(n), joinMark.Width) {
			x, y := (k[0]+k[2])/2, (k[1]+k[3])/2
			all = append(all, [2]float64{x - float64(by.X/mm), float64(s.Height/mm) - y - float64(by.Y/mm)})
		}
		return all
	}
	shared := 0
	for _, a := range middles(1) {
		for _, b := range middles(2) {
			if math.Hypot(a[0]-b[0], a[1]-b[1]) < 0.02 {
				shared++
			}
		}
	}
	assert.GreaterOrEqual(t, shared, 2*2*2, "two crosses of two strokes each, every one of either with both of the other")
}

func TestTooManySheets(t *testing.T) {
	_, err := oblong(20000*mm, 2000*mm).LayOut()
	require.ErrorContains(t, err, "more than 200 sheets")
	assert.Equal(t, "A", rowName(0))
	assert.Equal(t, "AB", rowName(27))
}
