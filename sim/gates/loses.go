package gates

import (
	"context"

	"ullage/sim/rocket"
)

// Loses names the checks that one rocket passes and another does not, both in calm air, on
// the day, and with spreads in their worst corners.
func Loses(ctx context.Context, before, after *rocket.Rocket, o Options) ([]string, error) {
	o.Remedies, o.Day = false, nil
	was, err := Judge(ctx, before, o)
	if err != nil {
		return nil, err
	}
	is, err := Judge(ctx, after, o)
	if err != nil {
		return nil, err
	}
	return was.lost(&is), nil
}

// lost names the checks that pass in one verdict and not in another; one that the other does
// not have is judged by nothing any more.
func (v *Verdict) lost(after *Verdict) []string {
	passes := map[string]bool{}
	for i := range after.Checks {
		passes[after.Checks[i].Key] = after.Checks[i].Pass
	}
	var out []string
	for i := range v.Checks {
		c := &v.Checks[i]
		if still, there := passes[c.Key]; c.Pass && there && !still {
			out = append(out, c.Name)
		}
	}
	return out
}
