package card

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/chamber"
	"ullage/sim/gates"
	"ullage/sim/quantity"
	"ullage/sim/report/words"
)

// 10 bar on the throat of 13 mm are 133 N, of which 2.01 kg hold 19.7 N.
func TestCardLauncher(t *testing.T) {
	day := dayOf(t)
	p := filler{words.In(quantity.Metric), &day}.page()
	assert.Equal(t, "more than 113 N", cardRow(t, p, "launcher", "hold-down, sealed at the throat").Cells[1])
	assert.Equal(t, "133 N", cardRow(t, p, "launcher", "push down on it at release").Cells[1])
	day = dayOf(t, set("power", "motor"), set("motor.name", `"H of the test"`), set("flyer.name", `"A. Flyer"`), set("flyer.certification", `"12, level 1"`))
	p = filler{words.In(quantity.Metric), &day}.page()
	for _, b := range p.Beside {
		assert.NotEqual(t, "launcher", b.Title, "a motor is not held down")
	}
	assert.True(t, strings.HasPrefix(cardRow(t, p, "set", "motor").Cells[1], "H of the test, class H, "))
	last := p.Below[len(p.Below)-1]
	assert.Equal(t, "A. Flyer, 12, level 1", last.Blanks[0].Text)
}

// Warm gas that cools to the air of the site loses pressure; without a temperature given nothing is told.
func TestCardCooled(t *testing.T) {
	day := dayOf(t, set("water.temperature", "45 degC"), set("chamber.temperature", "45 degC"), set("chamber.heat_factor", "0.95"))
	p := filler{words.In(quantity.Metric), &day}.page()
	// (10 + 0.977) × 289.15/318.15 − 0.977 bar
	assert.Contains(t, cardRow(t, p, "set", "cooled to the air").Cells[1], "9.00 bar")
	day = dayOf(t)
	for _, r := range blockOf(t, filler{words.In(quantity.Metric), &day}.page(), "set").Table.Rows {
		assert.NotEqual(t, "cooled to the air", r.Cells[0])
	}
}

// What the logbook counts stands on the card, and what makes a proof due.
func TestCardBooked(t *testing.T) {
	day := dayOf(t)
	day.Rocket.Chamber.Booked = &chamber.Booked{Cycles: 12, Since: 4, Proof: 16e5, ProofDate: "2026-09-12"}
	p := filler{words.In(quantity.Metric), &day}
	got := map[string]string{}
	p.history(func(what, text string) { got[what] = text })
	require.Len(t, got, 2)
	assert.Equal(t, "12 times in all, 4 since the proof", got["pressurised"])
	assert.Equal(t, "on 2027-09-12, or after 50 times, a hard landing or damage", got["proof due"], "365 days after it was made")
	booked := *day.Rocket.Chamber.Booked
	day.Rocket.Chamber.Booked, day.Rocket.Chamber.Cycles = nil, 7
	clear(got)
	p.history(func(what, text string) { got[what] = text })
	assert.Equal(t, "7 times in all, by the file", got["pressurised"], "without a logbook")
	for i := range day.Verdict.Checks {
		if c := &day.Verdict.Checks[i]; c.Key == gates.LimitProofAge {
			c.Level = gates.Caution
		}
	}
	p.history(func(what, text string) { got[what] = text })
	assert.Equal(t, "since 2027-09-12", got["proof due"])
	day.Rocket.Chamber.Proof = 0
	clear(got)
	p.history(func(what, text string) { got[what] = text })
	assert.NotContains(t, got, "proof due", "there is none to grow old")
	day.Rocket.Chamber.Booked, day.Rocket.Chamber.Proof = &booked, 16e5
	day.Rocket.Chamber.Booked.Missing = "there is no such file"
	clear(got)
	p.history(func(what, text string) { got[what] = text })
	assert.Equal(t, map[string]string{"logbook": "cannot be read: there is no such file"}, got)
}
