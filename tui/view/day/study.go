package day

import (
	"context"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"ullage/sim/fault"
	"ullage/sim/plan"
	"ullage/sim/rocket"
	"ullage/sim/study"
	"ullage/tui/view"
)

// question is what an outlook is of.
type question struct {
	flown    *view.Outcome
	forecast string
	read     int
}

// planned is what the planning of a day found.
type planned struct {
	of       question
	slots    []plan.Slot
	drives   []rocket.Power
	outcomes []plan.Outcome // slot by slot, drive by drive
	left     []leftOut
}

// leftOut is a drive that the file has but cannot fly on.
type leftOut struct {
	drive rocket.Power
	err   error
}

// outcome is that of a slot on a drive, by their places.
func (p *planned) outcome(slot, drive int) *plan.Outcome {
	return &p.outcomes[slot*len(p.drives)+drive]
}

// passing counts the slots that pass on a drive.
func (p *planned) passing(drive int) int {
	n := 0
	for i := range p.slots {
		if p.outcome(i, drive).Passes() {
			n++
		}
	}
	return n
}

// planner works an outlook out: question.plan, or what a test puts in its place.
type planner func(q question, ctx context.Context, today time.Time) (*planned, error)

// study asks for the outlook to be shown, unless it is there or under way.
func (v *View) study() tea.Cmd {
	now := question{v.Scene.Now, v.forecast, v.read}
	switch {
	case now.flown == nil:
		v.work.Stop()
		return nil
	case v.of == now && (v.work.Busy || v.work.Ready || v.work.Err != nil):
		return nil
	}
	v.of = now
	plans, today := v.plans, v.clock()
	return v.work.Ask(v.Scene.Ctx, func(ctx context.Context) (*planned, error) { return plans(now, ctx, today) })
}

// plan judges the rocket on every drive that it can fly on.
func (q question) plan(ctx context.Context, today time.Time) (*planned, error) {
	base := q.flown.Flight.Rocket
	p := &planned{of: q}
	var err error
	if q.forecast == "" {
		p.slots = plan.Winds(base.Limits.InForce().Wind)
	} else if p.slots, err = plan.OpenForecast(q.forecast, base, fault.Files); err != nil {
		return nil, err
	}
	for _, drive := range base.Drives() {
		r := base.Clone()
		r.Power = drive
		if bad := r.Validate(); bad != nil {
			p.left = append(p.left, leftOut{drive, bad})
			continue
		}
		p.drives = append(p.drives, drive)
	}
	p.outcomes, err = plan.Outlook(ctx, base, p.slots, plan.OutlookOptions{Drives: p.drives, Spreads: study.Respread(q.flown.File), Today: today})
	return p, err
}
