package rocketfile

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/fault"
	"ullage/sim/rocket"
)

// rangeOf is what the rocket's own tables say of an input's number.
func rangeOf(t *testing.T, r *rocket.Rocket, in Input) (min, max float64, remedy string) {
	s, f, p := resolve(r, in.Name)
	if in.Kind == RuleKind {
		rule := f.codec.(*ruleCodec).now(p)
		is := rule.Trigger.Row().Range
		return is.Min, is.Max, is.Check(math.Inf(1)).Remedy
	}
	name := in.Name
	if s.many {
		name = s.path + ".*." + f.key
	}
	n := rocket.NumberNamed(name)
	require.NotNil(t, n, name)
	return n.Range.Min, n.Range.Max, n.Range.Check(math.Inf(1)).Remedy
}

// Every input has the range that the rocket is checked by, and no other: files and screens
// take both ends, and what is just beyond is refused with the words of the rocket.
func TestInputsGoByTheRocketsRanges(t *testing.T) {
	looked := map[string]bool{}
	for _, text := range []string{whole, shapely, vesselled} {
		r := readIn(t, folder(t), text).Rocket()
		r.Site.Located = true
		for _, in := range Inputs(r) {
			if in.Kind != NumberKind && in.Kind != RuleKind {
				continue
			}
			if _, given := in.Get(r); in.Kind == RuleKind && !given {
				continue // the charge's own
			}
			looked[in.Name] = true
			min, max, remedy := rangeOf(t, r, in)
			assert.Equal(t, min, in.Min, in.Name)
			assert.Equal(t, max, in.Max, in.Name)
			for _, v := range []float64{min, max} {
				assert.NoError(t, in.Set(r.Clone(), v), "%s at %g", in.Name, v)
			}
			for _, v := range []float64{math.Nextafter(min, math.Inf(-1)), math.Nextafter(max, math.Inf(1))} {
				bad := fault.In(in.Set(r.Clone(), v))
				if assert.Len(t, bad, 1, "%s at %g", in.Name, v) {
					assert.Equal(t, in.Name, bad[0].Key)
					assert.True(t, strings.HasSuffix(bad[0].Remedy, remedy), bad[0].Remedy)
				}
			}
		}
	}
	require.Greater(t, len(looked), 100)
}
