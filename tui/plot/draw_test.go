package plot

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"ullage/sim/golden"

	"github.com/mattn/go-runewidth"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// framed is a picture with a border, so that blanks at the ends of rows show.
func framed(g *Grid) string {
	var b strings.Builder
	for row := range g.Height() {
		b.WriteString("▕")
		for _, c := range g.Row(row) {
			b.WriteRune(c.Rune)
		}
		b.WriteString("▏\n")
	}
	return b.String()
}

// inked is the inks of a picture, a letter a cell.
func inked(g *Grid) string {
	const letters = " RLTNabcdKMCXS"
	var b strings.Builder
	for row := range g.Height() {
		for _, c := range g.Row(row) {
			b.WriteByte(letters[c.Ink])
		}
		b.WriteByte('\n')
	}
	return b.String()
}

func TestPictures(t *testing.T) {
	for _, c := range charsets {
		flight, fill, places := flightStack(c, 2000), fillStack(c), mapStack(c)
		single := flight
		single.Charts = flight.Charts[:1]
		thrust := flight
		thrust.X.Max = 0.5
		for name, p := range map[string]struct {
			s             *Stack
			width, height int
		}{
			"flight":        {&flight, 100, 36},
			"flight-small":  {&flight, 56, 17},
			"flight-tiny":   {&flight, 24, 9},
			"flight-thrust": {&thrust, 72, 20},
			"height-flat":   {&single, 60, 5},
			"height-wide":   {&single, 160, 14},
			"fill":          {&fill, 100, 24},
			"fill-small":    {&fill, 40, 10},
			"map":           {&places, 70, 22},
		} {
			t.Run(fmt.Sprintf("%s-%s", name, c), func(t *testing.T) {
				golden.Equal(t, fmt.Sprintf("%s-%s.golden", name, c), framed(p.s.Draw(p.width, p.height)))
			})
		}
	}
	s := flightStack(Braille, 2000)
	golden.Equal(t, "flight-inks.golden", inked(s.Draw(56, 17)))
}

// Any size gives a grid of that size, also the least, and of single-width
// runes of the charset alone.
func TestEverySize(t *testing.T) {
	for _, c := range charsets {
		flight, fill, places := flightStack(c, 200), fillStack(c), mapStack(c)
		for _, s := range []*Stack{&flight, &fill, &places} {
			g := new(Grid)
			for height := range 24 {
				for width := range 60 {
					g.Resize(width, height)
					s.DrawTo(g)
					checkGrid(t, g, c, width, height)
				}
			}
		}
	}
	s := flightStack(Braille, 10)
	g := s.Draw(-3, -1)
	assert.Equal(t, 0, g.Width())
	assert.Equal(t, "", g.String())
}

func checkGrid(t testing.TB, g *Grid, c Charset, width, height int) {
	t.Helper()
	if g.Width() != width || g.Height() != height {
		t.Fatalf("%d×%d cells, want %d×%d", g.Width(), g.Height(), width, height)
	}
	measure := runewidth.Condition{StrictEmojiNeutral: true}
	for row := range height {
		text := ""
		for ink, run := range g.Runs(row) {
			if ink >= Inks {
				t.Fatalf("ink %d", ink)
			}
			text += run
		}
		if got := measure.StringWidth(text); got != width {
			t.Fatalf("row %d is %d columns wide, want %d: %q", row, got, width, text)
		}
		for _, r := range text {
			if measure.RuneWidth(r) != 1 || r < ' ' || c == ASCII && r > '~' {
				t.Fatalf("row %d holds %q in %s", row, r, c)
			}
		}
	}
}

// A grid drawn to again shows no trace of what it held.
func TestDrawToAgain(t *testing.T) {
	flight, fill := flightStack(Braille, 500), fillStack(Block)
	g := fill.Draw(130, 50)
	g.Resize(80, 24)
	flight.DrawTo(g)
	assert.Equal(t, flight.Draw(80, 24).String(), g.String())
	assert.Equal(t, inked(flight.Draw(80, 24)), inked(g))
}

func TestDrawingAgainAllocatesNothing(t *testing.T) {
	for _, c := range charsets {
		s := flightStack(c, 500)
		g := s.Draw(100, 36)
		assert.Zero(t, testing.AllocsPerRun(20, func() { s.DrawTo(g) }), c)
	}
}

func TestChartsOfNothing(t *testing.T) {
	nan := math.NaN()
	for name, s := range map[string]Stack{
		"no charts":   {},
		"no series":   {Charts: []Chart{{Y: Axis{Title: "height", Unit: "m"}}}},
		"no samples":  {Charts: []Chart{{Series: []Series{{}}}}},
		"only breaks": {Charts: []Chart{{Series: []Series{{Y: []float64{nan, nan}}}}}},
	} {
		g := s.Draw(30, 8)
		checkGrid(t, g, Braille, 30, 8)
		for _, r := range g.String() {
			assert.False(t, r >= '0' && r <= '9' || r > 0x2800 && r <= 0x28ff, "%s: %q", name, r)
		}
	}
}

func TestHardNumbers(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	tiny := math.SmallestNonzeroFloat64
	for name, s := range map[string]Series{
		"one point":   {X: []float64{3}, Y: []float64{4}},
		"all equal":   {X: []float64{1, 1, 1}, Y: []float64{7, 7, 7}},
		"backwards":   {X: []float64{3, 2, 1}, Y: []float64{1, 5, 2}},
		"hugest":      {X: []float64{-math.MaxFloat64, 0, math.MaxFloat64}, Y: []float64{math.MaxFloat64, 0, -math.MaxFloat64}},
		"tiniest":     {X: []float64{0, tiny, 2 * tiny}, Y: []float64{tiny, -tiny, 0}},
		"both":        {X: []float64{1e-300, 1, 1e300}, Y: []float64{1e300, 1e-300, -1e300}},
		"not numbers": {X: []float64{nan, 1, inf, 2, 3}, Y: []float64{1, nan, 1, -inf, 5}},
		"close":       {X: []float64{1e9, 1e9 + 1e-6}, Y: []float64{1e15, 1e15 + 1}},
	} {
		for _, c := range charsets {
			for _, style := range []Style{Solid, Dashed, Dotted, Points} {
				for _, equal := range []bool{false, true} {
					s.Style, s.Ink = style, TraceA
					k := Stack{Charset: c, Charts: []Chart{{Series: []Series{s}, Equal: equal}}}
					g := k.Draw(50, 12)
					checkGrid(t, g, c, 50, 12)
					assert.Contains(t, inked(g), "a", "%s: nothing drawn", name)
				}
			}
		}
	}
}

// One sample in ten thousand is seen, to its full height, in each style that
// joins, wherever it stands.
func TestPeakOfOneSample(t *testing.T) {
	for _, c := range charsets {
		for _, style := range []Style{Solid, Dashed, Dotted, Points} {
			for _, at := range []int{0, 1, 4999, 5003, 9998, 9999} {
				y := make([]float64, 10000)
				y[at] = 9
				s := Stack{Charset: c, Charts: []Chart{{Y: Axis{Min: 0, Max: 9}, Series: []Series{{Y: y, Ink: TraceA, Style: style}}}}}
				g := s.Draw(60, 10)
				top, _, _ := strings.Cut(inked(g), "\n")
				assert.Contains(t, top, "a", "%s, style %d, sample %d", c, style, at)
			}
		}
	}
}

// What was kept is told from what flies without colour.
func TestDottedDiffersFromSolid(t *testing.T) {
	x, y := []float64{0, 1}, []float64{0, 1}
	for _, c := range charsets {
		s := Stack{Charset: c, Charts: []Chart{{Series: []Series{{X: x, Y: y, Ink: TraceA}}}}}
		solid := s.Draw(60, 10)
		s.Charts[0].Series[0].Style = Dotted
		dotted := s.Draw(60, 10)
		ink := func(g *Grid) int { return strings.Count(inked(g), "a") }
		assert.Less(t, 1.5*float64(ink(dotted)), float64(ink(solid)), c)
	}
}

// A solid line lies over dotted ones, whatever their order.
func TestSolidOverDotted(t *testing.T) {
	y := []float64{1, 1}
	for _, order := range [][]Series{
		{{Y: y, Ink: TraceA}, {Y: y, Ink: Kept, Style: Dotted}},
		{{Y: y, Ink: Kept, Style: Dotted}, {Y: y, Ink: TraceA}},
	} {
		s := Stack{Charts: []Chart{{Series: order}}}
		assert.NotContains(t, inked(s.Draw(40, 6)), "K")
	}
}

// The y range is that of the x range shown, with what lines reach at its edges.
func TestRangeOfWhatIsShown(t *testing.T) {
	s := Stack{
		X:      Axis{Min: 2, Max: 3},
		Charts: []Chart{{Series: []Series{{X: []float64{0, 1, 9, 9, 10}, Y: []float64{500, 10, 90, -70, 0}, Ink: TraceA}}}},
	}
	text := s.Draw(40, 12).String()
	assert.NotContains(t, text, "100")
	assert.NotContains(t, text, "-")
	assert.Contains(t, text, "20┤", text)
}

func TestLimitsWidenTheRangeALittle(t *testing.T) {
	limited := func(at float64) string {
		s := Stack{Charts: []Chart{{
			Y:      Axis{Zero: true},
			Series: []Series{{Y: []float64{0, 10}, Ink: TraceA}},
			Limits: []Limit{{Y: at, Label: "limit"}},
		}}}
		return s.Draw(40, 12).String()
	}
	assert.Contains(t, limited(5), "limit")
	assert.Contains(t, limited(18), "limit")
	assert.NotContains(t, limited(100), "limit", "the trace would be flat")
	assert.NotContains(t, limited(math.NaN()), "limit")
	assert.NotContains(t, limited(math.Inf(1)), "limit")
}

// A circle of equal scales is as wide as high, in dots of braille.
func TestEqualScales(t *testing.T) {
	var s Series
	for i := range 400 {
		a := 2 * math.Pi * float64(i) / 399
		s.X, s.Y = append(s.X, 1e3+50*math.Cos(a)), append(s.Y, 50*math.Sin(a))
	}
	s.Ink = TraceA
	for _, size := range [][2]int{{80, 20}, {30, 30}, {41, 17}} {
		k := Stack{Charts: []Chart{{Series: []Series{s}, Equal: true}}}
		g := k.Draw(size[0], size[1])
		left, right, top, bottom := size[0], 0, size[1], 0
		for row, line := range strings.Split(inked(g), "\n") {
			for column, ink := range line {
				if ink == 'a' {
					left, right = min(left, column), max(right, column)
					top, bottom = min(top, row), max(bottom, row)
				}
			}
		}
		assert.InDelta(t, right-left+1, 2*(bottom-top+1), 2.01, "%v\n%s", size, g)
	}
}

func TestCursorAndFrame(t *testing.T) {
	for _, c := range charsets {
		s := flightStack(c, 300)
		for _, width := range []int{1, 7, 40, 101} {
			g := s.Draw(width, 20)
			f := g.Frame()
			for column := f.Left; column < f.Left+f.Columns; column++ {
				x := f.X(column)
				s.Cursor = x
				row := strings.Split(inked(s.Draw(width, 20)), "\n")[5]
				require.Equal(t, column, strings.IndexByte(row, 'C'), "%s, %d wide", c, width)
			}
			assert.InDelta(t, f.Min, f.X(-99), 1e-9)
		}
		for _, x := range []float64{-1, 1e9, math.NaN(), math.Inf(-1)} {
			s.Cursor = x
			assert.NotContains(t, inked(s.Draw(80, 20)), "C")
		}
	}
	assert.Zero(t, Frame{}.X(3))
}
