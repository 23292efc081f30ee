package viewtest

import (
	"context"

	"ullage/sim/gates"
	"ullage/sim/rocket"
)

// Judge decides go or no-go: [gates.Judge], or what a test puts in its place.
type Judge = func(context.Context, *rocket.Rocket, gates.Options) (gates.Verdict, error)

// Verdicts remembers go or no-go with corners and remedies, by the text of the rocket file:
// many tests show the same rocket, and looking at corners costs most.
type Verdicts map[string]gates.Verdict

// Of is gates.Judge of the rocket whose file has that text at the time.
func (m Verdicts) Of(text func() string) Judge {
	return func(ctx context.Context, r *rocket.Rocket, o gates.Options) (gates.Verdict, error) {
		key := text()
		if o.Remedies {
			key += "\n# mends"
		}
		if v, there := m[key]; there {
			return v, nil
		}
		v, err := gates.Judge(ctx, r, o)
		if err == nil {
			m[key] = v
		}
		return v, err
	}
}
