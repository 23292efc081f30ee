package flown

import (
	"context"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/long"
	"ullage/sim/study"
)

// A bump that is no flight is left out of differences, stages and fit, and all else stays.
func TestLeftOut(t *testing.T) {
	long.Unraced(t)
	f := open(t, "wagtail")
	r := f.Rocket()
	truth := flyWith(t, r, map[string]float64{"body.drag_factor": 1.2})
	at, h := usual().heights(truth)
	clean := logged(t, "log.csv", csv("time_s,height_m", at, h), r, Options{Heights: MeasuredHeights})
	bumped := slices.Clone(h)
	bump := Stretch{13, 14.5} // on the way up
	for i := range at {
		if bump.Has(at[i]) {
			bumped[i] += 25
		}
	}
	l := logged(t, "log.csv", csv("time_s,height_m", at, bumped), r, Options{Heights: MeasuredHeights})
	without, err := l.Without([]Stretch{bump})
	require.NoError(t, err)
	assert.Equal(t, len(l.Channels[0].T)-31, len(without.Channels[0].T))
	assert.Equal(t, 31, without.Lost)
	assert.Empty(t, l.LeftOut, "the reading stays as it was")
	same, err := clean.Without([]Stretch{bump})
	require.NoError(t, err)

	coast := func(rd *Reading) Stage {
		c, err := Hold(context.Background(), Logged{Reading: rd, Rocket: r})
		require.NoError(t, err)
		require.Equal(t, "coast", c.Stages[1].Name)
		return c.Stages[1]
	}
	assert.InDelta(t, coast(same).RMS, coast(without).RMS, 0.02)
	assert.Greater(t, coast(l.Reading).RMS, coast(without).RMS+5)
	drag := func(rd *Reading) float64 {
		x, err := Fit(context.Background(), []Logged{{Reading: rd, Rocket: r}}, spreadsOf(t, f, "body.drag_factor"))
		require.NoError(t, err)
		return x.Inputs[0].Value
	}
	assert.InDelta(t, drag(same), drag(without), 0.002)
	assert.InDelta(t, 1.2, drag(without), 0.05)

	// With all of the thrust left out, what comes after tells the release.
	thrustless, err := clean.Without([]Stretch{{9, 10.9}})
	require.NoError(t, err)
	c, err := Hold(context.Background(), Logged{Reading: thrustless, Rocket: r})
	require.NoError(t, err)
	assert.InDelta(t, 10.013, c.Release, 0.15)

	_, err = l.Without([]Stretch{{0, 1000}})
	assert.ErrorContains(t, err, "leave less out")
}

// A release that is told is taken as it is; one that is not is found; a fit finds its own from there.
func TestReleaseTold(t *testing.T) {
	f := open(t, "wagtail")
	r := f.Rocket()
	at, h := usual().heights(flyWith(t, r, nil))
	l := logged(t, "log.csv", csv("time_s,height_m", at, h), r, Options{Heights: MeasuredHeights})
	found, err := Hold(context.Background(), l)
	require.NoError(t, err)
	assert.InDelta(t, 10.013, found.Release, 0.03)
	l.Reading = l.Released(10.3)
	told, err := Compare(context.Background(), l, study.Spreads(f), 20, study.Options{})
	require.NoError(t, err)
	assert.Equal(t, 10.3, told.Release)
	assert.Greater(t, told.Stages[1].RMS, found.Stages[1].RMS+1)
	x, err := Fit(context.Background(), []Logged{l}, spreadsOf(t, f, "body.drag_factor"))
	require.NoError(t, err)
	assert.InDelta(t, 10.013, x.Logs[0].Release, 0.03)
}

func TestParseStretch(t *testing.T) {
	s, err := ParseStretch("12.1 s to 13000 ms")
	require.NoError(t, err)
	assert.Equal(t, Stretch{12.1, 13}, s)
	for _, bad := range []string{"", "12", "12 to", "13 to 12", "a to b", "12-13", "NaN to 3"} {
		_, err := ParseStretch(bad)
		assert.ErrorContains(t, err, "as in '12.1 s to 12.6 s'", bad)
	}
}
