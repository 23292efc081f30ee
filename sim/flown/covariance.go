package flown

import (
	"math"

	"ullage/sim/solve"
)

// information is what the logs tell at a place: Σ JᵀWJ/κ of all that is turned, without what
// was known before.
func (f *fitter) information(x []float64) (*solve.Matrix, error) {
	s, err := f.slopesAt(x)
	if err != nil {
		return nil, err
	}
	size := len(x)
	sum := solve.NewMatrix(size, size)
	line := make([]float64, size)
	for _, t := range f.tracks {
		zero, w := f.zeroOf(x, t), t.weight()/t.scale
		for i := range t.T {
			row := t.from + i
			u, in := t.residual(i, s.at[row], zero)
			if !in {
				continue
			}
			h := w * w * solve.Huber(u, solve.HuberK)
			clear(line)
			f.row(s, t, row, func(k int, v float64) { line[k] = noNaN(v) })
			for k, a := range line {
				if a == 0 {
					continue
				}
				to := sum.Row(k)
				for j, b := range line {
					to[j] += h * a * b
				}
			}
		}
	}
	return sum, nil
}

// part is the information on some of what is turned; what no sample tells gets next to none.
func part(info *solve.Matrix, of []int) *solve.Matrix {
	out := solve.NewMatrix(len(of), len(of))
	for i, p := range of {
		for k, q := range of {
			out.Set(i, k, info.At(p, q))
		}
		out.Set(i, i, out.At(i, i)+1e-12*(1+out.At(i, i)))
	}
	return out
}

// deviations are the standard deviations of the inputs, in deviations before: from what the
// logs tell and what was known. Inputs that are kept at their values stay as uncertain as they
// were, and what that does to the others counts.
func (f *fitter) deviations(info *solve.Matrix, kept []bool) []float64 {
	n := len(f.inputs)
	var turned, still []int
	for k := range info.Rows {
		if k < n && kept[k] {
			still = append(still, k)
		} else {
			turned = append(turned, k)
		}
	}
	out := make([]float64, n)
	for j := range out {
		out[j] = 1
	}
	a := part(info, turned)
	for i, p := range turned {
		if p < n {
			a.Set(i, i, a.At(i, i)+1) // what was known before
		}
	}
	c, ok := a.Inverse()
	if !ok {
		return out
	}
	for i, p := range turned {
		if p >= n {
			continue
		}
		v := c.At(i, i)
		for _, d := range still {
			g := 0.0
			for k, q := range turned {
				g += c.At(i, k) * info.At(q, d)
			}
			v += g * g
		}
		out[p] = math.Sqrt(v)
	}
	return out
}

// alike are pairs of inputs that the logs tell alike: the cosine of the angle between what
// the two do to the predictions, once times of release and zeros are fitted, is beyond a bound.
func (f *fitter) alike(info *solve.Matrix, bound float64) [][2]int {
	n := len(f.inputs)
	var rest []int
	for k := n; k < info.Rows; k++ {
		rest = append(rest, k)
	}
	free, ok := part(info, rest).Inverse()
	if !ok {
		return nil
	}
	own := func(i, k int) float64 {
		v := info.At(i, k)
		for a, p := range rest {
			for b, q := range rest {
				v -= info.At(i, p) * free.At(a, b) * info.At(q, k)
			}
		}
		return v
	}
	var pairs [][2]int
	for i := range n {
		for k := i + 1; k < n; k++ {
			if size := math.Sqrt(own(i, i) * own(k, k)); size > 0 && math.Abs(own(i, k))/size > bound {
				pairs = append(pairs, [2]int{i, k})
			}
		}
	}
	return pairs
}
