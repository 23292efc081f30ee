// Package patterns is the view of what is cut, drilled and turned by: the list of true-scale drawings, what is lacking, and the chosen
// one as text.
package patterns

import (
	"context"
	"path/filepath"
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"ullage/sim/pattern"
	"ullage/sim/quantity"
	"ullage/sim/report/page"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
	"ullage/tui/draw"
	"ullage/tui/plot"
	"ullage/tui/view"
)

// Writer lays out the patterns of a rocket for paper and gives what writes their files into a folder and says what it
// wrote. It fails at once where the folder cannot have them, and never writes over a file that is there.
type Writer func(r *rocket.Rocket, sys quantity.System, folder string) (write func(ctx context.Context) (says string, err error), err error)

// keys are the keys of the patterns view.
type keys struct {
	Open, Before, Next, Sheet, Go, Write key.Binding
}

func newKeys(k view.Keys) keys {
	return keys{
		Open:   view.Bind("O", "patterns: what is cut, drilled and turned by", "O"),
		Before: view.Bind("[", "pattern before", k.Earlier.Keys()...),
		Next:   view.Bind("]", "next pattern", k.Later.Keys()...),
		Sheet:  view.Bind("z", "its drawing, or its sizes, radii and what is assumed", k.Span.Keys()...),
		Go:     view.Bind("k", "to the input that it lacks, or is drawn from", "k"),
		Write:  view.Bind("s", "write all as SVG and PDF into a folder, which is asked for", "s"),
	}
}

// View lists the patterns of a rocket and draws the chosen one.
type View struct {
	view.Pane
	shared   view.Keys
	bindings keys
	writer   Writer
	of       *rocketfile.File
	set      pattern.Set
	chosen   int  // a pattern, and after them what is lacking
	text     bool // its sizes are in sight where there is no room for both
	written  view.Work[string]
	grid     plot.Grid
}

// New is the view as it is at the start.
func New(k view.Keys, w Writer) *View {
	return &View{shared: k, bindings: newKeys(k), writer: w}
}

// About is what the view is.
func (v *View) About() view.About {
	return view.About{
		Name: "patterns", Open: v.bindings.Open,
		Help: "What can be drawn at true size to cut, drill and turn by: fins, the wraps that mark them, nose and closures with their radii, gores, rings, jigs; and by name what the " +
			"file does not say enough for. The chosen one is drawn in its proportions, with sizes, radii and what it assumes. One key writes them all as ullage patterns does. " +
			"Print at 100 %, measure the print and the part before you cut; local law and qualified people decide what may be built and flown.",
	}
}

// Keys are what the view does.
func (v *View) Keys() []view.Key {
	b := &v.bindings
	return []view.Key{
		view.On(b.Before, func(view.Frame) { v.choose(v.chosen - 1) }),
		view.On(b.Next, func(view.Frame) { v.choose(v.chosen + 1) }),
		view.On(b.Sheet, func(view.Frame) { v.text = !v.text }),
		view.On(b.Go, v.goOn),
		view.On(b.Write, v.askFolder),
	}
}

func (v *View) Hints() []draw.Hint {
	b, k := &v.bindings, &v.shared
	return []draw.Hint{
		draw.HintOf("pattern", b.Before, b.Next), draw.HintOf("its input", b.Go), draw.HintOf("write files", b.Write), draw.HintOf("drawing or sizes", b.Sheet),
		draw.HintOf("change", k.Less, k.More), draw.HintOf("undo", k.Undo), draw.HintOf("view", k.NextView), draw.HintOf("type", k.Type), draw.HintOf("units", k.Units),
	}
}

// choose takes a row of the list that there is.
func (v *View) choose(row int) {
	v.chosen = max(0, min(row, len(v.set.Patterns)+len(v.set.Lacks)-1))
}

// pattern is the one chosen; nil on a row that says what is lacking.
func (v *View) pattern() *pattern.Pattern {
	if v.chosen < len(v.set.Patterns) {
		return &v.set.Patterns[v.chosen]
	}
	return nil
}

// lack is what the chosen row lacks; nil of a pattern.
func (v *View) lack() *pattern.Lack {
	if i := v.chosen - len(v.set.Patterns); i >= 0 && i < len(v.set.Lacks) {
		return &v.set.Lacks[i]
	}
	return nil
}

// goOn chooses an input of the chosen row: the next of those that it lacks.
func (v *View) goOn(frame view.Frame) {
	var inputs []string
	switch p, l := v.pattern(), v.lack(); {
	case p != nil:
		inputs = []string{p.Input}
	case l != nil && len(l.Keys) == 0:
		frame.Say(draw.Dim, draw.Clean(l.Why)+".")
		return
	case l != nil:
		inputs = l.Keys
	default:
		return
	}
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

// askFolder asks where the files go.
func (v *View) askFolder(frame view.Frame) {
	if v.writer == nil || len(v.set.Patterns) == 0 {
		frame.Say(draw.Dim, "There is nothing to write.")
		return
	}
	folder := "patterns"
	if path := frame.File().Path(); path != "" {
		folder = filepath.Join(filepath.Dir(path), strings.TrimSuffix(filepath.Base(path), filepath.Ext(path))+"-patterns")
	}
	frame.Ask(view.Question{
		Says: "Folder for the drawings:", Text: draw.ShortPath(folder), Path: true, Submit: v.write,
		Rules: "It is made if it is not there. SVG and PDF, on A4, or on Letter with US units; no file that is there is written over.",
	})
}

// write begins to write the files, or tells why it cannot.
func (v *View) write(frame view.Frame, text string) (wrong string, cmd tea.Cmd) {
	folder := draw.LongPath(text)
	if folder == "" {
		return "The name of a folder is missing.", nil
	}
	write, err := v.writer(frame.File().Rocket(), v.Scene.Units, filepath.Clean(folder))
	if err != nil {
		return view.FaultText(err, ""), nil
	}
	cmd = v.written.Ask(v.Scene.Ctx, write)
	v.draw()
	return "", cmd
}

func (v *View) Show(s view.Scene) tea.Cmd {
	v.Scene = s
	if s.File != v.of && s.File != nil { // no flight is needed for it
		if v.of != nil {
			v.written.Result, v.written.Ready, v.written.Err = "", false, nil // it is about another rocket
		}
		v.of, v.set = s.File, pattern.Of(s.File.Rocket())
		v.choose(v.chosen)
	}
	v.draw()
	return nil
}

func (v *View) Receive(msg tea.Msg) tea.Cmd {
	if v.written.Take(msg) {
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
