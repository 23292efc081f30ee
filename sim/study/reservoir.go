package study

import "math/rand/v2"

// reservoir keeps rows of numbers, all of them up to its size and then a random
// choice in which each row seen has the same chance: Vitter, ACM Transactions on
// Mathematical Software 11 (1985) 37, algorithm R.
type reservoir struct {
	size, width int
	seen        int
	rows        []float64 // width to a row
	random      *rand.Rand
}

func newReservoir(size, width int, seed uint64) *reservoir {
	return &reservoir{size: size, width: width, random: rand.New(rand.NewPCG(mix(seed), 0))}
}

func (r *reservoir) add(row ...float64) {
	r.seen++
	if r.seen <= r.size {
		r.rows = append(r.rows, row...)
		return
	}
	if i := r.random.IntN(r.seen); i < r.size {
		copy(r.rows[i*r.width:], row)
	}
}

// kept is how many rows there are.
func (r *reservoir) kept() int { return len(r.rows) / r.width }

// column is one number of every row kept.
func (r *reservoir) column(k int) []float64 {
	c := make([]float64, r.kept())
	for i := range c {
		c[i] = r.rows[i*r.width+k]
	}
	return c
}
