package words

import (
	"ullage/sim"
	"ullage/sim/gates"
	"ullage/sim/report/page"
)

// warning is how one code is told: as a finding (a label, a value, a word) and
// as sentences that say what happened and what to do about it.
type warning struct {
	code  sim.WarningCode
	label string // of a finding; the canopy's name takes its place
	word  string
	value func(p Printer, w sim.Warning) string // nil when there is no number
	text  func(p Printer, w sim.Warning) string
}

// warnings has every code of sim.WarningCode.
var warnings = []warning{
	{sim.LiquidLeft, "liquid aboard", gates.WordLeft,
		func(p Printer, w sim.Warning) string { return p.Mass(w.Value) },
		func(p Printer, w sim.Warning) string {
			return "The jet stopped with " + p.Mass(w.Value) + " of liquid still aboard, carried up as ballast: " +
				"too much water for this pressure. Fill less."
		}},
	{sim.NeverLifted, "lift-off", gates.WordNever, nil,
		func(p Printer, w sim.Warning) string {
			return "The thrust never exceeded the weight along the guide, so the rocket stayed where it was. " +
				"Make it lighter, or give it more thrust: a wider throat, or a stronger motor."
		}},
	{sim.NeverLeftGuide, "travel on the guide", gates.WordShort,
		func(p Printer, w sim.Warning) string { return p.Height(w.Value) },
		func(p Printer, w sim.Warning) string {
			return "The rocket moved " + p.Height(w.Value) + " along the guide, slid back and came to rest on the pad. " +
				"Make it lighter, or give it more thrust: a wider throat, or a stronger motor."
		}},
	{sim.StuckOnTube, "travel on the tube", gates.WordShort,
		func(p Printer, w sim.Warning) string { return p.Height(w.Value) },
		func(p Printer, w sim.Warning) string {
			return "The rocket stopped on the launch tube after " + p.Height(w.Value) + ": " +
				"the gas could push it no farther. Make it lighter, fill less, or shorten the tube."
		}},
	{sim.TubeTipWet, "launch tube tip", gates.WordWet,
		func(p Printer, w sim.Warning) string { return p.Size(w.Value) + " deep" },
		func(p Printer, w sim.Warning) string {
			return "The liquid stands " + p.Size(w.Value) + " deep but the launch tube reaches only " + p.Size(w.Limit) +
				" into the chamber: water would run down the tube. Fill less, or use a longer tube."
		}},
	{sim.NoCanopy, "canopy", gates.WordNone, nil,
		func(p Printer, w sim.Warning) string {
			return "Nothing slows the fall: the rocket comes down as fast as its drag lets it. Add a [[canopy]]."
		}},
	{sim.CanopyNever, "canopy", gates.WordNever, nil,
		func(p Printer, w sim.Warning) string {
			return "Canopy " + page.Printable(w.Canopy) + " never opens on this flight. " +
				"Give it a rule for this drive, or one that comes due before the landing."
		}},
	{sim.CanopyWaited, "canopy", gates.WordLate,
		func(p Printer, w sim.Warning) string { return "waited " + p.Time(w.Value) },
		func(p Printer, w sim.Warning) string {
			return "Canopy " + page.Printable(w.Canopy) + " was due while the rocket was still on the guide and opened " +
				p.Time(w.Value) + " late, as the guide ended. Set it later."
		}},
	{sim.CanopyAtApogee, "canopy", gates.WordHigh,
		func(p Printer, w sim.Warning) string { return "set to " + p.Height(w.Value) },
		func(p Printer, w sim.Warning) string {
			return "Canopy " + page.Printable(w.Canopy) + " is set to open falling through " + p.Height(w.Value) +
				", but apogee is at " + p.Height(w.Limit) + ": it opened there. Set it lower, or to apogee."
		}},
	{sim.CanopyNotFull, "canopy", gates.WordPartial, nil,
		func(p Printer, w sim.Warning) string {
			return "Canopy " + page.Printable(w.Canopy) + " had not filled when the rocket landed. Open it earlier or higher."
		}},
	{sim.CanopyThrusting, "canopy", gates.WordEarly, nil,
		func(p Printer, w sim.Warning) string {
			return "Canopy " + page.Printable(w.Canopy) + " opens while the rocket is still pushed: it tears off, or the thrust drives " +
				"the rocket through it. Set it later."
		}},
	{sim.CanopyOrder, "canopy", gates.WordEarly,
		func(p Printer, w sim.Warning) string { return p.Time(w.Value) + " early" },
		func(p Printer, w sim.Warning) string {
			return "Canopy " + page.Printable(w.Canopy) + " opens " + p.Time(w.Value) + " before a smaller one that is there to slow " +
				"the rocket for it. Set it later, or the smaller one earlier."
		}},
	{sim.TubeLeaks, "launch tube gap", gates.WordLarge,
		func(p Printer, w sim.Warning) string { return p.Size(w.Value) },
		func(p Printer, w sim.Warning) string {
			return "The launch tube leaves a gap of " + p.Size(w.Value) + " all round in the throat, more than " + p.Size(w.Limit) +
				": it is no piston, gas and water pass it, and the flight as computed takes it for tight. Use a tube that fits the throat."
		}},
	{sim.CurveEndsAbove, "end of the thrust curve", gates.WordHigh,
		func(p Printer, w sim.Warning) string { return p.Force(w.Value) },
		func(p Printer, w sim.Warning) string {
			return "The thrust curve ends at " + p.Force(w.Value) + ", and the thrust drops to 0 there. " +
				"Check that the table is whole; end it with a point of no thrust."
		}},
	{sim.LandedThrusting, "thrust at the landing", gates.WordLeft, nil,
		func(p Printer, w sim.Warning) string {
			return "The rocket reached the ground with thrust left. Tilt the rail less, or give it more thrust for its weight."
		}},
	{sim.TimeLimit, "flight", gates.WordCutOff,
		func(p Printer, w sim.Warning) string { return "at " + p.Time(w.Value) },
		func(p Printer, w sim.Warning) string {
			return "The rocket was still flying after " + p.Time(w.Value) + " and the computation stopped there. " +
				"Check the mass and the size of the canopies."
		}},
	{sim.DragBeyondTable, "drag table", gates.WordShort,
		func(p Printer, w sim.Warning) string { return "Mach " + p.Number(w.Value) + " reached" },
		func(p Printer, w sim.Warning) string {
			return "The flight reached Mach " + p.Number(w.Value) + ", beyond what body.drag covers, where drag changes " +
				"fast. Give body.drag as a table against Mach that goes as far."
		}},
	{sim.SteepNose, "nose", gates.WordHigh,
		func(p Printer, w sim.Warning) string { return p.Angle(w.Value) },
		func(p Printer, w sim.Warning) string {
			return "The nose meets the tube at " + p.Angle(w.Value) + ", more than " + p.Angle(w.Limit) +
				": the flow leaves it there, and its drag as computed is a guess. Make it longer, or give body.drag as measured."
		}},
	{sim.SteepTaper, "boat-tail", gates.WordHigh,
		func(p Printer, w sim.Warning) string { return p.Angle(w.Value) },
		func(p Printer, w sim.Warning) string {
			return "The boat-tail narrows at a half-angle of " + p.Angle(w.Value) + ", more than " + p.Angle(w.Limit) +
				": the flow does not follow it, and its drag as computed is a guess. Make it longer, or give body.drag as measured."
		}},
	{sim.Unstable, "stability margin", gates.WordLow,
		func(p Printer, w sim.Warning) string { return p.Number(w.Value) + " calibres" },
		func(p Printer, w sim.Warning) string {
			return "The balance point comes behind the centre of pressure (least margin " + p.Number(w.Value) +
				" calibres): it will not fly straight. Put weight in the nose, or give it larger fins, and do not fly it so."
		}},
	{sim.Tumbles, "angle of attack", gates.WordHigh,
		func(p Printer, w sim.Warning) string { return p.Angle(w.Value) },
		func(p Printer, w sim.Warning) string {
			return "The rocket turns broadside to the air, " + p.Angle(w.Value) + ", while it is fast: it tumbles or breaks. " +
				"Raise the stability margin, or fly in less wind."
		}},
	{sim.MotorTooWide, "motor", gates.WordLarge,
		func(p Printer, w sim.Warning) string { return p.Size(w.Value) },
		func(p Printer, w sim.Warning) string {
			return "The motor measures " + p.Size(w.Value) + " where the motor mount takes " + p.Size(w.Limit) +
				". Choose a motor that fits, or correct [motor_mount]."
		}},
	{sim.MotorTooLong, "motor", gates.WordLarge,
		func(p Printer, w sim.Warning) string { return p.Size(w.Value) },
		func(p Printer, w sim.Warning) string {
			return "The motor is " + p.Size(w.Value) + " long where the motor mount is " + p.Size(w.Limit) +
				". Choose a motor that fits, or correct [motor_mount]."
		}},
	{sim.MotorSlides, "retainer", gates.WordLarge,
		func(p Printer, w sim.Warning) string { return p.Size(w.Value) },
		func(p Printer, w sim.Warning) string {
			return "The opening of the motor's retainer, " + p.Size(w.Value) + ", is no narrower than what it keeps in, " + p.Size(w.Limit) +
				": the motor slides out as it is lit or as the charge fires. Give it a narrower one, or correct motor_mount.retainer."
		}},
}

// warningOf finds how a code is told.
func warningOf(code sim.WarningCode) (warning, bool) {
	for _, w := range warnings {
		if w.code == code {
			return w, true
		}
	}
	return warning{}, false
}

// Warning is a warning as sentences: what happened, and what to do about it. A code it does
// not know is given as it is.
func (p Printer) Warning(w sim.Warning) string {
	if told, ok := warningOf(w.Code); ok {
		return told.text(p, w)
	}
	return string(w.Code)
}

// ShortWarning is a warning as a finding tells it: of what, how much where there is a
// number, and the word for it.
func (p Printer) ShortWarning(w sim.Warning) (label, value, word string) {
	label, word = string(w.Code), gates.WordUnknown
	if told, ok := warningOf(w.Code); ok {
		label, word = told.label, told.word
		if told.value != nil {
			value = told.value(p, w)
		}
	}
	if name := page.Printable(w.Canopy); name != "" {
		label = name
	}
	return label, value, word
}
