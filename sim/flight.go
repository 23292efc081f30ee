package sim

// Moment is something that happened at a point of the flight.
type Moment struct {
	Happened bool
	Time     float64 // after release, s
	Height   float64 // above the pad, m
	Speed    float64 // over the ground, m/s
}

// GuideEnd is the moment a guide ends, read just before it does.
type GuideEnd struct {
	Moment
	ThrustToWeight float64
}

// Results are the numbers a user reads of one flight. SI units; see the fields.
type Results struct {
	LiftOffMass           float64 // everything aboard at release, kg
	LiftOffThrustToWeight float64 // greatest thrust on the guide (start-up surge apart) over the weight at release

	RailExit  GuideEnd // the end of the guided length
	TubeExit  GuideEnd // the launch tube's end; never on a motor
	LiquidOut Moment   // end of the liquid's flow
	Burnout   Moment   // end of thrust
	Apogee    Moment

	LiquidLeft float64 // aboard when its flow ended, kg
	WaterFlew  bool    // this was a water flight: LiquidLeft, Startup are meaningful

	Max     Maxima
	Startup Startup
	Drive   Drive

	Canopies  []CanopyResult // as in Rocket.Canopies
	Landing   Landing
	Stability Stability // Known with a shape and a balance
}

// Maxima are taken inside steps, not at their ends only.
type Maxima struct {
	Speed           float64 // m/s, over the ground
	Mach            float64
	Acceleration    float64 // |dv/dt|, m/s², until the first canopy, without the start-up surge
	DynamicPressure float64 // Pa
	Thrust          float64 // N, without the start-up surge

	SpeedTime, MachTime, AccelerationTime, DynamicPressureTime, ThrustTime float64 // s
}

// Startup is the surge of the liquid's first milliseconds: an upper bound that
// belongs to the idea of a valve that opens at once. Zero with steady flow.
type Startup struct {
	Thrust       float64 // N
	Acceleration float64 // m/s²
}

// Drive sums up what pushed.
type Drive struct {
	Impulse  float64 // N·s
	Average  float64 // over the burn time, N
	BurnTime float64 // s
	Class    string  // motor class letter; empty on water and below class A
}

// CanopyResult is what became of one canopy.
type CanopyResult struct {
	Name      string
	Opened    bool
	Time      float64 // of release, s
	Height    float64 // above the pad, m
	Airspeed  float64 // m/s
	Full      bool    // it filled before landing
	FullTime  float64 // s
	Load      float64 // greatest drag of this canopy while it fills, N
	LoadBound float64 // infinite-mass estimate Cx·q·(C_D S) with the largest q while it fills, N
	Descent   float64 // settled descent rate with all canopies open by then, at the height this leg ends, m/s
}

// Landing is the touch-down.
type Landing struct {
	Moment
	Vertical float64 // positive down, m/s
	Energy   float64 // ½·m·v² of the whole speed, J
	East     float64 // from the pad, m
	North    float64 // from the pad, m
}

// Sample is the flight at one time.
type Sample struct {
	Time            float64 // s
	East, North     float64 // m
	Height          float64 // above the pad, m
	Speed           float64 // over the ground, m/s
	Vertical        float64 // positive up, m/s
	Airspeed        float64 // m/s
	Acceleration    float64 // |dv/dt|, m/s²
	Mach            float64
	Thrust          float64 // N
	Drag            float64 // of body and canopies, N
	Mass            float64 // kg
	Chamber         float64 // absolute, Pa; NaN when there is no chamber
	Air             float64 // ambient pressure, Pa
	DynamicPressure float64 // Pa
	Attack          float64 // total angle of attack, rad; NaN when no rigid body flies
	Margin          float64 // stability margin, calibres; NaN without shape and balance
}

// EventKind names what an Event marks.
type EventKind int

// The events of a flight, in no order.
const (
	LiftOffEvent EventKind = iota
	TubeExitEvent
	RailExitEvent
	LiquidOutEvent
	BurnoutEvent
	ApogeeEvent
	CanopyEvent     // a canopy is released
	CanopyFullEvent // a canopy has filled
	LandingEvent
)

// Event marks a moment on the time axis.
type Event struct {
	Kind   EventKind
	Canopy int // index into Rocket.Canopies for the canopy events
	Time   float64
	Height float64
}

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
	CurveEndsAbove  WarningCode = "curve-ends-above"    // the thrust curve ends above 0; Value: N
	LandedThrusting WarningCode = "landed-under-thrust" // reached the ground with thrust left
	TimeLimit       WarningCode = "time-limit"          // still flying at the time limit; Value: s
	DragBeyondTable WarningCode = "drag-beyond-table"   // Mach exceeded the drag table or 0.8 with a constant; Value: Mach reached
	Unstable        WarningCode = "unstable"            // the balance point comes behind the centre of pressure; Value: least margin, calibres
	Tumbles         WarningCode = "tumbles"             // it turns broadside while it is fast; Value: greatest angle of attack, rad
	MotorTooWide    WarningCode = "motor-does-not-fit"  // motor larger than its mount; Value, Limit: m
)

// Warning is one thing the user should know about a flight.
type Warning struct {
	Code   WarningCode
	Canopy string  // canopy name, when it is about one
	Value  float64 // see the code
	Limit  float64 // see the code
}
