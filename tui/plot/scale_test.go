package plot

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func labels(t ticks) []string {
	var out []string
	for i := range t.count {
		out = append(out, string(t.appendText(nil, i)))
	}
	return out
}

func TestTicks(t *testing.T) {
	for _, c := range []struct {
		lo, hi float64
		most   int
		want   []string
	}{
		{0, 10, 5, []string{"0", "5", "10"}},
		{0, 214, 5, []string{"0", "50", "100", "150", "200"}},
		{0, 1, 6, []string{"0", "0.2", "0.4", "0.6", "0.8", "1.0"}},
		{0.1, 0.3, 3, []string{"0.1", "0.2", "0.3"}}, // ends that binary fractions miss
		{-3, 3, 4, []string{"-2", "0", "2"}},
		{-0.5, -0.1, 3, []string{"-0.4", "-0.2"}},
		{99e3, 103e3, 5, []string{"99000", "100000", "101000", "102000", "103000"}},
		{0, 3e6, 4, []string{"0", "1e6", "2e6", "3e6"}},
		{2.1e6, 2.3e6, 3, []string{"2.1e6", "2.2e6", "2.3e6"}},
		{0, 2e-7, 3, []string{"0", "1e-7", "2e-7"}},
		{0, 1e300, 2, []string{"0", "1e300"}},
		{3.2, 3.8, 1, []string{"3.5"}},
	} {
		assert.Equal(t, c.want, labels(chooseTicks(span{c.lo, c.hi, true}, c.most)), "%v to %v", c.lo, c.hi)
	}
}

// anyRange draws ranges of every size and place, narrow and far ones too.
func anyRange(t *rapid.T) span {
	middle := rapid.Float64Range(-1, 1).Draw(t, "middle") * math.Pow(10, rapid.Float64Range(-300, 300).Draw(t, "power"))
	size := math.Abs(middle)*math.Pow(10, rapid.Float64Range(-8, 3).Draw(t, "width")) + 1e-299
	return span{max(middle-size/2, -utmost), min(middle+size/2, utmost), true}
}

func TestTicksAreFewAndInside(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, most := anyRange(t), rapid.IntRange(1, 12).Draw(t, "most")
		k := chooseTicks(s, most)
		step := k.step()
		require.LessOrEqual(t, k.count, most)
		require.Contains(t, []float64{1, 2, 5}, k.factor)
		for i := range k.count {
			require.GreaterOrEqual(t, k.value(i), s.lo-1e-5*step)
			require.LessOrEqual(t, k.value(i), s.hi+1e-5*step)
		}
		// The next finer step would have put too many.
		k.finer()
		k.place(s)
		require.Greater(t, k.count, most)
	})
}

func TestFitHoldsTheData(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rows, dots := rapid.IntRange(1, 60).Draw(t, "rows"), rapid.IntRange(2, 4).Draw(t, "dots")
		s := anyRange(t)
		if rapid.Bool().Draw(t, "from 0") {
			s = span{0, max(s.hi, -s.lo), true}
		}
		f, k := s.fit(rows, dots)
		slack := 1e-6 * (s.hi - s.lo)
		require.LessOrEqual(t, f.lo, s.lo+slack)
		require.GreaterOrEqual(t, f.hi, s.hi-slack)
		require.LessOrEqual(t, f.hi-f.lo, 1.9*(s.hi-s.lo), "too much room: %v in %v", s, f)
		require.LessOrEqual(t, k.count, mostYTicks)
		if s.lo >= 0 {
			require.GreaterOrEqual(t, f.lo, 0.0)
		}
		if s.hi <= 0 {
			require.LessOrEqual(t, f.hi, 0.0)
		}
		if rows >= 4 {
			require.GreaterOrEqual(t, k.count, 2, "%v in %v rows: %v", s, rows, f)
		}
	})
}

// Ticks of an automatic range from 0 stand evenly where there are more than two.
func TestTickRowsAreEven(t *testing.T) {
	even, all := 0, 0
	for rows := 5; rows <= 30; rows++ {
		for hi := 10.0; hi < 100; hi++ {
			f, k := span{0, hi, true}.fit(rows, 4)
			if k.count < 3 {
				continue
			}
			m := mapRange(f, rows*4, true)
			first := m.dot(k.value(0), rows*4)/4 - m.dot(k.value(1), rows*4)/4
			same := true
			for i := 1; i < k.count; i++ {
				gap := m.dot(k.value(i-1), rows*4)/4 - m.dot(k.value(i), rows*4)/4
				require.GreaterOrEqual(t, gap, 1)
				same = same && gap == first
			}
			all++
			if same {
				even++
			}
		}
	}
	assert.Greater(t, float64(even)/float64(all), 0.9, "%d of %d", even, all)
}

func TestSettle(t *testing.T) {
	for _, c := range []struct {
		name   string
		axis   Axis
		data   span
		lo, hi float64
	}{
		{"no data", Axis{}, span{}, 0, 1},
		{"data", Axis{}, span{3, 7, true}, 3, 7},
		{"with 0", Axis{Zero: true}, span{3, 7, true}, 0, 7},
		{"fixed", Axis{Min: 1, Max: 2}, span{3, 7, true}, 1, 2},
		{"fixed the wrong way round", Axis{Min: 2, Max: 1}, span{3, 7, true}, 3, 7},
		{"fixed to nothing", Axis{Min: math.NaN(), Max: math.Inf(1)}, span{3, 7, true}, 3, 7},
		{"all equal", Axis{}, span{20, 20, true}, 19, 21},
		{"equal but for rounding", Axis{}, span{20, 20 + 1e-12, true}, 19, 21},
		{"all 0", Axis{}, span{0, 0, true}, -1, 1},
		{"all 0, with 0", Axis{Zero: true}, span{0, 0, true}, 0, 1},
		{"smaller than numbers go", Axis{}, span{-1e-310, 1e-310, true}, -1, 1},
		{"larger than ranges go", Axis{}, span{-math.MaxFloat64, math.MaxFloat64, true}, -1e300, 1e300},
		{"beyond them", Axis{}, span{1e301, 1e302, true}, 0.95e300, 1e300},
	} {
		s := c.axis.settle(c.data)
		assert.InDelta(t, 0, s.lo-c.lo, 1e-9*math.Abs(c.lo), c.name)
		assert.InDelta(t, 0, s.hi-c.hi, 1e-9*math.Abs(c.hi), c.name)
	}
}

func TestMappingEnds(t *testing.T) {
	m := mapRange(span{-2, 6, true}, 9, false)
	for i, v := range []float64{-2, -1, 0, 1, 2, 3, 4, 5, 6} {
		assert.Equal(t, i, m.dot(v, 9))
	}
	assert.Equal(t, -1, m.dot(-2.6, 9))
	assert.Equal(t, 9, m.dot(6.6, 9))
	down := mapRange(span{-2, 6, true}, 9, true)
	assert.Equal(t, 8, down.dot(-2, 9))
	assert.Equal(t, 0, down.dot(6, 9))
	assert.Equal(t, -1, down.dot(math.MaxFloat64, 9))
	one := mapRange(span{-2, 6, true}, 1, false)
	assert.Equal(t, 0, one.dot(6, 1))
}
