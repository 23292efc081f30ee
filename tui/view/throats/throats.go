// Package throats is the view of nozzle throats side by side.
package throats

import (
	"context"
	"reflect"

	tea "github.com/charmbracelet/bubbletea"

	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
	"ullage/tui/plot"
	"ullage/tui/view"
)

// throatInput is the input that the throats view is about.
const throatInput = "water.throat"

// View sets throats side by side: what each does, in figures and on one
// plot.
type View struct {
	view.Pane
	shared   view.Keys
	bindings keys
	list     throatList
	begun    bool // the list has been filled for the first time
	wish     view.Wish
	fillsToo bool // the best fill of each is asked for
	thrust   bool // thrust is plotted, not height
	flights  view.Work[[]throatFlight]
	fills    view.Work[[]throatFill]
	of       throatQuestion // what flights are of, or will be
	fillsOf  throatQuestion
	grid     plot.Grid
}

// throatQuestion is everything that the figures follow from.
type throatQuestion struct {
	rocket  *rocket.Rocket
	throats []float64
	wish    view.Wish // of fills alone
}

// New is the view as it is at the start.
func New(k view.Keys) *View {
	return &View{shared: k, bindings: newKeys(k), list: throatList{chosen: ownThroat}}
}

// About is what the view is.
func (v *View) About() view.About {
	return view.About{
		Name: "throats", Open: v.bindings.Open,
		Help: "Nozzle throats side by side, the rocket's own among them: what each does, in figures and on one plot. " +
			"The best is the one that flies highest, or has the most, the least or a value of another result that is wanted, of those that leave the rail and empty. " +
			"The list is for comparing: the rocket keeps its own throat until another is taken.",
	}
}

func (v *View) Enter(frame view.Frame) { frame.Choose(throatInput) }

// Point chooses the throat in the row pressed.
func (v *View) Point(_, row int) {
	if rows, i := v.listed(), row-throatHeading; v.flies() && i >= 0 && i < len(rows) {
		v.list.move(rows, i-v.list.at(rows))
		v.draw()
	}
}

func (v *View) Show(s view.Scene) tea.Cmd {
	v.Scene = s
	cmd := v.study()
	v.draw()
	return cmd
}

// flies tells that there is a water flight to compare.
func (v *View) flies() bool {
	return v.Scene.Now != nil && v.Scene.File.Rocket().Power == rocket.WaterPower && v.Scene.File.Rocket().Water != nil
}

// begin fills the list with a throat below today's and one above.
func (v *View) begin(r *rocket.Rocket) {
	in, err := rocketfile.Find(r, throatInput)
	if err != nil {
		return
	}
	v.begun = true
	for _, t := range view.Around(r.Water.Throat, in, v.Scene.Units.Unit(v.Scene.File.Unit(throatInput))) {
		if t != r.Water.Throat {
			v.list.add(t)
		}
	}
	v.list.chosen = ownThroat
}

// listed are the throats of the list as they stand.
func (v *View) listed() []throatRow { return v.list.rows(v.Scene.File.Rocket().Water.Throat) }

// study asks for what is not there yet of this rocket and these throats.
func (v *View) study() tea.Cmd {
	if !v.flies() {
		return nil
	}
	s, r := v.Scene, v.Scene.File.Rocket()
	if !v.begun {
		v.begin(r)
	}
	of := throatQuestion{rocket: r}
	for _, row := range v.listed() {
		of.throats = append(of.throats, row.throat)
	}
	base := s.File.Rocket()
	r.Name, r.Motor, r.MotorMount, r.Water.Throat = "", nil, nil, 0
	var cmds []tea.Cmd
	if !reflect.DeepEqual(of, v.of) {
		v.of = of
		cmds = append(cmds, v.flights.Ask(s.Ctx, func(ctx context.Context) ([]throatFlight, error) {
			return throatFlights(ctx, base, of.throats)
		}))
	}
	of.wish = v.wish
	if v.fillsToo && !reflect.DeepEqual(of, v.fillsOf) {
		v.fillsOf = of
		wish := v.wish.For(base)
		cmds = append(cmds, v.fills.Ask(s.Ctx, func(ctx context.Context) ([]throatFill, error) {
			return throatFills(ctx, base, of.throats, wish)
		}))
	}
	return tea.Batch(cmds...)
}

func (v *View) Receive(msg tea.Msg) tea.Cmd {
	if v.flights.Take(msg) || v.fills.Take(msg) {
		v.draw()
	}
	return nil
}

// flight is the flight with a throat; nil when there is none yet.
func (v *View) flight(throat float64) *throatFlight {
	for i := range v.flights.Result {
		if f := &v.flights.Result[i]; sameThroat(f.throat, throat) {
			return f
		}
	}
	return nil
}

// fill is the best fill with a throat; nil when it is not known yet.
func (v *View) fill(throat float64) *throatFill {
	for i := range v.fills.Result {
		if f := &v.fills.Result[i]; sameThroat(f.throat, throat) {
			return f
		}
	}
	return nil
}

// wished is what the best throat has most of.
func (v *View) wished() study.Wish { return v.wish.For(v.Scene.File.Rocket()) }

// best is the row whose flight has most of what is wanted, of those that leave the rail and end without
// liquid aboard, at a pressure that the chamber is proved for; −1 when there is none.
func (v *View) best(rows []throatRow) int {
	r := v.Scene.File.Rocket()
	aim := v.wish.For(r).Aim(false).Within(r)
	best, most := -1, 0.0
	for i, r := range rows {
		if x, may := v.flight(r.throat).worth(&aim); may && (best < 0 || x > most) {
			best, most = i, x
		}
	}
	return best
}
