package page

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/image/font/sfnt"
	"gonum.org/v1/plot/vg"
)

func TestTicks(t *testing.T) {
	for _, c := range []struct {
		min, max float64
		about    int
		want     string
	}{
		{0, 10, 5, "0 2 4 6 8 10"},
		{0, 0.3, 3, "0 0.1 0.2 0.3"},
		{-1, 1, 4, "-1.0 -0.5 0 0.5 1.0"},
		{0, 0.05, 5, "0 0.01 0.02 0.03 0.04 0.05"},
		{97, 103, 3, "98 100 102"},
		{0, 1e9, 2, "0 5e+08 1e+09"},
		{20.2, 20.4, 2, "20.2 20.3 20.4"},
	} {
		var got []string
		for _, k := range (span{c.min, c.max}).ticks(c.about) {
			got = append(got, k.label)
		}
		assert.Equal(t, c.want, strings.Join(got, " "), "%v to %v", c.min, c.max)
	}
}

func TestWrapAndFit(t *testing.T) {
	f := plain(10)
	room := f.Width("some words that")
	assert.Equal(t, []string{"some words", "that go on and", "on"}, wrap(f, room-1, "some words that   go on and\non"))
	assert.Equal(t, []string{""}, wrap(f, room, ""))
	for _, s := range []string{"short", "quite a long line of words", "\x00\x1b[31mred\u202e", "wörter mit ümlaut", "\xff\xfe"} {
		got := fit(f, 60, s)
		assert.LessOrEqual(t, f.Width(got), vg.Length(60), "%q", got)
	}
	assert.Equal(t, "[31mred", clean("\x00\x1b[31mred\u202e"))
	assert.Equal(t, "…", fit(f, 1, "word"))
}

// TestEverySymbolIsInTheFont holds what labels are made of to be in the fonts.
func TestEverySymbolIsInTheFont(t *testing.T) {
	for _, f := range []func(vg.Length) (name string, has func(rune) bool){
		func(n vg.Length) (string, func(rune) bool) { return "plain", has(plain(n).Face) },
		func(n vg.Length) (string, func(rune) bool) { return "bold", has(bold(n).Face) },
	} {
		name, has := f(10)
		for _, r := range "azAZ09 …°²³·±×−½%" {
			assert.True(t, has(r), "%s has no %c", name, r)
		}
	}
}

func has(f *sfnt.Font) func(rune) bool {
	return func(r rune) bool {
		var b sfnt.Buffer
		i, err := f.GlyphIndex(&b, r)
		return err == nil && i != 0
	}
}

func TestThinKeepsTheShape(t *testing.T) {
	var line []vg.Point
	for i := range 2000 {
		x := float64(i) / 10
		line = append(line, vg.Point{X: vg.Length(x), Y: vg.Length(50 * math.Sin(x/20))})
	}
	line[700].Y += 9 // a peak of one sample
	got := thin(line)
	assert.Less(t, len(got), 200)
	assert.Contains(t, got, line[700])
	for i, p := range line {
		near := math.Inf(1)
		for j := range got[1:] {
			near = min(near, distance(p, got[j], got[j+1]))
		}
		require.LessOrEqual(t, near, 0.0301, "point %d", i)
	}
	assert.Equal(t, line[:2], thin(line[:2]))
	assert.Len(t, thin([]vg.Point{{}, {}, {}, {}}), 2)
}

// TestLevelsFollowASurface checks contours against surfaces whose lines are known:
// a plane exactly, a cone within the bow of a cell's side.
func TestLevelsFollowASurface(t *testing.T) {
	grid := func(n int, z func(x, y float64) float64) *Levels {
		l := &Levels{}
		for i := range n {
			l.X, l.Y = append(l.X, float64(i)), append(l.Y, float64(i))
			column := make([]float64, n)
			for j := range column {
				column[j] = z(float64(i), float64(j))
			}
			l.Z = append(l.Z, column)
		}
		return l
	}
	length := 0.0
	grid(11, func(x, y float64) float64 { return x + 2*y }).trace(12.5, func(x0, y0, x1, y1 float64) {
		assert.InDelta(t, 12.5, x0+2*y0, 1e-12)
		assert.InDelta(t, 12.5, x1+2*y1, 1e-12)
		length += math.Hypot(x1-x0, y1-y0)
	})
	assert.InDelta(t, math.Hypot(10, 5), length, 1e-9) // from (0, 6.25) to (10, 1.25)

	length = 0
	grid(41, func(x, y float64) float64 { return math.Hypot(x-20, y-20) }).trace(15.3, func(x0, y0, x1, y1 float64) {
		assert.InDelta(t, 15.3, math.Hypot(x0-20, y0-20), 0.02)
		length += math.Hypot(x1-x0, y1-y0)
	})
	assert.InEpsilon(t, 2*math.Pi*15.3, length, 2e-3)

	hole := grid(3, func(x, y float64) float64 { return x })
	hole.Z[1][1] = math.NaN()
	hole.trace(0.5, func(_, _, _, _ float64) { t.Error("a cell with an unknown corner has a line") })
}

func TestJoinedPiecesMakeOneLine(t *testing.T) {
	at := func(x vg.Length) vg.Point { return vg.Point{X: x} }
	got := joined([][2]vg.Point{{at(2), at(3)}, {at(1), at(0)}, {at(1), at(2)}, {at(9), at(8)}})
	require.Len(t, got, 2)
	assert.Len(t, got[0], 4)
	assert.Len(t, got[1], 2)
	for i := range got[0][1:] {
		assert.InDelta(t, 1, math.Abs(float64(got[0][i+1].X-got[0][i].X)), 1e-12)
	}
}

func TestLevelValues(t *testing.T) {
	l := &Levels{X: []float64{0, 1}, Y: []float64{0, 1}, Z: [][]float64{{0, 10}, {10, 20}}, Limit: 15}
	var got []string
	for _, v := range l.values(4) {
		got = append(got, v.label)
	}
	assert.Equal(t, "[0 5 10 20 15]", fmt.Sprint(got), "the limit comes once, last")
	l.Z = [][]float64{{3, 3}, {3, 3}}
	assert.Empty(t, l.values(4), "a flat surface has no lines")
}

func TestEqualScales(t *testing.T) {
	p := &Page{Rows: []Row{{Panels: []Panel{{Equal: true, Dots: []Dots{{X: []float64{0, 100}, Y: []float64{0, 10}}}}}}}}
	for _, a := range layOut(vg.Rectangle{Max: vg.Point{X: 700, Y: 500}}, p.Rows) {
		assert.InEpsilon(t, a.x.perUnit(), a.y.perUnit(), 1e-12)
		for _, x := range []float64{0, 100} {
			assert.True(t, a.inside(x, 0))
		}
		assert.True(t, a.inside(0, 10))
	}
}

func TestFlagsStayClear(t *testing.T) {
	marks := []Mark{{0.1, "the first of them"}, {0.2, "another"}, {0.21, "one more"}, {5, "alone"}, {9.7, "near the end"}, {10, "at the end"}, {11, "beyond"}}
	p := Panel{X: Axis{Min: 0, Max: 10}, Marks: marks, Lines: []Line{{X: []float64{0, 10}, Y: []float64{0, 1}}}}
	room := vg.Rectangle{Max: vg.Point{X: 500, Y: 300}}
	a := layOut(room, []Row{{Panels: []Panel{p}}})[0]
	require.Len(t, a.flags, len(marks)-1)
	standClear(t, room, a)
}

// standClear checks that no text of a flag meets another or a staff, or leaves the sheet.
func standClear(t assert.TestingT, room vg.Rectangle, a *area) {
	for i := range a.flags {
		p := &a.flags[i]
		assert.LessOrEqual(t, p.to(), room.Max.X+gap, p.text)
		for j := range a.flags {
			q := &a.flags[j]
			if i == j {
				continue
			}
			if p.row == q.row {
				assert.False(t, p.from() < q.to() && q.from() < p.to(), "%s and %s", p.text, q.text)
			}
			if q.row > p.row && q.x != p.x { // q's staff passes p's row
				assert.False(t, p.from() < q.x && q.x < p.to(), "%s hides the staff of %s", p.text, q.text)
			}
		}
	}
}

func TestSideLabelsStandApart(t *testing.T) {
	var p Panel
	for i := range 6 {
		p.Lines = append(p.Lines, Line{X: []float64{0, 1}, Y: []float64{0, 1 + float64(i)/1000}, Pen: Pen(i), Label: fmt.Sprint(i)})
	}
	p.Dots = []Dots{{X: []float64{0}, Y: []float64{0}, Sign: Cross, Label: "key"}}
	a := layOut(vg.Rectangle{Max: vg.Point{X: 500, Y: 300}}, []Row{{Panels: []Panel{p}}})[0]
	a.spread()
	require.Len(t, a.side, 7)
	assert.Equal(t, "key", a.side[0].text)
	assert.Equal(t, "5", a.side[1].text, "the highest curve comes first")
	for i := range a.side[1:] {
		assert.GreaterOrEqual(t, a.side[i].y-a.side[i+1].y, labelSize)
	}
	assert.GreaterOrEqual(t, a.side[6].y, a.frame.Min.Y)
}
