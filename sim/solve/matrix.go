package solve

import "math"

// Matrix is a rectangle of numbers, row by row. Those here have many rows and few columns, or
// few of both: a library for large ones would weigh more than the program.
type Matrix struct {
	Rows, Columns int
	V             []float64
}

// NewMatrix is a matrix of zeros.
func NewMatrix(rows, columns int) *Matrix {
	return &Matrix{rows, columns, make([]float64, rows*columns)}
}

// At is the number in a place.
func (m *Matrix) At(i, j int) float64 { return m.V[i*m.Columns+j] }

// Set puts a number in a place.
func (m *Matrix) Set(i, j int, v float64) { m.V[i*m.Columns+j] = v }

// Row is a row; writing to it writes to the matrix.
func (m *Matrix) Row(i int) []float64 { return m.V[i*m.Columns : (i+1)*m.Columns] }

// size is the length of a column as a vector, without overflow of its squares.
func (m *Matrix) size(j, from int) float64 {
	most := 0.0
	for i := from; i < m.Rows; i++ {
		most = math.Max(most, math.Abs(m.At(i, j)))
	}
	if most == 0 || math.IsNaN(most) || math.IsInf(most, 0) {
		return most
	}
	sum := 0.0
	for i := from; i < m.Rows; i++ {
		v := m.At(i, j) / most
		sum += v * v
	}
	return most * math.Sqrt(sum)
}

// triangulate brings a matrix to a triangle by Householder's reflections (Journal of the ACM 5
// (1958) 339), in place: below the diagonal of its first columns stands 0.
func (m *Matrix) triangulate(columns int) {
	w := make([]float64, m.Columns)
	v := make([]float64, m.Rows)
	for k := range min(columns, m.Rows) {
		length := m.size(k, k)
		if length == 0 {
			continue
		}
		if m.At(k, k) > 0 {
			length = -length
		}
		// v is the column less its image, scaled so that its first number is 1.
		first := m.At(k, k) - length
		v[k] = 1
		for i := k + 1; i < m.Rows; i++ {
			v[i] = m.At(i, k) / first
		}
		twice := -first / length // 2/(vᵀv)
		clear(w)
		for i := k; i < m.Rows; i++ {
			for j, a := range m.Row(i)[k:] {
				w[k+j] += v[i] * a
			}
		}
		for i := k; i < m.Rows; i++ {
			row := m.Row(i)[k:]
			for j := range row {
				row[j] -= twice * v[i] * w[k+j]
			}
		}
		m.Set(k, k, length)
		for i := k + 1; i < m.Rows; i++ {
			m.Set(i, k, 0)
		}
	}
}

// Inverse is that of a symmetric positive definite matrix, by its factor of Cholesky; false
// when it is none. Numbers of very different sizes are brought to one size before.
func (m *Matrix) Inverse() (*Matrix, bool) {
	n := m.Rows
	scale := make([]float64, n)
	for i := range scale {
		scale[i] = math.Sqrt(m.At(i, i))
		if !(scale[i] > 0) || math.IsInf(scale[i], 0) {
			return nil, false
		}
	}
	l := NewMatrix(n, n)
	for j := range n {
		for i := j; i < n; i++ {
			v := m.At(i, j) / scale[i] / scale[j]
			for k := range j {
				v -= l.At(i, k) * l.At(j, k)
			}
			if i == j {
				if !(v > 1e-15) {
					return nil, false
				}
				l.Set(i, i, math.Sqrt(v))
			} else {
				l.Set(i, j, v/l.At(j, j))
			}
		}
	}
	out := NewMatrix(n, n)
	x := make([]float64, n)
	for c := range n { // l lᵀ x = e_c
		for i := range n {
			v := 0.0
			if i == c {
				v = 1
			}
			for k := range i {
				v -= l.At(i, k) * x[k]
			}
			x[i] = v / l.At(i, i)
		}
		for i := n - 1; i >= 0; i-- {
			v := x[i]
			for k := i + 1; k < n; k++ {
				v -= l.At(k, i) * x[k]
			}
			x[i] = v / l.At(i, i)
		}
		for i := range n {
			out.Set(i, c, x[i]/scale[i]/scale[c])
		}
	}
	return out, true
}
