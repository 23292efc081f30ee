package sim

import "math"

// phi returns φ₁, φ₂ and φ₃ of z, where φ₁(z) = (e^z − 1)/z and
// φ_{k+1}(z) = (φ_k(z) − 1/k!)/z: what takes the place of the powers of a step
// when the linear part of an equation is solved exactly. φ_k(0) = 1/k!.
func phi(z float64) (p1, p2, p3 float64) {
	if math.Abs(z) >= 0.5 {
		p1 = math.Expm1(z) / z
		p2 = (p1 - 1) / z
		p3 = (p2 - 0.5) / z
		return p1, p2, p3
	}
	// Near zero the differences cancel: Taylor for φ₃ (to 2e-16 at 0.5), the others upward from it.
	for k := 15; k > 3; k-- {
		p3 = (1 + p3) * z / float64(k)
	}
	p3 = (1 + p3) / 6
	p2 = 0.5 + z*p3
	p1 = 1 + z*p2
	return p1, p2, p3
}
