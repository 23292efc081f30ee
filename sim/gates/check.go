package gates

import (
	"math"
	"slices"

	"ullage/sim"
	"ullage/sim/results"
	"ullage/sim/rocket"
)

// Subject is what a check is about.
type Subject int

// The subjects.
const (
	Flight  Subject = iota // how it flies, on its day
	Chamber                // what the chamber holds
)

// Value is what a check found in one case.
type Value struct {
	Flown bool    // the case was looked at
	Known bool    // there is a number: what it is about happened
	V     float64 // SI
}

// Check is one row of go or no-go.
type Check struct {
	Key    string
	Result string // name of the result that it judges; empty when it judges something else
	About  Subject
	Name   string
	Limit  Limit // with both bounds for a stability margin
	Values [results.Cases]Value

	Value    float64      // of the worst case, SI; NaN when there is none
	Case     results.Case // the worst
	Word     string       // one of Words
	Level    Level
	Judged   bool     // there was something to judge by; what is not judged neither passes nor fails
	Pass     bool     // judged, and not outside a limit that fails
	SD       float64  // of Value about the day's, by its slopes; 0 where the corner was not looked at
	Remedies []Remedy // what would make a failed check pass; what would make an unjudged one judged
}

// Verdict is go or no-go for one drive.
type Verdict struct {
	Power    rocket.Power
	Rocket   *rocket.Rocket
	Checks   []Check
	Cornered bool        // the worst corners were looked at
	Day      *sim.Flight // as the file has it
	Calm     *sim.Flight

	gates   []criterion          // what the checks were before anything flew
	corners cornerValues         // what flew in corners
	against map[string]deviation // the corner of each check, by its key
}

// check is that of a key; nil where there is none, and of no verdict.
func (v *Verdict) check(key string) *Check {
	if v == nil {
		return nil
	}
	if i := slices.IndexFunc(v.Checks, func(c Check) bool { return c.Key == key }); i >= 0 {
		return &v.Checks[i]
	}
	return nil
}

// Word is the verdict on all checks together: no-go when any fails, else not judged when
// something to judge any of them by is not given, else go.
func (v *Verdict) Word() string {
	switch {
	case v.Failed() > 0:
		return WordNoGo
	case v.Unjudged() > 0:
		return WordOpen
	}
	return WordGo
}

// Level grades that word.
func (v *Verdict) Level() Level {
	return map[string]Level{WordNoGo: Bad, WordOpen: Caution, WordGo: Good}[v.Word()]
}

// Pass tells that every check was judged and none failed.
func (v *Verdict) Pass() bool { return v.Word() == WordGo }

// Fails tells of a check outside its limit. What could not be judged does not fail; nor
// does it pass.
func (c *Check) Fails() bool { return c.Judged && !c.Pass }

// Open tells of a check for which something to judge by is not given.
func (c *Check) Open() bool { return !c.Judged }

// Failed counts the checks outside their limits.
func (v *Verdict) Failed() int { return v.count((*Check).Fails) }

// Cautions counts the checks that are outside a limit which only warns.
func (v *Verdict) Cautions() int {
	return v.count((*Check).Warns)
}

// Unjudged counts the checks for which something is not given.
func (v *Verdict) Unjudged() int { return v.count((*Check).Open) }

func (v *Verdict) count(of func(*Check) bool) int {
	n := 0
	for i := range v.Checks {
		if of(&v.Checks[i]) {
			n++
		}
	}
	return n
}

// badness orders values by how far they are beyond a limit: above zero is outside. What
// did not happen is worst.
func (l Limit) badness(v Value) float64 {
	if !v.Known || math.IsNaN(v.V) {
		return math.Inf(1)
	}
	b := math.Inf(-1)
	if !math.IsInf(l.Min, 0) {
		b = l.Min - slack(l.Min) - v.V
	}
	if !math.IsInf(l.Max, 0) {
		b = math.Max(b, v.V-l.Max-slack(l.Max))
	}
	return b
}

// settle chooses the worst of the cases that were looked at and judges it.
func (c *Check) settle() {
	worst, any := math.Inf(-1), false
	c.Value, c.Case = math.NaN(), results.Day
	for _, k := range []results.Case{results.Day, results.Calm, results.Corner} { // the day first, where they are equal
		v := c.Values[k]
		if b := c.Limit.badness(v); v.Flown && (b > worst || !any) {
			worst, any, c.Case, c.Value = b, true, k, math.NaN()
			if v.Known {
				c.Value = v.V
			}
		}
	}
	c.Judged = true
	if math.IsNaN(c.Value) {
		c.Word, c.Level, c.Pass = WordNever, Bad, false
		return
	}
	c.Word, c.Level = c.Limit.Judge(c.Value)
	if c.Pass = c.Level == Good; !c.Pass && c.Value > c.Limit.Max {
		c.Word = c.Limit.wordAbove()
	}
}

// unjudged makes a check that lacks something to judge by, unless what is known of it is
// outside the limit already: that fails whatever else may be true.
func (c *Check) unjudged(m Remedy) bool {
	c.settle()
	if c.Fails() && !math.IsNaN(c.Value) && m.Kind != LeaveTheRail { // on its rail a number says nothing
		return false
	}
	c.Judged, c.Pass = false, false
	c.Word, c.Level = WordOpen, Caution
	c.Remedies = []Remedy{m}
	return true
}
