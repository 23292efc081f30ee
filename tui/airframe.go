package tui

import (
	"context"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"ullage/sim/rocketfile"
	"ullage/sim/study"
	"ullage/tui/draw"
	"ullage/tui/plot"
	"ullage/tui/view"
)

// airframeKeys are the keys of the airframe view.
type airframeKeys struct {
	Open, Lower, Higher, Sheet key.Binding
}

func newAirframeKeys(k view.Keys) airframeKeys {
	return airframeKeys{
		Open:   view.Bind("g", "airframe: balance, stability, alignment", "g"),
		Lower:  view.Bind("[", "a smaller margin to size nose weight and fins for", k.Earlier.Keys()...),
		Higher: view.Bind("]", "a larger one", k.Later.Keys()...),
		Sheet:  view.Bind("z", "plots or figures, where there is no room for both", k.Span.Keys()...),
	}
}

// airframeView draws the rocket to scale with its balance points and centre of
// pressure, and how margin and angle of attack go through the flight.
type airframeView struct {
	view.Pane
	frame    view.Keys
	bindings airframeKeys
	wanted   float64 // margin that nose weight and fins are sized for, calibres
	figures  bool    // the figures are in sight where there is no room for both
	of       *rocketfile.File
	ofWanted float64
	study    view.Work[[]study.Airframe] // of every drive, water first
	grid     plot.Grid
}

func newAirframeView(k view.Keys) *airframeView {
	return &airframeView{frame: k, bindings: newAirframeKeys(k), wanted: study.UsualMargin}
}

// About is what the view is.
func (v *airframeView) About() view.About {
	return view.About{
		Name: "airframe", Open: v.bindings.Open,
		Help: "The rocket to scale with its balance points and its centre of pressure; margin and angle of attack through the flight; " +
			"what a crooked thrust does; and the nose weight or fin span that would give the margin wanted.",
	}
}

// Keys are what the view does.
func (v *airframeView) Keys() []view.Key {
	const step = 0.1 // calibres
	b := &v.bindings
	return []view.Key{
		view.On(b.Lower, func(view.Frame) { v.want(-step) }),
		view.On(b.Higher, func(view.Frame) { v.want(step) }),
		view.On(b.Sheet, func(view.Frame) { v.figures = !v.figures }),
	}
}

func (v *airframeView) Hints() []draw.Hint {
	b, k := &v.bindings, &v.frame
	return []draw.Hint{
		draw.HintOf("choose", k.Up, k.Down), draw.HintOf("change", k.Less, k.More),
		draw.HintOf("margin", b.Lower, b.Higher), draw.HintOf("plots or figures", b.Sheet),
		draw.HintOf("undo", k.Undo), draw.HintOf("view", k.NextView), draw.HintOf("drive", k.Drive),
		draw.HintOf("type", k.Type), draw.HintOf("save", k.Save), draw.HintOf("findings", k.Findings), draw.HintOf("units", k.Units),
	}
}

func (v *airframeView) Show(s view.Scene) tea.Cmd {
	v.Scene = s
	cmd := v.ask()
	v.draw()
	return cmd
}

// ask has the study made, unless it is of this rocket.
func (v *airframeView) ask() tea.Cmd {
	file, wanted := v.Scene.File, v.wanted
	if file == v.of && wanted == v.ofWanted {
		return nil
	}
	v.of, v.ofWanted = file, wanted
	if !file.Rocket().Balanced() {
		v.study.Stop()
		return nil
	}
	return v.study.Ask(v.Scene.Ctx, func(ctx context.Context) ([]study.Airframe, error) {
		return study.Airframes(ctx, file.Rocket(), wanted, study.Options{})
	})
}

func (v *airframeView) Receive(msg tea.Msg) tea.Cmd {
	if v.study.Take(msg) {
		v.draw()
	}
	return nil
}

// Press does what a key of the view does.
func (v *airframeView) Press(frame view.Frame, k tea.KeyMsg) (taken bool, cmd tea.Cmd) {
	if !view.Press(v.Keys(), frame, k) {
		return false, nil
	}
	return true, v.Show(v.Scene)
}

// want has nose weight and fins sized for another margin, so many calibres larger.
func (v *airframeView) want(by float64) {
	const least, most = 0.1, 10
	v.wanted = min(max(rounded(v.wanted+by), least), most)
}

// rounded keeps a margin that is stepped at whole tenths.
func rounded(margin float64) float64 { return float64(int(margin*10+0.5)) / 10 }
