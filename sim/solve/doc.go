// Package solve finds where a function is zero and where it is least, for functions that
// are dear, may fail and are not defined everywhere. It knows no rocket.
//
//   - [Root] closes in on a sign change between two places; [Outward] finds two such places.
//   - [Least] finds the least value near the lowest of some places looked at; [Minimum]
//     does so between two places around a third.
//   - [Simplex] finds the least value of a function of several numbers.
//   - [LeastSquares] finds where the squares of several functions are least together;
//     [Huber] and [Bounded] keep what is far out from pulling. [Smooth] fits parabolas to samples.
//
// Each looks at a bounded number of places, which its comment gives, and always at the
// same ones: the same question gives the same answer to the last bit. A function's error
// ends the search and comes back as it is, so a cancelled context ends one too. NaN is
// no value at all: never above zero, and never the least.
package solve

// Func is a function of one number, and why it could not be worked out there.
type Func func(x float64) (float64, error)

// Point is a place and the value of a function there.
type Point struct{ X, Y float64 }

// At looks at a place.
func (f Func) At(x float64) (Point, error) {
	y, err := f(x)
	return Point{x, y}, err
}
