package long

import (
	"flag"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

func TestAllOfItRunsWhereItIsWanted(t *testing.T) {
	t.Setenv("ULLAGE_LONG", "")
	assert.Equal(t, 10, Of(10, 1000))
	t.Setenv("ULLAGE_LONG", "1")
	assert.Equal(t, 1000, Of(10, 1000))
}

func TestADearPropertyIsCheckedLess(t *testing.T) {
	if given(checksFlag) || testing.Short() {
		t.Skip("the command line says how much")
	}
	usual := flag.Lookup(checksFlag).Value.String()
	patience := flag.Lookup(shrinkFlag).Value.String()
	tried := func(wanted string) (n int) {
		t.Setenv("ULLAGE_LONG", wanted)
		Check(t, 7, func(*rapid.T) {
			n++
			if !given(shrinkFlag) {
				assert.Equal(t, shrinkFor, flag.Lookup(shrinkFlag).Value.String())
			}
		})
		return n
	}
	assert.Equal(t, 7, tried(""))
	assert.Equal(t, usual, strconv.Itoa(tried("1")))
	assert.Equal(t, usual, flag.Lookup(checksFlag).Value.String(), "others are as they were")
	assert.Equal(t, patience, flag.Lookup(shrinkFlag).Value.String())
}
