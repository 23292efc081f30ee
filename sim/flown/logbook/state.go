package logbook

import (
	"math"
	"slices"
)

// State is what a book says of one chamber.
type State struct {
	Entries  int     // of this chamber
	Cycles   int     // times that it was under pressure, in all
	Proof    *Entry  // the last; nil without one
	Since    int     // times under pressure since that proof, the proof itself left out
	Most     float64 // greatest pressure since, Pa; NaN without
	Hardest  float64 // hardest landing measured since, m/s; NaN without
	Damaged  []Entry // entries since that tell of damage
	Unmarked int     // entries of the book that name no chamber, and so count for every one
}

// Of sums up the entries of a chamber by its serial, in the order of their days. An entry
// that names no chamber counts for each, and without a serial all count: what is not known is never
// taken for good.
func (b *Book) Of(serial string) State {
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
			s.Most = math.Max(zeroIfNaN(s.Most), zeroIfNaN(e.Pressure))
		}
		if e.Kind == Proof {
			s.Proof, s.Since, s.Most, s.Hardest, s.Damaged = e, 0, math.NaN(), math.NaN(), nil
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

func zeroIfNaN(v float64) float64 {
	if math.IsNaN(v) {
		return 0
	}
	return v
}
