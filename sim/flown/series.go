package flown

import (
	"math"
	"slices"
)

// series is a column over time without its gaps.
type series struct{ t, y []float64 }

// without leaves the gaps of a column out.
func without(t, y []float64) series {
	s := series{make([]float64, 0, len(t)), make([]float64, 0, len(t))}
	for i, v := range y {
		if !math.IsNaN(v) {
			s.t, s.y = append(s.t, t[i]), append(s.y, v)
		}
	}
	return s
}

// between is the part of a series with times from one to another, both ends with it.
func (s series) between(from, to float64) series {
	i, _ := slices.BinarySearch(s.t, from)
	j, _ := slices.BinarySearch(s.t, math.Nextafter(to, math.Inf(1)))
	return series{s.t[i:max(i, j)], s.y[i:max(i, j)]}
}

// step is the usual time between two samples, s; NaN of fewer than two.
func (s series) step() float64 {
	d := make([]float64, 0, len(s.t))
	for i := 1; i < len(s.t); i++ {
		d = append(d, s.t[i]-s.t[i-1])
	}
	return median(d)
}

// smoothed is each value's median with its two neighbours on each side: a single
// sample that is far out does not show.
func (s series) smoothed() series {
	const reach = 2
	out := series{s.t, make([]float64, len(s.y))}
	window := make([]float64, 0, 2*reach+1)
	for i := range s.y {
		window = append(window[:0], s.y[max(0, i-reach):min(len(s.y), i+reach+1)]...)
		slices.Sort(window)
		out.y[i] = window[len(window)/2]
	}
	return out
}

// quantum is the least step between values, which is the recorder's; 0 when none differ.
func (s series) quantum() float64 {
	values := slices.Clone(s.y)
	slices.Sort(values)
	least := math.Inf(1)
	size := 0.0
	if n := len(values); n > 0 {
		size = math.Max(math.Abs(values[0]), math.Abs(values[n-1]))
	}
	for i := 1; i < len(values); i++ {
		if d := values[i] - values[i-1]; d > 1e-9*size && d < least {
			least = d
		}
	}
	if math.IsInf(least, 1) {
		return 0
	}
	return least
}

// median is the middle of values, which it puts in order; NaN of none.
func median(v []float64) float64 {
	if len(v) == 0 {
		return math.NaN()
	}
	slices.Sort(v)
	return v[len(v)/2]
}

// middle is the median of a series, which stays as it is.
func (s series) middle() float64 { return median(slices.Clone(s.y)) }

// scatter is the standard deviation of a series about its mean; NaN of fewer than two.
func (s series) scatter() float64 {
	n := float64(len(s.y))
	if n < 2 {
		return math.NaN()
	}
	mean := 0.0
	for _, v := range s.y {
		mean += v / n
	}
	sum := 0.0
	for _, v := range s.y {
		sum += (v - mean) * (v - mean)
	}
	return math.Sqrt(sum / (n - 1))
}

// roughness is the standard deviation of white noise on top of a smooth course, from second
// differences, whose variance is six times the noise's: half of them are below 0.6745 of theirs,
// the quartile of the normal distribution.
func (s series) roughness() float64 {
	d := make([]float64, 0, len(s.y))
	for i := 2; i < len(s.y); i++ {
		d = append(d, math.Abs(s.y[i]-2*s.y[i-1]+s.y[i-2]))
	}
	return median(d) / (0.6745 * math.Sqrt(6))
}
