package sim

import "math"

// phi returns φ₁, φ₂ and φ₃ of z, where φ₁(z) = (e^z − 1)/z and
// φ_{k+1}(z) = (φ_k(z) − 1/k!)/z: what takes the place of the powers of a step
// when the linear part of an equation is solved exactly. φ_k(0) = 1/k!.
//
// The functions of 2z follow from those of z (see twice), so a step works out one set.
func phi(z float64) (p1, p2, p3 float64) {
	if math.Abs(z) >= 0.5 {
		inverse := 1 / z
		p1 = (math.Exp(z) - 1) * inverse
		p2 = (p1 - 1) * inverse
		p3 = (p2 - 0.5) * inverse
		return p1, p2, p3
	}
	// Near zero the differences cancel: Taylor for φ₃ (to 2e-16 at 0.5), the others upward from it. It is
	// summed in pairs (Estrin's scheme) so that the processor can do several at a time.
	z2 := z * z
	z4 := z2 * z2
	low := (c3 + c4*z) + z2*(c5+c6*z)
	middle := (c7 + c8*z) + z2*(c9+c10*z)
	high := (c11 + c12*z) + z2*(c13+c14*z+z2*c15)
	p3 = low + z4*(middle+z4*high)
	p2 = 0.5 + z*p3
	p1 = 1 + z*p2
	return p1, p2, p3
}

// Inverse factorials, of 3 up to 15.
const (
	c3  = 1.0 / 6
	c4  = c3 / 4
	c5  = c4 / 5
	c6  = c5 / 6
	c7  = c6 / 7
	c8  = c7 / 8
	c9  = c8 / 9
	c10 = c9 / 10
	c11 = c10 / 11
	c12 = c11 / 12
	c13 = c12 / 13
	c14 = c13 / 14
	c15 = c14 / 15
)

// twice gives φ₁, φ₂, φ₃ of 2z from those of z: φ_k(2z) = 2^−k [e^z φ_k(z) + Σ φ_j(z)/(k−j)!],
// j from 1 to k; all terms are positive, nothing cancels (Skaflestad and Wright, Appl.
// Numer. Math. 59 (2009) 783, from memory; the test holds the identity).
func twice(z, p1, p2, p3 float64) (q1, q2, q3 float64) {
	e := 1 + z*p1
	return (e*p1 + p1) / 2, (e*p2 + p1 + p2) / 4, (e*p3 + p1/2 + p2 + p3) / 8
}

// phiComplex is phi of a complex number.
func phiComplex(z complex128) (p1, p2, p3 complex128) {
	if x, y := real(z), imag(z); x*x+y*y >= 0.25 {
		inverse := complex(x/(x*x+y*y), -y/(x*x+y*y))
		sin, cos := math.Sincos(y)
		e := math.Exp(x)
		p1 = complex(e*cos-1, e*sin) * inverse
		p2 = (p1 - 1) * inverse
		p3 = (p2 - 0.5) * inverse
		return p1, p2, p3
	}
	z2 := z * z
	z4 := z2 * z2
	low := pair(c3, c4, z) + z2*pair(c5, c6, z)
	middle := pair(c7, c8, z) + z2*pair(c9, c10, z)
	high := pair(c11, c12, z) + z2*(pair(c13, c14, z)+z2*c15)
	p3 = low + z4*(middle+z4*high)
	p2 = 0.5 + z*p3
	p1 = 1 + z*p2
	return p1, p2, p3
}

// pair is a + b·z.
func pair(a, b float64, z complex128) complex128 { return complex(a+b*real(z), b*imag(z)) }

// twiceComplex is twice of complex numbers.
func twiceComplex(z, p1, p2, p3 complex128) (q1, q2, q3 complex128) {
	e := 1 + z*p1
	return (e*p1 + p1) * 0.5, (e*p2 + p1 + p2) * 0.25, (e*p3 + p1*0.5 + p2 + p3) * 0.125
}
