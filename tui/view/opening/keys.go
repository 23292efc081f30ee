package opening

import (
	"fmt"
	"math"
	"reflect"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"ullage/sim/quantity"
	"ullage/sim/rocketfile"
	"ullage/tui/draw"
	"ullage/tui/view"
)

// keys are the keys of the opening view. The keys that change an input
// walk along the number in the rule, which is chosen when the view opens.
type keys struct {
	Open, Next, Prev, Best, Slower, Faster, Type, Take, Sheet, SheetBack key.Binding
}

func newKeys(k view.Keys) keys {
	return keys{
		Open:      view.Bind("o", "opening of the canopies", "o"),
		Next:      view.Bind("e", "next canopy", k.NextEvent.Keys()...),
		Prev:      view.Bind("E", "canopy before", k.PrevEvent.Keys()...),
		Best:      view.Bind("b", "take the best value", "b"),
		Slower:    view.Bind("[", "a lower landing speed to size the canopy for", k.Earlier.Keys()...),
		Faster:    view.Bind("]", "a higher one", k.Later.Keys()...),
		Type:      view.Bind("l", "type the landing speed", "l"),
		Take:      view.Bind("k", "take the canopy that lands so", "k"),
		Sheet:     view.Bind("z", "next part, where there is no room for all", k.Span.Keys()...),
		SheetBack: view.Bind("Z", "part before", k.SpanBack.Keys()...),
	}
}

// Keys are what the view does.
func (v *View) Keys() []view.Key {
	b := &v.bindings
	return []view.Key{
		view.On(b.Next, func(frame view.Frame) { v.turn(frame, 1) }),
		view.On(b.Prev, func(frame view.Frame) { v.turn(frame, -1) }),
		view.On(b.Best, v.takeBest),
		view.On(b.Slower, func(frame view.Frame) { v.want(frame, v.step(-1)) }),
		view.On(b.Faster, func(frame view.Frame) { v.want(frame, v.step(1)) }),
		view.On(b.Type, v.askSpeed),
		view.On(b.Take, v.takeCanopy),
		view.On(b.Sheet, func(view.Frame) { v.leaf(1) }),
		view.On(b.SheetBack, func(view.Frame) { v.leaf(-1) }),
	}
}

func (v *View) Hints() []draw.Hint {
	b, k := &v.bindings, &v.shared
	if v.instead() != "" {
		return k.Hints()
	}
	hints := []draw.Hint{draw.HintOf("walk", k.Less, k.More), draw.HintOf("take the best", b.Best)}
	if v.sheets() > 1 {
		hints = append(hints, draw.HintOf("more", b.Sheet))
	}
	hints = append(hints, draw.HintOf("landing speed", b.Slower, b.Faster), draw.HintOf("take its canopy", b.Take))
	if s := v.Scene.Now; s != nil && len(s.Flight.Rocket.Canopies) > 1 {
		hints = append(hints, draw.HintOf("next canopy", b.Next))
	}
	return append(hints, draw.HintOf("undo", k.Undo), draw.HintOf("type the speed", b.Type), draw.HintOf("view", k.NextView),
		draw.HintOf("choose", k.Up, k.Down), draw.HintOf("findings", k.Findings),
		draw.HintOf("units", k.Units))
}

// Press does what a key of the view does.
func (v *View) Press(frame view.Frame, k tea.KeyMsg) (taken bool, cmd tea.Cmd) {
	if !view.Press(v.Keys(), frame, k) {
		return false, nil
	}
	return true, v.Show(v.Scene)
}

// turn looks at the next canopy (by = 1) or the one before.
func (v *View) turn(frame view.Frame, by int) {
	r := frame.File().Rocket()
	i, n := v.index(r), len(r.Canopies)
	if i < 0 {
		frame.Say(draw.Dim, "There is no canopy.")
		return
	}
	v.canopy = r.Canopies[(i+by+n)%n].Name
	v.chooseNumber(frame)
}

// current is the opening on the screen, if it is that of the rocket as it
// stands; what is taken from it must not be an older rocket's.
func (v *View) current(frame view.Frame) (*figures, bool) {
	o := &v.study.Result
	if !v.study.Ready || v.study.Busy || v.asked != (openingAsked{o.of, o.canopy}) || o.of.File != frame.File() {
		return nil, false
	}
	return o, true
}

// nearly is the opening on the screen if the rocket has changed since by the
// number in the rule alone, which the best does not depend on: walking along it
// does not keep the best away.
func (v *View) nearly(frame view.Frame) (*figures, bool) {
	o := &v.study.Result
	if !v.study.Ready || o.number == "" {
		return nil, false
	}
	now, then := frame.File().Rocket(), o.of.File.Rocket()
	i := v.index(now)
	if i != o.canopy || now.OpeningInput(i) != o.number {
		return nil, false
	}
	in, err := rocketfile.Find(now, o.number)
	if err != nil {
		return nil, false
	}
	number, _ := in.Get(now)
	return o, in.Set(then, number) == nil && reflect.DeepEqual(now, then)
}

// takeBest puts the best value into the rocket.
func (v *View) takeBest(frame view.Frame) {
	o, ok := v.current(frame)
	if !ok {
		o, ok = v.nearly(frame)
	}
	switch {
	case !ok:
		frame.Say(draw.Dim, "The best value is not known yet.")
	case o.best < 0:
		frame.Say(draw.Caution, "No value opens this canopy after thrust has ended and in its turn.")
	default:
		frame.Put(o.number, o.values[o.best].Value)
	}
}

// The landing speeds that can be wanted, m/s.
const (
	slowestLanding = 0.5
	fastestLanding = 50
)

// step is the landing speed wanted, one step up or down.
func (v *View) step(by int) float64 {
	usual := draw.Unit("m/s")
	return view.Nudged(v.wanted, 0.5, by, v.Scene.Units.Unit(usual), usual)
}

// want has the canopy sized for another landing speed.
func (v *View) want(frame view.Frame, speed float64) {
	to := min(max(speed, slowestLanding), fastestLanding)
	if to == v.wanted {
		frame.Say(draw.Dim, "The landing speed goes no further: its range is "+v.speedRange()+".")
	}
	v.wanted = to
}

func (v *View) speedRange() string {
	u := v.Scene.Unit("m/s")
	return draw.Shortly(slowestLanding, u) + " to " + draw.Shortly(fastestLanding, u)
}

// askSpeed lets the landing speed be typed.
func (v *View) askSpeed(frame view.Frame) {
	unit := v.Scene.Unit("m/s")
	frame.Ask(view.Question{
		Says: "Land at:", Text: draw.Exact(v.wanted, unit, 6),
		Rules: "The vertical speed, " + v.speedRange() + ". A lower one takes a larger canopy and drifts farther.",
		Submit: func(frame view.Frame, text string) (string, tea.Cmd) {
			q, err := quantity.ParseIn(text, quantity.Speed, unit)
			switch {
			case err != nil:
				return err.Error(), nil
			case q.Value < slowestLanding || q.Value > fastestLanding:
				return "Out of range: " + v.speedRange() + ".", nil
			}
			v.wanted = q.Value
			return "", v.Show(v.Scene)
		},
	})
}

// takeCanopy gives the canopy the size that lands at the speed wanted, rounded
// up to what can be cut.
func (v *View) takeCanopy(frame view.Frame) {
	o, ok := v.current(frame)
	if !ok || !v.sized.Ready || v.sized.Busy || v.sized.Err != nil {
		frame.Say(draw.Dim, "The size of the canopy is not known.")
		return
	}
	c := o.of.Flight.Rocket.Canopies[o.canopy]
	input, size, step := "canopy."+c.Name+".diameter", v.sized.Result.Diameter, 0.01
	if c.Area > 0 {
		input, size = "canopy."+c.Name+".area", v.sized.Result.Area
	}
	u := v.Scene.Units.Unit(frame.File().Unit(input))
	if frame.Put(input, roundedUp(size, step, u)) {
		frame.Say(draw.Plain, fmt.Sprintf("Canopy %s has the size for %s, rounded up; undo brings the old one back.",
			c.Name, draw.Shortly(v.wanted, v.Scene.Unit("m/s"))))
	}
}

// roundedUp is v, SI, rounded up to a round step of a unit near the one given.
func roundedUp(v, step float64, u quantity.Unit) float64 {
	size := view.Round125(u.FromSI(step) - u.FromSI(0))
	n := math.Ceil(u.FromSI(v)/size - 1e-9)
	return u.ToSI(n * size)
}

// leaf goes to another sheet.
func (v *View) leaf(by int) {
	n := v.sheets()
	v.sheet = ((v.sheet+by)%n + n) % n
}
