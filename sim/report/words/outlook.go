package words

import (
	"math"
	"strconv"

	"ullage/sim/gates"
	"ullage/sim/plan"
	"ullage/sim/report/page"
	"ullage/sim/results"
)

// SlotWind writes a wind of a day's planning, m/s: "-" for one that is not known.
func (p Printer) SlotWind(v float64) string {
	switch {
	case math.IsNaN(v):
		return "-"
	case v == 0:
		return "calm"
	}
	return p.WindSpeed(v)
}

// Outcome is the word on a drive in a slot.
func Outcome(o *plan.Outcome) string {
	if !o.Known {
		return gates.WordOpen
	}
	return o.Verdict.Word()
}

// OutcomeResult is a result of the flight of a slot, by its dotted name; not there where nothing flew, or it has none.
func OutcomeResult(o *plan.Outcome, name string) (row *results.Row, v float64, there bool) {
	if !o.Known || o.Verdict.Day == nil {
		return nil, 0, false
	}
	row = results.For(o.Verdict.Rocket).Must(name)
	v, there = row.Defined(o.Verdict.Day)
	return row, v, there
}

// OutcomeChange is what makes a slot pass, or what stands in the way; empty where it passes as it is.
func (p Printer) OutcomeChange(o *plan.Outcome) string {
	switch {
	case !o.Known:
		return "the forecast tells no wind"
	case o.Verdict.Pass():
		return ""
	case o.Change != nil:
		text := p.Remedy(*o.Change)
		if n := o.Changed.Unjudged(); n > 0 {
			text += "; " + strconv.Itoa(n) + " " + gates.WordOpen
		}
		return text
	case onlyWind(&o.Verdict):
		return "too much wind by its limit alone: wait for less"
	case o.Verdict.Failed() == 0:
		return "state what is missing: " + checksOf(o, (*gates.Check).Open)
	}
	return "no one change does it; outside: " + checksOf(o, (*gates.Check).Fails)
}

// onlyWind tells that nothing fails but the limit on the wind itself.
func onlyWind(v *gates.Verdict) bool {
	failed := false
	for i := range v.Checks {
		if c := &v.Checks[i]; c.Fails() {
			if c.Key != gates.LimitWind {
				return false
			}
			failed = true
		}
	}
	return failed
}

// checksOf names some checks of an outcome, the first few of many.
func checksOf(o *plan.Outcome, is func(*gates.Check) bool) string {
	var names []string
	for i := range o.Verdict.Checks {
		if c := &o.Verdict.Checks[i]; is(c) {
			names = append(names, page.Printable(c.Name))
		}
	}
	const most = 3
	if n := len(names); n > most {
		names = append(names[:most-1], strconv.Itoa(n-most+1)+" more")
	}
	return page.Listed(names)
}
