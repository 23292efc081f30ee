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
	var names []string
	for _, i := range was.setBack(&is, lost) {
		names = append(names, was.Checks[i].Name)
	}
	return names, nil
}

// lost tells that a check passed and does not any more.
func lost(was, is *Check) bool { return was.Pass && !is.Pass }
