// Package motors is the view of motors side by side in one rocket.
package motors

import (
	"context"
	"slices"

	tea "github.com/charmbracelet/bubbletea"

	"ullage/sim/rocketfile"
	"ullage/tui/plot"
	"ullage/tui/view"
)

// View sets motors side by side: the rocket's own, those of the motor
// files beside the rocket file, and those that the user names.
type View struct {
	view.Pane
	shared   view.Keys
	bindings keys
	named    []string // motor files that the user named
	chosen   string   // path of the chosen one; empty for the rocket's own
	heights  bool     // heights are plotted, not thrust, where one has room
	stale    bool     // motor files are to be looked for anew
	of       *rocketfile.File
	ofNamed  []string // what the set is of besides, or will be
	set      view.Work[motorSet]
	grids    [2]plot.Grid
}

// New is the view as it is at the start.
func New(k view.Keys) *View {
	return &View{shared: k, bindings: newKeys(k), stale: true}
}

// About is what the view is.
func (v *View) About() view.About {
	return view.About{
		Name: "motors", Open: v.bindings.Open,
		Help: "Motors in this rocket, side by side: its own, those of the motor files in its folder, and those added by their path. " +
			"What does not fit or is above the impulse limit has a sign and a word; the best is the one that flies highest of the others.",
	}
}

// Enter has motor files looked for anew.
func (v *View) Enter(view.Frame) { v.stale = true }

// Point chooses the motor in the row pressed.
func (v *View) Point(_, row int) {
	if !v.set.Ready {
		return
	}
	t := v.list()
	room := v.listRows(&t) - motorHeading
	if i := row - motorHeading; i >= 0 && i < room {
		v.move(t.First(room) + i - v.at())
		v.draw()
	}
}

func (v *View) Show(s view.Scene) tea.Cmd {
	v.Scene = s
	cmd := v.renew()
	v.draw()
	return cmd
}

// renew asks for the motors in this rocket, unless they are there or under way.
func (v *View) renew() tea.Cmd {
	file, named := v.Scene.File, v.named
	if file == nil || !v.stale && v.of == file && slices.Equal(v.ofNamed, named) {
		return nil
	}
	found, anew := v.set.Result.found, v.stale || !v.set.Ready
	v.of, v.ofNamed, v.stale = file, named, false
	return v.set.Ask(v.Scene.Ctx, func(ctx context.Context) (motorSet, error) {
		if anew {
			var err error
			if found, err = file.MotorFiles(); err != nil {
				return motorSet{}, err
			}
		}
		return newMotorSet(ctx, file, found, named)
	})
}

func (v *View) Receive(msg tea.Msg) tea.Cmd {
	if v.set.Take(msg) {
		v.draw()
	}
	return nil
}

// at is the place of the chosen motor on the list: that of the rocket's own
// where the one chosen is not there.
func (v *View) at() int {
	all := v.set.Result.motors
	i := slices.IndexFunc(all, func(e motorEntry) bool { return e.path == v.chosen })
	if i < 0 {
		i = slices.IndexFunc(all, func(e motorEntry) bool { return e.own })
	}
	return max(i, 0)
}

// entry is the chosen motor; nil when there is none.
func (v *View) entry() *motorEntry {
	if all := v.set.Result.motors; len(all) > 0 {
		return &all[v.at()]
	}
	return nil
}

// move chooses another motor, so many farther down.
func (v *View) move(by int) {
	if all := v.set.Result.motors; len(all) > 0 {
		v.chosen = all[min(max(v.at()+by, 0), len(all)-1)].path
	}
}
