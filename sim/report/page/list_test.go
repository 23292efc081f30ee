package page

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestListed(t *testing.T) {
	assert.Equal(t, "", Listed(nil))
	assert.Equal(t, "a", Listed([]string{"a"}))
	assert.Equal(t, "a and b", Listed([]string{"a", "b"}))
	assert.Equal(t, "a, b and c", Listed([]string{"a", "b", "c"}))
}
