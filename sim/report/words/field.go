package words

import (
	"cmp"
	"strings"

	"ullage/sim/gates"
	"ullage/sim/report/page"
	"ullage/sim/rocket"
)

// NotReleased is what to do about a rocket under pressure that did not release: it may still do so, and is vented
// through its line, never by hand. Away is the distance that its gas alone asks for. Common practice, no source.
func NotReleased(away string) []string {
	return []string{
		"if it does not release: nobody goes near; the vent of the filling line opened from the same distance, the gauge seen to fall to 0 and stay",
		"if it does not vent so: left as it is, everyone away, " + away + " at least, till the range officer says what next; it is never knocked, shot or tipped",
		"vented: 5 minutes at 0, then the nozzle or valve opened, pointing away from everyone, and the water drained before it leaves the rail",
	}
}

// Misfire is what to do first about a motor that did not light. NFPA 1127 asks for a minute (from memory).
const Misfire = "misfire: disconnect the launcher and wait, as the range officer says and never less than a minute, before anyone goes near"

// NoGo is all that is left to do by a verdict that is no go; page is what the words stand on: "card".
func (p Printer) NoGo(v *gates.Verdict, page string) []string {
	out := []string{v.Word() + ": nothing is filled, pressurised, armed or launched by this " + page}
	if v.Power == rocket.WaterPower {
		out = append(out, "proof on record seen: "+p.ProofOnRecord(v.Rocket))
	}
	var mend []string
	if v.Failed() > 0 {
		mend = append(mend, "what fails mended")
	}
	if v.Unjudged() > 0 {
		mend = append(mend, "what is not judged given in the file")
	}
	return append(out, strings.Join(mend, ", ")+", and a new "+page+" made")
}

// ProofOnRecord is the pressure and the day of a chamber's proof.
func (p Printer) ProofOnRecord(r *rocket.Rocket) string {
	c := r.Chamber
	if c == nil || c.Proof == 0 {
		return gates.WordNone
	}
	text := p.Given(c.Proof, "bar")
	if c.ProofDate != "" {
		text += " on " + page.Printable(c.ProofDate)
	}
	return text
}

// Opens is when a canopy opens.
func (p Printer) Opens(r rocket.Rule) string {
	unit := "s"
	if r.Trigger.Falls() {
		unit = "m"
	}
	return cmp.Or(r.Text(func(v float64) string { return p.Given(v, unit) }, "−"), gates.WordNever)
}
