package tui

import (
	"context"
	"errors"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"ullage/sim"
	"ullage/sim/gates"
	"ullage/sim/quantity"
	"ullage/sim/report"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
)

// flyer computes a flight: [sim.Fly], or what a test puts in its place.
type flyer func(context.Context, *rocket.Rocket, sim.Options) (*sim.Flight, error)

// outcome is one flight and what the screen shows of it, prepared in the
// command that flew it and never changed afterwards.
type outcome struct {
	file     *rocketfile.File
	flight   *sim.Flight
	findings map[quantity.System][]report.Finding
	trace    trace
	verdict  *gates.Verdict // in calm air and on the day; nil when it cannot be told
}

// trace is a flight as series over time, SI, for plots.
type trace struct {
	time, height, speed, thrust []float64
	pressure                    []float64 // in the chamber, gauge; nil without one
}

func newOutcome(ctx context.Context, file *rocketfile.File, fl *sim.Flight, today time.Time) *outcome {
	o := &outcome{file: file, flight: fl, findings: map[quantity.System][]report.Finding{}}
	rail, err := study.RailExitFor(ctx, fl.Rocket, gates.RailExit(fl.Rocket).Min, study.Options{})
	for _, sys := range []quantity.System{quantity.Metric, quantity.US} {
		o.findings[sys] = report.Findings(fl, sys)
		if err == nil {
			report.WithRail(o.findings[sys], rail, fl.Rocket, sys)
		}
	}
	o.trace = newTrace(fl)
	if v, err := gates.Judge(ctx, fl.Rocket, gates.Options{Day: fl, Today: today}); err == nil {
		o.verdict = &v
	}
	return o
}

func newTrace(fl *sim.Flight) trace {
	samples := fl.Trace()
	n := len(samples)
	all := make([]float64, 5*n)
	series := func(i int) []float64 { return all[i*n : (i+1)*n : (i+1)*n] }
	t := trace{time: series(0), height: series(1), speed: series(2), thrust: series(3)}
	if fl.Rocket.Power == rocket.WaterPower {
		t.pressure = series(4)
	}
	for i, s := range samples {
		t.time[i], t.height[i], t.speed[i], t.thrust[i] = s.Time, s.Height, s.Speed, s.Thrust
		if t.pressure != nil {
			t.pressure[i] = s.Chamber - s.Air
		}
	}
	return t
}

// flownMsg is what came of a flight that was asked for.
type flownMsg struct {
	number int // of the request: older ones are stale
	now    *outcome
	err    error
}

// fly asks for a flight of the file as it stands and calls off the one before.
func (m *Model) fly() tea.Cmd {
	if m.callOff != nil {
		m.callOff()
	}
	ctx, cancel := context.WithCancel(m.ctx)
	m.callOff = cancel
	m.asked++
	m.corners.stop() // what was being looked at is no longer wanted, and this is
	number, file, flies, today := m.asked, m.file(), m.flies, m.clock()
	return func() tea.Msg {
		defer cancel()
		fl, err := flies(ctx, file.Rocket(), sim.Options{Keep: true})
		if err != nil {
			return flownMsg{number: number, err: err}
		}
		return flownMsg{number: number, now: newOutcome(ctx, file, fl, today)}
	}
}

// flown takes the result of a flight, unless it is stale.
func (m *Model) flown(msg flownMsg) tea.Cmd {
	if msg.number != m.asked || errors.Is(msg.err, context.Canceled) {
		return nil
	}
	if msg.err != nil {
		m.crash = complaint{says: "No flight: " + faultText(msg.err, "")}
		return m.weigh()
	}
	m.now, m.crash = msg.now, complaint{}
	corners := m.weigh() // before showing: what is shown says that they follow
	return tea.Batch(m.show(), corners)
}
