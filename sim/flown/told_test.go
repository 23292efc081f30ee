package flown

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What is told of a log reads as it is written.
func TestTold(t *testing.T) {
	const text = `--column 'height=3 ft' --column 'time=Clock (ms)' --rate '20 Hz' --height measured --from '10 s' --to '90 s'`
	told, err := ParseTold(text)
	require.NoError(t, err)
	assert.Equal(t, Told{Columns: []string{"height=3 ft", "time=Clock (ms)"}, Rate: "20 Hz", Options: Options{Heights: MeasuredHeights, From: 10, To: 90}}, told)
	assert.Equal(t, text, told.String())
	told, err = ParseTold(` --column="height=2 m"   --from=5s `)
	require.NoError(t, err)
	assert.Equal(t, []string{"height=2 m"}, told.Columns)
	assert.Equal(t, 5.0, told.From)
	assert.True(t, math.IsInf(told.To, 1))
	assert.Equal(t, "--column 'height=2 m' --from '5 s'", told.String())
	none, err := ParseTold("")
	require.NoError(t, err)
	assert.Equal(t, Told{}, none)
	assert.Empty(t, none.String())

	for text, says := range map[string]string{
		"--column":              "is followed by nothing",
		"--column 'height=2 m":  "is not closed",
		"--column height":       "a column are needed",
		"--rate fast":           "is no rate",
		"--height guessed":      "standard, pad and measured",
		"--from later":          "is no time",
		"height=2":              "says nothing of a log",
		"--colour red":          "there are --column, --rate",
		"--column 'hight=2 ft'": "perhaps height is meant",
	} {
		_, err := ParseTold(text)
		assert.ErrorContains(t, err, says, text)
	}
}

func TestStretches(t *testing.T) {
	all := Joined(Joined(Joined(nil, Stretch{5, 6}), Stretch{1, 2}), Stretch{8, 9})
	assert.Equal(t, []Stretch{{1, 2}, {5, 6}, {8, 9}}, all)
	assert.Equal(t, []Stretch{{1, 6}, {8, 9}}, Joined(all, Stretch{2, 5}))
	assert.Equal(t, []Stretch{{0, 10}}, Joined(all, Stretch{0, 10}))
	parted := Parted([]Stretch{{1, 9}}, Stretch{3, 4})
	require.Len(t, parted, 2)
	for at, out := range map[float64]bool{1: true, 2.9: true, 3: false, 3.5: false, 4: false, 4.1: true, 9: true, 9.1: false} {
		assert.Equal(t, out, Left(parted, at), at)
	}
	assert.Empty(t, Parted(all, Stretch{0, 10}))
	assert.Equal(t, all, Parted(all, Stretch{3, 4}))
}
