package page

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/plot/vg"
	"pgregory.net/rapid"
)

var (
	anyNumber = rapid.OneOf(
		rapid.Float64(), rapid.Float64Range(-1000, 1000),
		rapid.SampledFrom([]float64{0, 1, math.NaN(), math.Inf(1), math.Inf(-1), math.MaxFloat64, -math.MaxFloat64, 5e-324}),
	)
	anyNumbers = rapid.SliceOfN(anyNumber, 0, 12)
	anyText    = rapid.OneOf(rapid.String(), rapid.StringN(0, 400, -1), rapid.SampledFrom([]string{"", "apogee 214 m", "\xff\x00]]>&<"}))
)

var anyAxis = rapid.Custom(func(t *rapid.T) Axis {
	a := Axis{Title: anyText.Draw(t, "title"), Unit: anyText.Draw(t, "unit"), Zero: rapid.Bool().Draw(t, "zero"), Bare: rapid.Bool().Draw(t, "bare")}
	if rapid.Bool().Draw(t, "fixed") {
		a.Min, a.Max = anyNumber.Draw(t, "min"), anyNumber.Draw(t, "max")
	}
	a.Words = rapid.SliceOfN(anyText, 0, 4).Draw(t, "words")
	return a
})

var anyPanel = rapid.Custom(func(t *rapid.T) Panel {
	p := Panel{
		Title: anyText.Draw(t, "title"), X: anyAxis.Draw(t, "x"), Y: anyAxis.Draw(t, "y"), Equal: rapid.Bool().Draw(t, "equal"),
		Beside: rapid.SliceOfN(anyText, 0, 3).Draw(t, "beside"),
	}
	for range rapid.IntRange(0, 3).Draw(t, "lines") {
		p.Lines = append(p.Lines, Line{X: anyNumbers.Draw(t, "x"), Y: anyNumbers.Draw(t, "y"), Pen: Pen(rapid.Int().Draw(t, "pen")),
			Label: anyText.Draw(t, "label"), Key: rapid.Bool().Draw(t, "key"), Dotty: rapid.Bool().Draw(t, "dotty")})
	}
	for range rapid.IntRange(0, 8).Draw(t, "marks") {
		p.Marks = append(p.Marks, Mark{anyNumber.Draw(t, "at"), anyText.Draw(t, "label")})
	}
	p.Dots = []Dots{{X: anyNumbers.Draw(t, "x"), Y: anyNumbers.Draw(t, "y"), Sign: Sign(rapid.IntRange(-1, 12).Draw(t, "sign")), Label: anyText.Draw(t, "label")}}
	p.Points = []Point{{X: anyNumber.Draw(t, "x"), Y: anyNumber.Draw(t, "y"), Sign: Target, Label: anyText.Draw(t, "label")}}
	p.Limits = []Limit{{anyNumber.Draw(t, "at"), anyText.Draw(t, "label")}}
	p.Rings = []Ring{{math.Abs(anyNumber.Draw(t, "radius")), anyText.Draw(t, "label")}}
	if rapid.Bool().Draw(t, "compass") {
		p.Compass = &Compass{Wind: true, WindFrom: rapid.Float64Range(-10, 10).Draw(t, "from"), Label: anyText.Draw(t, "wind")}
	}
	if rapid.Bool().Draw(t, "levels") {
		l := &Levels{Limit: anyNumber.Draw(t, "limit")}
		for i := range 4 {
			l.X, l.Y = append(l.X, float64(i)), append(l.Y, float64(i))
			l.Z = append(l.Z, rapid.SliceOfN(anyNumber, 4, 4).Draw(t, "z"))
		}
		p.Levels = l
	}
	return p
})

// TestAnyPageIsDrawn: whatever it is given, a page is a well-formed document of
// bounded size, without numbers that are none.
func TestAnyPageIsDrawn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := &Page{Title: anyText.Draw(t, "title"), Lines: rapid.SliceOfN(anyText, 0, 3).Draw(t, "lines"), Notes: rapid.SliceOfN(anyText, 0, 4).Draw(t, "notes")}
		for range rapid.IntRange(0, 3).Draw(t, "rows") {
			p.Rows = append(p.Rows, Row{rapid.Float64Range(-1, 5).Draw(t, "weight"), rapid.SliceOfN(anyPanel, 0, 3).Draw(t, "panels")})
		}
		svg := p.SVG()
		texts(t, svg)
		require.Less(t, len(svg), 2<<20)
	})
}

func TestAnyFlagsStayClear(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := Panel{X: Axis{Min: 0, Max: 10}}
		for range rapid.IntRange(0, 9).Draw(t, "marks") {
			p.Marks = append(p.Marks, Mark{rapid.Float64Range(0, 10).Draw(t, "at"), rapid.StringOfN(rapid.RuneFrom([]rune("aW ")), 1, 25, -1).Draw(t, "label")})
		}
		room := vg.Rectangle{Max: vg.Point{X: 700, Y: 300}}
		standClear(t, room, layOut(room, []Row{{Panels: []Panel{p}}})[0])
	})
}

func TestAnyTicksAreInOrderAndInside(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var s span = nothing()
		s.take(anyNumber.Draw(t, "a"), anyNumber.Draw(t, "b"))
		s = s.open()
		about := rapid.IntRange(0, 12).Draw(t, "about")
		ticks := s.ticks(about)
		step := s.step(about)
		for i, k := range ticks {
			assert.GreaterOrEqual(t, k.at, s.min-step*1e-6)
			assert.LessOrEqual(t, k.at, s.max+step*1e-6)
			if i > 0 {
				assert.Greater(t, k.at, ticks[i-1].at)
			}
		}
		assert.LessOrEqual(t, len(ticks), 2+max(about, 1)*3/2)
	})
}
