package page

import (
	"math"
	"strconv"

	"gonum.org/v1/plot/vg"
)

// span is a range of values.
type span struct{ min, max float64 }

// nothing is the span that holds no value.
func nothing() span { return span{math.Inf(1), math.Inf(-1)} }

func (s span) empty() bool { return s.min > s.max }

// mostValue bounds what is drawn, so that ranges stay finite.
const mostValue = 1e100

func drawable(v float64) bool { return math.Abs(v) <= mostValue }

// take widens the span to hold values.
func (s *span) take(values ...float64) {
	for _, v := range values {
		if drawable(v) {
			s.min, s.max = math.Min(s.min, v), math.Max(s.max, v)
		}
	}
}

// open makes a span that can be drawn: no range is empty, or too narrow for the
// digits that numbers have.
func (s span) open() span {
	if s.empty() {
		return span{0, 1}
	}
	middle := s.min/2 + s.max/2
	least := math.Max(math.Abs(middle)*1e-9, 1e-12)
	if s.max-s.min < least {
		half := math.Max(math.Abs(middle)*0.05, 0.5)
		return span{middle - half, middle + half}
	}
	return s
}

// widen adds a share of the range to both ends, but does not carry them over 0.
func (s span) widen(share float64) span {
	by := (s.max - s.min) * share
	out := span{s.min - by, s.max + by}
	if s.min >= 0 && out.min < 0 {
		out.min = 0
	}
	if s.max <= 0 && out.max > 0 {
		out.max = 0
	}
	return out
}

// tick is a value on an axis with its label.
type tick struct {
	at    float64
	label string
}

// ticks places labels at multiples of 1, 2 or 5 times a power of ten, about so
// many: up to a third more.
func (s span) ticks(about int) []tick {
	step := s.step(about)
	first, last := math.Ceil(s.min/step-1e-9), math.Floor(s.max/step+1e-9)
	var out []tick
	for n := first; n <= last && len(out) < 100; n++ {
		out = append(out, tick{n * step, number(n*step, step)})
	}
	return out
}

// step is the distance of ticks.
func (s span) step(about int) float64 {
	rough := (s.max - s.min) / float64(max(about, 1))
	power := math.Pow(10, math.Floor(math.Log10(rough)))
	for _, m := range []float64{1, 2, 5} {
		if m*power >= rough*0.75 {
			return m * power
		}
	}
	return 10 * power
}

// number writes a multiple of a step with the decimals that the step has.
func number(v, step float64) string {
	if v == 0 {
		return "0"
	}
	decimals := max(0, int(-math.Floor(math.Log10(step)+1e-9)))
	if decimals > 6 || math.Abs(v) >= 1e7 {
		return strconv.FormatFloat(v, 'g', 6, 64)
	}
	return strconv.FormatFloat(v, 'f', decimals, 64)
}

// wordTicks places the words at 0, 1, 2 …
func wordTicks(words []string) []tick {
	var out []tick
	for i, w := range words {
		out = append(out, tick{float64(i), clean(w)})
	}
	return out
}

// scale maps a range onto a stretch of paper.
type scale struct {
	span
	from, to vg.Length
}

func (s scale) at(v float64) vg.Length {
	return s.from + vg.Length((v-s.min)/(s.max-s.min))*(s.to-s.from)
}

// perUnit is the length of one unit.
func (s scale) perUnit() float64 { return float64(s.to-s.from) / (s.max - s.min) }
