package words

import (
	"strings"

	"ullage/sim/chamber"
	"ullage/sim/report/page"
)

// Booked says what a chamber's logbook makes of it that no figure shows: that it cannot be read,
// where the rocket file says otherwise, and what damage is noted. None without a logbook.
func Booked(c *chamber.Chamber) []string {
	if c == nil || c.Booked == nil {
		return nil
	}
	b := c.Booked
	if b.Missing != "" {
		return []string{"The logbook " + page.Printable(c.Logbook) + " cannot be read (" + page.Printable(b.Missing) +
			"): what the chamber went through is not known, and its proof is not judged."}
	}
	var all []string
	if len(b.Disagrees) > 0 {
		says := " says"
		if len(b.Disagrees) > 1 {
			says = " say"
		}
		all = append(all, page.Listed(b.Disagrees)+says+" otherwise in the rocket file than in the logbook: the worse counts.")
	}
	if len(b.Damage) > 0 {
		all = append(all, "Damage since the proof: "+page.Printable(strings.Join(b.Damage, "; "))+".")
	}
	return all
}
