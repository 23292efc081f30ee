package plot

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// dots draws a line on a raster whose x and y count dots, y upwards, and
// returns it as text, a character a dot.
func dots(across, down int, p pattern, s Series) []string {
	r, x, y := dotRaster(across, down)
	r.trace(&s, x, y, p)
	return r.text()
}

func dotRaster(across, down int) (r *raster, x, y mapping) {
	r = new(raster)
	g := blockGlyphs // 2×2, so that odd sizes of cells are met
	r.reset(&g, (across+1)/2, (down+1)/2)
	r.across, r.down = across, down
	x = mapRange(span{0, float64(across - 1), true}, across, false)
	y = mapRange(span{0, float64(down - 1), true}, down, true)
	return r, x, y
}

func (r *raster) lit(column, row int) bool {
	i := row/r.glyphs.dotsY*r.columns + column/r.glyphs.dotsX
	return r.mask[i]&r.glyphs.bit[row%r.glyphs.dotsY][column%r.glyphs.dotsX] != 0
}

func (r *raster) text() []string {
	var out []string
	for row := range r.down {
		line := make([]byte, r.across)
		for column := range line {
			line[column] = '.'
			if r.lit(column, row) {
				line[column] = '#'
			}
		}
		out = append(out, string(line))
	}
	return out
}

func TestLines(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for _, c := range []struct {
		name string
		s    Series
		want []string
	}{
		{"one point", Series{X: []float64{3}, Y: []float64{1}},
			[]string{"......", "......", "...#..", "......"}},
		{"gentle, one dot a column", Series{X: []float64{0, 5}, Y: []float64{0, 3}},
			[]string{".....#", "...##.", ".##...", "#....."}},
		{"steep, one dot a row", Series{X: []float64{2, 3}, Y: []float64{0, 3}},
			[]string{"...#..", "...#..", "..#...", "..#..."}},
		{"upright", Series{X: []float64{2, 2}, Y: []float64{3, 0}},
			[]string{"..#...", "..#...", "..#...", "..#..."}},
		{"a jump at the end", Series{X: []float64{3, 5, 5}, Y: []float64{1, 1, 3}},
			[]string{".....#", ".....#", "...###", "......"}},
		{"a peak of one sample among many", Series{X: []float64{0, 2, 2.1, 2.2, 2.3, 5}, Y: []float64{0, 0, 0, 3, 0, 0}},
			[]string{"..#...", "..#...", "..#...", "######"}},
		{"broken by NaN", Series{X: []float64{0, 1, 2, 3, 4, 5}, Y: []float64{1, 1, nan, 1, 1, 1}},
			[]string{"......", "......", "##.###", "......"}},
		{"broken by infinity", Series{X: []float64{0, 1, 2, 3, 4, inf}, Y: []float64{1, 1, 1, -inf, 1, 1}},
			[]string{"......", "......", "###.#.", "......"}},
		{"points between breaks stay", Series{X: []float64{0, 1, 2, 3, 4}, Y: []float64{nan, 2, nan, 2, nan}},
			[]string{"......", ".#.#..", "......", "......"}},
		{"clipped on all sides", Series{X: []float64{-5, 10}, Y: []float64{-6, 9}},
			[]string{"....#.", "...#..", "..#...", ".#...."}},
		{"far outside", Series{X: []float64{-1e300, 1e300}, Y: []float64{1, 1}},
			[]string{"......", "......", "######", "......"}},
		{"one end far above", Series{X: []float64{1, 3}, Y: []float64{0, 1e308}},
			[]string{".#....", ".#....", ".#....", ".#...."}},
		{"left out altogether", Series{X: []float64{-3, -1, 8}, Y: []float64{0, 9, 9}},
			[]string{"......", "......", "......", "......"}},
		{"no x", Series{Y: []float64{0, 1, 2, 3}},
			[]string{"...#..", "..#...", ".#....", "#....."}},
		{"unequal lengths", Series{X: []float64{0, 1, 2}, Y: []float64{1, 1}},
			[]string{"......", "......", "##....", "......"}},
		{"nothing", Series{}, []string{"......", "......", "......", "......"}},
	} {
		assert.Equal(t, c.want, dots(6, 4, solid, c.s), c.name)
	}
}

// A closed curve runs both ways over the same columns and stays hollow.
func TestClosedCurveIsHollow(t *testing.T) {
	var s Series
	for i := range 200 {
		a := 2 * math.Pi * float64(i) / 199
		s.X, s.Y = append(s.X, 4+4*math.Cos(a)), append(s.Y, 4+4*math.Sin(a))
	}
	assert.Equal(t, []string{
		"..#####..",
		".##...##.",
		"##.....##",
		"#.......#",
		"#.......#",
		"#.......#",
		"##.....##",
		".##...##.",
		"..#####..",
	}, dots(9, 9, solid, s))
}

func TestBrokenLines(t *testing.T) {
	flat := Series{X: []float64{0, 11}, Y: []float64{0, 0}}
	assert.Equal(t, []string{"............", "#...#...#..."}, dots(12, 2, pattern{1, 4}, flat))
	assert.Equal(t, []string{"............", "###..###..##"}, dots(12, 2, pattern{3, 5}, flat))
	// A peak keeps its height though the pattern would have passed over it.
	peak := Series{X: []float64{0, 3, 3, 3, 5}, Y: []float64{0, 0, 5, 0, 0}}
	assert.Equal(t, []string{
		"...#..",
		"...#..",
		"......",
		"......",
		"......",
		"#..#..",
	}, dots(6, 6, pattern{1, 4}, peak))
}

// anySeries draws samples around a raster of 40 by 24 dots, with crowds,
// jumps, breaks and turns.
func anySeries(t *rapid.T) Series {
	var s Series
	x := 0.0
	for range rapid.IntRange(0, 80).Draw(t, "samples") {
		x += rapid.SampledFrom([]float64{0, 0.05, 0.4, 1, 3, 9, -2}).Draw(t, "dx")
		y := rapid.Float64Range(-8, 32).Draw(t, "y")
		if rapid.IntRange(0, 20).Draw(t, "break") == 0 {
			y = math.NaN()
		}
		s.X, s.Y = append(s.X, x), append(s.Y, y)
	}
	return s
}

func TestEverySampleIsLit(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anySeries(t)
		r, x, y := dotRaster(40, 24)
		r.trace(&s, x, y, solid)
		for i := range s.len() {
			if px, py, ok := s.at(i); ok {
				column, row := x.dot(px, 40), y.dot(py, 24)
				if column >= 0 && column < 40 && row >= 0 && row < 24 {
					require.True(t, r.lit(column, row), "sample %d at %d, %d", i, column, row)
				}
			}
		}
	})
}

// A line between two points is joined: from one dot the other is reached over
// lit dots, sideways, up, down or aslant. And it is no thicker than that needs.
func TestLineIsJoinedAndThin(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := func(name string, n int) float64 { return rapid.Float64Range(-0.4, float64(n)-0.6).Draw(t, name) }
		s := Series{X: []float64{in("x0", 40), in("x1", 40)}, Y: []float64{in("y0", 24), in("y1", 24)}}
		r, x, y := dotRaster(40, 24)
		r.trace(&s, x, y, solid)
		from := [2]int{x.dot(s.X[0], 40), y.dot(s.Y[0], 24)}
		to := [2]int{x.dot(s.X[1], 40), y.dot(s.Y[1], 24)}
		require.True(t, r.joined(from, to), "%v to %v:\n%v", from, to, r.text())

		lit := 0
		for column := range 40 {
			for row := range 24 {
				if r.lit(column, row) {
					lit++
					// Half a diagonal from the true line, and what slants add.
					require.LessOrEqual(t, distance(s, float64(column), float64(23-row)), 1.5)
				}
			}
		}
		wide, high := abs(to[0]-from[0])+1, abs(to[1]-from[1])+1
		require.LessOrEqual(t, lit, max(wide, high)+min(wide, high)/2+1)
	})
}

func abs(n int) int { return max(n, -n) }

// distance is how far a point is from the segment between two samples.
func distance(s Series, x, y float64) float64 {
	dx, dy := s.X[1]-s.X[0], s.Y[1]-s.Y[0]
	along := 0.0
	if size := dx*dx + dy*dy; size > 0 {
		along = min(max(((x-s.X[0])*dx+(y-s.Y[0])*dy)/size, 0), 1)
	}
	return math.Hypot(x-s.X[0]-along*dx, y-s.Y[0]-along*dy)
}

func (r *raster) joined(from, to [2]int) bool {
	if !r.lit(from[0], from[1]) {
		return false
	}
	seen := map[[2]int]bool{from: true}
	for queue := [][2]int{from}; len(queue) > 0; queue = queue[1:] {
		at := queue[0]
		if at == to {
			return true
		}
		for dx := -1; dx <= 1; dx++ {
			for dy := -1; dy <= 1; dy++ {
				next := [2]int{at[0] + dx, at[1] + dy}
				inside := next[0] >= 0 && next[0] < r.across && next[1] >= 0 && next[1] < r.down
				if inside && !seen[next] && r.lit(next[0], next[1]) {
					seen[next] = true
					queue = append(queue, next)
				}
			}
		}
	}
	return false
}
