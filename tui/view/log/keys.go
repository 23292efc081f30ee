package log

import (
	"math"
	"os"
	"path/filepath"
	"slices"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"ullage/sim/flown"
	"ullage/sim/flown/logfile"
	"ullage/tui/draw"
	"ullage/tui/view"
)

// keys are the keys of the log view.
type keys struct {
	Open, Add, Tell, Remove, Next, Quantity, Sheet, Span, SpanBack           key.Binding
	Earlier, Later, NextEvent, PrevEvent, Narrower, Wider, LeaveOut, TakeAll key.Binding
	SoonerFine, LaterFine, Sooner, LaterOn, Found, Fit, FitOne, Take         key.Binding
}

func newKeys(k view.Keys) keys {
	return keys{
		Open:     view.Bind("L", "a recorder's log beside the flight", "L"),
		Add:      view.Bind("a", "add a log by its path", "a"),
		Tell:     view.Bind("T", "say how the log is to be read: columns, units, rate, part", "T"),
		Remove:   view.Bind("r", "take the log off the list", "r"),
		Next:     view.Bind("l", "next log", "l"),
		Quantity: view.Bind("y", "next of what the log has: height, speed, acceleration, chamber pressure", "y"),
		Sheet:    view.Bind("I", "what stands with the plots: results, how the log was read, the fit", "I"),
		Span:     view.Bind("z", "longer span: thrust, ascent, whole flight", k.Span.Keys()...),
		SpanBack: view.Bind("Z", "shorter span", k.SpanBack.Keys()...),

		Earlier:   view.Bind("[", "move the window back", k.Earlier.Keys()...),
		Later:     view.Bind("]", "move the window on", k.Later.Keys()...),
		NextEvent: view.Bind("e", "window to the next event", k.NextEvent.Keys()...),
		PrevEvent: view.Bind("E", "window to the event before", k.PrevEvent.Keys()...),
		Narrower:  view.Bind("N", "a narrower window", "N"),
		Wider:     view.Bind("W", "a wider window", "W"),
		LeaveOut:  view.Bind("s", "leave out the samples in the window, or take them back", "s"),
		TakeAll:   view.Bind("A", "take back all samples left out", "A"),

		SoonerFine: view.Bind(",", "lift-off 0.01 s earlier", ","),
		LaterFine:  view.Bind(";", "lift-off 0.01 s later", ";"),
		Sooner:     view.Bind("{", "lift-off 0.1 s earlier", k.FarEarlier.Keys()...),
		LaterOn:    view.Bind("}", "lift-off 0.1 s later", k.FarLater.Keys()...),
		Found:      view.Bind("=", "lift-off where it is found", "="),

		Fit:    view.Bind("b", "fit the rocket to the logs on the list", "b"),
		FitOne: view.Bind("F", "fit the chosen input alone", "F"),
		Take:   view.Bind("k", "take the fit: values and spreads", "k"),
	}
}

// Keys are what the view does.
func (v *View) Keys() []view.Key {
	b := &v.bindings
	does := func(do func()) func(view.Frame) { return func(view.Frame) { do() } }
	return []view.Key{
		view.On(b.Add, v.askPath),
		view.On(b.Tell, v.askTold),
		view.On(b.Remove, v.remove),
		view.On(b.Next, v.next),
		view.On(b.Quantity, v.nextQuantity),
		view.On(b.Sheet, does(func() { v.sheet = (v.sheet + 1) % sheets })),
		view.On(b.Span, does(func() { v.span = v.span.Step(1) })),
		view.On(b.SpanBack, does(func() { v.span = v.span.Step(-1) })),
		view.On(b.Earlier, does(func() { v.move(-1) })),
		view.On(b.Later, does(func() { v.move(1) })),
		view.On(b.NextEvent, does(func() { v.jump(1) })),
		view.On(b.PrevEvent, does(func() { v.jump(-1) })),
		view.On(b.Narrower, does(func() { v.width = max(v.width-1, 0) })),
		view.On(b.Wider, does(func() { v.width = min(v.width+1, len(widths())-1) })),
		view.On(b.LeaveOut, v.leaveOut),
		view.On(b.TakeAll, v.takeBack),
		view.On(b.SoonerFine, does(func() { v.shift(-fineShift) })),
		view.On(b.LaterFine, does(func() { v.shift(fineShift) })),
		view.On(b.Sooner, does(func() { v.shift(-coarseShift) })),
		view.On(b.LaterOn, does(func() { v.shift(coarseShift) })),
		view.On(b.Found, does(func() { v.release(math.NaN()) })),
		view.On(b.Fit, func(frame view.Frame) { v.startFit(frame) }),
		view.On(b.FitOne, func(frame view.Frame) { v.startFit(frame, frame.Chosen()) }),
		view.On(b.Take, v.take),
	}
}

func (v *View) Hints() []draw.Hint {
	b, k := &v.bindings, &v.shared
	if v.entry() == nil {
		return append([]draw.Hint{draw.HintOf("add a log", b.Add)}, k.Hints()...)
	}
	return []draw.Hint{
		draw.HintOf("change", k.Less, k.More), draw.HintOf("fit", b.Fit), draw.HintOf("take it", b.Take), draw.HintOf("sheet", b.Sheet),
		draw.HintOf("span", b.Span), draw.HintOf("window", b.Earlier, b.Later), draw.HintOf("leave out", b.LeaveOut),
		draw.HintOf("undo", k.Undo), draw.HintOf("lift-off", b.SoonerFine, b.LaterFine), draw.HintOf("quantity", b.Quantity),
		draw.HintOf("next log", b.Next), draw.HintOf("add a log", b.Add), draw.HintOf("read as", b.Tell), draw.HintOf("width", b.Narrower, b.Wider),
		draw.HintOf("event", b.NextEvent), draw.HintOf("choose", k.Up, k.Down), draw.HintOf("view", k.NextView), draw.HintOf("units", k.Units),
	}
}

// Press does what a key of the view does.
func (v *View) Press(frame view.Frame, k tea.KeyMsg) (taken bool, cmd tea.Cmd) {
	v.then = nil
	if !view.Press(v.Keys(), frame, k) {
		return false, nil
	}
	if cmd = v.Show(v.Scene); v.then != nil {
		cmd = tea.Batch(cmd, v.then)
	}
	return true, cmd
}

// askPath asks for the path of a log.
func (v *View) askPath(frame view.Frame) {
	frame.Ask(view.Question{
		Says:   "Log:",
		Rules:  "The path of a recorder's log: a table of numbers as text, with a time and a height, pressure, speed or acceleration.",
		Path:   true,
		Submit: v.addPath,
	})
}

// addPath puts a log on the list and shows it.
func (v *View) addPath(frame view.Frame, text string) (wrong string, cmd tea.Cmd) {
	path := draw.LongPath(text)
	if path == "" {
		return "A path is missing.", nil
	}
	path = filepath.Clean(path)
	if err := logfile.Plain(path); err != nil {
		return why(err), nil
	}
	if i := slices.IndexFunc(v.entries, func(e *entry) bool { return same(e.Path, path) }); i >= 0 {
		v.at = i
		return "", v.Show(v.Scene)
	}
	v.add(flown.Asked{Path: path, Release: math.NaN()})
	frame.Choose("body.drag_factor")
	return "", v.Show(v.Scene)
}

// same tells whether two paths lead to one file.
func same(a, b string) bool {
	one, err := os.Stat(a)
	two, second := os.Stat(b)
	return err == nil && second == nil && os.SameFile(one, two)
}

// askTold asks how the log is to be read.
func (v *View) askTold(frame view.Frame) {
	e := v.entry()
	if e == nil {
		v.none(frame)
		return
	}
	told := e.Told
	if e.opened != nil {
		told = told.For(e.opened.Entry)
	}
	frame.Ask(view.Question{
		Says:  "Read as:",
		Text:  told.String(),
		Rules: "The options of ullage compare: --column 'height=3 ft', --column 'time=1 ms', --rate '20 Hz', --height measured, --from '10 s', --to '90 s'.",
		Submit: func(_ view.Frame, text string) (string, tea.Cmd) {
			told, err := flown.ParseTold(text)
			if err != nil {
				return why(err), nil
			}
			e.Told, e.opened, e.held, e.window = told, nil, nil, math.NaN()
			e.Release, e.LeftOut = math.NaN(), nil
			e.marked++
			v.channel = 0
			return "", v.Show(v.Scene)
		},
	})
}

// none says that there is no log.
func (v *View) none(frame view.Frame) {
	frame.Say(draw.Dim, "There is no log yet; "+v.bindings.Add.Help().Key+" adds one.")
}

// remove takes the log shown off the list.
func (v *View) remove(frame view.Frame) {
	e := v.entry()
	if e == nil {
		v.none(frame)
		return
	}
	v.entries = slices.Delete(slices.Clone(v.entries), v.at, v.at+1)
	v.at, v.channel = max(min(v.at, len(v.entries)-1), 0), 0
	frame.Say(draw.Plain, draw.Clean(filepath.Base(e.Path))+" is off the list; the file stays as it is.")
}

// next goes on to the next log.
func (v *View) next(frame view.Frame) {
	switch len(v.entries) {
	case 0:
		v.none(frame)
	case 1:
		frame.Say(draw.Dim, "There is no other log on the list; "+v.bindings.Add.Help().Key+" adds one.")
	default:
		v.at, v.channel = (v.at+1)%len(v.entries), 0
	}
}

// nextQuantity draws the next column of the log.
func (v *View) nextQuantity(frame view.Frame) {
	switch h := v.held(); {
	case h == nil || len(h.courses) == 0:
		v.none(frame)
	case len(h.courses) == 1:
		frame.Say(draw.Dim, "The log tells "+named(h.courses[0].Channel)+" alone.")
	default:
		v.channel = (v.channel + 1) % len(h.courses)
	}
}
