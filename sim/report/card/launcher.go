package card

import (
	"fmt"
	"slices"
	"strings"

	"ullage/sim/gates"
	"ullage/sim/report/card/form"
	"ullage/sim/report/page"
	"ullage/sim/report/words"
)

// launcher is what holds the rocket down and what it takes as it leaves.
func (p filler) launcher() form.Block {
	t := &form.Table{Columns: []form.Column{{}, {}}}
	add := func(what, text string) { t.Rows = append(t.Rows, form.Row{Cells: []string{what, text}}) }
	l := p.Rocket.OnTheLauncher()
	held := "at the throat"
	if l.Tube {
		held = "on the launch tube"
	}
	add("hold-down, sealed "+held, "more than "+p.Force(l.HoldDown))
	add("release under load", p.Force(l.HoldDown))
	add("push down on it at release", p.Force(l.Recoil))
	add("greatest thrust", p.Force(p.Verdict.Day.Max.Thrust))
	if up := &p.Verdict.Day.Startup; up.Thrust > 0 {
		add("surge as the jet starts", "at most "+p.Force(up.Thrust)+" for "+p.Text(up.Duration, "ms"))
	}
	return form.Block{Title: "launcher", Table: t, Notes: []string{"What holds and what lets go is tried with this load and no pressure first; twice of it is common practice, no source."}}
}

// history is how often the chamber was under pressure, as its logbook counts or the file says, and what makes a proof due.
func (p filler) history(add func(what, text string)) {
	c := p.Rocket.Chamber
	if c == nil {
		return
	}
	switch b := c.Booked; {
	case b != nil && b.Missing != "":
		add("logbook", "cannot be read: "+page.Printable(b.Missing))
		return
	case b != nil:
		add("pressurised", fmt.Sprintf("%d times in all, %d since the proof", b.Cycles, b.Since))
	case c.Cycles > 0 || c.Counted:
		add("pressurised", words.Plural(c.Cycles, "time")+" in all, by the file")
	}
	if c.Proof == 0 {
		return
	}
	var due []string
	old := false
	for i := range p.Verdict.Checks {
		check := &p.Verdict.Checks[i]
		old = old || check.Key == gates.LimitProofAge && check.Level != gates.Good
		if check.Fails() && slices.ContainsFunc(check.Remedies, func(m gates.Remedy) bool { return m.Kind == gates.ProveAgain || m.Kind == gates.ProveTo }) {
			due = append(due, page.Printable(check.Name))
		}
	}
	limits := p.Rocket.Limits.InForce()
	day, dated := gates.ProofDue(p.Rocket)
	text := fmt.Sprintf("after %.0f times, %.0f days, a hard landing or damage", limits.ProofCycles, limits.ProofDays)
	switch {
	case len(due) > 0:
		text = "now: " + strings.Join(due, ", ")
	case dated && old:
		text = "since " + day
	case dated:
		text = fmt.Sprintf("on %s, or after %.0f times, a hard landing or damage", day, limits.ProofCycles)
	}
	add("proof due", text)
}
