package gates

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/results"
	"ullage/sim/rocket"
)

// Where a chamber was proved too far, one made alike would do: more cloth or a longer lap is not what mends it.
func TestAnotherChamberAlike(t *testing.T) {
	for pressure, want := range map[float64]RemedyKind{10e5: BuildAlike, 17e5: Rebuild} {
		r := open(t, "heron")
		r.Water.Pressure, r.Chamber.Proof = pressure, 2*pressure+10e5
		v := judge(t, r, Options{Remedies: true})
		c := find(t, &v, checkBurst)
		require.True(t, c.Fails())
		assert.True(t, slices.ContainsFunc(c.Remedies, func(m Remedy) bool { return m.Kind == want }), "%g: %v", pressure, c.Remedies)
		other := BuildAlike + Rebuild - want
		assert.False(t, slices.ContainsFunc(c.Remedies, func(m Remedy) bool { return m.Kind == other }), "%g", pressure)
		if want == BuildAlike {
			assert.InDelta(t, 1.5*pressure, c.Remedies[0].To, 1)
		}
	}
}

// A burst that no chamber like this one can have had makes no go, on water or beside a motor: heron's is estimated at 55 bar.
func TestBurstBeyondBelief(t *testing.T) {
	for _, on := range []struct {
		power rocket.Power
		row   string
	}{{rocket.WaterPower, checkBurst}, {rocket.MotorPower, checkSealed}} {
		r := open(t, "heron")
		r.Power, r.Chamber.BurstWord = on.power, ""
		at := r.ChamberAt()
		for times, word := range map[float64]string{0.99 * TooFarApart: WordGood, 1.01 * TooFarApart: WordOpen} {
			r.Chamber.Burst = times * at.ColdEstimate / 0.9222 // what six cycles leave
			v := judge(t, r, Options{})
			c := find(t, &v, on.row)
			assert.Equal(t, word, c.Word, "%s, %g times", on.power, times)
			assert.Equal(t, word == WordGood, c.Pass)
		}
	}
}

// Nor has it specimens many times as strong as others': a figure in the wrong unit makes no go.
func TestStrengthBeyondBelief(t *testing.T) {
	for _, on := range []struct {
		power rocket.Power
		row   string
	}{{rocket.WaterPower, checkBurst}, {rocket.MotorPower, checkSealed}} {
		for times, word := range map[float64]string{1: WordGood, 20: WordOpen} {
			r := open(t, "heron")
			r.Power = on.power
			c := r.Chamber
			for _, strength := range []*float64{&c.Around, &c.Along, &c.Forward.Strength, &c.Aft.Strength, &c.Forward.BondStrength, &c.Aft.BondStrength,
				&c.Boss.BondStrength, &c.Adhesive.Strength} {
				*strength *= times
			}
			c.Adhesive.Strength = min(c.Adhesive.Strength, 200e6) // as much as a file may say
			c.Adhesive.Plastic = min(c.Adhesive.Plastic*times, 1)
			v := judge(t, r, Options{})
			assert.Equal(t, word, find(t, &v, on.row).Word, "%s, %g times", on.power, times)
		}
	}
}

// A motor cools no air: a chamber beside it is never colder than the day.
func TestNoChamberIsColderThanItsDay(t *testing.T) {
	sealed := func(degrees float64) float64 {
		r := open(t, "heron")
		r.Power, r.Chamber.Heating.Temperature = rocket.MotorPower, 273.15+degrees
		v := judge(t, r, Options{})
		return find(t, &v, checkSealed).Value
	}
	assert.Less(t, sealed(16), sealed(20))
	assert.Equal(t, sealed(16), sealed(0), "the day has 16 degC")
}

// The limit on the wind is one on gusts near the ground too, and so is the rail exit speed over it.
func TestGustsAreWind(t *testing.T) {
	r := open(t, "heron")
	r.Wind.Speed, r.Gust.From = 3, r.Wind.From
	for gust, word := range map[float64]string{2: WordGood, 6.5: WordStrong} {
		r.Gust.Speed = gust
		v := judge(t, r, Options{})
		c := find(t, &v, LimitWind)
		assert.InDelta(t, 3+gust, c.Values[results.Day].V, 1e-9)
		assert.Equal(t, word, c.Word)
		c = find(t, &v, LimitRailExitWind)
		assert.InDelta(t, v.Day.RailExit.Speed/(3+gust), c.Values[results.Day].V, 1e-9)
	}
}
