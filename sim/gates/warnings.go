package gates

import "ullage/sim"

// bound is what becomes of a warning: the check that fails with it, or why it is a note.
type bound struct {
	check  string // its key; one of a canopy goes on with a dot and the canopy's name
	canopy bool
	note   string
}

// warnings binds every code of [sim.WarningCodes].
var warnings = map[sim.WarningCode]bound{
	sim.LiquidLeft:      {check: checkLeft},
	sim.NeverLifted:     {check: LimitRailExit},
	sim.NeverLeftGuide:  {check: LimitRailExit},
	sim.StuckOnTube:     {check: LimitRailExit},
	sim.TubeTipWet:      {check: checkTubeTip},
	sim.TubeLeaks:       {check: checkTubeGap},
	sim.NoCanopy:        {check: checkUnstated},
	sim.CanopyNever:     {check: LimitOpening, canopy: true},
	sim.CanopyWaited:    {check: checkFree, canopy: true},
	sim.CanopyThrusting: {check: checkFree, canopy: true},
	sim.CanopyAtApogee:  {check: checkPlace, canopy: true},
	sim.CanopyNotFull:   {check: checkFull, canopy: true},
	sim.CanopyOrder:     {check: checkTurn, canopy: true},
	sim.LandedThrusting: {check: checkThrusting},
	sim.TimeLimit:       {check: LimitLanding},
	sim.DragBeyondTable: {check: checkDragReach},
	sim.SteepNose:       {check: checkNose},
	sim.SteepTaper:      {check: checkTaper},
	sim.Unstable:        {check: checkLeastMargin},
	sim.Tumbles:         {check: LimitAttackMost},
	sim.MotorTooWide:    {check: checkMotorFits},
	sim.MotorTooLong:    {check: checkMotorLength},
	sim.MotorSlides:     {check: checkMotorHeld},
	sim.CurveEndsAbove: {note: "the flight is flown with what the table holds; whether the table is whole only its source can tell, " +
		"and what it leaves out would push more"},
}

// NoteOn is why a warning is no more than a note; empty for one that a check fails by.
func NoteOn(code sim.WarningCode) string { return warnings[code].note }

// CheckOf is the key of the check that fails by a warning, or with which it begins: of a
// canopy out of its turn one of several. Empty for a note.
func CheckOf(w sim.Warning) string {
	b := warnings[w.Code]
	if b.canopy {
		return b.check + "." + w.Canopy
	}
	return b.check
}
