package sim

import "math"

// phi returns φ₁, φ₂ and φ₃ of z, where φ₁(z) = (e^z − 1)/z and
// φ_{k+1}(z) = (φ_k(z) − 1/k!)/z: what takes the place of the powers of a step
// when the linear part of an equation is solved exactly. φ_k(0) = 1/k!.
//
// The functions of 2z follow from those of z (see twice), so a step works out one set.
func phi(z float64) (p1, p2, p3 float64) {
	if math.Abs(z) >= 0.5 {
		p1 = math.Expm1(z) / z
		p2 = (p1 - 1) / z
		p3 = (p2 - 0.5) / z
		return p1, p2, p3
	}
	// Near zero the differences cancel: Taylor for φ₃ (to 2e-16 at 0.5), the others upward from it.
	for _, inverse := range inverses {
		p3 = (1 + p3) * z * inverse
	}
	p3 = (1 + p3) / 6
	p2 = 0.5 + z*p3
	p1 = 1 + z*p2
	return p1, p2, p3
}

// inverses of 15 down to 4.
var inverses = [...]float64{1. / 15, 1. / 14, 1. / 13, 1. / 12, 1. / 11, 1. / 10, 1. / 9, 1. / 8, 1. / 7, 1. / 6, 1. / 5, 1. / 4}

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
	for _, inverse := range inverses {
		p3 = (1 + p3) * z * complex(inverse, 0)
	}
	p3 = (1 + p3) * (1. / 6)
	p2 = 0.5 + z*p3
	p1 = 1 + z*p2
	return p1, p2, p3
}

// twiceComplex is twice of complex numbers.
func twiceComplex(z, p1, p2, p3 complex128) (q1, q2, q3 complex128) {
	e := 1 + z*p1
	return (e*p1 + p1) * 0.5, (e*p2 + p1 + p2) * 0.25, (e*p3 + p1*0.5 + p2 + p3) * 0.125
}
