package study

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/fault"
	"ullage/sim/results"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
)

func wished(t *testing.T, r *rocket.Rocket, w Wish, goals ...string) Best {
	t.Helper()
	g, err := ParseGoals(r, goals)
	require.NoError(t, err)
	best, err := FindBest(background, r, g, w.Aim(false), Options{})
	require.NoError(t, err)
	return best
}

func result(r *rocket.Rocket, name string) Wish { return MostOf(*results.For(r).Must(name)) }

// A wish for the highest apogee is Highest.
func TestWishForTheHighest(t *testing.T) {
	r := bottle()
	goals, err := ParseGoals(r, []string{"water.fill"})
	require.NoError(t, err)
	want, err := FindBest(background, r, goals, Highest(false), Options{})
	require.NoError(t, err)
	require.Equal(t, want, wished(t, r, result(r, "apogee.height"), "water.fill"))
}

// The least of a result, negative ones too, is that of a dense scan.
func TestWishForTheLeast(t *testing.T) {
	r := rocketfile.Starter().Rocket()
	for _, name := range []string{"landing.drift", "margin.rail_exit"} {
		w := result(r, name)
		w.Least = true
		const input, from, to = "body.balance", 0.7, 1.2
		best := wished(t, r, w, input+"=700mm..1200mm")
		got := w.Row.Of(best.Flight)
		for i := range 51 {
			fl := flown(t, with(t, r, input, between(from, to, i, 51)))
			if refused, _ := w.Aim(false).Refuse(fl); refused == Accepted {
				require.LessOrEqual(t, got, w.Row.Of(fl)+1e-3*math.Abs(got)+1e-6, "%s at %d", name, i)
			}
		}
	}
}

// A target within reach is met by one input and by several, the band is what comes within 1 % of
// it, and the nearest is found of one that is not.
func TestWishForAValue(t *testing.T) {
	r := bottle()
	w := result(r, "apogee.height")
	most := wished(t, r, w, "water.fill").Apogee
	for _, goals := range [][]string{{"water.pressure=2..5bar"}, {"water.pressure=2..5bar", "water.fill=0.2..0.5"}} {
		w.Target = 0.6 * most
		best := wished(t, r, w, goals...)
		require.InEpsilon(t, w.Target, best.Apogee, 2e-3)
		require.True(t, w.Met(best.Apogee))
		for _, end := range best.Within[0] {
			at := with(t, best.Flight.Rocket, "water.pressure", end)
			require.InDelta(t, 0.01, math.Abs(flown(t, at).Apogee.Height/w.Target-1), 2e-3)
		}
	}
	w.Target = 10 * most
	best := wished(t, r, w, "water.fill")
	require.InEpsilon(t, most, best.Apogee, 1e-4)
	require.False(t, w.Met(best.Apogee))
	w.Target = 0
	require.True(t, w.Met(0.005))
	require.False(t, w.Met(0.02))
}

// What no flight has is refused, and told.
func TestWishForWhatThereIsNot(t *testing.T) {
	r := bottle()
	goals, err := ParseGoals(r, []string{"water.fill"})
	require.NoError(t, err)
	_, err = FindBest(background, r, goals, result(r, "tube_exit.speed").Aim(false), Options{})
	var none *NoneAdmissible
	require.ErrorAs(t, err, &none)
	require.Positive(t, none.Undefined)
	require.ErrorContains(t, err, "did not have the result wished for")
}

// A wish is one line; what is wrong with it is told.
func TestReadWish(t *testing.T) {
	table := results.For(rocketfile.Starter().Rocket())
	for text, want := range map[string]Wish{
		"":                       MostOf(*table.Must(UsualWish)),
		" most  landing.drift ":  MostOf(*table.Must("landing.drift")),
		"least landing.drift":    {Row: *table.Must("landing.drift"), Least: true, Target: math.NaN()},
		"apogee.height = 250 ft": {Row: *table.Must("apogee.height"), Target: 76.2},
	} {
		got, err := ReadWish(table, text)
		require.NoError(t, err, text)
		assert.Equal(t, want.Row.Name, got.Row.Name, text)
		assert.Equal(t, want.Least, got.Least, text)
		assert.True(t, want.Target == got.Target || !want.Aimed() && !got.Aimed(), text)
	}
	for text, want := range map[string]string{
		"landing.drft": "landing.drft: no flight of this rocket has a result of this name; perhaps landing.drift is meant", "least": "least: no flight", "least ": "no flight",
		"apogee.height=": "has no value", "apogee.height=3 kg": "is a mass", "least apogee.height=3 m": "write one of them", "=3 m": "no flight", "NaN": "no flight",
		"max.mach": "",
	} {
		_, err := ReadWish(table, text)
		if want == "" {
			require.NoError(t, err, text)
			continue
		}
		require.ErrorContains(t, err, want, text)
		require.IsType(t, fault.Fault{}, err)
	}
}
