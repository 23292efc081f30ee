package flown

import (
	"math"

	"gonum.org/v1/gonum/mat"

	"ullage/sim/solve"
)

// information is what the logs tell at a place: Σ JᵀWJ/κ of all that is turned, without what
// was known before.
func (f *fitter) information(x []float64) (*mat.SymDense, error) {
	s, err := f.slopesAt(x)
	if err != nil {
		return nil, err
	}
	size := len(x)
	sum := mat.NewSymDense(size, nil)
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
			sum.SymRankOne(sum, h, mat.NewVecDense(size, line))
		}
	}
	return sum, nil
}

// deviations are the standard deviations of the inputs, in deviations before: from what the
// logs tell and what was known. Inputs that are kept at their values stay as uncertain as they
// were, and what that does to the others counts.
func (f *fitter) deviations(info *mat.SymDense, kept []bool) []float64 {
	n := len(f.inputs)
	size := info.SymmetricDim()
	var turned, still []int
	for k := range size {
		if k < n && kept[k] {
			still = append(still, k)
		} else {
			turned = append(turned, k)
		}
	}
	a := mat.NewSymDense(max(len(turned), 1), nil)
	for i, p := range turned {
		for k := i; k < len(turned); k++ {
			v := info.At(p, turned[k])
			if i == k {
				if p < n {
					v++ // what was known before
				}
				v += 1e-12 * (1 + math.Abs(v)) // a zero that no sample tells
			}
			a.SetSym(i, k, v)
		}
	}
	out := make([]float64, n)
	for j := range out {
		out[j] = 1
	}
	var chol mat.Cholesky
	if len(turned) == 0 || !chol.Factorize(a) {
		return out
	}
	var c mat.SymDense
	if chol.InverseTo(&c) != nil {
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
func (f *fitter) alike(info *mat.SymDense, bound float64) [][2]int {
	n := len(f.inputs)
	rest := info.SymmetricDim() - n
	b := mat.NewSymDense(rest, nil)
	for i := range rest {
		for k := i; k < rest; k++ {
			v := info.At(n+i, n+k)
			if i == k {
				v += 1e-12 * (1 + v)
			}
			b.SetSym(i, k, v)
		}
	}
	var chol mat.Cholesky
	if !chol.Factorize(b) {
		return nil
	}
	own := mat.NewSymDense(n, nil)
	for i := range n {
		for k := i; k < n; k++ {
			var x mat.VecDense
			right := mat.NewVecDense(rest, nil)
			for m := range rest {
				right.SetVec(m, info.At(n+m, k))
			}
			if chol.SolveVecTo(&x, right) != nil {
				return nil
			}
			v := info.At(i, k)
			for m := range rest {
				v -= info.At(i, n+m) * x.AtVec(m)
			}
			own.SetSym(i, k, v)
		}
	}
	var pairs [][2]int
	for i := range n {
		for k := i + 1; k < n; k++ {
			if size := math.Sqrt(own.At(i, i) * own.At(k, k)); size > 0 && math.Abs(own.At(i, k))/size > bound {
				pairs = append(pairs, [2]int{i, k})
			}
		}
	}
	return pairs
}
