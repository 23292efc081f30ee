package solve

import (
	"errors"
	"math"
)

// ErrBracket says that a function does not change sign between two places, or that they
// are not finite.
var ErrBracket = errors.New("no change of sign between the ends")

// Bracket is two places with a change of sign between them, on either side of each
// other: above zero at In; at Out zero, below it or no number.
type Bracket struct{ In, Out Point }

// Nearest is the end whose value is nearer zero.
func (b Bracket) Nearest() Point {
	if math.Abs(b.Out.Y) < math.Abs(b.In.Y) {
		return b.Out
	}
	return b.In
}

func (b Bracket) width() float64  { return math.Abs(b.Out.X - b.In.X) }
func (b Bracket) middle() float64 { return b.In.X/2 + b.Out.X/2 }

// put moves the end on whose side a point is.
func (b *Bracket) put(p Point) (in bool) {
	if p.Y > 0 {
		b.In = p
		return true
	}
	b.Out = p
	return false
}

// Tolerance says how close is close enough: ends X from each other, or an end with a
// value no further than Y from zero, when Y is above zero. An X finer than numbers there
// can tell, or none, is eight of their steps.
type Tolerance struct{ X, Y float64 }

// Root closes in on a change of sign until the tolerance is met. Both ends come closer,
// so that the caller may take the side that it can answer for. Where the function jumps
// over zero, the jump is found.
//
// It is false position with the Illinois weights (Dowell and Jarratt, BIT 11 (1971) 168),
// kept from the ends by a little less than half of X; the middle where a value is not
// finite, and once no more looks are left than halving needs. It looks at
// ⌈log2(width/X)⌉ + 11 places at most. When the function fails, the bracket so far comes
// back beside its error.
func Root(f Func, b Bracket, tol Tolerance) (Bracket, error) {
	width := b.width()
	if !(b.In.Y > 0) || b.Out.Y > 0 || math.IsNaN(width) || math.IsInf(width, 0) {
		return b, ErrBracket
	}
	step := spacing(math.Max(math.Abs(b.In.X), math.Abs(b.Out.X)))
	if !(tol.X > 8*step) {
		tol.X = 8 * step
	}
	near := func(p Point) bool { return tol.Y > 0 && math.Abs(p.Y) <= tol.Y }
	if near(b.In) || near(b.Out) {
		return b, nil
	}
	// What rounding adds while the width is halved stays below four steps.
	halvings := func() int { return max(0, int(math.Ceil(math.Log2(b.width()/(tol.X-4*step))))) }
	weightIn, weightOut, side := 1.0, 1.0, 0
	for left := halvings() + spare; left > 0 && b.width() > tol.X; left-- {
		x := b.middle()
		if left > halvings() {
			x = falsePosition(b, weightIn, weightOut, tol.X)
		}
		p, err := f.At(x)
		if err != nil {
			return b, err
		}
		if b.put(p) {
			if weightIn = 1; side > 0 {
				weightOut /= 2
			}
			side = 1
		} else {
			if weightOut = 1; side < 0 {
				weightIn /= 2
			}
			side = -1
		}
		if near(p) {
			break
		}
	}
	return b, nil
}

// spare is how many more looks there are than halving needs, for false position to find
// its way; rounding may ask for one halving more.
const spare = 10

// falsePosition is where the straight line between the weighted values is zero, a little
// off the ends; the middle where they make no line.
func falsePosition(b Bracket, weightIn, weightOut, tol float64) float64 {
	in, out := b.In.Y*weightIn, b.Out.Y*weightOut
	if !(in > out) || math.IsInf(in-out, 0) {
		return b.middle()
	}
	x := b.In.X + (b.Out.X-b.In.X)*in/(in-out)
	edge := math.Copysign(0.4*tol, b.Out.X-b.In.X)
	if math.Abs(x-b.In.X) < math.Abs(edge) {
		x = b.In.X + edge
	} else if math.Abs(b.Out.X-x) < math.Abs(edge) {
		x = b.Out.X - edge
	}
	if !(x > math.Min(b.In.X, b.Out.X) && x < math.Max(b.In.X, b.Out.X)) { // over- and underflow
		return b.middle()
	}
	return x
}

// spacing is the step from a number to the next one.
func spacing(x float64) float64 { return math.Nextafter(x, math.Inf(1)) - x }
