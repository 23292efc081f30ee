package tui

import (
	"context"
	"slices"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"ullage/sim/rocketfile"
	"ullage/tui/plot"
)

// motorsView sets motors side by side: the rocket's own, those of the motor
// files beside the rocket file, and those that the user names.
type motorsView struct {
	frame         KeyMap
	bindings      motorsKeys
	columns, rows int
	scene         scene
	named         []string // motor files that the user named
	chosen        string   // path of the chosen one; empty for the rocket's own
	heights       bool     // heights are plotted, not thrust, where one has room
	stale         bool     // motor files are to be looked for anew
	of            *rocketfile.File
	ofNamed       []string // what the set is of besides, or will be
	set           work[motorSet]
	grids         [2]plot.Grid
	painted       []string
}

func newMotorsView(k KeyMap) *motorsView {
	return &motorsView{frame: k, bindings: newMotorsKeys(k), stale: true}
}

func (v *motorsView) name() string { return "motors" }

func (v *motorsView) opens() key.Binding { return v.bindings.Open }

func (v *motorsView) lines() []string { return v.painted }

func (v *motorsView) resize(columns, rows int) { v.columns, v.rows = columns, rows }

// enter has motor files looked for anew.
func (v *motorsView) enter(*Model) { v.stale = true }

// point chooses the motor in the row pressed.
func (v *motorsView) point(_, row int) {
	if !v.set.ready {
		return
	}
	t := v.list()
	room := v.listRows(&t) - motorHeading
	if i := row - motorHeading; i >= 0 && i < room {
		v.move(t.First(room) + i - v.at())
	}
}

func (v *motorsView) show(s scene) tea.Cmd {
	v.scene = s
	cmd := v.renew()
	v.draw()
	return cmd
}

// renew asks for the motors in this rocket, unless they are there or under way.
func (v *motorsView) renew() tea.Cmd {
	file, named := v.scene.file, v.named
	if file == nil || !v.stale && v.of == file && slices.Equal(v.ofNamed, named) {
		return nil
	}
	found, anew := v.set.result.found, v.stale || !v.set.ready
	v.of, v.ofNamed, v.stale = file, named, false
	return v.set.ask(v.scene.ctx, func(ctx context.Context) (motorSet, error) {
		if anew {
			var err error
			if found, err = file.MotorFiles(); err != nil {
				return motorSet{}, err
			}
		}
		return newMotorSet(ctx, file, found, named)
	})
}

func (v *motorsView) receive(msg tea.Msg) tea.Cmd {
	if v.set.take(msg) {
		v.draw()
	}
	return nil
}

// at is the place of the chosen motor on the list: that of the rocket's own
// where the one chosen is not there.
func (v *motorsView) at() int {
	all := v.set.result.motors
	i := slices.IndexFunc(all, func(e motorEntry) bool { return e.path == v.chosen })
	if i < 0 {
		i = slices.IndexFunc(all, func(e motorEntry) bool { return e.own })
	}
	return max(i, 0)
}

// entry is the chosen motor; nil when there is none.
func (v *motorsView) entry() *motorEntry {
	if all := v.set.result.motors; len(all) > 0 {
		return &all[v.at()]
	}
	return nil
}

// move chooses another motor, so many farther down.
func (v *motorsView) move(by int) {
	if all := v.set.result.motors; len(all) > 0 {
		v.chosen = all[min(max(v.at()+by, 0), len(all)-1)].path
	}
	v.draw()
}
