package gates

import (
	"sync"
	"sync/atomic"
	"testing"

	"github.com/stretchr/testify/assert"
)

// What several checks ask for at once is made once, and all have it; what goes farther answers for what does not.
func TestOnceForAll(t *testing.T) {
	var all sync.Map
	var made atomic.Int32
	var asked sync.WaitGroup
	for range 8 {
		asked.Go(func() {
			v, err := once(&all, "a", func() (int, error) { made.Add(1); return 7, nil })
			assert.NoError(t, err)
			assert.Equal(t, 7, v)
		})
	}
	asked.Wait()
	assert.EqualValues(t, 1, made.Load())

	name := func(u until) func() (until, error) { return func() (until, error) { return u, nil } }
	for _, test := range []struct{ asked, has until }{{untilTop, untilTop}, {untilFree, untilTop}, {untilDown, untilDown}, {untilPushed, untilDown}, {untilTop, untilDown}} {
		has, err := orFarther(&all, flightKey{until: test.asked}, name(test.asked))
		assert.NoError(t, err)
		assert.Equal(t, test.has, has)
	}
}
