package solve

import "math"

// Outward walks from a place towards an end, in steps of which each is so many times the
// one before, until the function changes sign, and gives the two places between which it
// does; not ok when it reaches the end without. It looks at
// ⌈log(1 + way·(growth−1)/step)/log growth⌉ places at most. Steps that do not begin above
// zero, or do not grow, and an end that is not finite, go to the end at once.
func Outward(f Func, from Point, end, step, growth float64) (b Bracket, ok bool, err error) {
	if !(step > 0) || !(growth > 1) || math.IsInf(end, 0) {
		step = math.Inf(1)
	}
	b = Bracket{from, from}
	for last := from; last.X != end; step *= growth {
		x := end
		if way := end - last.X; math.Abs(way) > step {
			x = last.X + math.Copysign(step, way)
		}
		if last, err = f.At(x); err != nil {
			return b, false, err
		}
		if b.put(last) != (from.Y > 0) {
			return b, true, nil
		}
		if x == end {
			break
		}
	}
	return b, false, nil
}
