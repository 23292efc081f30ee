// Package check is the view of go or no-go: every check, and what would mend it.
package check

import (
	"slices"
	"time"

	"ullage/sim/plan"
	"ullage/tui/draw"
	"ullage/tui/view"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"
)

// keys are the keys of the check view. To take something is the same key here as
// among throats, openings and motors.
type keys struct {
	Open, Prev, Next, PrevMend, NextMend, Take key.Binding
}

func newKeys(k view.Keys) keys {
	return keys{
		Open:     view.Bind("j", "go or no-go: every check, and what would mend it", "j"),
		Prev:     view.Bind("[", "check above", k.Earlier.Keys()...),
		Next:     view.Bind("]", "check below", k.Later.Keys()...),
		PrevMend: view.Bind("{", "mend above, of the check chosen", k.FarEarlier.Keys()...),
		NextMend: view.Bind("}", "mend below", k.FarLater.Keys()...),
		Take:     view.Bind("k", "make the mend chosen, where it sets an input", "k"),
	}
}

// View is go or no-go: every check of the drive that flies with its worst value,
// those that fail first, and what would mend them.
type View struct {
	view.Pane
	shared   view.Keys
	bindings keys
	chosen   string // key of the check chosen; the first on the list when it is not there
	failing  bool   // a check fails
	mend     int    // the mend chosen among those of that check that can be made here
	sight    []string

	clock  func() time.Time
	find   WindFinder
	wind   view.Work[windLimit]
	windOf *view.Outcome // what the wind limit is of, or will be

	mends  view.Work[view.Cornered]
	wanted *view.Outcome // whose mends were asked for last
}

// New is the view as it is at the start.
func New(k view.Keys, o Options) *View {
	v := &View{shared: k, bindings: newKeys(k), clock: o.Clock, find: o.Winds}
	if v.clock == nil {
		v.clock = time.Now
	}
	if v.find == nil {
		v.find = plan.MostWind
	}
	return v
}

// About is what the view is.
func (v *View) About() view.About {
	return view.About{
		Name: "check", Open: v.bindings.Open,
		Help: "Go or no-go: every check with its limit, those that fail first, and below each what would mend it. Each is told of calm air, " +
			"of the day's wind, and of its worst corner, in which all that is uncertain is one standard deviation off against it; and the wind above which one of them would fail. " +
			"Local law and the range officer decide.",
	}
}

// Keys are what the view does.
func (v *View) Keys() []view.Key {
	b := &v.bindings
	return []view.Key{
		view.On(b.Prev, func(view.Frame) { v.move(-1) }),
		view.On(b.Next, func(view.Frame) { v.move(1) }),
		view.On(b.PrevMend, func(view.Frame) { v.mend-- }),
		view.On(b.NextMend, func(view.Frame) { v.mend++ }),
		view.On(b.Take, v.take),
	}
}

func (v *View) Hints() []draw.Hint {
	b, k := &v.bindings, &v.shared
	return []draw.Hint{
		draw.HintOf("check", b.Prev, b.Next), draw.HintOf("make the mend", b.Take), draw.HintOf("undo", k.Undo),
		draw.HintOf("mend", b.PrevMend, b.NextMend),
		draw.HintOf("choose", k.Up, k.Down), draw.HintOf("change", k.Less, k.More),
		draw.HintOf("view", k.NextView), draw.HintOf("drive", k.Drive), draw.HintOf("type", k.Type),
		draw.HintOf("findings", k.Findings), draw.HintOf("units", k.Units),
	}
}

func (v *View) Show(s view.Scene) tea.Cmd {
	v.Scene = s
	mends := v.askMends()
	// A go that becomes a no-go brings what fails into sight.
	list := v.list()
	failing := len(list) > 0 && list[0].Fails()
	if failing && !v.failing {
		v.chosen, v.mend = "", 0
	}
	v.failing = failing
	cmd := v.seekWind()
	v.draw()
	return tea.Batch(cmd, mends)
}

// Receive takes the wind limit and the mends.
func (v *View) Receive(msg tea.Msg) tea.Cmd {
	switch {
	case v.mends.Take(msg):
		return v.Show(v.Scene)
	case v.wind.Take(msg):
		v.draw()
	}
	return nil
}

// cornered tells that the worst corners of the flight on show are known.
func (v *View) cornered() bool {
	s := &v.Scene
	return s.Now != nil && s.Corners.Ready && s.Corners.Result.Of == s.Now
}

// askMends has mends looked for once it is known that a check fails, and called off when the flight is another.
func (v *View) askMends() tea.Cmd {
	s := &v.Scene
	if v.wanted != s.Now {
		v.mends.Stop()
		v.wanted = nil
	}
	if v.wanted != nil || !v.cornered() || s.Corners.Result.Verdict.Failed() == 0 || s.Mends == nil {
		return nil
	}
	v.wanted = s.Now
	return v.mends.Ask(s.Ctx, s.Mends)
}

// Point chooses the check in the row pressed.
func (v *View) Point(_, row int) {
	if row >= 0 && row < len(v.sight) && v.sight[row] != "" {
		v.chosen, v.mend = v.sight[row], 0
		v.draw()
	}
}

// Press does what a key of the view does.
func (v *View) Press(frame view.Frame, k tea.KeyMsg) (taken bool, cmd tea.Cmd) {
	if !view.Press(v.Keys(), frame, k) {
		return false, nil
	}
	return true, v.Show(v.Scene)
}

// move chooses another check, so many farther down.
func (v *View) move(by int) {
	list := v.list()
	if len(list) == 0 {
		return
	}
	at := min(max(v.at(list)+by, 0), len(list)-1)
	v.chosen, v.mend = list[at].Key, 0
}

// at is the place of the check chosen.
func (v *View) at(list []checkEntry) int {
	return max(slices.IndexFunc(list, func(e checkEntry) bool { return e.Key == v.chosen }), 0)
}
