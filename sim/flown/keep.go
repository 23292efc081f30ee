package flown

import (
	"fmt"
	"path/filepath"
	"strings"
	"time"

	"ullage/sim/fault"
	"ullage/sim/quantity"
	"ullage/sim/rocketfile"
)

// Keep is a rocket file with what was learned: the values, and their deviations in [spread], each
// with a remark of the day and the logs it is from. An input that is another one on every flight keeps the
// deviation it had: what a log tells of it is that flight's.
func Keep(file *rocketfile.File, fitted Fitted, today time.Time) (*rocketfile.File, error) {
	var logs []string
	for _, l := range fitted.Logs {
		logs = append(logs, filepath.Base(l.Log.Name)+" ("+rocketfile.DigestWord(l.Log.Digest)+")")
	}
	changed := file
	for i := range fitted.Inputs {
		in := &fitted.Inputs[i]
		if in.Kept {
			continue
		}
		var err error
		if changed, err = changed.SetValue(in.Input.Name, file.Settled(in.Input.Name, in.Value, in.SD)); err != nil {
			return nil, err
		}
		u := file.Unit(in.Input.Name)
		before := quantity.Exact(in.Before, u)
		u.Offset = 0
		remark := fmt.Sprintf("%s fitted on %s to %s; before: %s, deviation %s", in.Input.Name, today.Format(time.DateOnly),
			strings.Join(logs, ", "), before, quantity.Exact(in.BeforeSD, u))
		if Daily(in.Input.Name) {
			remark += ", which stays: another one on every flight"
		}
		if changed, err = changed.SetSpread(in.Input.Name, in.Next(), remark); err != nil {
			return nil, err
		}
	}
	return changed, nil
}

// Next is the deviation of an input on the next flight.
func (in *FittedInput) Next() float64 {
	if Daily(in.Input.Name) {
		return in.BeforeSD
	}
	return in.SD
}

// Refuse refuses logs that a file's values were fitted to: they would count twice.
func Refuse(file *rocketfile.File, logs []Logged) error {
	for _, l := range logs {
		if file.HasDigest(l.Log.Digest) {
			return fault.Fault{File: l.Log.Name, Problem: "is one of the logs that values in " + file.Name() + " were fitted to, as a remark there says; used again it would count twice",
				Remedy: "take another log, or the file as it was before"}
		}
	}
	return nil
}
