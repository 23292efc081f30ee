package gates

import (
	"context"

	"ullage/sim/rocket"
)

// Loses names the checks that one rocket passes and another does not, both in calm air, on
// the day, and with spreads in their worst corners, and gives the verdict on the other.
func Loses(ctx context.Context, before, after *rocket.Rocket, o Options) (names []string, is Verdict, err error) {
	o.Remedies, o.Day = false, nil
	if is, err = Judge(ctx, after, o); err != nil {
		return nil, is, err
	}
	was, err := Judge(ctx, before, o)
	if err != nil {
		return nil, is, err
	}
	for _, i := range was.setBack(&is, lost) {
		names = append(names, was.Checks[i].Name)
	}
	return names, is, nil
}

// lost tells that a check passed and does not any more.
func lost(was, is *Check) bool { return was.Pass && !is.Pass }
