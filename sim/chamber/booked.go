package chamber

// Booked is what a logbook says of a chamber. Where the rocket file says otherwise the worse of the
// two counts: the more cycles, the lower proof, the older one. It does not change. Since a proof
// means since the last that was enough for the rocket's pressure; all of the book without one.
type Booked struct {
	Missing   string   // why the logbook is not counted by; empty when it is
	Unnamed   string   // one that lies beside the rocket file, which does not name it: that is why; empty for none
	Cycles    int      // pressurisations in all
	Since     int      // of these since the proof
	Proof     float64  // the last in the book, enough or not, gauge, Pa; 0 for none
	Proved    float64  // the higher of that and of the rocket file's, which the chamber has been through all the same, Pa
	ProofDate string   // its day, as in 2026-05-01; empty for none
	Most      float64  // greatest pressure since the proof, gauge, Pa; NaN when none is known
	Untold    int      // pressurisations since the proof of which the pressure is not known
	Hardest   float64  // landing since the proof, m/s; NaN when none was measured
	Damage    []string // found since the proof, each with its day
	Disagrees []string // keys of the rocket file that say otherwise than the book
}

// ProvedTo is the highest proof that the chamber went through, as far as rocket file and logbook tell, gauge, Pa; 0 for none. The one
// that counts for its pressure may be lower.
func (c *Chamber) ProvedTo() float64 {
	if c.Booked != nil {
		return max(c.Proof, c.Booked.Proved)
	}
	return c.Proof
}
