package words

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"ullage/sim/chamber"
)

func TestBooked(t *testing.T) {
	assert.Empty(t, Booked(nil))
	assert.Empty(t, Booked(&chamber.Chamber{}))
	assert.Empty(t, Booked(&chamber.Chamber{Booked: &chamber.Booked{Cycles: 3, Proof: 16e5}}))
	assert.Equal(t, []string{"The logbook x.toml cannot be read (no such file): what the chamber went through is not known, and its proof is not judged."},
		Booked(&chamber.Chamber{Logbook: "x.toml", Booked: &chamber.Booked{Missing: "no such file"}}))
	unnamed := Booked(&chamber.Chamber{Booked: &chamber.Booked{Missing: "not named", Unnamed: "x.logbook.toml"}})
	assert.Contains(t, unnamed[0], "The logbook x.logbook.toml lies beside the rocket file, which does not name it as chamber.logbook")
	assert.Equal(t, []string{"chamber.cycles and chamber.proof say otherwise in the rocket file than in the logbook: the worse counts.", "Damage since the proof: 2026-05-01: dent."},
		Booked(&chamber.Chamber{Booked: &chamber.Booked{Disagrees: []string{"chamber.cycles", "chamber.proof"}, Damage: []string{"2026-05-01: dent"}}}))
	assert.Equal(t, []string{"chamber.cycles says otherwise in the rocket file than in the logbook: the worse counts."},
		Booked(&chamber.Chamber{Booked: &chamber.Booked{Disagrees: []string{"chamber.cycles"}}}))
}
