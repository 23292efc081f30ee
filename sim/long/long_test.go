package long

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestAllOfItRunsWhereItIsWanted(t *testing.T) {
	t.Setenv("ULLAGE_LONG", "")
	assert.Equal(t, 10, Of(10, 1000))
	t.Setenv("ULLAGE_LONG", "1")
	assert.Equal(t, 1000, Of(10, 1000))
}
