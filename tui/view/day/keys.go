package day

import (
	"path/filepath"
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"ullage/sim/fault"
	"ullage/sim/plan"
	"ullage/sim/report/words"
	"ullage/tui/draw"
	"ullage/tui/view"
)

// keys are the keys of the day view. To take something is the same key here as in other views, and so are adding and
// removing a file.
type keys struct {
	Open, Prev, Next, PrevDrive, NextDrive, Take, Add, Remove key.Binding
}

func newKeys(k view.Keys) keys {
	return keys{
		Open:      view.Bind("Y", "the day: what passes in which wind, or hour by hour of a forecast", "Y"),
		Prev:      view.Bind("[", "wind or hour above", k.Earlier.Keys()...),
		Next:      view.Bind("]", "wind or hour below", k.Later.Keys()...),
		PrevDrive: view.Bind("{", "the change that the drive before needs", k.FarEarlier.Keys()...),
		NextDrive: view.Bind("}", "the change that the next drive needs", k.FarLater.Keys()...),
		Take:      view.Bind("k", "take the change over into the rocket", "k"),
		Add:       view.Bind("a", "take a forecast by its path, or read it again", "a"),
		Remove:    view.Bind("r", "leave the forecast: a table of winds again", "r"),
	}
}

// Keys are what the view does.
func (v *View) Keys() []view.Key {
	b := &v.bindings
	return []view.Key{
		view.On(b.Prev, func(view.Frame) { v.move(-1) }),
		view.On(b.Next, func(view.Frame) { v.move(1) }),
		view.On(b.PrevDrive, func(view.Frame) { v.turn(-1) }),
		view.On(b.NextDrive, func(view.Frame) { v.turn(1) }),
		view.On(b.Take, v.take),
		view.On(b.Add, v.ask),
		view.On(b.Remove, v.remove),
	}
}

// ask asks for the path of a forecast.
func (v *View) ask(frame view.Frame) {
	frame.Ask(view.Question{
		Says: "Forecast:", Text: v.forecast, Path: true,
		Rules:  "The path of a forecast as CSV: heads such as time, wind (m/s), gust (m/s), from, temperature (degC); a row for each hour.",
		Submit: v.add,
	})
}

// add takes a forecast, or says what is wrong with it.
func (v *View) add(frame view.Frame, text string) (wrong string, cmd tea.Cmd) {
	path := draw.LongPath(text)
	if path == "" {
		return "A path is missing.", nil
	}
	path = filepath.Clean(path)
	if _, err := plan.OpenForecast(path, frame.File().Rocket(), fault.Files); err != nil {
		return first(err), nil
	}
	v.forecast, v.at = path, 0
	v.read++
	return "", v.Show(v.Scene)
}

// remove leaves the forecast.
func (v *View) remove(frame view.Frame) {
	if v.forecast == "" {
		frame.Say(draw.Dim, "There is no forecast; "+v.bindings.Add.Help().Key+" takes one by its path.")
		return
	}
	frame.Say(draw.Plain, draw.Clean(filepath.Base(v.forecast))+" is left out; the file stays as it is.")
	v.forecast, v.at = "", 0
}

// first is what is wrong in one sentence, the first of several, with the file it is in.
func first(err error) string {
	text, _, more := strings.Cut(err.Error(), "\n")
	if text = draw.Clean(text); more {
		text += "; and more"
	}
	return text
}

// take makes the change that is chosen, as an edit that can be undone.
func (v *View) take(frame view.Frame) {
	p := v.planned()
	if p == nil || len(p.drives) == 0 {
		frame.Say(draw.Dim, "There is nothing to take yet.")
		return
	}
	if v.old() || frame.File() != p.of.flown.File {
		frame.Say(draw.Dim, "The changes are those of the rocket before the last edit; in a moment there are new ones.")
		return
	}
	o := p.outcome(v.at, v.drive)
	sys := words.In(v.Scene.Units)
	where := v.label(p, v.at) + " on " + string(o.Drive)
	switch {
	case o.Known && o.Verdict.Pass():
		frame.Say(draw.Dim, "Nothing to change: it passes as it is, "+where+".")
	case o.Change == nil || !view.Settable(o.Change):
		frame.Say(draw.Dim, "Nothing to take "+where+": "+sys.OutcomeChange(o)+".")
	default:
		_, from := o.Verdict.Rocket.Wind.Surface()
		says := sys.Remedy(*o.Change)
		before := frame.File()
		f, err := view.Mended(before, o.Change, from)
		if !frame.Take(f, err, view.Edit{Input: o.Change.Input.Name, Says: says}) {
			return
		}
		frame.Choose(o.Change.Input.Name)
		if frame.File() != before {
			frame.Say(draw.Plain, "Done for "+where+": "+says+". "+v.shared.Undo.Help().Key+" takes it back.")
		}
	}
}
