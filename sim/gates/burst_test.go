package gates

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/rocket"
)

// A burst is judged by what somebody stated of it: a measured one, or that the estimate from strengths of his own
// counts. An estimate alone is told, never a pass; one that is too low fails whatever is stated.
func TestBurstIsJudgedByAStatement(t *testing.T) {
	for name, test := range map[string]struct {
		set    func(r *rocket.Rocket)
		judged bool
		pass   bool
		asks   string
	}{
		"measured":                 {func(r *rocket.Rocket) { r.Chamber.BurstWord, r.Chamber.Burst = "", 24e5 }, true, true, ""},
		"measured, too low":        {func(r *rocket.Rocket) { r.Chamber.BurstWord, r.Chamber.Burst = "", 18e5 }, true, false, ""},
		"declared":                 {func(*rocket.Rocket) {}, true, true, ""},
		"declared, one typical":    {func(r *rocket.Rocket) { r.Chamber.Aft.BondStrength = 0 }, false, false, "chamber.aft.bond_strength"},
		"nothing said":             {func(r *rocket.Rocket) { r.Chamber.BurstWord = "" }, false, false, "chamber.burst"},
		"nothing said, but so low": {func(r *rocket.Rocket) { r.Chamber.BurstWord, r.Chamber.Around = "", 120e6 }, true, false, "chamber.burst"},
	} {
		t.Run(name, func(t *testing.T) {
			r := open(t, "heron")
			test.set(r)
			v := judge(t, r, Options{Remedies: true})
			c := find(t, &v, checkBurst)
			assert.Equal(t, test.judged, c.Judged)
			assert.Equal(t, test.pass, c.Pass)
			assert.False(t, c.Value == 0, "the estimate is told beside it")
			if test.asks != "" {
				require.NotEmpty(t, c.Remedies)
				assert.Equal(t, []string{test.asks}, c.Remedies[len(c.Remedies)-1].Keys)
			}
		})
	}
}
