package tui

import (
	"context"
	"slices"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"ullage/sim/rocket"
	"ullage/sim/study"
	"ullage/tui/plot"
)

// openingView is about one canopy: when it opens, how hard, what if it opens
// otherwise, and which one would land as slowly as is wanted.
type openingView struct {
	frame         KeyMap
	bindings      openingKeys
	columns, rows int
	scene         scene
	canopy        string  // the one looked at; empty for the first
	wanted        float64 // vertical landing speed wanted, m/s
	sheet         int     // the part in sight where there is no room for all
	asked         openingAsked
	study         work[opening]
	sized         work[study.Sized]
	sizedFor      float64 // the speed last asked for
	topGrid       plot.Grid
	curveGrid     plot.Grid
	painted       []string
}

// openingAsked is what was last asked for: a canopy of a flight.
type openingAsked struct {
	of     *outcome
	canopy int
}

// usualLanding is the landing speed wanted at first, m/s: common practice, no
// source.
const usualLanding = 5

func newOpeningView(k KeyMap) *openingView {
	return &openingView{frame: k, bindings: newOpeningKeys(k), wanted: usualLanding}
}

func (v *openingView) name() string       { return "opening" }
func (v *openingView) opens() key.Binding { return v.bindings.Open }
func (v *openingView) lines() []string    { return v.painted }
func (v *openingView) point(int, int)     {}

func (v *openingView) resize(columns, rows int) { v.columns, v.rows = columns, rows }

// enter looks at the canopy whose input is chosen, if one is, and chooses the
// number in its rule.
func (v *openingView) enter(m *Model) {
	if name := m.inputs.canopy(); name != "" {
		v.canopy = name
	}
	v.chooseNumber(m)
}

// chooseNumber chooses the input that moves the opening, or the rule where that
// has no number.
func (v *openingView) chooseNumber(m *Model) {
	r := m.file().Rocket()
	i := v.index(r)
	if i < 0 {
		return
	}
	if name := numberOf(r, i); name == "" || !m.inputs.choose(name) {
		m.inputs.choose(ruleOf(r, i))
	}
}

// index finds the canopy looked at in a rocket, or the first one; −1 when it
// has none.
func (v *openingView) index(r *rocket.Rocket) int {
	i := slices.IndexFunc(r.Canopies, func(c rocket.Canopy) bool { return c.Name == v.canopy })
	if i < 0 && len(r.Canopies) > 0 {
		return 0
	}
	return i
}

func (v *openingView) show(s scene) tea.Cmd {
	v.scene = s
	cmd := v.renew()
	v.draw()
	return cmd
}

// renew asks for what is not there yet of the scene's flight and the canopy.
func (v *openingView) renew() tea.Cmd {
	s := v.scene
	if s.now == nil {
		return nil
	}
	i := v.index(s.now.flight.Rocket)
	if i < 0 {
		v.study.stop()
		v.sized.stop()
		v.asked = openingAsked{}
		return nil
	}
	var cmds []tea.Cmd
	asked := openingAsked{s.now, i}
	fresh := v.asked != asked
	if fresh {
		v.asked = asked
		cmds = append(cmds, v.study.ask(s.ctx, func(ctx context.Context) (opening, error) { return newOpening(ctx, s.now, i) }))
	}
	if wanted := v.wanted; fresh || wanted != v.sizedFor {
		v.sizedFor = wanted
		cmds = append(cmds, v.sized.ask(s.ctx, func(ctx context.Context) (study.Sized, error) {
			return study.CanopyFor(ctx, s.now.file.Rocket(), i, wanted, asFlown(s.now.flight.Rocket))
		}))
	}
	return tea.Batch(cmds...)
}

func (v *openingView) receive(msg tea.Msg) tea.Cmd {
	if v.study.take(msg) || v.sized.take(msg) {
		v.draw()
	}
	return nil
}
