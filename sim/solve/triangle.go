package solve

import "math"

// triangle is a linear least-squares problem, slopes·p ≈ −residuals, brought to the form of
// a triangle: r·p ≈ −b.
type triangle struct {
	n     int
	r     *Matrix
	b     []float64
	scale []float64
}

// factorise brings the slopes of some numbers to a triangle by Householder's reflections,
// the residuals with them.
func factorise(slopes *Matrix, residuals []float64, of []int, scale []float64) *triangle {
	n := len(of)
	t := &triangle{n: n, b: make([]float64, n), scale: make([]float64, n)}
	if n == 0 {
		return t
	}
	rows := max(len(residuals), n+1)
	m := NewMatrix(rows, n+1)
	for k, j := range of {
		t.scale[k] = scale[j]
		for i := range residuals {
			m.Set(i, k, slopes.At(i, j))
		}
	}
	for i, v := range residuals {
		m.Set(i, n, v)
	}
	t.r, t.b = m.top(n)
	return t
}

// regular tells whether the triangle has no diagonal that is nothing beside the others.
func (t *triangle) regular() bool {
	most := 0.0
	for k := range t.n {
		most = math.Max(most, math.Abs(t.r.At(k, k))/t.scale[k])
	}
	for k := range t.n {
		if !(math.Abs(t.r.At(k, k))/t.scale[k] > 1e-14*most) {
			return false
		}
	}
	return t.n > 0
}

// within is the step no longer than a reach, by a tenth, and the damping that makes it so:
// Moré's iteration on the length of the damped step.
func (t *triangle) within(reach, damping float64) ([]float64, float64) {
	low, high := 0.0, 0.0
	if t.regular() {
		p := t.back(t.r, t.b)
		length := t.length(p)
		if length <= 1.1*reach {
			return p, 0
		}
		over := length - reach
		low = over / reach / t.slope(t.r, p, length)
	}
	for k := range t.n {
		sum := 0.0
		for i := 0; i <= k; i++ {
			sum += t.r.At(i, k) * t.b[i]
		}
		sum /= t.scale[k]
		high += sum * sum
	}
	if high = math.Sqrt(high) / reach; high == 0 {
		high = math.SmallestNonzeroFloat64 / math.Min(reach, 0.1)
	}
	damping = math.Min(math.Max(damping, low), high)
	before := math.Inf(1)
	for k := 0; ; k++ {
		if damping == 0 {
			damping = math.Max(math.SmallestNonzeroFloat64, 0.001*high)
		}
		r, b := t.damped(damping)
		p := t.back(r, b)
		length := t.length(p)
		over := length - reach
		if math.Abs(over) <= 0.1*reach || low == 0 && over <= before && before < 0 || k == 10 {
			return p, damping
		}
		more := over / reach / t.slope(r, p, length)
		if over > 0 {
			low = math.Max(low, damping)
		} else {
			high = math.Min(high, damping)
		}
		before = over
		damping = math.Max(low, damping+more)
	}
}

// damped is the triangle with the scales, times the root of the damping, below it.
func (t *triangle) damped(damping float64) (*Matrix, []float64) {
	n := t.n
	m := NewMatrix(2*n, n+1)
	for i := range n {
		for k := i; k < n; k++ {
			m.Set(i, k, t.r.At(i, k))
		}
		m.Set(i, n, t.b[i])
		m.Set(n+i, i, math.Sqrt(damping)*t.scale[i])
	}
	return m.top(n)
}

// top triangulates a matrix of n columns and one, and gives the triangle and what the last
// column has become beside it.
func (m *Matrix) top(n int) (*Matrix, []float64) {
	m.triangulate(n)
	r, b := NewMatrix(n, n), make([]float64, n)
	for i := range n {
		copy(r.Row(i)[i:], m.Row(i)[i:n])
		b[i] = m.At(i, n)
	}
	return r, b
}

// back solves r·p = −b from the last row up.
func (t *triangle) back(r *Matrix, b []float64) []float64 {
	p := make([]float64, t.n)
	for i := t.n - 1; i >= 0; i-- {
		sum := -b[i]
		for k := i + 1; k < t.n; k++ {
			sum -= r.At(i, k) * p[k]
		}
		p[i] = sum / r.At(i, i)
	}
	return p
}

// slope is how fast the length falls with the damping, over the length.
func (t *triangle) slope(r *Matrix, p []float64, length float64) float64 {
	sum := 0.0
	w := make([]float64, t.n)
	for k := range t.n { // rᵀ w = D² p/length, from the first row down
		v := t.scale[k] * t.scale[k] * p[k] / length
		for i := range k {
			v -= r.At(i, k) * w[i]
		}
		w[k] = v / r.At(k, k)
		sum += w[k] * w[k]
	}
	return sum
}

// length is that of a step by its scales.
func (t *triangle) length(p []float64) float64 { return scaled(t.scale, p) }

// promise is by how much a step would lessen the sum of squares but for the damping's share:
// the square of what the step changes.
func (t *triangle) promise(p []float64) float64 {
	sum := 0.0
	for i := range t.n {
		v := 0.0
		for k := i; k < t.n; k++ {
			v += t.r.At(i, k) * p[k]
		}
		sum += v * v
	}
	return sum
}
