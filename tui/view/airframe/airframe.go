// Package airframe is the view of shape, balance and stability.
package airframe

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

// keys are the keys of the airframe view.
type keys struct {
	Open, Lower, Higher, Sheet key.Binding
}

func newKeys(k view.Keys) keys {
	return keys{
		Open:   view.Bind("g", "airframe: balance, stability, alignment", "g"),
		Lower:  view.Bind("[", "a smaller margin to size nose weight and fins for", k.Earlier.Keys()...),
		Higher: view.Bind("]", "a larger one", k.Later.Keys()...),
		Sheet:  view.Bind("z", "plots or figures, where there is no room for both", k.Span.Keys()...),
	}
}

// View draws the rocket to scale with its balance points and centre of
// pressure, and how margin and angle of attack go through the flight.
type View struct {
	view.Pane
	shared   view.Keys
	bindings keys
	wanted   float64 // margin that nose weight and fins are sized for, calibres
	figures  bool    // the figures are in sight where there is no room for both
	of       *rocketfile.File
	ofWanted float64
	study    view.Work[[]study.Airframe] // of every drive, water first
	grid     plot.Grid
}

// New is the view as it is at the start.
func New(k view.Keys) *View {
	return &View{shared: k, bindings: newKeys(k), wanted: study.UsualMargin}
}

// About is what the view is.
func (v *View) About() view.About {
	return view.About{
		Name: "airframe", Open: v.bindings.Open,
		Help: "The rocket to scale with its balance points and its centre of pressure; margin and angle of attack through the flight; " +
			"what a crooked thrust does; and the nose weight or fin span that would give the margin wanted.",
	}
}

// Keys are what the view does.
func (v *View) Keys() []view.Key {
	const step = 0.1 // calibres
	b := &v.bindings
	return []view.Key{
		view.On(b.Lower, func(view.Frame) { v.want(-step) }),
		view.On(b.Higher, func(view.Frame) { v.want(step) }),
		view.On(b.Sheet, func(view.Frame) { v.figures = !v.figures }),
	}
}

func (v *View) Hints() []draw.Hint {
	b, k := &v.bindings, &v.shared
	if v.instead() != "" {
		return k.Hints()
	}
	return []draw.Hint{
		draw.HintOf("choose", k.Up, k.Down), draw.HintOf("change", k.Less, k.More),
		draw.HintOf("margin", b.Lower, b.Higher), draw.HintOf("plots or figures", b.Sheet),
		draw.HintOf("undo", k.Undo), draw.HintOf("view", k.NextView), draw.HintOf("drive", k.Drive),
		draw.HintOf("type", k.Type), draw.HintOf("findings", k.Findings), draw.HintOf("units", k.Units),
	}
}

func (v *View) Show(s view.Scene) tea.Cmd {
	v.Scene = s
	cmd := v.ask()
	v.draw()
	return cmd
}

// ask has the study made, unless it is of this rocket.
func (v *View) ask() tea.Cmd {
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

func (v *View) Receive(msg tea.Msg) tea.Cmd {
	if v.study.Take(msg) {
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

// want has nose weight and fins sized for another margin, so many calibres larger.
func (v *View) want(by float64) {
	const least, most = 0.1, 10
	v.wanted = min(max(rounded(v.wanted+by), least), most)
}

// rounded keeps a margin that is stepped at whole tenths.
func rounded(margin float64) float64 { return float64(int(margin*10+0.5)) / 10 }
