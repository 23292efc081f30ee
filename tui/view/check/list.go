package check

import (
	"slices"

	"ullage/sim/gates"
	"ullage/sim/results"
	"ullage/tui/view"
)

// checkEntry is one check on the list.
type checkEntry struct {
	gates.Check
	old bool // its corner and its mends are those of the rocket before the last edit
}

// list are the checks of the flight on show, those that fail first. While its corners
// are being looked at, those of the rocket before stay: a check that failed in its corner
// alone stays among the failed ones till it is known better.
func (v *View) list() []checkEntry {
	now := v.Scene.Now
	if now == nil || now.Verdict == nil {
		return nil
	}
	var list []checkEntry
	full := &v.Scene.Corners.Result
	switch {
	case v.Scene.Corners.Ready && full.Of == now:
		for _, c := range full.Verdict.Checks {
			list = append(list, checkEntry{Check: c})
		}
	default:
		for _, c := range now.Verdict.Checks {
			list = append(list, v.before(c))
		}
	}
	slices.SortStableFunc(list, func(a, b checkEntry) int { return a.rank() - b.rank() })
	return list
}

// before is a check with the corner and the mends that the rocket before the last edit
// had for it.
func (v *View) before(c gates.Check) checkEntry {
	if !v.Scene.Corners.Ready || !c.Judged {
		return checkEntry{Check: c}
	}
	was := v.Scene.Corners.Result.Verdict.Checks
	i := slices.IndexFunc(was, func(o gates.Check) bool { return o.Key == c.Key })
	if i < 0 || !was[i].Judged {
		return checkEntry{Check: c}
	}
	o := was[i]
	c.Values[results.Corner] = o.Values[results.Corner]
	if c.Pass && o.Fails() && o.Case == results.Corner {
		c.Value, c.Case, c.Word, c.Level, c.Pass = o.Value, o.Case, o.Word, o.Level, o.Pass
	}
	if c.Fails() {
		c.Remedies = o.Remedies
	}
	return checkEntry{c, true}
}

// rank orders checks: what fails, what wants a look, what is within its limit.
func (e *checkEntry) rank() int {
	switch {
	case e.Fails():
		return 0
	case e.Level != gates.Good:
		return 1
	}
	return 2
}

// sign stands before a check, beside its word.
func (e *checkEntry) sign() string { return [...]string{"!", "?", ""}[e.rank()] }

// settable are the places, among a check's mends, of those that set inputs.
func (e *checkEntry) settable() []int {
	var out []int
	for i := range e.Remedies {
		if view.Settable(&e.Remedies[i]) {
			out = append(out, i)
		}
	}
	return out
}
