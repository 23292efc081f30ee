// Package pad is the view for the launch site: one page on the whole screen, black on white, with what matters there in large
// letters and the steps up to the launch to tick off. It starts and commands nothing.
package pad

import (
	"context"
	"time"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"ullage/sim/gates"
	"ullage/sim/plan"
	"ullage/sim/report/checklist"
	"ullage/sim/rocket"
	"ullage/sim/study"
	"ullage/tui/draw"
	"ullage/tui/view"
)

// keys are the keys of the pad view.
type keys struct {
	Open, Tick, Before, Next, ListBefore, NextList, Amiss, Wipe, Sheet key.Binding
}

func newKeys(k view.Keys) keys {
	with := func(own string, shared key.Binding) []string { return append([]string{own}, shared.Keys()...) }
	return keys{
		Open:       view.Bind("R", "at the pad: large letters for daylight, steps to tick off", "R"),
		Tick:       view.Bind("space", "tick the step at hand and go to the next; a tick that is there is taken back", " ", "enter"),
		Before:     view.Bind("↑ [", "step before", with("up", k.Earlier)...),
		Next:       view.Bind("↓ ]", "next step", with("down", k.Later)...),
		ListBefore: view.Bind("← {", "list before", with("left", k.FarEarlier)...),
		NextList:   view.Bind("→ }", "next list", with("right", k.FarLater)...),
		Amiss:      view.Bind("e", "it did not release, or did not light: that list at once, and back", k.NextEvent.Keys()...),
		Wipe:       view.Bind("A", "take back all ticks of the list; again brings them back", "A"),
		Sheet:      view.Bind("z", "what has the room below the step: steps, pressures, figures, who stands where", k.Span.Keys()...),
	}
}

// View is the page for the pad.
type View struct {
	view.Pane
	shared   view.Keys
	bindings keys
	clock    func() time.Time

	lists []list // those of the drive
	name  string // of the one in sight
	from  string // the one before the key of what went amiss
	sheet int    // what has the room below the step, where there is none for all
	ticks ticks
	wind  view.Work[plan.WindLimit]
	winds *view.Outcome // whose wind that is
	most  mostWind
}

// mostWind looks for the wind above which not to fly: [plan.MostWind], or what a test puts in its place.
type mostWind func(context.Context, *rocket.Rocket, plan.Options) (plan.WindLimit, error)

// New is the view as it is at the start; clock tells the day, for the age of a proof.
func New(k view.Keys, clock func() time.Time) *View {
	return &View{shared: k, bindings: newKeys(k), clock: clock, ticks: newTicks(), most: plan.MostWind}
}

// About is what the view is.
func (v *View) About() view.About {
	return view.About{
		Name: "pad", Open: v.bindings.Open, Whole: true,
		Help: "For the launch site, black on white to be read in sunlight (make the terminal's letters larger too): go or no-go, the drive, the pressure to " +
			"fill to, what a closed chamber shows as it warms or cools, and the lists of ullage checklist for the field, step by step. Ticks stay while " +
			"you look at other views and are off once the rocket is another; they are not kept when the program ends. A rocket that is no-go or not judged has no list that fills, arms or launches. The page " +
			"starts and commands nothing; the range officer and local law decide.",
	}
}

// Keys are what the view does.
func (v *View) Keys() []view.Key {
	b := &v.bindings
	return []view.Key{
		view.On(b.Tick, v.tick),
		view.On(b.Before, func(view.Frame) { v.move(-1) }),
		view.On(b.Next, func(view.Frame) { v.move(1) }),
		view.On(b.ListBefore, func(view.Frame) { v.turn(-1) }),
		view.On(b.NextList, func(view.Frame) { v.turn(1) }),
		view.On(b.Amiss, v.amiss),
		view.On(b.Wipe, v.wipe),
		view.On(b.Sheet, func(view.Frame) { v.sheet++ }),
	}
}

func (v *View) Hints() []draw.Hint {
	b, k := &v.bindings, &v.shared
	return []draw.Hint{
		draw.HintOf("tick", b.Tick), {Key: "↑↓", Says: "step"}, {Key: "←→", Says: "list"}, draw.HintOf("it did not go", b.Amiss),
		draw.HintOf("more", b.Sheet), {Key: "esc", Says: "leave"}, draw.HintOf("take ticks back", b.Wipe), draw.HintOf("units", k.Units),
	}
}

func (v *View) Show(s view.Scene) tea.Cmd {
	v.Scene = s
	var cmd tea.Cmd
	if s.Now != nil && s.File != nil {
		if !s.Older {
			v.ticks.belong(string(s.File.Text()))
		}
		v.fill()
		cmd = v.askWind()
	}
	v.draw()
	return cmd
}

// Receive takes the wind that was asked for.
func (v *View) Receive(msg tea.Msg) tea.Cmd {
	if v.wind.Take(msg) {
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

// judged is the verdict of the rocket with its worst corners: nil while it is not known, and of a rocket that is
// not the one that flew.
func (v *View) judged() *gates.Verdict {
	s := &v.Scene
	if s.Older || s.Now == nil || s.Now.Verdict == nil || !s.Corners.Ready || s.Corners.Result.Of != s.Now {
		return nil
	}
	return &s.Corners.Result.Verdict
}

// follows tells that the verdict is being looked for.
func (v *View) follows() bool {
	s := &v.Scene
	return !s.Older && s.Now != nil && s.Now.Verdict != nil && v.judged() == nil && (s.Corners.Busy || s.Corners.Err == nil)
}

// fill makes the lists of the rocket anew.
func (v *View) fill() {
	r := v.Scene.Now.Flight.Rocket
	day := checklist.Day{Rocket: r, Pad: plan.OnThePad(r)}
	day.Verdict.Rocket, day.Verdict.Power = r, r.Power
	verdict := v.judged()
	if verdict != nil {
		day.Verdict = *verdict
	}
	v.lists = v.lists[:0]
	for _, n := range checklist.AtTheField(r) {
		leads, _ := checklist.Leads(n.Name)
		if leads && verdict == nil { // no leave before it is judged
			v.lists = append(v.lists, list{Named: n, leads: true})
			continue
		}
		if l, ok := checklist.New(&day, n.Name, v.Scene.Units); ok {
			v.lists = append(v.lists, newList(n, l, leads, leads && !verdict.Pass()))
		}
	}
	if v.list() == nil && len(v.lists) > 0 {
		v.name, v.from = v.lists[0].Named.Name, ""
	}
}

// askWind has the wind above which not to fly looked for, once for each rocket that is go.
func (v *View) askWind() tea.Cmd {
	now, verdict := v.Scene.Now, v.judged()
	if verdict == nil || !verdict.Pass() || v.winds == now {
		return nil
	}
	v.winds, v.wind.Ready = now, false
	o := plan.Options{Spreads: study.Spreads(now.File), Respread: study.Respread(now.File), Today: v.clock()}
	return v.wind.Ask(v.Scene.Ctx, func(ctx context.Context) (plan.WindLimit, error) { return v.most(ctx, now.Flight.Rocket, o) })
}
