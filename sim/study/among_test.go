package study

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/sim/fault"
	"ullage/sim/rocket"
)

// The best over words is the best of the words' bests.
func TestBestAmongWords(t *testing.T) {
	r := bottle()
	goals, bases, chosen, err := ParseWanted(r, []string{"water.gas=air,helium", "water.fill=0.1..0.6"})
	require.NoError(t, err)
	require.Len(t, bases, 2)
	a, err := FindBestAmong(background, bases, goals, Highest(false), Options{})
	require.NoError(t, err)
	top, flights, of := 0.0, 0, -1
	for i, base := range bases {
		b, err := FindBest(background, base, goals, Highest(false), Options{})
		require.NoError(t, err)
		require.Equal(t, b.Apogee, a.All[i].Apogee)
		if flights += b.Flights; b.Apogee > top {
			top, of = b.Apogee, i
		}
	}
	require.Equal(t, top, a.Apogee)
	require.Equal(t, of, a.Of)
	require.Equal(t, flights, a.Flights)
	require.Len(t, chosen[of], 1)
	word := chosen[of][0]
	require.Equal(t, "water.gas", word.Input.Name)
	require.Equal(t, word.Word, word.Input.Text(a.Flight.Rocket))
}

// Without a number each of the rockets flies once.
func TestBestAmongRocketsAlone(t *testing.T) {
	_, bases, _, err := ParseWanted(bottle(), []string{"water.gas"})
	require.NoError(t, err)
	require.Len(t, bases, 5)
	a, err := FindBestAmong(background, bases, nil, Highest(false), Options{Keep: true})
	require.NoError(t, err)
	for _, base := range bases {
		require.LessOrEqual(t, flown(t, base).Apogee.Height, a.Apogee)
	}
	require.Equal(t, flown(t, bases[a.Of]).Apogee.Height, a.Apogee)
	require.NotEmpty(t, a.Flight.Trace())
	heavy := bottle()
	heavy.Body.Mass = 50
	_, err = FindBestAmong(background, []*rocket.Rocket{heavy, heavy}, nil, Highest(false), Options{})
	var none *NoneAdmissible
	require.ErrorAs(t, err, &none)
	require.Equal(t, 2, none.NeverLeft)
}

func TestWantedFaults(t *testing.T) {
	for want, texts := range map[string][]string{
		"given twice":              {"water.gas", "water.gas=air"},
		"steam":                    {"water.gas=air,steam"},
		"no input to find":         nil,
		"perhaps water.gas":        {"water.gaz"},
		"perhaps water.fill":       {"water.gas", "water.fil"},
		"a range of what has no n": {"water.gas=air..helium"},
	} {
		_, _, _, err := ParseWanted(bottle(), texts)
		require.ErrorContains(t, err, want)
		require.IsType(t, fault.List{}, err)
	}
}
