// Package day is the view of a day at the field: go or no-go on each drive in every wind from calm to the limit, or hour
// by hour of a forecast, and the one change each needs.
package day

import (
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"ullage/tui/draw"
	"ullage/tui/view"
)

// Options are what the view begins with.
type Options struct {
	Forecast string           // path of a forecast; empty for a table of winds
	Clock    func() time.Time // tells the day, for the age of a proof; nil: time.Now
}

// View is the planning of a day: a row for each wind or hour, and of the one chosen what it needs.
type View struct {
	view.Pane
	shared   view.Keys
	bindings keys
	clock    func() time.Time

	forecast string // path; empty for a table of winds
	read     int    // counts how often it was to be read
	at       int    // the row chosen
	drive    int    // of those looked at, whose change is chosen
	work     view.Work[*planned]
	of       question // what the work is of, or will be
	plans    planner
}

// New is the view as it is at the start.
func New(k view.Keys, o Options) *View {
	v := &View{shared: k, bindings: newKeys(k), clock: o.Clock, forecast: o.Forecast, plans: question.plan}
	if v.clock == nil {
		v.clock = time.Now
	}
	return v
}

// About is what the view is.
func (v *View) About() view.About {
	return view.About{
		Name: "day", Open: v.bindings.Open,
		Help: "A day at the field: on each drive go or no-go from calm air to the strongest wind that the limits allow, or hour by hour of a forecast " +
			"(CSV with the heads time and wind, and gust, from, temperature, pressure or inputs by their names), every check in its worst corner, and the one change with which " +
			"it passes where it does not as it is. A change can be taken over; it never raises the pressure past what the chamber is proved for. " +
			"The range officer and the weather of the moment decide, not a forecast.",
	}
}

func (v *View) Show(s view.Scene) tea.Cmd {
	v.Scene = s
	cmd := v.study()
	v.draw()
	return cmd
}

func (v *View) Receive(msg tea.Msg) tea.Cmd {
	if v.work.Take(msg) {
		v.draw()
	}
	return nil
}

// Press does what a key of the view does.
func (v *View) Press(frame view.Frame, k tea.KeyMsg) (taken bool, cmd tea.Cmd) {
	if !view.Press(v.Keys(), frame, k) {
		return false, nil
	}
	return true, v.Show(v.Scene)
}

// Point chooses the row pressed.
func (v *View) Point(_, row int) {
	p := v.planned()
	if p == nil {
		return
	}
	t := v.table(p)
	if i := row - v.headRows() - tableHeading; i >= 0 {
		v.move(t.First(v.tableRows(len(t.Rows))-tableHeading) + i - v.at)
		v.draw()
	}
}

// planned is the last outlook there is; nil before the first.
func (v *View) planned() *planned {
	if !v.work.Ready || len(v.work.Result.slots) == 0 {
		return nil
	}
	return v.work.Result
}

// move chooses another row, so many farther down.
func (v *View) move(by int) {
	if p := v.planned(); p != nil {
		v.at = min(max(v.at+by, 0), len(p.slots)-1)
	}
}

// turn chooses the change of another drive.
func (v *View) turn(by int) {
	if p := v.planned(); p != nil {
		v.drive = min(max(v.drive+by, 0), max(len(p.drives)-1, 0))
	}
}

// old tells that what is there is of another rocket, or forecast, than what is on show.
func (v *View) old() bool { return v.work.Busy || v.work.Err != nil }

func (v *View) Hints() []draw.Hint {
	b, k := &v.bindings, &v.shared
	return []draw.Hint{
		draw.HintOf("row", b.Prev, b.Next), draw.HintOf("take the change", b.Take), draw.HintOf("forecast", b.Add), draw.HintOf("undo", k.Undo),
		draw.HintOf("drive's change", b.PrevDrive, b.NextDrive), draw.HintOf("winds alone", b.Remove),
		draw.HintOf("choose", k.Up, k.Down), draw.HintOf("change", k.Less, k.More),
		draw.HintOf("view", k.NextView), draw.HintOf("drive", k.Drive), draw.HintOf("findings", k.Findings), draw.HintOf("units", k.Units),
	}
}
