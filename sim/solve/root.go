package solve

import (
	"errors"
	"math"
)

// ErrBracket says that what was given holds no answer between its ends: they are not
// finite, there are none, or, for a root, the function does not change sign.
var ErrBracket = errors.New("no bracket of what is looked for")

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

func (b Bracket) width() float64 { return math.Abs(b.Out.X - b.In.X) }

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

func (t Tolerance) near(p Point) bool { return t.Y > 0 && math.Abs(p.Y) <= t.Y }

// slack is how many times wider than by halving alone a bracket may be, for false position
// to find its way: nine looks more, and the one that halving would have taken anyway.
const slack = 512

// Root closes in on a change of sign until the tolerance is met. Both ends come closer,
// so that the caller may take the side that it can answer for. Where the function jumps
// over zero, the jump is found.
//
// It is false position with the Illinois weights (Dowell and Jarratt, BIT 11 (1971) 168),
// kept from the ends by a little less than half of X; the middle where a value is not
// finite, and where halving alone would be far ahead. It looks at ⌈log2(width/X)⌉ + 11
// places at most. When the function fails, the bracket so far comes back beside its error.
func Root(f Func, b Bracket, tol Tolerance) (Bracket, error) {
	halved := b.width()
	if !(b.In.Y > 0) || b.Out.Y > 0 || math.IsNaN(halved) || math.IsInf(halved, 0) {
		return b, ErrBracket
	}
	if least := 8 * spacing(math.Max(math.Abs(b.In.X), math.Abs(b.Out.X))); !(tol.X > least) {
		tol.X = least
	}
	if tol.near(b.In) || tol.near(b.Out) {
		return b, nil
	}
	weightIn, weightOut, side := 1.0, 1.0, 0
	for ; b.width() > tol.X; halved /= 2 {
		x := b.In.X/2 + b.Out.X/2
		if in, out := b.In.Y*weightIn, b.Out.Y*weightOut; b.width()/slack <= halved && in > out && !math.IsInf(in-out, 0) {
			edge := 0.4 * tol.X / b.width()
			x = b.In.X + (b.Out.X-b.In.X)*min(1-edge, max(edge, in/(in-out)))
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
		if tol.near(p) {
			break
		}
	}
	return b, nil
}

// spacing is the step from a number to the next one.
func spacing(x float64) float64 { return math.Nextafter(x, math.Inf(1)) - x }
