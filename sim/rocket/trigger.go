package rocket

import (
	"math"
	"slices"

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

	afterLast
)

// Moment is an event of a flight that rules count from.
type Moment int

// The moments.
const (
	Launch  Moment = iota // release on water, ignition on a motor
	Burnout               // the end of thrust
	Apogee

	Moments = iota // how many there are
)

// Name is what a moment is called on a drive: the trade speaks of a motor's burnout.
func (m Moment) Name(p Power) string {
	switch {
	case m == Launch:
		return "launch"
	case m == Apogee:
		return "apogee"
	case p == MotorPower:
		return "burnout"
	}
	return "end of thrust"
}

// TriggerRow is a row of the table of triggers: how a rule reads, what its number is, and
// what it counts from. A rule by the charge has no number of its own: it waits for the
// motor's delay. Of the others the number is mostly a time in seconds, which stands behind
// a sign; a length is the height above the site at which the canopy opens on the way down.
type TriggerRow struct {
	Trigger Trigger
	Words   string         // a file's, before the number: "launch"
	Example string         // of a rule as a file has it
	From    Moment         // what a time counts from; nothing falls before the apogee
	Range   quantity.Range // of the rule's own number
	Charge  bool           // the motor's charge opens the canopy
	Drive   Power          // on which alone it means anything; empty for both
}

// triggers is the table.
var triggers = []TriggerRow{
	{Trigger: AfterLaunch, Words: "launch", Example: "launch + 9 s", From: Launch, Range: seconds(0, 600)},
	{Trigger: AfterBurnout, Words: "burnout", Example: "burnout + 8 s", From: Burnout, Range: seconds(0, 600)},
	{Trigger: AfterApogee, Words: "apogee", Example: "apogee + 1 s", From: Apogee, Range: seconds(-60, 600)},
	{Trigger: Falling, Words: "falling through", Example: "falling through 120 m", From: Apogee, Range: metres(1, 30e3)},
	{Trigger: Ejection, Words: "ejection", Example: "ejection", From: Burnout, Charge: true, Drive: MotorPower},
}

// Triggers lists the rows of the table.
func Triggers() []TriggerRow { return slices.Clone(triggers) }

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
func (t Trigger) Numbered() bool { row := t.Row(); return row != nil && !row.Charge }

// Falls tells whether the number in a rule is a height rather than a time.
func (t Trigger) Falls() bool { return t.Numbered() && t.Row().Range.Dimension == quantity.Length }

// ByCharge tells whether a motor's charge opens the canopy.
func (t Trigger) ByCharge() bool { row := t.Row(); return row != nil && row.Charge }

// Title is what the number is called where it stands by itself, as on an axis: "after
// apogee". Of a rule by the charge that number is the motor's delay, and called so.
func (t Trigger) Title(p Power) string {
	switch row := t.Row(); {
	case row == nil:
		return ""
	case t.Falls():
		return row.Words
	case row.Charge:
		return "delay"
	default:
		return "after " + row.From.Name(p)
	}
}

// Sentence puts the number, written without a sign, into words: "2 s before apogee".
func (t Trigger) Sentence(p Power, number string, negative bool) string {
	switch row := t.Row(); {
	case row == nil:
		return ""
	case t.Falls():
		return row.Words + " " + number
	case negative:
		return number + " before " + row.From.Name(p)
	default:
		return number + " after " + row.From.Name(p)
	}
}

// Text is a rule as a file has it, with its number and a minus sign as written by the
// caller; empty for one that never opens.
func (u Rule) Text(number func(v float64) string, minus string) string {
	switch row := u.Trigger.Row(); {
	case row == nil:
		return ""
	case !u.Trigger.Numbered():
		return row.Words
	case u.Trigger.Falls():
		return row.Words + " " + number(u.Value)
	case u.Value < 0:
		return row.Words + " " + minus + " " + number(-u.Value)
	default:
		return row.Words + " + " + number(u.Value)
	}
}

// Waits is what a canopy's rule counts on the drive that flies: seconds from a moment. It
// is not ok where the rule counts none: it never opens, by a height, or by a charge that
// the drive does not have.
func (r *Rocket) Waits(canopy int) (from Moment, seconds float64, ok bool) {
	rule := r.Canopies[canopy].Rule(r.Power)
	row := rule.Trigger.Row()
	switch {
	case row == nil, rule.Trigger.Falls(), row.Drive != "" && row.Drive != r.Power:
		return 0, 0, false
	case row.Charge:
		if r.Motor == nil || math.IsNaN(r.Motor.Delay) {
			return 0, 0, false
		}
		return row.From, r.Motor.Delay, true
	}
	return row.From, rule.Value, true
}

// OpeningInput is the dotted name of the input that holds the number of a canopy's rule on
// the drive that flies: the rule itself, or the motor's delay. Empty where nothing opens
// the canopy.
func (r *Rocket) OpeningInput(canopy int) string {
	c := &r.Canopies[canopy]
	switch trigger := c.Rule(r.Power).Trigger; {
	case trigger.Numbered():
		return "canopy." + c.Name + ".deploy." + string(r.Power)
	case trigger.ByCharge():
		if _, _, ok := r.Waits(canopy); ok {
			return "motor.delay"
		}
	}
	return ""
}

// check looks at the number in a rule.
func (u Rule) check(c *checker, canopy, drive string) {
	if !u.Trigger.Numbered() {
		return
	}
	if bad := u.Trigger.Row().Range.Check(u.Value); bad != nil {
		c.take(fault.List{bad.Of("canopy."+canopy+".deploy."+drive, "")})
	}
}
