// Package fill is the view of how high a rocket flies against the water aboard.
package fill

import (
	"context"
	"reflect"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"ullage/sim/quantity"
	"ullage/sim/rocket"
	"ullage/tui/draw"
	"ullage/tui/plot"
	"ullage/tui/view"
)

// keys are the keys of the fill view.
type keys struct {
	Open, Best, Wish, Family, FamilyBack, Less, More, FarLess, FarMore key.Binding
}

func newKeys(k view.Keys) keys {
	return keys{
		Open:       view.Bind("w", "fill: apogee against the water aboard", "w"),
		Best:       view.Bind("b", "take the best fill", "b"),
		Wish:       view.Bind("y", "say what to look for the best of: any result, most, least or a value", "y"),
		Family:     view.Bind("z", "curves for three pressures, three throats, or one alone", k.Span.Keys()...),
		FamilyBack: view.Bind("Z", "the same, backwards", k.SpanBack.Keys()...),
		Less:       view.Bind("[", "less fill, whatever input is chosen", k.Earlier.Keys()...),
		More:       view.Bind("]", "more fill", k.Later.Keys()...),
		FarLess:    view.Bind("{", "much less fill", k.FarEarlier.Keys()...),
		FarMore:    view.Bind("}", "much more fill", k.FarLater.Keys()...),
	}
}

// View draws what is wanted, the apogee mostly, and rail exit speed against the fill.
type View struct {
	view.Pane
	shared   view.Keys
	bindings keys
	family   family
	wish     view.Wish
	curves   view.Work[[]fillCurve]
	of       fillQuestion // what the curves are of, or will be once they are ready
	grid     plot.Grid
}

// fillQuestion is everything that the curves follow from: today's fill is no
// part of it.
type fillQuestion struct {
	rocket *rocket.Rocket
	family family
	units  quantity.System
	wish   view.Wish
}

// New is the view as it is at the start.
func New(k view.Keys) *View { return &View{shared: k, bindings: newKeys(k)} }

// About is what the view is.
func (v *View) About() view.About {
	return view.About{
		Name: "fill", Open: v.bindings.Open,
		Help: "How high the rocket flies, and how fast it leaves its rail, against the share of the chamber that is water. " +
			"Any other result can be looked at in place of the height, for the most of it, the least or a value. " +
			"Shaded is what comes within 1 % of the best. Where liquid stays aboard the curve has signs, where the rocket never " +
			"leaves its rail a gap. The keys that change an input walk along the curve.",
	}
}

// Keys are what the view does.
func (v *View) Keys() []view.Key {
	b := &v.bindings
	return []view.Key{
		view.On(b.Best, v.takeBest),
		view.On(b.Wish, func(frame view.Frame) {
			v.wish.Ask(frame, frame.File().Rocket(), func() tea.Cmd { return v.Show(v.Scene) })
		}),
		view.On(b.Family, func(view.Frame) { v.family = (v.family + 1) % families }),
		view.On(b.FamilyBack, func(view.Frame) { v.family = (v.family + families - 1) % families }),
		view.On(b.Less, func(frame view.Frame) { walk(frame, -1, false) }),
		view.On(b.More, func(frame view.Frame) { walk(frame, 1, false) }),
		view.On(b.FarLess, func(frame view.Frame) { walk(frame, -1, true) }),
		view.On(b.FarMore, func(frame view.Frame) { walk(frame, 1, true) }),
	}
}

func (v *View) Hints() []draw.Hint {
	b, k := &v.bindings, &v.shared
	if !v.flies() {
		return k.Hints()
	}
	return []draw.Hint{
		draw.HintOf("walk", k.Less, k.More), draw.HintOf("take the best", b.Best), draw.HintOf("family", b.Family), draw.HintOf("best for", b.Wish),
		draw.HintOf("choose", k.Up, k.Down), draw.HintOf("undo", k.Undo), draw.HintOf("view", k.NextView),
		draw.HintOf("type", k.Type), draw.HintOf("keep", k.Keep), draw.HintOf("drive", k.Drive),
		draw.HintOf("findings", k.Findings), draw.HintOf("units", k.Units),
	}
}

func (v *View) Enter(frame view.Frame) { frame.Choose(fillInput) }

func (v *View) Show(s view.Scene) tea.Cmd {
	v.Scene = s
	cmd := v.study()
	v.draw()
	return cmd
}

// study asks for the curves, unless they are of this rocket.
func (v *View) study() tea.Cmd {
	s := v.Scene
	r := s.File.Rocket()
	if r.Power != rocket.WaterPower || r.Water == nil {
		return nil
	}
	of := fillQuestion{family: v.family, units: s.Units, rocket: r, wish: v.wish}
	r.Name, r.Motor, r.MotorMount, r.Water.Fill = "", nil, nil, 0
	if reflect.DeepEqual(of, v.of) && (v.curves.Busy || v.curves.Ready || v.curves.Err != nil) {
		return nil
	}
	v.of = of
	file, family, wish := s.File, v.family, v.wish.For(r)
	return v.curves.Ask(s.Ctx, func(ctx context.Context) ([]fillCurve, error) {
		return fillCurves(ctx, family.members(file, s.Units), wish)
	})
}

func (v *View) Receive(msg tea.Msg) tea.Cmd {
	if v.curves.Take(msg) {
		v.draw()
	}
	return nil
}

// Press does what a key of the view does.
func (v *View) Press(frame view.Frame, k tea.KeyMsg) (taken bool, cmd tea.Cmd) {
	if !v.flies() || !view.Press(v.Keys(), frame, k) {
		return false, nil
	}
	return true, v.Show(v.Scene)
}

// flies tells that there is a water flight to draw.
func (v *View) flies() bool {
	return v.Scene.Now != nil && v.Scene.Now.Flight.Rocket.Power == rocket.WaterPower
}

// walk moves today's fill along the curve.
func walk(frame view.Frame, by int, coarse bool) {
	if frame.Choose(fillInput) {
		frame.Nudge(by, coarse)
	}
}

// today is the curve of the rocket as it stands; nil before there is one.
func (v *View) today() *fillCurve {
	for i := range v.curves.Result {
		if v.curves.Result[i].today {
			return &v.curves.Result[i]
		}
	}
	return nil
}

// takeBest makes the best fill the rocket's.
func (v *View) takeBest(frame view.Frame) {
	c := v.today()
	switch {
	case c == nil || v.curves.Busy:
		frame.Say(draw.Dim, "The best fill is still being looked for.")
	case c.best == nil:
		frame.Say(draw.Caution, "There is no best fill: "+c.trouble()+".")
	default:
		frame.Put(fillInput, c.bestFill())
	}
}
