package tui

import (
	"context"
	"reflect"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
	"ullage/tui/plot"
)

// throatInput is the input that the throats view is about.
const throatInput = "water.throat"

// throatsView sets throats side by side: what each does, in figures and on one
// plot.
type throatsView struct {
	frame         KeyMap
	bindings      throatKeys
	columns, rows int
	scene         scene
	list          throatList
	begun         bool // the list has been filled for the first time
	fillsToo      bool // the best fill of each is asked for
	thrust        bool // thrust is plotted, not height
	flights       work[[]throatFlight]
	fills         work[[]throatFill]
	of            throatQuestion // what flights are of, or will be
	fillsOf       throatQuestion
	grid          plot.Grid
	painted       []string
}

// throatQuestion is everything that the figures follow from.
type throatQuestion struct {
	rocket  *rocket.Rocket
	throats []float64
}

func newThroatsView(k KeyMap) *throatsView {
	return &throatsView{frame: k, bindings: newThroatKeys(k), list: throatList{chosen: ownThroat}}
}

func (v *throatsView) name() string { return "throats" }

func (v *throatsView) opens() key.Binding { return v.bindings.Open }

func (v *throatsView) lines() []string { return v.painted }

func (v *throatsView) resize(columns, rows int) { v.columns, v.rows = columns, rows }

func (v *throatsView) enter(m *Model) { m.inputs.choose(throatInput) }

// point chooses the throat in the row pressed.
func (v *throatsView) point(_, row int) {
	if rows, i := v.listed(), row-throatHeading; v.flies() && i >= 0 && i < len(rows) {
		v.list.move(rows, i-v.list.at(rows))
		v.draw()
	}
}

func (v *throatsView) show(s scene) tea.Cmd {
	v.scene = s
	cmd := v.study()
	v.draw()
	return cmd
}

// flies tells that there is a water flight to compare.
func (v *throatsView) flies() bool {
	return v.scene.now != nil && v.scene.file.Rocket().Power == rocket.WaterPower && v.scene.file.Rocket().Water != nil
}

// begin fills the list with a throat below today's and one above.
func (v *throatsView) begin(r *rocket.Rocket) {
	in, err := rocketfile.Find(r, throatInput)
	if err != nil {
		return
	}
	v.begun = true
	for _, t := range around(r.Water.Throat, in, v.scene.units.Unit(v.scene.file.Unit(throatInput))) {
		if t != r.Water.Throat {
			v.list.add(t)
		}
	}
	v.list.chosen = ownThroat
}

// listed are the throats of the list as they stand.
func (v *throatsView) listed() []throatRow { return v.list.rows(v.scene.file.Rocket().Water.Throat) }

// study asks for what is not there yet of this rocket and these throats.
func (v *throatsView) study() tea.Cmd {
	if !v.flies() {
		return nil
	}
	s, r := v.scene, v.scene.file.Rocket()
	if !v.begun {
		v.begin(r)
	}
	of := throatQuestion{rocket: r}
	for _, row := range v.listed() {
		of.throats = append(of.throats, row.throat)
	}
	base := s.file.Rocket()
	r.Name, r.Motor, r.MotorMount, r.Water.Throat = "", nil, nil, 0
	var cmds []tea.Cmd
	if !reflect.DeepEqual(of, v.of) {
		v.of = of
		cmds = append(cmds, v.flights.ask(s.ctx, func(ctx context.Context) ([]throatFlight, error) {
			return throatFlights(ctx, base, of.throats)
		}))
	}
	if v.fillsToo && !reflect.DeepEqual(of, v.fillsOf) {
		v.fillsOf = of
		cmds = append(cmds, v.fills.ask(s.ctx, func(ctx context.Context) ([]throatFill, error) {
			return throatFills(ctx, base, of.throats)
		}))
	}
	return tea.Batch(cmds...)
}

func (v *throatsView) receive(msg tea.Msg) tea.Cmd {
	if v.flights.take(msg) || v.fills.take(msg) {
		v.draw()
	}
	return nil
}

// flight is the flight with a throat; nil when there is none yet.
func (v *throatsView) flight(throat float64) *throatFlight {
	for i := range v.flights.result {
		if f := &v.flights.result[i]; sameThroat(f.throat, throat) {
			return f
		}
	}
	return nil
}

// fill is the best fill with a throat; nil when it is not known yet.
func (v *throatsView) fill(throat float64) *throatFill {
	for i := range v.fills.result {
		if f := &v.fills.result[i]; sameThroat(f.throat, throat) {
			return f
		}
	}
	return nil
}

// best is the row with the highest flight that leaves the rail and ends without
// liquid aboard; −1 when there is none.
func (v *throatsView) best(rows []throatRow) int {
	best, apogee := -1, 0.0
	for i, r := range rows {
		if f := v.flight(r.throat); f.mayBeBest() && (best < 0 || f.flight.Results.Apogee.Height > apogee) {
			best, apogee = i, f.flight.Results.Apogee.Height
		}
	}
	return best
}
