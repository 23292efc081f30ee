package tui

import (
	"context"
	"reflect"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"ullage/sim"
	"ullage/sim/quantity"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
	"ullage/tui/draw"
	"ullage/tui/plot"
)

// fillKeys are the keys of the fill view.
type fillKeys struct {
	Open, Best, Family, FamilyBack, Less, More, FarLess, FarMore key.Binding
}

func newFillKeys(k KeyMap) fillKeys {
	return fillKeys{
		Open:       bind("w", "fill: apogee against the water aboard", "w"),
		Best:       bind("b", "take the best fill", "b"),
		Family:     bind("z", "curves for three pressures, three throats, or one alone", k.Span.Keys()...),
		FamilyBack: bind("Z", "the same, backwards", k.SpanBack.Keys()...),
		Less:       bind("[", "less fill, whatever input is chosen", k.Earlier.Keys()...),
		More:       bind("]", "more fill", k.Later.Keys()...),
		FarLess:    bind("{", "much less fill", k.FarEarlier.Keys()...),
		FarMore:    bind("}", "much more fill", k.FarLater.Keys()...),
	}
}

// fillView draws apogee and rail exit speed against the fill.
type fillView struct {
	frame         KeyMap
	bindings      fillKeys
	columns, rows int
	scene         scene
	family        family
	curves        work[[]fillCurve]
	of            fillQuestion // what the curves are of, or will be once they are ready
	own           work[*sim.Flight]
	ownOf         *rocketfile.File // what own is of, or will be
	grid          plot.Grid
	painted       []string
}

// fillQuestion is everything that the curves follow from: today's fill is no
// part of it.
type fillQuestion struct {
	rocket *rocket.Rocket
	family family
	units  quantity.System
}

func newFillView(k KeyMap) *fillView { return &fillView{frame: k, bindings: newFillKeys(k)} }

func (v *fillView) name() string { return "fill" }

func (v *fillView) opens() key.Binding { return v.bindings.Open }

func (v *fillView) keys() []key.Binding {
	b := v.bindings
	return []key.Binding{b.Best, b.Family, b.FamilyBack, b.Less, b.More, b.FarLess, b.FarMore}
}

func (v *fillView) hints() []draw.Hint {
	b, k := &v.bindings, &v.frame
	if !v.flies() {
		return k.hints()
	}
	return []draw.Hint{
		draw.HintOf("walk", k.Less, k.More), draw.HintOf("take the best", b.Best), draw.HintOf("family", b.Family),
		draw.HintOf("choose", k.Up, k.Down), draw.HintOf("undo", k.Undo), draw.HintOf("view", k.NextView),
		draw.HintOf("type", k.Type), draw.HintOf("keep", k.Keep), draw.HintOf("drive", k.Drive), draw.HintOf("save", k.Save),
		draw.HintOf("findings", k.Findings), draw.HintOf("units", k.Units),
	}
}

func (v *fillView) lines() []string { return v.painted }

func (v *fillView) resize(columns, rows int) { v.columns, v.rows = columns, rows }

func (v *fillView) point(int, int) {}

func (v *fillView) enter(m *Model) { m.inputs.choose(fillInput) }

func (v *fillView) show(s scene) tea.Cmd {
	v.scene = s
	cmd := tea.Batch(v.flyOwn(), v.study())
	v.draw()
	return cmd
}

// study asks for the curves, unless they are of this rocket.
func (v *fillView) study() tea.Cmd {
	s := v.scene
	r := s.file.Rocket()
	if r.Power != rocket.WaterPower || r.Water == nil {
		return nil
	}
	of := fillQuestion{family: v.family, units: s.units, rocket: r}
	r.Name, r.Motor, r.MotorMount, r.Water.Fill = "", nil, nil, 0
	if reflect.DeepEqual(of, v.of) && (v.curves.busy || v.curves.ready || v.curves.err != nil) {
		return nil
	}
	v.of = of
	file, family := s.file, v.family
	return v.curves.ask(s.ctx, func(ctx context.Context) ([]fillCurve, error) {
		return fillCurves(ctx, family.members(file, s.units))
	})
}

// flyOwn asks for today's flight, as the curves are flown.
func (v *fillView) flyOwn() tea.Cmd {
	file := v.scene.file
	if !v.flies() || file == v.ownOf {
		return nil
	}
	v.ownOf = file
	return v.own.ask(v.scene.ctx, func(ctx context.Context) (*sim.Flight, error) {
		out, err := study.Compare(ctx, []study.Variant{{Rocket: file.Rocket()}}, study.CompareOptions{})
		if err != nil {
			return nil, err
		}
		return out[0].Flight, out[0].Invalid
	})
}

func (v *fillView) receive(msg tea.Msg) tea.Cmd {
	if v.curves.take(msg) || v.own.take(msg) {
		v.draw()
	}
	return nil
}

func (v *fillView) press(m *Model, k tea.KeyMsg) (bool, tea.Cmd) {
	if !v.flies() {
		return false, nil
	}
	switch b := &v.bindings; {
	case key.Matches(k, b.Best):
		v.takeBest(m)
	case key.Matches(k, b.Family):
		v.family = (v.family + 1) % families
		return true, v.show(v.scene)
	case key.Matches(k, b.FamilyBack):
		v.family = (v.family + families - 1) % families
		return true, v.show(v.scene)
	case key.Matches(k, b.Less):
		v.walk(m, -1, false)
	case key.Matches(k, b.More):
		v.walk(m, 1, false)
	case key.Matches(k, b.FarLess):
		v.walk(m, -1, true)
	case key.Matches(k, b.FarMore):
		v.walk(m, 1, true)
	default:
		return false, nil
	}
	return true, nil
}

// flies tells that there is a water flight to draw.
func (v *fillView) flies() bool {
	return v.scene.now != nil && v.scene.now.flight.Rocket.Power == rocket.WaterPower
}

// walk moves today's fill along the curve.
func (v *fillView) walk(m *Model, by int, coarse bool) {
	if m.inputs.choose(fillInput) {
		m.nudge(by, coarse)
	}
}

// today is the curve of the rocket as it stands; nil before there is one.
func (v *fillView) today() *fillCurve {
	for i := range v.curves.result {
		if v.curves.result[i].today {
			return &v.curves.result[i]
		}
	}
	return nil
}

// takeBest makes the best fill the rocket's.
func (v *fillView) takeBest(m *Model) {
	c := v.today()
	switch {
	case c == nil || v.curves.busy:
		m.say(draw.Dim, "The best fill is still being looked for.")
	case c.best == nil:
		m.say(draw.Caution, "There is no best fill: "+c.trouble()+".")
	default:
		m.put(fillInput, c.bestFill())
	}
}
