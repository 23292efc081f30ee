package tui

import (
	"context"
	"fmt"

	tea "github.com/charmbracelet/bubbletea"

	"ullage/sim/gates"
	"ullage/sim/quantity"
	"ullage/sim/report"
	"ullage/sim/rocket"
	"ullage/sim/study"
	"ullage/tui/view"
)

// judge decides go or no-go: [gates.Judge], or what a test puts in its place.
type judge func(context.Context, *rocket.Rocket, gates.Options) (gates.Verdict, error)

// weigh has the worst corners of the flight on show looked at, unless they are there. It does
// so whatever view is shown: a go that calm and day give may be a no-go in a corner, and the
// findings tell it in all of them. What would mend a check takes several times as long, and
// is looked for where it is shown (the scene's Mends).
func (m *Model) weigh() tea.Cmd {
	now := m.now
	if now == nil || now.Verdict == nil || m.corners.Ready && m.corners.Result.Of == now {
		return nil
	}
	return m.corners.Ask(m.ctx, m.judging(now, false))
}

// judging judges a flight with its worst corners, and with what would mend it.
func (m *Model) judging(now *view.Outcome, mends bool) func(context.Context) (view.Cornered, error) {
	judges := m.judges
	o := gates.Options{Day: now.Flight, Flown: now.Verdict, Today: m.clock(), Spreads: study.Spreads(now.File), Respread: study.Respread(now.File), Remedies: mends}
	if m.corners.Ready && m.corners.Result.Of == now {
		cornered := m.corners.Result.Verdict // the next one takes its place while this is being read
		o.Flown = &cornered
	}
	return func(ctx context.Context) (view.Cornered, error) {
		v, err := judges(ctx, now.Flight.Rocket, o)
		return view.Cornered{Of: now, Verdict: v}, err
	}
}

// verdict is the fullest there is on the flight on show: nil before the first flight.
func (m *Model) verdict() *gates.Verdict {
	if m.now == nil {
		return nil
	}
	if m.corners.Ready && m.corners.Result.Of == m.now {
		return &m.corners.Result.Verdict
	}
	return m.now.Verdict
}

// verdictFinding is go or no-go among the findings of a flight: shorter than the report
// has it, for it is always in sight, and the rest of it behind. That corners follow is
// said behind it too: they do within some frames, and a text that came and went at every
// key would set the findings dancing.
func verdictFinding(v *gates.Verdict, sys quantity.System, following bool) report.Finding {
	f := report.VerdictFinding(v, sys)
	f.Detail = f.Value + ". " + f.Detail
	f.Label, f.Value = "checks", fmt.Sprintf("%d outside", v.Failed())
	open := v.Unjudged()
	if v.Failed() == 0 {
		f.Value = fmt.Sprintf("%d within", len(v.Checks)-open-v.Cautions())
		if n := v.Cautions(); n > 0 {
			f.Value += fmt.Sprintf(", %d to note", n)
		}
	}
	switch {
	case v.Cornered:
	case following:
		f.Detail += " Told of calm air and of the day's wind; the worst corners follow."
	default:
		f.Value += ", calm and day"
		f.Detail += " Told of calm air and of the day's wind alone."
	}
	if open > 0 && v.Failed() == 0 { // the word that follows says of what
		f.Value += fmt.Sprintf(", %d", open)
	}
	return f
}
