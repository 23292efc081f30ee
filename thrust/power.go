package thrust

import "math"

// power raises numbers of the size of one to a fixed exponent, within a few units
// in the last place and three times faster than a logarithm and an exponential: the
// expansion's powers are most of what a moment of the flow costs. A number is
// 2^k·c·(1+r), c one of 8 centres between 1 and 2: the powers of the first two are
// tabulated, that of the last is a binomial series, |r| up to 1/17.
//
// The wind of package atmosphere has one of its own, for numbers of every size and
// smaller exponents: neither package may know the other.
type power struct {
	exponent float64
	binomial [12]float64
	centre   [octaves][8]float64 // of 2^k·c, k from −3
}

const (
	octaves = 4 // 1/8 up to 2: what lies outside is rare and goes the long way
	lowest  = -3
)

// inverses of the centres (17 + 2i)/16.
var inverses = [8]float64{16. / 17, 16. / 19, 16. / 21, 16. / 23, 16. / 25, 16. / 27, 16. / 29, 16. / 31}

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
	double := math.Exp2(exponent)
	for i := range p.centre[0] {
		v := math.Exp(exponent * math.Log((17+2*float64(i))/16))
		for range -lowest {
			v /= double
		}
		for k := range p.centre {
			p.centre[k][i] = v
			v *= double
		}
	}
}

// of is x to the exponent, for x > 0.
func (p *power) of(x float64) float64 {
	const fraction = 1<<52 - 1 // the bits of a float64 below its exponent
	bits := math.Float64bits(x)
	k := int(bits>>52) - 1023 - lowest
	if k < 0 || k >= octaves {
		return math.Pow(x, p.exponent)
	}
	i := bits >> 49 & 7
	r := math.Float64frombits(bits&fraction|1023<<52)*inverses[i] - 1
	b := &p.binomial
	r2 := r * r
	r4 := r2 * r2
	// Estrin's scheme: the pairs do not wait for each other.
	low := (1 + b[1]*r) + r2*(b[2]+b[3]*r)
	middle := (b[4] + b[5]*r) + r2*(b[6]+b[7]*r)
	high := (b[8] + b[9]*r) + r2*(b[10]+b[11]*r)
	return p.centre[k][i] * (low + r4*(middle+r4*high))
}
