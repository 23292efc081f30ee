// Package layup is the view of how the pressure chamber is laid up: what is cut and mixed for every part, and
// what the scales said of it.
package layup

import (
	"errors"
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"ullage/sim/layup"
	report "ullage/sim/report/layup"
	"ullage/tui/draw"
	"ullage/tui/view"
)

// keys are the keys of the lay-up view.
type keys struct {
	Open, Before, Next, Sheet key.Binding
}

func newKeys(k view.Keys) keys {
	return keys{
		Open:   view.Bind("B", "lay-up: what to cut and mix, weigh-in", "B"),
		Before: view.Bind("[", "part before", k.Earlier.Keys()...),
		Next:   view.Bind("]", "next part", k.Later.Keys()...),
		Sheet:  view.Bind("z", "pieces or pots of the part", k.Span.Keys()...),
	}
}

// View lists the parts of a chamber that is laid up, and what is cut or mixed for the chosen one.
type View struct {
	view.Pane
	shared   view.Keys
	bindings keys
	part     int  // chosen
	pots     bool // its pots are in sight, not its pieces
	sheet    *report.Sheet
	err      error // why there is none
}

// New is the view as it is at the start.
func New(k view.Keys) *View {
	return &View{shared: k, bindings: newKeys(k)}
}

// About is what the view is.
func (v *View) About() view.About {
	return view.About{
		Name: "layup", Open: v.bindings.Open,
		Help: "How the chamber is laid up: wall and weight of every part as they are to be, the pieces that are cut for it, resin and hardener pot by " +
			"pot, and, once a part was weighed and measured, the fibre it reached and what the chamber holds then. ullage layup prints it with the order of " +
			"work; ullage patterns draws the gores. It is no pressure chamber before it was proved with water.",
	}
}

// Keys are what the view does.
func (v *View) Keys() []view.Key {
	b := &v.bindings
	return []view.Key{
		view.On(b.Before, func(view.Frame) { v.choose(v.part - 1) }),
		view.On(b.Next, func(view.Frame) { v.choose(v.part + 1) }),
		view.On(b.Sheet, func(view.Frame) { v.pots = !v.pots }),
	}
}

// choose takes the part of a number that there is.
func (v *View) choose(part int) {
	if v.sheet != nil {
		v.part = max(0, min(part, len(v.sheet.Plan().Parts)-1))
	}
}

func (v *View) Hints() []draw.Hint {
	b, k := &v.bindings, &v.shared
	if v.instead() != "" {
		return k.Hints()
	}
	return []draw.Hint{
		draw.HintOf("choose", k.Up, k.Down), draw.HintOf("change", k.Less, k.More),
		draw.HintOf("part", b.Before, b.Next), draw.HintOf("pieces or pots", b.Sheet), draw.HintOf("undo", k.Undo),
		draw.HintOf("view", k.NextView), draw.HintOf("type", k.Type), draw.HintOf("units", k.Units),
	}
}

// Enter chooses the mix ratio while it is not known, else the layers of the first ply, unless an input of the
// chamber or its lay-up is chosen already.
func (v *View) Enter(frame view.Frame) {
	r := frame.File().Rocket()
	if chosen := frame.Chosen(); r.Chamber == nil || len(r.Chamber.Plies) == 0 || strings.HasPrefix(chosen, "chamber.") || strings.HasPrefix(chosen, "layup.") {
		return
	}
	if r.Layup.Hardener == 0 && frame.Choose("layup.hardener") {
		return
	}
	frame.Choose("chamber.ply." + r.Chamber.Plies[0].Name + ".count")
}

func (v *View) Show(s view.Scene) tea.Cmd {
	v.Scene, v.sheet, v.err = s, nil, nil
	if s.File != nil { // no flight is needed for it
		v.sheet, v.err = report.For(s.File.Rocket(), s.Units)
		v.choose(v.part)
	}
	v.draw()
	return nil
}

// Press does what a key of the view does.
func (v *View) Press(frame view.Frame, k tea.KeyMsg) (taken bool, cmd tea.Cmd) {
	if !view.Press(v.Keys(), frame, k) {
		return false, nil
	}
	v.draw()
	return true, nil
}

// instead is what is said where there is nothing to lay up; empty mostly.
func (v *View) instead() string {
	switch {
	case v.sheet != nil:
		return ""
	case errors.Is(v.err, layup.ErrNoPlies):
		return "There is nothing to lay up: the file describes no chamber of cloth and resin. Give [chamber] a laid-up material and its plies; " +
			"the chamber view adds typical ones."
	case v.err != nil:
		return "No lay-up yet: " + view.FaultText(v.err, "") + "."
	}
	return " "
}
