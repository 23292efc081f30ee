package logbook

import (
	"math"
	"slices"
)

// State is what a book says of one chamber.
type State struct {
	Entries  int     // of this chamber
	Cycles   int     // times that it was under pressure, in all
	Proof    *Entry  // the last of which the pressure is known; nil without one
	Enough   bool    // that one was
	Since    int     // times under pressure since the last proof that was enough, that itself left out
	Most     float64 // greatest pressure since, Pa; NaN without
	Untold   int     // times under pressure since of which the pressure is not known
	Hardest  float64 // hardest landing measured since, m/s; NaN without
	Damaged  []Entry // entries since that tell of damage
	Unmarked int     // entries of the book that name no chamber, and so count for every one
}

// alike is how far pressures may be apart by their writing alone.
const alike = 1e-9

// Of sums up the entries of a chamber by its serial, in the order of their days. An entry
// that names no chamber counts for each, and without a serial all count: what is not known is never
// taken for good. Wanted is the pressure that a proof must have to be enough, Pa: one that is lower, or
// of which no pressure is told, settles nothing of what was before it.
func (b *Book) Of(serial string, wanted float64) State {
	s := State{Most: math.NaN(), Hardest: math.NaN()}
	own := make([]Entry, 0, len(b.Entries))
	for _, e := range b.Entries {
		if e.Chamber == "" {
			s.Unmarked++
		}
		if serial == "" || e.Chamber == "" || e.Chamber == serial {
			own = append(own, e)
		}
	}
	slices.SortStableFunc(own, func(a, b Entry) int {
		x, _ := a.Day()
		y, _ := b.Day()
		return x.Compare(y)
	})
	s.Entries = len(own)
	for i := range own {
		e := &own[i]
		if e.Pressurises() {
			s.Cycles++
			s.Since++
			if math.IsNaN(e.Pressure) {
				s.Untold++
			} else if !(e.Pressure <= s.Most) {
				s.Most = e.Pressure
			}
		}
		if e.Kind == Proof && e.Pressure > 0 {
			s.Proof, s.Enough = e, e.Pressure >= wanted*(1-alike)
			if s.Enough {
				s.Since, s.Most, s.Untold, s.Hardest, s.Damaged = 0, math.NaN(), 0, math.NaN(), nil
			}
		}
		if !math.IsNaN(e.Landing) && !(e.Landing <= s.Hardest) {
			s.Hardest = e.Landing
		}
		if e.Damaged() {
			s.Damaged = append(s.Damaged, *e)
		}
	}
	return s
}
