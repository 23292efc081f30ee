package page

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestWrap(t *testing.T) {
	assert.Equal(t, []string{"one two", "three"}, Wrap("one two  three", 8))
	assert.Equal(t, []string{"averylongword", "ab"}, Wrap("averylongword ab", 5))
	assert.Equal(t, []string{""}, Wrap("  ", 5))
	assert.Equal(t, []string{"°°° °", "°"}, Wrap("°°° ° °", 5), "columns, not bytes")
	assert.Equal(t, []string{"fill", "1" + Glue + "%"}, Wrap("fill 1"+Glue+"%", 6), "a unit stays with its number")

	narrow := func(line string) bool { return strings.Count(line, "w") < 2 }
	assert.Equal(t, []string{"iii w iii", "w", "ww", "i"}, WrapTo("iii w iii w ww i", narrow))
}

func TestChopped(t *testing.T) {
	assert.Equal(t, []string{"avery", "longw", "ord", "ab"}, Chopped("averylongword ab", 5))
	assert.Equal(t, []string{""}, Chopped("", 5))
}
