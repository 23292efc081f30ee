// Package log is the view of a recorder's log beside the flight that is predicted.
package log

import (
	"context"
	"math"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"ullage/sim/flown"
	"ullage/sim/rocketfile"
	"ullage/tui/plot"
	"ullage/tui/view"
)

// Options are what the view begins with.
type Options struct {
	Logs  []flown.Asked
	Clock func() time.Time // tells the day on which a fit is taken
}

// View holds logs of the rocket's flights against the flight that is predicted.
type View struct {
	view.Pane
	shared   view.Keys
	bindings keys
	clock    func() time.Time

	entries []*entry
	at      int // the one shown
	channel int // of its columns, that is drawn
	span    view.Span
	sheet   sheet
	width   int // of the window, a place in widths

	work   view.Work[*held]
	spread view.Work[*spread]
	draws  int // flights that the spread is of
	fit    view.Work[*fitted]
	under  state   // what is worked out, while the work is under way
	fitOf  state   // what the fit under way is of
	then   tea.Cmd // what a key asks for besides

	grid  plot.Grid
	drawn drawn
}

// entry is a log on the view's list.
type entry struct {
	flown.Asked
	opened *flown.Logged // as read, nothing left out; nil before
	held   *held         // the last that was worked out; nil before
	window float64       // its middle, s by the log's clock; NaN before there is one
	marked int           // counts changes to what is asked
}

// state is what a comparison is of: it is done again when another is there.
type state struct {
	entry  *entry
	file   *rocketfile.File
	marked int
}

// New is the view as it is at the start.
func New(k view.Keys, o Options) *View {
	v := &View{shared: k, bindings: newKeys(k), clock: o.Clock, span: view.AscentSpan, width: usualWidth, draws: flown.UsualDraws}
	if v.clock == nil {
		v.clock = time.Now
	}
	for _, a := range o.Logs {
		v.add(a)
	}
	v.at = 0
	return v
}

// About is what the view is.
func (v *View) About() view.About {
	return view.About{
		Name: "log", Open: v.bindings.Open,
		Help: "A recorder's log beside the flight that is predicted, over time from release, and what is left between them: change the drag, " +
			"or any input, and see it move. A window that moves along the time marks samples to leave out. A fit finds the inputs with which " +
			"the rocket flies as the logs on the list say, and can be taken over; the settings of a log's day come from the logbook.",
	}
}

// Enter chooses the drag, which logs tell most of, where there is a log.
func (v *View) Enter(frame view.Frame) {
	if len(v.entries) > 0 {
		frame.Choose("body.drag_factor")
	}
}

// add puts a log on the list, and shows it.
func (v *View) add(a flown.Asked) {
	v.entries = append(v.entries, &entry{Asked: a, window: math.NaN()})
	v.at, v.channel = len(v.entries)-1, 0
}

// entry is the log shown; nil when there is none.
func (v *View) entry() *entry {
	if len(v.entries) == 0 {
		return nil
	}
	return v.entries[v.at]
}

// held is what was worked out of the log shown; nil when nothing was yet.
func (v *View) held() *held {
	if e := v.entry(); e != nil {
		return e.held
	}
	return nil
}

// state is what is to be shown.
func (v *View) state() state {
	e := v.entry()
	if e == nil {
		return state{}
	}
	return state{e, v.Scene.File, e.marked}
}

func (v *View) Show(s view.Scene) tea.Cmd {
	v.Scene = s
	if v.fit.Busy && v.fitOf != v.allOf() {
		v.fit.Stop()
	}
	cmd := v.renew()
	v.draw()
	return cmd
}

// renew asks for the comparison to be shown, unless it is there or under way.
func (v *View) renew() tea.Cmd {
	now := v.state()
	switch {
	case now.entry == nil || now.file == nil:
		v.work.Stop()
		return nil
	case now.entry.held != nil && now.entry.held.state == now:
		v.work.Stop()
		return v.widen()
	case v.work.Busy && v.under == now:
		return nil
	}
	v.under = now
	v.spread.Stop()
	return v.work.Ask(v.Scene.Ctx, job{now, now.entry.Asked, now.entry.opened}.hold)
}

// widen asks how far apart flights with what is uncertain are, unless that is there or under way.
func (v *View) widen() tea.Cmd {
	h := v.held()
	if h.compared == nil || v.spread.Ready && v.spread.Result.of == h || v.spread.Busy {
		return nil
	}
	draws := v.draws
	return v.spread.Ask(v.Scene.Ctx, func(ctx context.Context) (*spread, error) { return h.spread(ctx, draws) })
}

func (v *View) Receive(msg tea.Msg) tea.Cmd {
	var cmd tea.Cmd
	switch {
	case v.work.Take(msg):
		if h := v.work.Result; v.work.Ready && h != nil {
			h.entry.held = h
			h.entry.settle(h)
			cmd = v.renew()
		}
	case v.fit.Take(msg):
		v.settleFit()
	case !v.spread.Take(msg):
		return nil
	}
	v.draw()
	return cmd
}

// settle takes note of what opening a log told.
func (e *entry) settle(h *held) {
	if h.opened != nil {
		e.opened = h.opened
	}
	if c := h.compared; c != nil && math.IsNaN(e.window) {
		e.window = c.Release + c.Flight.Apogee.Time
		if !c.Flight.Apogee.Happened {
			e.window = c.Release + c.Flight.Duration()/2
		}
	}
}

// Point moves the window to the time at a column.
func (v *View) Point(column, _ int) {
	f := v.grid.Frame()
	if e := v.entry(); f.Columns > 0 && e != nil && e.held != nil && e.held.compared != nil {
		e.window = e.held.compared.Release + min(max(f.X(column), f.Min), f.Max)
		v.draw()
	}
}
