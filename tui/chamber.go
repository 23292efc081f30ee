package tui

import (
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"ullage/sim/chamber"
	"ullage/sim/rocket"
	"ullage/tui/draw"
	"ullage/tui/plot"
)

// chamberKeys are the keys of the chamber view.
type chamberKeys struct {
	Open, Add, Remove, Sheet key.Binding
}

func newChamberKeys(k KeyMap) chamberKeys {
	return chamberKeys{
		Open:   bind("h", "chamber: strength, proof, energy", "h"),
		Add:    bind("a", "add a chamber, or a ply to its wall", "a"),
		Remove: bind("r", "remove the ply chosen (undo brings it back)", "r"),
		Sheet:  bind("z", "parts or figures, where there is no room for both", k.Span.Keys()...),
	}
}

// chamberView cuts the pressure chamber open: its parts and how much of their strength
// the pressure takes, what proving it takes, and what it stores.
type chamberView struct {
	frame         KeyMap
	bindings      chamberKeys
	columns, rows int
	scene         scene
	figures       bool // the figures are in sight where there is no room for all
	rocket        *rocket.Rocket
	vessel        *chamber.Chamber // nil when the file describes none
	result        chamber.Result   // some microseconds' work: done as the scene is shown
	grid          plot.Grid
	painted       []string
}

func newChamberView(k KeyMap) *chamberView {
	return &chamberView{frame: k, bindings: newChamberKeys(k)}
}

func (v *chamberView) name() string { return "chamber" }

func (v *chamberView) opens() key.Binding { return v.bindings.Open }

func (v *chamberView) keys() []key.Binding {
	b := v.bindings
	return []key.Binding{b.Add, b.Remove, b.Sheet}
}

func (v *chamberView) hints() []draw.Hint {
	b, k := &v.bindings, &v.frame
	if v.vessel == nil {
		return []draw.Hint{
			draw.HintOf("add a chamber", b.Add), draw.HintOf("view", k.NextView), draw.HintOf("drive", k.Drive),
			draw.HintOf("choose", k.Up, k.Down), draw.HintOf("change", k.Less, k.More),
			draw.HintOf("save", k.Save), draw.HintOf("findings", k.Findings), draw.HintOf("units", k.Units),
		}
	}
	return []draw.Hint{
		draw.HintOf("choose", k.Up, k.Down), draw.HintOf("change", k.Less, k.More),
		draw.HintOf("parts or figures", b.Sheet), draw.HintOf("add a ply", b.Add), draw.HintOf("remove it", b.Remove),
		draw.HintOf("undo", k.Undo), draw.HintOf("view", k.NextView), draw.HintOf("type", k.Type),
		draw.HintOf("save", k.Save), draw.HintOf("findings", k.Findings), draw.HintOf("units", k.Units),
	}
}

func (v *chamberView) lines() []string { return v.painted }

func (v *chamberView) resize(columns, rows int) { v.columns, v.rows = columns, rows }

func (v *chamberView) point(int, int) {}

func (v *chamberView) receive(tea.Msg) tea.Cmd { return nil }

// enter chooses what matters most to the wall, unless an input of the chamber is chosen
// already: the layers of its first ply, or its thickness.
func (v *chamberView) enter(m *Model) {
	c := m.file().Rocket().Chamber
	if d := m.inputs.chosen(); c == nil || d != nil && strings.HasPrefix(d.Name, "chamber.") {
		return
	}
	if len(c.Plies) > 0 && m.inputs.choose("chamber.ply."+c.Plies[0].Name+".count") {
		return
	}
	m.inputs.choose("chamber.wall")
}

func (v *chamberView) show(s scene) tea.Cmd {
	v.scene, v.rocket, v.vessel = s, nil, nil
	if s.now != nil {
		v.rocket = s.now.flight.Rocket
		if v.vessel = v.rocket.Vessel(); v.vessel != nil {
			v.result = v.vessel.At(v.rocket.Service())
		}
	}
	v.draw()
	return nil
}

func (v *chamberView) press(m *Model, k tea.KeyMsg) (bool, tea.Cmd) {
	switch b := &v.bindings; {
	case key.Matches(k, b.Add):
		v.add(m)
	case key.Matches(k, b.Remove):
		v.remove(m)
	case key.Matches(k, b.Sheet):
		v.figures = !v.figures
	default:
		return false, nil
	}
	return true, v.show(v.scene)
}

// add adds a chamber to a rocket that has none, or a ply to its wall.
func (v *chamberView) add(m *Model) {
	if m.file().Rocket().Chamber == nil {
		f, err := m.file().AddChamber()
		if m.take(f, err, step{says: "chamber added"}) {
			m.refill()
			v.enter(m)
			m.say(draw.Plain, "A chamber of typical glass cloth added: change it to what you built. No proof is on record.")
		}
		return
	}
	f, name, err := m.file().AddPly()
	if m.take(f, err, step{says: "ply " + name + " added"}) {
		m.refill()
		m.inputs.choose("chamber.ply." + name + ".count")
		m.say(draw.Plain, "Ply "+name+" added: one layer. The rocket's mass stays as it was weighed.")
	}
}

// remove removes the ply of the chosen input, or the only one.
func (v *chamberView) remove(m *Model) {
	c := m.file().Rocket().Chamber
	if c == nil || len(c.Plies) == 0 {
		m.say(draw.Dim, "There is no ply to remove.")
		return
	}
	name := ""
	if parts := strings.Split(m.inputs.chosen().Name, "."); len(parts) == 4 && parts[1] == "ply" {
		name = parts[2]
	} else if len(c.Plies) > 1 {
		m.say(draw.Dim, "Which ply? Choose one of its inputs first.")
		return
	} else {
		name = c.Plies[0].Name
	}
	f, err := m.file().RemovePly(name)
	if m.take(f, err, step{says: "ply " + name + " removed"}) {
		m.say(draw.Plain, "Ply "+name+" removed; undo brings it back.")
	}
}
