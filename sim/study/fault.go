package study

import (
	"errors"

	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
)

// appendFaults adds what an error says, whichever room it comes from.
func appendFaults(to rocketfile.Faults, err error) rocketfile.Faults {
	var file rocketfile.Faults
	var rocket rocket.Faults
	switch {
	case err == nil:
	case errors.As(err, &file):
		to = append(to, file...)
	case errors.As(err, &rocket):
		for _, f := range rocket {
			to = append(to, rocketfile.Fault{Key: f.Name, Problem: f.Problem, Mend: f.Mend})
		}
	default:
		to = append(to, rocketfile.Fault{Problem: err.Error(), Err: err})
	}
	return to
}
