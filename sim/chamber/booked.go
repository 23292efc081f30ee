package chamber

// Booked is what a logbook says of a chamber. Where the rocket file says otherwise the worse of the
// two counts: the more cycles, the lower proof, the older one. It does not change.
type Booked struct {
	Missing   string   // why the logbook cannot be read; empty when it was
	Cycles    int      // pressurisations in all
	Since     int      // of these since the proof; all of them without one
	Proved    bool     // a proof is in the book
	Hardest   float64  // landing since the proof, m/s; NaN when none was measured
	Damage    []string // found since the proof, each with its day
	Disagrees []string // keys of the rocket file that say otherwise than the book
}
