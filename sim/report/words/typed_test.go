package words

import (
	"context"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ullage/sim/gates"
	"ullage/sim/long"
	"ullage/sim/quantity"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
)

var named = regexp.MustCompile(`^([a-z_]+(?:\.[a-z0-9_-]+)+) (.+?)(?: or (?:more|less))?$`)

// A mend holds as it is written: its words typed behind --set, in either system of units, pass its check and fail none that passed.
func TestMendsHoldAsTyped(t *testing.T) {
	long.Unraced(t)
	typed := 0
	long.Check(t, 4, func(t *rapid.T) {
		file := rapid.SampledFrom([]string{"heron", "drogue-main", "tube", "mass-list"}).Draw(t, "file")
		f, err := rocketfile.Open("../../../testdata/" + file + ".toml")
		require.NoError(t, err)
		r := f.Rocket().Clone()
		for _, v := range []*float64{&r.Body.Mass, &r.Wind.Speed, &r.Rail.Length, &r.Canopies[0].Diameter} {
			*v *= rapid.Float64Range(0.6, 1.6).Draw(t, "of its size")
		}
		if r.Validate() != nil {
			t.Skip("no rocket")
		}
		o := gates.Options{Today: time.Date(2026, 10, 1, 0, 0, 0, 0, time.UTC), Spreads: study.DefaultSpread(r), Respread: study.DefaultSpread, Remedies: true}
		v, err := gates.Judge(context.Background(), r, o)
		require.NoError(t, err)
		for i := range v.Checks {
			c := &v.Checks[i]
			for _, m := range c.Remedies {
				for _, sys := range []quantity.System{quantity.Metric, quantity.US} {
					mended, text := r.Clone(), In(sys).Remedy(m)
					all := true
					for _, part := range strings.Split(text, " together with ") {
						set := named.FindStringSubmatch(part)
						if m.Kind != gates.SetInput || set == nil {
							all = false
							continue
						}
						in, err := rocketfile.Find(mended, set[1])
						require.NoError(t, err, text)
						require.NoError(t, in.SetText(mended, strings.Trim(set[2], `"`)), text)
					}
					if !all {
						continue
					}
					typed++
					again, err := gates.Judge(context.Background(), mended, gates.Options{Today: o.Today, Spreads: study.DefaultSpread(mended)})
					require.NoError(t, err)
					passed := map[string]bool{c.Key: true}
					for k := range v.Checks {
						passed[v.Checks[k].Key] = passed[v.Checks[k].Key] || v.Checks[k].Pass
					}
					for k := range again.Checks {
						b := &again.Checks[k]
						require.True(t, b.Pass || !passed[b.Key], "%s: %s fails %s with %g", c.Key, text, b.Key, b.Value)
					}
				}
			}
		}
	})
	require.Greater(t, typed, 4)
}
