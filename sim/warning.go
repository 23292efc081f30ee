package sim

// WarningCode is a stable word for a warning; sim/report has the sentences.
type WarningCode string

// What a flight may warn of. The values each carries stand beside it.
const (
	LiquidLeft      WarningCode = "liquid-left"         // Value: kg left aboard
	NeverLifted     WarningCode = "never-lifted"        // thrust never exceeded the weight along the guide
	NeverLeftGuide  WarningCode = "never-left-guide"    // it moved, slid back and came to rest; Value: travel reached, m
	StuckOnTube     WarningCode = "stuck-on-tube"       // it stopped on the launch tube; Value: travel reached, m
	TubeTipWet      WarningCode = "tube-tip-wet"        // the tube's tip starts below the liquid; Value: depth of liquid, m; Limit: tube length, m
	NoCanopy        WarningCode = "no-canopy"           // nothing slows the fall
	CanopyNever     WarningCode = "canopy-never-opens"  // Canopy: which
	CanopyWaited    WarningCode = "canopy-waited"       // due on the guide, opened as it ended; Value: s late
	CanopyAtApogee  WarningCode = "canopy-at-apogee"    // apogee is below the set height; Value: set height, m; Limit: apogee, m
	CanopyNotFull   WarningCode = "canopy-not-full"     // landed before it filled
	CanopyThrusting WarningCode = "canopy-under-thrust" // opened before the end of thrust; Value: s before it
	CanopyOrder     WarningCode = "canopy-out-of-order" // opened before one of less drag area; Value: s before it
	TubeLeaks       WarningCode = "tube-leaks"          // the launch tube is no piston in its throat; Value: gap on one side, m; Limit: m
	CurveEndsAbove  WarningCode = "curve-ends-above"    // the thrust curve ends above 0; Value: N
	LandedThrusting WarningCode = "landed-under-thrust" // reached the ground with thrust left
	TimeLimit       WarningCode = "time-limit"          // still flying at the time limit; Value: s
	DragBeyondTable WarningCode = "drag-beyond-table"   // Mach exceeded the drag table or 0.8 with a constant; Value: Mach reached
	SteepNose       WarningCode = "steep-nose"          // the nose meets the tube at an angle its drag is not known for; Value, Limit: rad
	SteepTaper      WarningCode = "steep-boat-tail"     // a boat-tail is steeper than the flow follows; Value, Limit: half-angle, rad
	Unstable        WarningCode = "unstable"            // the balance point comes behind the centre of pressure; Value: least margin, calibres
	Tumbles         WarningCode = "tumbles"             // it turns broadside while it is fast; Value: greatest angle of attack, rad
	MotorTooWide    WarningCode = "motor-does-not-fit"  // motor wider than its mount; Value, Limit: m
	MotorTooLong    WarningCode = "motor-too-long"      // motor longer than its mount; Value, Limit: m
	MotorSlides     WarningCode = "motor-slides-out"    // retainer no narrower than what it holds; Value: its opening, Limit, m
)

// SameInstant is how near two times of a flight may be and count as one, s: events are
// found to a microsecond.
const SameInstant = 2e-6

// WarningCodes lists all of them.
func WarningCodes() []WarningCode {
	return []WarningCode{
		LiquidLeft, NeverLifted, NeverLeftGuide, StuckOnTube, TubeTipWet, TubeLeaks, NoCanopy, CanopyNever, CanopyWaited,
		CanopyAtApogee, CanopyNotFull, CanopyThrusting, CanopyOrder, CurveEndsAbove, LandedThrusting, TimeLimit,
		DragBeyondTable, SteepNose, SteepTaper, Unstable, Tumbles, MotorTooWide, MotorTooLong, MotorSlides,
	}
}

// Warning is one thing the user should know about a flight.
type Warning struct {
	Code   WarningCode
	Canopy string  // canopy name, when it is about one
	Value  float64 // see the code
	Limit  float64 // see the code
}
