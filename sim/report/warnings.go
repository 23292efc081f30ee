package report

import (
	"ullage/sim"
	"ullage/sim/gates"
	"ullage/sim/quantity"
)

// warning is how one code is told: as a finding (a label, a value, a word) and
// as sentences that say what happened and what to do about it.
type warning struct {
	code  sim.WarningCode
	level gates.Level
	label string // of a finding; the canopy's name takes its place
	word  string
	value func(p printer, w sim.Warning) string // nil when there is no number
	text  func(p printer, w sim.Warning) string
}

// warnings has every code of sim.WarningCode.
var warnings = []warning{
	{sim.LiquidLeft, gates.Caution, "liquid aboard", gates.WordLeft,
		func(p printer, w sim.Warning) string { return p.mass(w.Value) },
		func(p printer, w sim.Warning) string {
			return "The jet stopped with " + p.mass(w.Value) + " of liquid still aboard, carried up as ballast: " +
				"too much water for this pressure. Fill less, or raise the pressure within what the chamber is proved for."
		}},
	{sim.NeverLifted, gates.Bad, "lift-off", gates.WordNever, nil,
		func(p printer, w sim.Warning) string {
			return "The thrust never exceeded the weight along the guide, so the rocket stayed where it was. " +
				"Make it lighter, or give it more thrust: a wider throat or more pressure, or a stronger motor."
		}},
	{sim.NeverLeftGuide, gates.Bad, "travel on the guide", gates.WordShort,
		func(p printer, w sim.Warning) string { return p.height(w.Value) },
		func(p printer, w sim.Warning) string {
			return "The rocket moved " + p.height(w.Value) + " along the guide, slid back and came to rest on the pad. " +
				"Make it lighter, or give it more thrust: a wider throat or more pressure, or a stronger motor."
		}},
	{sim.StuckOnTube, gates.Bad, "travel on the tube", gates.WordShort,
		func(p printer, w sim.Warning) string { return p.height(w.Value) },
		func(p printer, w sim.Warning) string {
			return "The rocket stopped on the launch tube after " + p.height(w.Value) + ": " +
				"the gas could push it no farther. Raise the pressure, or shorten the tube."
		}},
	{sim.TubeTipWet, gates.Caution, "launch tube tip", gates.WordWet,
		func(p printer, w sim.Warning) string { return p.size(w.Value) + " deep" },
		func(p printer, w sim.Warning) string {
			return "The liquid stands " + p.size(w.Value) + " deep but the launch tube reaches only " + p.size(w.Limit) +
				" into the chamber: water would run down the tube. Fill less, or use a longer tube."
		}},
	{sim.NoCanopy, gates.Bad, "canopy", gates.WordNone, nil,
		func(p printer, w sim.Warning) string {
			return "Nothing slows the fall: the rocket comes down as fast as its drag lets it. Add a [[canopy]]."
		}},
	{sim.CanopyNever, gates.Bad, "canopy", gates.WordNever, nil,
		func(p printer, w sim.Warning) string {
			return "Canopy " + printable(w.Canopy) + " never opens on this flight. " +
				"Give it a rule for this drive, or one that comes due before the landing."
		}},
	{sim.CanopyWaited, gates.Caution, "canopy", gates.WordLate,
		func(p printer, w sim.Warning) string { return "waited " + p.time(w.Value) },
		func(p printer, w sim.Warning) string {
			return "Canopy " + printable(w.Canopy) + " was due while the rocket was still on the guide and opened " +
				p.time(w.Value) + " late, as the guide ended. Set it later."
		}},
	{sim.CanopyAtApogee, gates.Caution, "canopy", gates.WordHigh,
		func(p printer, w sim.Warning) string { return "set to " + p.height(w.Value) },
		func(p printer, w sim.Warning) string {
			return "Canopy " + printable(w.Canopy) + " is set to open falling through " + p.height(w.Value) +
				", but the top is at " + p.height(w.Limit) + ": it opened there. Set it lower, or to apogee."
		}},
	{sim.CanopyNotFull, gates.Bad, "canopy", gates.WordPartial, nil,
		func(p printer, w sim.Warning) string {
			return "Canopy " + printable(w.Canopy) + " had not filled when the rocket landed. Open it earlier or higher."
		}},
	{sim.CurveEndsAbove, gates.Caution, "end of the thrust curve", gates.WordHigh,
		func(p printer, w sim.Warning) string { return p.force(w.Value) },
		func(p printer, w sim.Warning) string {
			return "The thrust curve ends at " + p.force(w.Value) + ", and the thrust drops to 0 there. " +
				"Check that the table is whole; end it with a point of no thrust."
		}},
	{sim.LandedThrusting, gates.Bad, "thrust at the landing", gates.WordLeft, nil,
		func(p printer, w sim.Warning) string {
			return "The rocket reached the ground with thrust left. Tilt the rail less, or give it more thrust for its weight."
		}},
	{sim.TimeLimit, gates.Bad, "flight", gates.WordCutOff,
		func(p printer, w sim.Warning) string { return "at " + p.time(w.Value) },
		func(p printer, w sim.Warning) string {
			return "The rocket was still flying after " + p.time(w.Value) + " and the computation stopped there. " +
				"Check the mass and the size of the canopies."
		}},
	{sim.DragBeyondTable, gates.Caution, "drag table", gates.WordShort,
		func(p printer, w sim.Warning) string { return "Mach " + p.number(w.Value) + " reached" },
		func(p printer, w sim.Warning) string {
			return "The flight reached Mach " + p.number(w.Value) + ", beyond what body.drag covers, where drag changes " +
				"fast. Give body.drag as a table against Mach that goes as far."
		}},
	{sim.Unstable, gates.Bad, "stability margin", gates.WordLow,
		func(p printer, w sim.Warning) string { return p.number(w.Value) + " calibres" },
		func(p printer, w sim.Warning) string {
			return "The balance point comes behind the centre of pressure (least margin " + p.number(w.Value) +
				" calibres): it will not fly straight. Put weight in the nose, or give it larger fins, and do not fly it so."
		}},
	{sim.Tumbles, gates.Bad, "angle of attack", gates.WordHigh,
		func(p printer, w sim.Warning) string { return p.angle(w.Value) },
		func(p printer, w sim.Warning) string {
			return "The rocket turns broadside to the air, " + p.angle(w.Value) + ", while it is fast: it tumbles or breaks. " +
				"Raise the stability margin, or fly in less wind."
		}},
	{sim.MotorTooWide, gates.Bad, "motor", gates.WordLarge,
		func(p printer, w sim.Warning) string { return p.size(w.Value) },
		func(p printer, w sim.Warning) string {
			return "The motor measures " + p.size(w.Value) + " where the motor mount takes " + p.size(w.Limit) +
				". Choose a motor that fits, or correct [motor_mount]."
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

// WarningText is a warning as sentences: what happened, and what to do about it.
// A code it does not know is given as it is.
func WarningText(w sim.Warning, sys quantity.System) string {
	told, ok := warningOf(w.Code)
	if !ok {
		return string(w.Code)
	}
	return told.text(printer{sys}, w)
}

// warningFinding is a warning as a finding.
func warningFinding(p printer, w sim.Warning) Finding {
	f := Finding{Key: "warning." + string(w.Code), Label: string(w.Code), Word: gates.WordUnknown, Level: gates.Caution}
	if told, ok := warningOf(w.Code); ok {
		f.Label, f.Word, f.Level = told.label, told.word, told.level
		if told.value != nil {
			f.Value = told.value(p, w)
		}
	}
	if name := printable(w.Canopy); name != "" {
		f.Key += "." + name
		f.Label = name
	}
	f.Detail = WarningText(w, p.sys)
	return f
}
