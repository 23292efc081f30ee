// Package bench is the view of a rocket's small parts and settings: seal, static ports, vent, alignment jig, recovery
// electronics, filling.
package bench

import (
	"context"
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"ullage/sim/report/bench"
	"ullage/sim/report/page"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
	"ullage/tui/draw"
	"ullage/tui/view"
)

// keys are the keys of the bench view.
type keys struct {
	Open, Before, Next, Back, On, Go key.Binding
}

func newKeys(k view.Keys) keys {
	return keys{
		Open:   view.Bind("H", "bench: seal, holes, alignment, settings, filling", "H"),
		Before: view.Bind("[", "section before", k.Earlier.Keys()...),
		Next:   view.Bind("]", "next section", k.Later.Keys()...),
		Back:   view.Bind("{", "half a page back", k.FarEarlier.Keys()...),
		On:     view.Bind("}", "half a page on", k.FarLater.Keys()...),
		Go:     view.Bind("k", "to the inputs of the section, one after the other; those that it lacks first", "k"),
	}
}

// View is the sheet of the bench, read section by section.
type View struct {
	view.Pane
	shared   view.Keys
	bindings keys
	of       *rocketfile.File
	study    view.Work[study.Benched]
	doc      page.Document
	top      int   // the first row in sight
	begins   []int // the rows that sections begin at, as last drawn
}

// New is the view as it is at the start.
func New(k view.Keys) *View {
	return &View{shared: k, bindings: newKeys(k)}
}

// About is what the view is.
func (v *View) About() view.About {
	return view.About{
		Name: "bench", Open: v.bindings.Open,
		Help: "The sheet of the bench: the groove of the seal and whether its gap holds at proof, static ports, the vent as holes to drill, how straight the thrust has " +
			"to be as a gap at the end of a jig, what the recovery electronics are set to on each drive, gas and strokes of the pump. What a section lacks it says by name. " +
			"ullage bench prints it. Local law, the range officer and qualified people decide.",
	}
}

// Keys are what the view does.
func (v *View) Keys() []view.Key {
	b := &v.bindings
	half := func() int { return max(v.room()/2, 1) }
	return []view.Key{
		view.On(b.Before, func(view.Frame) { v.turn(-1) }),
		view.On(b.Next, func(view.Frame) { v.turn(1) }),
		view.On(b.Back, func(view.Frame) { v.top -= half() }),
		view.On(b.On, func(view.Frame) { v.top += half() }),
		view.On(b.Go, v.goOn),
	}
}

func (v *View) Hints() []draw.Hint {
	b, k := &v.bindings, &v.shared
	return []draw.Hint{
		draw.HintOf("section", b.Before, b.Next), draw.HintOf("its inputs", b.Go), draw.HintOf("change", k.Less, k.More), draw.HintOf("page", b.Back, b.On),
		draw.HintOf("undo", k.Undo), draw.HintOf("view", k.NextView), draw.HintOf("type", k.Type), draw.HintOf("units", k.Units),
	}
}

// section is the one at the top, −1 of a sheet without any.
func (v *View) section() int {
	at := -1
	for i, row := range v.begins {
		if row <= v.top {
			at = i
		}
	}
	return at
}

// turn goes to the section so many after the one at the top; back first to its own beginning.
func (v *View) turn(by int) {
	at := v.section()
	if at < 0 {
		return
	}
	if by < 0 && v.top > v.begins[at] {
		by++
	}
	v.top = v.begins[max(0, min(at+by, len(v.begins)-1))]
}

// goOn chooses an input of the section at the top, the one after that which is chosen.
func (v *View) goOn(frame view.Frame) {
	at := v.section()
	if at < 0 || len(v.doc.Sections[at].Inputs) == 0 {
		frame.Say(draw.Dim, "This section is made of nothing that could be chosen.")
		return
	}
	inputs := v.doc.Sections[at].Inputs
	first := 0
	for i, name := range inputs {
		if name == frame.Chosen() {
			first = i + 1
		}
	}
	for i := range inputs {
		if frame.Choose(inputs[(first+i)%len(inputs)]) {
			return
		}
	}
	frame.Say(draw.Dim, "Not among the inputs: "+page.Listed(inputs)+". "+v.shared.Drive.Help().Key+" changes the drive, + adds parts.")
}

// Enter chooses the ring of the seal, unless an input of the sheet is chosen already.
func (v *View) Enter(frame view.Frame) {
	for _, of := range []string{"seal.", "bay.", "jig.", "filling.", "chamber.heating."} {
		if strings.HasPrefix(frame.Chosen(), of) {
			return
		}
	}
	frame.Choose("seal.cord")
}

func (v *View) Show(s view.Scene) tea.Cmd {
	v.Scene = s
	var cmd tea.Cmd
	if s.File != v.of && s.Now != nil && s.Now.File == s.File {
		v.of = s.File
		r := s.File.Rocket()
		cmd = v.study.Ask(s.Ctx, func(ctx context.Context) (study.Benched, error) { return study.BenchOf(ctx, r, study.Options{}) })
	}
	v.draw()
	return cmd
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
	v.draw()
	return true, nil
}

// write makes the document of the last study in the units shown.
func (v *View) write() { v.doc = bench.Document(&v.study.Result, v.Scene.Units) }
