package words

import (
	"strings"

	"ullage/sim/chamber"
	"ullage/sim/report/page"
)

// WriteProofDown says where a proof goes: into the chamber's logbook where the rocket file names one, since
// the worse of file and logbook counts.
func WriteProofDown(booked bool) string {
	if booked {
		return "enter it with ullage record FILE proof pressure=…, and take chamber.proof and chamber.proof_date out of the rocket file, since the worse of file and logbook counts"
	}
	return "write pressure and day down as chamber.proof and chamber.proof_date in the rocket file"
}

// Counted says what keeps ullage check from counting by a logbook: that the rocket file, which would call
// it so, names none or another. Empty where it names this one.
func Counted(c *chamber.Chamber, book string, named bool) string {
	switch {
	case named:
		return ""
	case c != nil && c.Logbook != "":
		return "ullage check counts from " + page.Printable(c.Logbook) + ", which the rocket file names, not from this logbook."
	}
	if c == nil {
		return "ullage check does not count from it until the rocket file describes its [chamber], with logbook = \"" + page.Printable(book) + "\"."
	}
	return "ullage check does not count from it until [chamber] in the rocket file has logbook = \"" + page.Printable(book) + "\"."
}

// Booked says what a chamber's logbook makes of it that no figure shows: that it cannot be read,
// where the rocket file says otherwise, and what damage is noted. None without a logbook.
func Booked(c *chamber.Chamber) []string {
	if c == nil || c.Booked == nil {
		return nil
	}
	b := c.Booked
	if b.Unnamed != "" {
		return []string{"The logbook " + page.Printable(b.Unnamed) + " lies beside the rocket file, which does not name it as chamber.logbook: " +
			"what the chamber went through is not known, and its proof is not judged."}
	}
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
