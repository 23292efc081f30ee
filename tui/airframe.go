package tui

import (
	"context"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"ullage/sim/rocketfile"
	"ullage/sim/study"
	"ullage/tui/draw"
	"ullage/tui/plot"
)

// airframeKeys are the keys of the airframe view.
type airframeKeys struct {
	Open, Lower, Higher, Sheet key.Binding
}

func newAirframeKeys(k KeyMap) airframeKeys {
	return airframeKeys{
		Open:   bind("g", "airframe: balance, stability, alignment", "g"),
		Lower:  bind("[", "a smaller margin to size nose weight and fins for", k.Earlier.Keys()...),
		Higher: bind("]", "a larger one", k.Later.Keys()...),
		Sheet:  bind("z", "plots or figures, where there is no room for both", k.Span.Keys()...),
	}
}

// airframeView draws the rocket to scale with its balance points and centre of
// pressure, and how margin and angle of attack go through the flight.
type airframeView struct {
	frame         KeyMap
	bindings      airframeKeys
	columns, rows int
	scene         scene
	wanted        float64 // margin that nose weight and fins are sized for, calibres
	figures       bool    // the figures are in sight where there is no room for both
	of            *rocketfile.File
	ofWanted      float64
	study         work[[]study.Airframe] // of every drive, water first
	grid          plot.Grid
	painted       []string
}

func newAirframeView(k KeyMap) *airframeView {
	return &airframeView{frame: k, bindings: newAirframeKeys(k), wanted: study.UsualMargin}
}

func (v *airframeView) name() string { return "airframe" }

func (v *airframeView) opens() key.Binding { return v.bindings.Open }

func (v *airframeView) keys() []key.Binding {
	b := v.bindings
	return []key.Binding{b.Lower, b.Higher, b.Sheet}
}

func (v *airframeView) hints() []draw.Hint {
	b, k := &v.bindings, &v.frame
	return []draw.Hint{
		draw.HintOf("choose", k.Up, k.Down), draw.HintOf("change", k.Less, k.More),
		draw.HintOf("margin", b.Lower, b.Higher), draw.HintOf("plots or figures", b.Sheet),
		draw.HintOf("undo", k.Undo), draw.HintOf("view", k.NextView), draw.HintOf("drive", k.Drive),
		draw.HintOf("type", k.Type), draw.HintOf("save", k.Save), draw.HintOf("findings", k.Findings), draw.HintOf("units", k.Units),
	}
}

func (v *airframeView) lines() []string { return v.painted }

func (v *airframeView) resize(columns, rows int) { v.columns, v.rows = columns, rows }

func (v *airframeView) point(int, int) {}

func (v *airframeView) enter(*Model) {}

func (v *airframeView) show(s scene) tea.Cmd {
	v.scene = s
	cmd := v.ask()
	v.draw()
	return cmd
}

// ask has the study made, unless it is of this rocket.
func (v *airframeView) ask() tea.Cmd {
	file, wanted := v.scene.file, v.wanted
	if file == v.of && wanted == v.ofWanted {
		return nil
	}
	v.of, v.ofWanted = file, wanted
	if !file.Rocket().Balanced() {
		v.study.stop()
		return nil
	}
	return v.study.ask(v.scene.ctx, func(ctx context.Context) ([]study.Airframe, error) {
		return study.Airframes(ctx, file.Rocket(), wanted, study.Options{})
	})
}

func (v *airframeView) receive(msg tea.Msg) tea.Cmd {
	if v.study.take(msg) {
		v.draw()
	}
	return nil
}

func (v *airframeView) press(_ *Model, k tea.KeyMsg) (bool, tea.Cmd) {
	const step, least, most = 0.1, 0.1, 10
	switch b := &v.bindings; {
	case key.Matches(k, b.Lower):
		v.wanted = max(rounded(v.wanted-step), least)
	case key.Matches(k, b.Higher):
		v.wanted = min(rounded(v.wanted+step), most)
	case key.Matches(k, b.Sheet):
		v.figures = !v.figures
	default:
		return false, nil
	}
	return true, v.show(v.scene)
}

// rounded keeps a margin that is stepped at whole tenths.
func rounded(margin float64) float64 { return float64(int(margin*10+0.5)) / 10 }
