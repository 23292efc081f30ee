package rocketfile

import (
	"fmt"
	"math"
	"strings"

	"ullage/sim/chamber"
	"ullage/sim/fault"
	"ullage/sim/flown/logbook"
)

// logbook reads the book that chamber.logbook names and lets the worse of the two count: more
// cycles, the lower proof, the older one. A book that is not there, or that cannot be read, leaves
// cycles and proof unknown.
func (rd *reading) logbook() {
	c := rd.rocket.Chamber
	at, named := rd.where["chamber.logbook"]
	if c == nil || !named || c.Logbook == "" {
		return
	}
	text, err := rd.disk.read(beside(at.doc.dir, c.Logbook))
	if err != nil {
		c.Booked = &chamber.Booked{Missing: reason(err), Hardest: math.NaN()}
		return
	}
	book, err := logbook.Read(c.Logbook, text)
	if err != nil {
		c.Booked = &chamber.Booked{Missing: fault.In(err)[0].Error(), Hardest: math.NaN()}
		return
	}
	s := book.Of(c.Serial)
	b := &chamber.Booked{Cycles: s.Cycles, Since: s.Since, Proved: s.Proof != nil, Hardest: s.Hardest}
	for i := range s.Damaged {
		b.Damage = append(b.Damage, s.Damaged[i].Date+": "+s.Damaged[i].Damage)
	}
	rd.worse(c, b, s.Proof)
	c.Booked = b
}

// worse lets the worse count of what file and book say.
func (rd *reading) worse(c *chamber.Chamber, b *chamber.Booked, proof *logbook.Entry) {
	_, cyclesGiven := rd.where["chamber.cycles"]
	_, proofGiven := rd.where["chamber.proof"]
	_, dateGiven := rd.where["chamber.proof_date"]
	differs := func(key string, otherwise bool) {
		if otherwise {
			b.Disagrees = append(b.Disagrees, key)
		}
	}
	differs("chamber.cycles", cyclesGiven && c.Cycles != b.Cycles)
	c.Cycles = max(c.Cycles, b.Cycles)
	if proof == nil || math.IsNaN(proof.Pressure) {
		differs("chamber.proof", proofGiven && c.Proof > 0)
		c.Proof, c.ProofDate = 0, ""
		return
	}
	const alike = 1e-3
	differs("chamber.proof", proofGiven && math.Abs(c.Proof-proof.Pressure) > alike*proof.Pressure)
	if !proofGiven || proof.Pressure < c.Proof {
		c.Proof = proof.Pressure
	}
	day, err := proof.Day()
	if err != nil {
		return
	}
	date := fmt.Sprintf("%04d-%02d-%02d", day.Year(), day.Month(), day.Day())
	differs("chamber.proof_date", dateGiven && c.ProofDate != date)
	if !dateGiven || strings.Compare(date, c.ProofDate) < 0 {
		c.ProofDate = date
	}
}
