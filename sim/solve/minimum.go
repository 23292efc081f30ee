package solve

import "math"

// golden is the share of the golden section, (3 − √5)/2.
const golden = 0.3819660112501051

// Minimum closes in on the least value between two ends, from three places known, until
// it is known to within twice a tolerance, and gives the least seen. The middle ought to
// be no higher than the ends; of several valleys one is found. Where the function is not
// defined it may be +Inf or NaN, which are higher than all numbers.
//
// It goes by parabolas through the three lowest places with golden sections between:
// Brent, Algorithms for Minimization without Derivatives (1973), chapter 5; after as many
// looks as golden sections alone would take, by these alone. The tolerance is at least a
// hundred-millionth of the ends: closer by, values hardly differ. It looks at
// 2·⌈log(width/tolerance)/log 1.618⌉ + 8 places at most. Ends that are not finite are
// ErrBracket.
func Minimum(f Func, low, middle, high Point, tol float64) (Point, error) {
	s := newValley(low, middle, high, tol)
	width := s.b - s.a
	if math.IsNaN(width) || math.IsInf(width, 0) {
		return s.x, ErrBracket
	}
	sections := int(math.Ceil(math.Log(math.Max(1, width/s.tol)) / -math.Log1p(-golden)))
	for looked := 0; looked < 2*sections+8 && !s.narrow(); looked++ {
		p, err := f.At(s.next(looked < sections))
		if err != nil {
			return s.x, err
		}
		s.put(p)
	}
	return s.x, nil
}

// valley is what is known of one: its ends, the three lowest places in it with the lowest
// first, and the last two steps.
type valley struct {
	a, b         float64
	x, w, v      Point
	last, before float64
	tol          float64
}

func newValley(low, middle, high Point, tol float64) *valley {
	if low.X > high.X {
		low, high = high, low
	}
	s := &valley{a: low.X, b: high.X, tol: tol, last: high.X - low.X, before: high.X - low.X}
	if !(middle.X >= s.a && middle.X <= s.b) {
		middle = low
	}
	if below(high, low) {
		low, high = high, low
	}
	switch {
	case !below(low, middle):
		s.x, s.w, s.v = middle, low, high
	case !below(high, middle):
		s.x, s.w, s.v = low, middle, high
	default:
		s.x, s.w, s.v = low, high, middle
	}
	if least := 1e-8 * math.Max(math.Abs(s.a), math.Abs(s.b)); !(tol > least) {
		s.tol = math.Max(least, math.SmallestNonzeroFloat64)
	}
	return s
}

// below tells whether a point is lower than another, NaN being higher than all.
func below(p, other Point) bool {
	return p.Y < other.Y || math.IsNaN(other.Y) && !math.IsNaN(p.Y)
}

func (s *valley) middle() float64 { return s.a/2 + s.b/2 }

// narrow tells whether the lowest is known closely enough.
func (s *valley) narrow() bool {
	return math.Abs(s.x.X-s.middle())+(s.b-s.a)/2 <= 2*s.tol
}

// next is where to look: the vertex of the parabola, where there may be one and it makes
// the steps shorter, or else a golden section of the wider side.
func (s *valley) next(parabolas bool) float64 {
	x, middle := s.x.X, s.middle()
	step, ok := vertex(s.x, s.w, s.v)
	if parabolas && ok && math.Abs(step) < math.Abs(s.before)/2 && x+step > s.a && x+step < s.b {
		s.before, s.last = s.last, step
		if x+step-s.a < s.tol || s.b-x-step < s.tol {
			step = math.Copysign(s.tol, middle-x)
		}
	} else {
		s.before = s.b - x
		if x >= middle {
			s.before = s.a - x
		}
		step = golden * s.before
		s.last = step
	}
	if math.Abs(step) < s.tol {
		step = math.Copysign(s.tol, step)
	}
	return x + step
}

// put takes in a look.
func (s *valley) put(u Point) {
	if !below(s.x, u) {
		if u.X >= s.x.X {
			s.a = s.x.X
		} else {
			s.b = s.x.X
		}
		s.x, s.w, s.v = u, s.x, s.w
		return
	}
	if u.X < s.x.X {
		s.a = u.X
	} else {
		s.b = u.X
	}
	switch {
	case !below(s.w, u) || s.w.X == s.x.X:
		s.w, s.v = u, s.w
	case !below(s.v, u) || s.v.X == s.x.X || s.v.X == s.w.X:
		s.v = u
	}
}

// vertex is the way from x to the vertex of the parabola through three points; not ok
// when they make none.
func vertex(x, w, v Point) (float64, bool) {
	r := (x.X - w.X) * (x.Y - v.Y)
	q := (x.X - v.X) * (x.Y - w.Y)
	p := (x.X-v.X)*q - (x.X-w.X)*r
	d := 2 * (q - r)
	step := -p / d
	return step, d != 0 && !math.IsNaN(step) && !math.IsInf(step, 0)
}
