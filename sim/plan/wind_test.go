package plan

import (
	"context"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/atmosphere"
	"ullage/sim/gates"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
)

// aloft is the example with all that its checks take, in calm air.
func aloft(t *testing.T) (*rocket.Rocket, Options) {
	t.Helper()
	f, err := rocketfile.Open("../../testdata/heron.toml")
	require.NoError(t, err)
	r := f.Rocket().Clone()
	return r, Options{Spreads: study.Spreads(f), Respread: study.Respread(f), Today: time.Date(2026, 10, 1, 0, 0, 0, 0, time.UTC)}
}

// verdictAt judges a rocket in a wind.
func verdictAt(t *testing.T, r *rocket.Rocket, o Options, wind float64) gates.Verdict {
	t.Helper()
	c := r.Clone()
	c.Wind.Blow(wind)
	v, err := gates.Judge(context.Background(), c, gates.Options{Today: o.Today, Spreads: o.Respread(c)})
	require.NoError(t, err)
	return v
}

// Every wind up to it passes and a tenth more does not, as a dense look at the verdicts has it;
// layers are scaled with the wind near the ground.
func TestMostWindAgainstADenseLook(t *testing.T) {
	r, o := aloft(t)
	layered := r.Clone()
	layered.Wind.Speed, layered.Wind.From, layered.Wind.Stated = 0, 0, false
	layered.Wind.Layers = []atmosphere.Layer{{Height: 10, Speed: 2, From: 1}, {Height: 60, Speed: 6, From: 2}}
	for name, r := range map[string]*rocket.Rocket{"plain": r, "layered": layered} {
		got, err := MostWind(context.Background(), r, o)
		require.NoError(t, err)
		require.True(t, got.Passes, "%s: %+v", name, got)
		require.Zero(t, got.Least)
		for i := 1; i <= 8; i++ {
			v := verdictAt(t, r, o, got.Most*float64(i)/8)
			assert.True(t, v.Pass(), "%s: in %g m/s", name, got.Most*float64(i)/8)
		}
		v := verdictAt(t, r, o, got.Most+0.1)
		assert.False(t, v.Pass(), name)
		assert.NotEmpty(t, got.Above)
		assert.Equal(t, names(&v, (*gates.Check).Fails), got.Above)
	}
}

// A rocket that no wind lets pass is told with what fails; one of which something is not known is
// not judged in any wind.
func TestNoWindPasses(t *testing.T) {
	r, o := aloft(t)
	r.Limits.Landing = 1
	got, err := MostWind(context.Background(), r, o)
	require.NoError(t, err)
	assert.False(t, got.Passes)
	assert.Equal(t, []string{"vertical landing speed"}, got.Fails)
	r.Limits.Landing, r.Field.Ceiling = 0, 0
	got, err = MostWind(context.Background(), r, o)
	require.NoError(t, err)
	assert.False(t, got.Passes)
	assert.Empty(t, got.Fails)
	assert.Equal(t, []string{"apogee under the ceiling"}, got.Unjudged)
}
