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
	old      bool // its corner is that of the rocket before the last edit
	oldMends bool // its mends are
	awaits   bool // mends of its own that follow
}

// list are the checks of the flight on show, those that fail first. While its corners
// are being looked at, those of the rocket before stay: a check that failed in its corner
// alone stays among the failed ones till it is known better. So do mends.
func (v *View) list() []checkEntry {
	now := v.Scene.Now
	if now == nil || now.Verdict == nil {
		return nil
	}
	var list []checkEntry
	switch {
	case v.mends.Ready && v.mends.Result.Of == now:
		for _, c := range v.mends.Result.Verdict.Checks {
			list = append(list, checkEntry{Check: c})
		}
	case v.cornered():
		for _, c := range v.Scene.Corners.Result.Verdict.Checks {
			list = append(list, v.unmended(checkEntry{Check: c}))
		}
	default:
		for _, c := range now.Verdict.Checks {
			list = append(list, v.before(c))
		}
	}
	slices.SortStableFunc(list, func(a, b checkEntry) int { return a.rank() - b.rank() })
	return list
}

// checkOf is the check of a verdict that has a key; nil where it has none that was judged.
func checkOf(verdict *gates.Verdict, key string) *gates.Check {
	for i := range verdict.Checks {
		if c := &verdict.Checks[i]; c.Key == key && c.Judged {
			return c
		}
	}
	return nil
}

// unmended is a check that has no mends yet with those that were there for it last.
func (v *View) unmended(e checkEntry) checkEntry {
	if !e.Judged || !e.Fails() || v.mends.Err != nil && !v.mends.Busy {
		return e
	}
	e.awaits = true
	if v.mends.Ready {
		if o := checkOf(&v.mends.Result.Verdict, e.Key); o != nil && len(o.Remedies) > 0 {
			e.Remedies, e.oldMends, e.awaits = o.Remedies, true, false
		}
	}
	return e
}

// before is a check with the corner and the mends that the rocket before the last edit
// had for it.
func (v *View) before(c gates.Check) checkEntry {
	if !v.Scene.Corners.Ready || !c.Judged {
		return checkEntry{Check: c}
	}
	o := checkOf(&v.Scene.Corners.Result.Verdict, c.Key)
	if o == nil {
		return checkEntry{Check: c}
	}
	c.Values[results.Corner] = o.Values[results.Corner]
	if c.Pass && o.Fails() && o.Case == results.Corner {
		c.Value, c.Case, c.Word, c.Level, c.Pass = o.Value, o.Case, o.Word, o.Level, o.Pass
	}
	return v.unmended(checkEntry{Check: c, old: true})
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
