package rocketfile

import (
	"errors"
	"io/fs"
	"math"
	"path/filepath"
	"strings"
	"time"

	"ullage/sim/chamber"
	"ullage/sim/fault"
	"ullage/sim/flown/logbook"
)

// logbook reads the book that chamber.logbook names and lets the worse of the two count: more
// cycles, the lower proof, the older one. A book that is not there, or that cannot be read, leaves
// cycles and proof unknown, and so does one that lies beside the file under its name and is not named: a file does not
// get rid of what its logbook says by one line less.
func (rd *reading) logbook() {
	c := rd.rocket.Chamber
	at, named := rd.where["chamber.logbook"]
	if c == nil {
		return
	}
	if !named || c.Logbook == "" {
		book := BookBeside(filepath.Base(rd.doc.name))
		if _, err := rd.disk.read(beside(rd.doc.dir, book)); err == nil || errors.Is(err, fs.ErrPermission) {
			c.Booked = &chamber.Booked{Missing: "the rocket file does not name it", Unnamed: book, Hardest: math.NaN()}
		}
		return
	}
	text, err := rd.disk.read(beside(at.doc.dir, c.Logbook))
	if err != nil {
		c.Booked = &chamber.Booked{Missing: fault.Reason(err), Hardest: math.NaN()}
		return
	}
	book, err := logbook.Read(c.Logbook, text)
	if err != nil {
		c.Booked = &chamber.Booked{Missing: fault.In(err)[0].Error(), Hardest: math.NaN()}
		return
	}
	c.Booked = Booked(book.Of(c.Serial, rd.rocket.ProofWanted()))
	rd.worse(c, c.Booked)
}

// BookBeside is the name of the logbook beside a rocket file that names none.
func BookBeside(path string) string {
	return strings.TrimSuffix(path, filepath.Ext(path)) + ".logbook.toml"
}

// Booked is what the sums of a logbook say of their chamber.
func Booked(s logbook.State) *chamber.Booked {
	b := &chamber.Booked{Cycles: s.Cycles, Since: s.Since, Most: s.Most, Untold: s.Untold, Hardest: s.Hardest}
	if s.Proof != nil {
		b.Proof = s.Proof.Pressure
		if day, err := s.Proof.Day(); err == nil {
			b.ProofDate = day.Format(time.DateOnly)
		}
	}
	for i := range s.Damaged {
		b.Damage = append(b.Damage, s.Damaged[i].Date+": "+s.Damaged[i].Damage)
	}
	return b
}

// worse lets the worse count of what file and book say.
func (rd *reading) worse(c *chamber.Chamber, b *chamber.Booked) {
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
	b.Proved = max(c.Proof, b.Proof)
	if b.Proof == 0 {
		differs("chamber.proof", proofGiven && c.Proof > 0)
		c.Proof, c.ProofDate = 0, ""
		return
	}
	const alike = 1e-3
	differs("chamber.proof", proofGiven && math.Abs(c.Proof-b.Proof) > alike*b.Proof)
	if !proofGiven || b.Proof < c.Proof {
		c.Proof = b.Proof
	}
	differs("chamber.proof_date", dateGiven && c.ProofDate != b.ProofDate)
	if !dateGiven || b.ProofDate < c.ProofDate {
		c.ProofDate = b.ProofDate
	}
}
