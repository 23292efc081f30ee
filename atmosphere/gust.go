package atmosphere

import "math"

// Gust is wind that sets in at a height, on top of the rest, and stays above it: at once, or
// over a length as one minus cosine, the discrete gust of MIL-F-8785C (form from memory),
//
//	Speed·(1 − cos(π(h − Height)/Length))/2
//
// with the height in the place of the way flown, which is the same of a rocket that flies
// upright. The zero Gust is none.
type Gust struct {
	Speed  float64 // m/s
	From   float64 // as of Wind, rad
	Height float64 // where it begins, m above the ground
	Length float64 // over which it rises, m; 0: a step
}

// gustPart is how much of a gust blows on a stretch.
type gustPart uint8

const (
	noGust gustPart = iota
	gustRises
	gustBlows
)

// share is how much of the gust blows at a height of a stretch where it rises.
func (g *gustForm) share(h float64) float64 {
	return (1 - math.Cos((h-g.height)*g.perLength)) / 2
}

// gustForm is a prepared gust.
type gustForm struct {
	east, north       float64
	height, perLength float64 // π over the length
}
