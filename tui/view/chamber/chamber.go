// Package chamber is the view of the pressure chamber: strength, proof, stored energy.
package chamber

import (
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"ullage/sim/chamber"
	"ullage/sim/rocket"
	"ullage/tui/draw"
	"ullage/tui/plot"
	"ullage/tui/view"
)

// keys are the keys of the chamber view.
type keys struct {
	Open, Add, Remove, Sheet key.Binding
}

func newKeys(k view.Keys) keys {
	return keys{
		Open:   view.Bind("h", "chamber: strength, proof, energy", "h"),
		Add:    view.Bind("a", "add a chamber, or a ply to its wall", "a"),
		Remove: view.Bind("r", "remove the ply chosen (undo brings it back)", "r"),
		Sheet:  view.Bind("z", "parts or figures, where there is no room for both", k.Span.Keys()...),
	}
}

// View cuts the pressure chamber open: its parts and how much of their strength
// the pressure takes, what proving it takes, and what it stores.
type View struct {
	view.Pane
	shared   view.Keys
	bindings keys
	figures  bool // the figures are in sight where there is no room for all
	rocket   *rocket.Rocket
	vessel   *chamber.Chamber // nil when the file describes none
	result   chamber.Result   // some microseconds' work: done as the scene is shown
	grid     plot.Grid
}

// New is the view as it is at the start.
func New(k view.Keys) *View {
	return &View{shared: k, bindings: newKeys(k)}
}

// About is what the view is.
func (v *View) About() view.About {
	return view.About{
		Name: "chamber", Open: v.bindings.Open,
		Help: "The pressure chamber cut open: how much of the strength of every part the pressure takes, what a proof with water takes, " +
			"and what the gas in it stores. Strengths are estimates until one made alike was burst or this one held its proof. " +
			"Never stand by a pressurised chamber.",
	}
}

// Keys are what the view does.
func (v *View) Keys() []view.Key {
	b := &v.bindings
	return []view.Key{
		view.On(b.Add, v.add),
		view.On(b.Remove, v.remove),
		view.On(b.Sheet, func(view.Frame) { v.figures = !v.figures }),
	}
}

func (v *View) Hints() []draw.Hint {
	b, k := &v.bindings, &v.shared
	if v.vessel == nil {
		return []draw.Hint{
			draw.HintOf("add a chamber", b.Add), draw.HintOf("view", k.NextView), draw.HintOf("drive", k.Drive),
			draw.HintOf("choose", k.Up, k.Down), draw.HintOf("change", k.Less, k.More),
			draw.HintOf("findings", k.Findings), draw.HintOf("units", k.Units),
		}
	}
	return []draw.Hint{
		draw.HintOf("choose", k.Up, k.Down), draw.HintOf("change", k.Less, k.More),
		draw.HintOf("parts or figures", b.Sheet), draw.HintOf("add a ply", b.Add), draw.HintOf("remove it", b.Remove),
		draw.HintOf("undo", k.Undo), draw.HintOf("view", k.NextView), draw.HintOf("type", k.Type),
		draw.HintOf("findings", k.Findings), draw.HintOf("units", k.Units),
	}
}

// Enter chooses what matters most to the wall, unless an input of the chamber is chosen
// already: the layers of its first ply, or its thickness.
func (v *View) Enter(frame view.Frame) {
	c := frame.File().Rocket().Chamber
	if c == nil || strings.HasPrefix(frame.Chosen(), "chamber.") {
		return
	}
	if len(c.Plies) > 0 && frame.Choose("chamber.ply."+c.Plies[0].Name+".count") {
		return
	}
	frame.Choose("chamber.wall")
}

func (v *View) Show(s view.Scene) tea.Cmd {
	v.Scene, v.rocket, v.vessel = s, nil, nil
	if s.Now != nil {
		v.rocket = s.Now.Flight.Rocket
		if v.vessel = v.rocket.Vessel(); v.vessel != nil {
			v.result = v.vessel.At(v.rocket.Service())
		}
	}
	v.draw()
	return nil
}

// Press does what a key of the view does.
func (v *View) Press(frame view.Frame, k tea.KeyMsg) (taken bool, cmd tea.Cmd) {
	if !view.Press(v.Keys(), frame, k) {
		return false, nil
	}
	return true, v.Show(v.Scene)
}

// add adds a chamber to a rocket that has none, or a ply to its wall.
func (v *View) add(frame view.Frame) {
	if frame.File().Rocket().Chamber == nil {
		f, err := frame.File().AddChamber()
		if frame.Take(f, err, view.Edit{Says: "chamber added"}) {
			v.Enter(frame)
			frame.Say(draw.Plain, "A chamber of typical glass cloth added: change it to what you built. No proof is on record.")
		}
		return
	}
	f, name, err := frame.File().AddPly()
	if frame.Take(f, err, view.Edit{Says: "ply " + name + " added"}) {
		frame.Choose("chamber.ply." + name + ".count")
		frame.Say(draw.Plain, "Ply "+name+" added: one layer. The rocket's mass stays as it was weighed.")
	}
}

// remove removes the ply of the chosen input, or the only one.
func (v *View) remove(frame view.Frame) {
	c := frame.File().Rocket().Chamber
	if c == nil || len(c.Plies) == 0 {
		frame.Say(draw.Dim, "There is no ply to remove.")
		return
	}
	name := ""
	if parts := strings.Split(frame.Chosen(), "."); len(parts) == 4 && parts[1] == "ply" {
		name = parts[2]
	} else if len(c.Plies) > 1 {
		frame.Say(draw.Dim, "Which ply? Choose one of its inputs first.")
		return
	} else {
		name = c.Plies[0].Name
	}
	f, err := frame.File().RemovePly(name)
	if frame.Take(f, err, view.Edit{Says: "ply " + name + " removed"}) {
		frame.Say(draw.Plain, "Ply "+name+" removed; undo brings it back.")
	}
}
