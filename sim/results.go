package sim

// Results are the numbers a user reads of one flight. SI units; see the fields.
type Results struct {
	LiftOffMass           float64 // everything aboard at release, kg
	LiftOffThrustToWeight float64 // greatest thrust on the guide (start-up surge apart) over the weight at release; from a launch tube that of its piston

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
	Duration     float64 // until the jet has gathered its speed, s
}

// Drive sums up what pushed.
type Drive struct {
	Impulse  float64 // N·s
	Average  float64 // over the burn time, N
	BurnTime float64 // s
	Class    string  // motor class letter; empty on water and below class A
	Exponent float64 // of the gas's expansion, as it flew; 0 on a motor
	Growth   float64 // share by which the chamber's volume had grown under its pressure; 0 where its wall is not known
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
	Filling   float64 // greatest drag of this canopy while it fills, N
	Hanging   float64 // its share, by drag area, of the weight that hangs on all that are open as it is, N
	Snatch    float64 // as its line stops it, from [recovery], N; 0 where that is not described
	Load      float64 // opening load: the greatest of those three, N
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
