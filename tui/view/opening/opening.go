// Package opening is the view of when and how hard a canopy opens, and what if it opens otherwise.
package opening

import (
	"context"
	"slices"

	tea "github.com/charmbracelet/bubbletea"

	"ullage/sim/rocket"
	"ullage/sim/study"
	"ullage/tui/plot"
	"ullage/tui/view"
)

// View is about one canopy: when it opens, how hard, what if it opens
// otherwise, and which one would land as slowly as is wanted.
type View struct {
	view.Pane
	shared    view.Keys
	bindings  keys
	canopy    string  // the one looked at; empty for the first
	wanted    float64 // vertical landing speed wanted, m/s
	sheet     int     // the part in sight where there is no room for all
	asked     openingAsked
	study     view.Work[figures]
	sized     view.Work[study.Sized]
	sizedFor  float64 // the speed last asked for
	topGrid   plot.Grid
	curveGrid plot.Grid
}

// openingAsked is what was last asked for: a canopy of a flight.
type openingAsked struct {
	of     *view.Outcome
	canopy int
}

// usualLanding is the landing speed wanted at first, m/s: common practice, no
// source.
const usualLanding = 5

// New is the view as it is at the start.
func New(k view.Keys) *View {
	return &View{shared: k, bindings: newKeys(k), wanted: usualLanding}
}

// About is what the view is.
func (v *View) About() view.About {
	return view.About{
		Name: "opening", Open: v.bindings.Open,
		Help: "One canopy: when it opens, how fast and how hard, what becomes of the rocket if it opens otherwise or not at all, " +
			"and how large it has to be to land as slowly as is wanted. The keys that change an input walk along the number in its rule.",
	}
}

// Enter looks at the canopy whose input is chosen, if one is, and chooses the
// number in its rule.
func (v *View) Enter(frame view.Frame) {
	if name := view.CanopyOf(frame.Chosen()); name != "" {
		v.canopy = name
	}
	v.chooseNumber(frame)
}

// chooseNumber chooses the input that moves the opening, or the rule where that
// has no number.
func (v *View) chooseNumber(frame view.Frame) {
	r := frame.File().Rocket()
	i := v.index(r)
	if i < 0 {
		return
	}
	if name := r.OpeningInput(i); name == "" || !frame.Choose(name) {
		frame.Choose(ruleOf(r, i))
	}
}

// index finds the canopy looked at in a rocket, or the first one; −1 when it
// has none.
func (v *View) index(r *rocket.Rocket) int {
	i := slices.IndexFunc(r.Canopies, func(c rocket.Canopy) bool { return c.Name == v.canopy })
	if i < 0 && len(r.Canopies) > 0 {
		return 0
	}
	return i
}

func (v *View) Show(s view.Scene) tea.Cmd {
	v.Scene = s
	cmd := v.renew()
	v.draw()
	return cmd
}

// renew asks for what is not there yet of the scene's flight and the canopy.
func (v *View) renew() tea.Cmd {
	s := v.Scene
	if s.Now == nil {
		return nil
	}
	i := v.index(s.Now.Flight.Rocket)
	if i < 0 {
		v.study.Stop()
		v.sized.Stop()
		v.asked = openingAsked{}
		return nil
	}
	var cmds []tea.Cmd
	asked := openingAsked{s.Now, i}
	fresh := v.asked != asked
	if fresh {
		v.asked = asked
		cmds = append(cmds, v.study.Ask(s.Ctx, func(ctx context.Context) (figures, error) { return newFigures(ctx, s.Now, i) }))
	}
	if wanted := v.wanted; fresh || wanted != v.sizedFor {
		v.sizedFor = wanted
		cmds = append(cmds, v.sized.Ask(s.Ctx, func(ctx context.Context) (study.Sized, error) {
			return study.CanopyFor(ctx, s.Now.File.Rocket(), i, wanted, study.Options{})
		}))
	}
	return tea.Batch(cmds...)
}

func (v *View) Receive(msg tea.Msg) tea.Cmd {
	if v.study.Take(msg) || v.sized.Take(msg) {
		v.draw()
	}
	return nil
}
