package atmosphere

import "math"

// power raises numbers to one exponent from 0 to 1, within some units in the last
// place and several times faster than math.Pow: a number is 2^k·c·(1+r), c one of
// 16 centres between 1 and 2, and the powers of the first two are tabulated, that
// of the last is a binomial series with |r| up to 1/33.
type power struct {
	exponent float64
	binomial [9]float64
	centres  [16]float64
	doubles  [42]float64 // 2^(k·exponent) from k = leastDouble
}

const leastDouble = -20

// inverses are those of the centres, 1 + (2i+1)/32.
var inverses = func() (list [16]float64) {
	for i := range list {
		list[i] = 32 / float64(33+2*i)
	}
	return list
}()

// fit makes it the power of an exponent, if it is not that already.
func (p *power) fit(exponent float64) {
	if p.binomial[0] == 1 && p.exponent == exponent {
		return
	}
	p.exponent = exponent
	p.binomial[0] = 1
	for n := 1; n < len(p.binomial); n++ {
		p.binomial[n] = p.binomial[n-1] * (exponent - float64(n-1)) / float64(n)
	}
	for i := range p.centres {
		p.centres[i] = math.Pow(inverses[i], -exponent)
	}
	for k := range p.doubles {
		p.doubles[k] = math.Exp2(float64(k+leastDouble) * exponent)
	}
}

// of is x to the exponent, for x > 0.
func (p *power) of(x float64) float64 {
	const fraction = 1<<52 - 1 // the bits of a float64 below its exponent
	bits := math.Float64bits(x)
	k := int(bits>>52) - 1023 - leastDouble
	if k < 0 || k >= len(p.doubles) {
		return math.Pow(x, p.exponent)
	}
	i := bits >> 48 & 15
	r := math.Float64frombits(bits&fraction|1023<<52)*inverses[i] - 1
	b := &p.binomial
	r2 := r * r
	r4 := r2 * r2
	low := (1 + b[1]*r) + r2*(b[2]+b[3]*r)
	high := (b[4] + b[5]*r) + r2*(b[6]+b[7]*r)
	return p.doubles[k] * p.centres[i] * (low + r4*(high+r4*b[8]))
}
