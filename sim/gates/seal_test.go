package gates

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"ullage/sim/bench"
)

// A seal that is described is judged, out of bounds a caution; one that is not is no check.
func TestSeal(t *testing.T) {
	r := open(t, "heron")
	v := judge(t, r, Options{})
	gap := find(t, &v, "seal-gap")
	assert.Equal(t, Good, gap.Level)
	assert.InDelta(t, 0.05/0.09, gap.Value, 1e-9, "by hand: 0.05 mm of play, 0.09 mm bridged up to 35 bar by 2 to 3 mm at 70 Shore A")
	assert.Equal(t, Good, find(t, &v, "seal-squeeze").Level)
	assert.Equal(t, Good, find(t, &v, "seal-fill").Level)

	for key, spoil := range map[string]func(s *bench.Seal){
		"seal-gap":     func(s *bench.Seal) { s.Plug = 33.8e-3 },
		"seal-squeeze": func(s *bench.Seal) { s.Groove = 29.2e-3 },
		"seal-fill":    func(s *bench.Seal) { s.Width = 2.8e-3 },
	} {
		c := r.Clone()
		spoil(&c.Bench.Seal)
		v := judge(t, c, Options{})
		assert.Equal(t, Caution, find(t, &v, key).Level, key)
		assert.NotEqual(t, WordGood, find(t, &v, key).Word, key)
	}

	// More pressure closes what a ring bridges: 38 bar of proof are beyond the first row.
	c := r.Clone()
	c.Chamber.Proof = 38e5
	assert.InDelta(t, 0.05/0.07, SealGap(c), 1e-9)
	c.Chamber.Proof = 1e8
	assert.Equal(t, 10.0, SealGap(c), "no pressure of the table")

	// What is described in part, or beyond the tables, has no row: the bench says what is missing.
	c = r.Clone()
	c.Bench.Seal.Plug = 0
	assert.Empty(t, sealCriteria(c))
	c.Bench.Seal.Hardness, c.Bench.Seal.Plug = 60, 33.95e-3
	assert.Len(t, sealCriteria(c), 2)

	c.Bench.Seal = bench.Seal{}
	v = judge(t, c, Options{})
	for _, x := range v.Checks {
		assert.NotContains(t, x.Key, "seal-")
	}
}
