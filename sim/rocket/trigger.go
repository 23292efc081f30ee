package rocket

import (
	"ullage/sim/fault"
	"ullage/sim/quantity"
)

// Rule says when a canopy is released.
type Rule struct {
	Trigger Trigger
	Value   float64 // what the trigger's row says: mostly seconds, or metres above the site
}

// Trigger is what a rule waits for.
type Trigger int

// The triggers. Never is also what a rule for the other drive only amounts to.
const (
	Never Trigger = iota
	AfterLaunch
	AfterBurnout
	AfterApogee
	Falling
	Ejection
)

// Moment is an event of a flight that rules count from.
type Moment int

// The moments.
const (
	Launch Moment = iota // release on water, ignition on a motor
	Burnout
	Apogee
)

// TriggerRow is a row of the table of triggers: how a rule reads, what its number is, and
// what it counts from.
type TriggerRow struct {
	Trigger Trigger
	Words   string // a file's, before the number: "launch"
	Example string // of a rule as a file has it
	From    Moment // before it nothing opens
	// Range is what the number in the rule may be. Of a time it stands behind a sign and
	// counts seconds from the moment; of a length it is a height above the site, at which
	// the canopy opens on the way down. A rule by the charge has no number of its own.
	Range  quantity.Range
	Charge bool   // the motor's charge opens the canopy, its delay after the moment
	Title  string // of the number where it stands alone, as on an axis
	Reads  string // the number in a sentence, % for it
	Early  string // the same of a number below 0; empty when there is none
}

// triggers is the table.
var triggers = []TriggerRow{
	{Trigger: AfterLaunch, Words: "launch", Example: "launch + 9 s", From: Launch, Range: seconds(0, 600), Title: "after launch", Reads: "% after launch"},
	{Trigger: AfterBurnout, Words: "burnout", Example: "burnout + 8 s", From: Burnout, Range: seconds(0, 600), Title: "after burnout", Reads: "% after burnout"},
	{Trigger: AfterApogee, Words: "apogee", Example: "apogee + 1 s", From: Apogee, Range: seconds(-60, 600), Title: "after apogee", Reads: "% after apogee", Early: "% before apogee"},
	{Trigger: Falling, Words: "falling through", Example: "falling through 120 m", From: Apogee, Range: metres(1, 30e3), Title: "falling through", Reads: "falling through %"},
	{Trigger: Ejection, Words: "ejection", Example: "ejection", From: Burnout, Charge: true, Title: "after burnout", Reads: "% after burnout"},
}

// Triggers lists the rows of the table.
func Triggers() []TriggerRow { return append([]TriggerRow(nil), triggers...) }

// Row is the trigger's row of the table; nil for Never.
func (t Trigger) Row() *TriggerRow {
	for i := range triggers {
		if triggers[i].Trigger == t {
			return &triggers[i]
		}
	}
	return nil
}

// Numbered tells whether a rule has a number of its own.
func (w *TriggerRow) Numbered() bool { return !w.Charge }

// Falls tells whether the number is a height rather than a time.
func (w *TriggerRow) Falls() bool { return w.Numbered() && w.Range.Dimension == quantity.Length }

// check looks at the number in a rule; key is that of the rule.
func (u Rule) check(c *checker, canopy, drive string) {
	row := u.Trigger.Row()
	if row == nil || !row.Numbered() {
		return
	}
	if bad := row.Range.Check(u.Value); bad != nil {
		c.take(fault.List{bad.Of("canopy."+canopy+".deploy."+drive, "")})
	}
}
