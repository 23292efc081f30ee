package tui

import (
	"fmt"
	"math"
	"reflect"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"ullage/sim/quantity"
	"ullage/sim/rocketfile"
	"ullage/tui/draw"
)

// openingKeys are the keys of the opening view. The keys that change an input
// walk along the number in the rule, which is chosen when the view opens.
type openingKeys struct {
	Open, Next, Prev, Best, Slower, Faster, Type, Take, Sheet, SheetBack key.Binding
}

func newOpeningKeys(k KeyMap) openingKeys {
	return openingKeys{
		Open:      bind("o", "opening of the canopies", "o"),
		Next:      bind("e", "next canopy", k.NextEvent.Keys()...),
		Prev:      bind("E", "canopy before", k.PrevEvent.Keys()...),
		Best:      bind("b", "take the best value", "b"),
		Slower:    bind("[", "a lower landing speed to size the canopy for", k.Earlier.Keys()...),
		Faster:    bind("]", "a higher one", k.Later.Keys()...),
		Type:      bind("l", "type the landing speed", "l"),
		Take:      bind("k", "take the canopy that lands so", "k"),
		Sheet:     bind("z", "next part, where there is no room for all", k.Span.Keys()...),
		SheetBack: bind("Z", "part before", k.SpanBack.Keys()...),
	}
}

func (v *openingView) keys() []key.Binding {
	b := v.bindings
	return []key.Binding{b.Next, b.Prev, b.Best, b.Slower, b.Faster, b.Type, b.Take, b.Sheet, b.SheetBack}
}

func (v *openingView) hints() []draw.Hint {
	b, k := &v.bindings, &v.frame
	if v.instead() != "" {
		return k.hints()
	}
	hints := []draw.Hint{draw.HintOf("walk", k.Less, k.More), draw.HintOf("take the best", b.Best)}
	if v.sheets() > 1 {
		hints = append(hints, draw.HintOf("more", b.Sheet))
	}
	hints = append(hints, draw.HintOf("landing speed", b.Slower, b.Faster), draw.HintOf("take its canopy", b.Take))
	if s := v.scene.now; s != nil && len(s.flight.Rocket.Canopies) > 1 {
		hints = append(hints, draw.HintOf("next canopy", b.Next))
	}
	return append(hints, draw.HintOf("undo", k.Undo), draw.HintOf("type the speed", b.Type), draw.HintOf("view", k.NextView),
		draw.HintOf("choose", k.Up, k.Down), draw.HintOf("save", k.Save), draw.HintOf("findings", k.Findings),
		draw.HintOf("units", k.Units))
}

func (v *openingView) press(m *Model, k tea.KeyMsg) (bool, tea.Cmd) {
	switch b := &v.bindings; {
	case key.Matches(k, b.Next):
		return true, v.turn(m, 1)
	case key.Matches(k, b.Prev):
		return true, v.turn(m, -1)
	case key.Matches(k, b.Best):
		v.takeBest(m)
	case key.Matches(k, b.Slower):
		return true, v.want(m, v.step(m, -1))
	case key.Matches(k, b.Faster):
		return true, v.want(m, v.step(m, 1))
	case key.Matches(k, b.Type):
		v.askSpeed(m)
	case key.Matches(k, b.Take):
		v.takeCanopy(m)
	case key.Matches(k, b.Sheet):
		v.leaf(1)
	case key.Matches(k, b.SheetBack):
		v.leaf(-1)
	default:
		return false, nil
	}
	return true, nil
}

// turn looks at the next canopy (by = 1) or the one before.
func (v *openingView) turn(m *Model, by int) tea.Cmd {
	r := m.file().Rocket()
	i, n := v.index(r), len(r.Canopies)
	if i < 0 {
		m.say(draw.Dim, "There is no canopy.")
		return nil
	}
	v.canopy = r.Canopies[(i+by+n)%n].Name
	v.chooseNumber(m)
	cmd := v.renew()
	v.draw()
	return cmd
}

// current is the opening on the screen, if it is that of the rocket as it
// stands; what is taken from it must not be an older rocket's.
func (v *openingView) current(m *Model) (*opening, bool) {
	o := &v.study.result
	if !v.study.ready || v.study.busy || v.asked != (openingAsked{o.of, o.canopy}) || o.of.file != m.file() {
		return nil, false
	}
	return o, true
}

// nearly is the opening on the screen if the rocket has changed since by the
// number in the rule alone, which the best does not depend on: walking along it
// does not keep the best away.
func (v *openingView) nearly(m *Model) (*opening, bool) {
	o := &v.study.result
	if !v.study.ready || o.number == "" {
		return nil, false
	}
	now, then := m.file().Rocket(), o.of.file.Rocket()
	i := v.index(now)
	if i != o.canopy || numberOf(now, i) != o.number {
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
func (v *openingView) takeBest(m *Model) {
	o, ok := v.current(m)
	if !ok {
		o, ok = v.nearly(m)
	}
	switch {
	case !ok:
		m.say(draw.Dim, "The best value is not known yet.")
	case o.best < 0:
		m.say(draw.Caution, "No value opens this canopy after thrust has ended.")
	default:
		m.put(o.number, o.values[o.best].Value)
	}
}

// The landing speeds that can be wanted, m/s.
const (
	slowestLanding = 0.5
	fastestLanding = 50
)

// step is the landing speed wanted, one step up or down.
func (v *openingView) step(m *Model, by int) float64 {
	usual := draw.Unit("m/s")
	return nudged(v.wanted, 0.5, by, m.units.Unit(usual), usual)
}

// want asks for the canopy that lands at another speed.
func (v *openingView) want(m *Model, speed float64) tea.Cmd {
	to := min(max(speed, slowestLanding), fastestLanding)
	if to == v.wanted {
		m.say(draw.Dim, "The landing speed goes no further: its range is "+speedRange(m.units)+".")
		return nil
	}
	v.wanted = to
	cmd := v.renew()
	v.draw()
	return cmd
}

func speedRange(sys quantity.System) string {
	u := sys.Unit(draw.Unit("m/s"))
	return draw.Shortly(slowestLanding, u) + " to " + draw.Shortly(fastestLanding, u)
}

// askSpeed lets the landing speed be typed.
func (v *openingView) askSpeed(m *Model) {
	l := newLine(draw.Exact(v.wanted, m.units.Unit(draw.Unit("m/s")), 6))
	m.asking = &question{
		says: "Land at:", typed: &l,
		rules: "The vertical speed, " + speedRange(m.units) + ". A lower one takes a larger canopy and drifts farther.",
		submit: func(m *Model, text string) tea.Cmd {
			q, err := quantity.ParseIn(text, quantity.Speed, m.units.Unit(draw.Unit("m/s")))
			switch {
			case err != nil:
				m.wrong(err.Error())
				return nil
			case q.Value < slowestLanding || q.Value > fastestLanding:
				m.wrong("Out of range: " + speedRange(m.units) + ".")
				return nil
			}
			m.asking = nil
			if q.Value == v.wanted {
				return nil
			}
			return v.want(m, q.Value)
		},
	}
}

// takeCanopy gives the canopy the size that lands at the speed wanted, rounded
// up to what can be cut.
func (v *openingView) takeCanopy(m *Model) {
	o, ok := v.current(m)
	if !ok || !v.sized.ready || v.sized.busy || v.sized.err != nil {
		m.say(draw.Dim, "The size of the canopy is not known.")
		return
	}
	c := o.of.flight.Rocket.Canopies[o.canopy]
	input, size, step := "canopy."+c.Name+".diameter", v.sized.result.Diameter, 0.01
	if c.Area > 0 {
		input, size = "canopy."+c.Name+".area", v.sized.result.Area
	}
	u := m.units.Unit(m.file().Unit(input))
	before := m.file()
	m.put(input, roundedUp(size, step, u))
	if m.file() != before {
		m.say(draw.Plain, fmt.Sprintf("Canopy %s has the size for %s, rounded up; undo brings the old one back.",
			c.Name, draw.Shortly(v.wanted, m.units.Unit(draw.Unit("m/s")))))
	}
}

// roundedUp is v, SI, rounded up to a round step of a unit near the one given.
func roundedUp(v, step float64, u quantity.Unit) float64 {
	size := round125(u.FromSI(step) - u.FromSI(0))
	n := math.Ceil(u.FromSI(v)/size - 1e-9)
	return u.ToSI(n * size)
}

// leaf goes to another sheet.
func (v *openingView) leaf(by int) {
	n := v.sheets()
	v.sheet = ((v.sheet+by)%n + n) % n
	v.draw()
}
