package tui

import (
	"slices"

	"ullage/tui/draw"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"
)

// checkKeys are the keys of the check view. To take something is the same key here as
// among throats, openings and motors.
type checkKeys struct {
	Open, Prev, Next, PrevMend, NextMend, Take key.Binding
}

func newCheckKeys(k KeyMap) checkKeys {
	return checkKeys{
		Open:     bind("j", "go or no-go: every check, and what would mend it", "j"),
		Prev:     bind("[", "check above", k.Earlier.Keys()...),
		Next:     bind("]", "check below", k.Later.Keys()...),
		PrevMend: bind("{", "mend above, of the check chosen", k.FarEarlier.Keys()...),
		NextMend: bind("}", "mend below", k.FarLater.Keys()...),
		Take:     bind("k", "make the mend chosen, where it sets an input", "k"),
	}
}

// checkView is go or no-go: every check of the drive that flies with its worst value,
// those that fail first, and what would mend them.
type checkView struct {
	frame         KeyMap
	bindings      checkKeys
	columns, rows int
	scene         scene
	chosen        string // key of the check chosen; the first on the list when it is not there
	failing       bool   // a check fails
	mend          int    // the mend chosen among those of that check that can be made here
	sight         []string
	painted       []string
}

func newCheckView(k KeyMap) *checkView { return &checkView{frame: k, bindings: newCheckKeys(k)} }

func (v *checkView) name() string { return "check" }

func (v *checkView) opens() key.Binding { return v.bindings.Open }

func (v *checkView) keys() []key.Binding {
	b := v.bindings
	return []key.Binding{b.Prev, b.Next, b.PrevMend, b.NextMend, b.Take}
}

func (v *checkView) hints() []draw.Hint {
	b, k := &v.bindings, &v.frame
	return []draw.Hint{
		draw.HintOf("check", b.Prev, b.Next), draw.HintOf("make the mend", b.Take), draw.HintOf("undo", k.Undo),
		draw.HintOf("mend", b.PrevMend, b.NextMend),
		draw.HintOf("choose", k.Up, k.Down), draw.HintOf("change", k.Less, k.More),
		draw.HintOf("view", k.NextView), draw.HintOf("drive", k.Drive), draw.HintOf("type", k.Type),
		draw.HintOf("save", k.Save), draw.HintOf("findings", k.Findings), draw.HintOf("units", k.Units),
	}
}

func (v *checkView) lines() []string { return v.painted }

func (v *checkView) resize(columns, rows int) { v.columns, v.rows = columns, rows }

func (v *checkView) enter(*Model) {}

func (v *checkView) receive(tea.Msg) tea.Cmd { return nil }

func (v *checkView) show(s scene) tea.Cmd {
	v.scene = s
	// A go that becomes a no-go brings what fails into sight.
	list := v.list()
	failing := len(list) > 0 && !list[0].Pass
	if failing && !v.failing {
		v.chosen, v.mend = "", 0
	}
	v.failing = failing
	v.draw()
	return nil
}

// point chooses the check in the row pressed.
func (v *checkView) point(_, row int) {
	if row >= 0 && row < len(v.sight) && v.sight[row] != "" {
		v.chosen, v.mend = v.sight[row], 0
		v.draw()
	}
}

func (v *checkView) press(m *Model, k tea.KeyMsg) (bool, tea.Cmd) {
	switch b := &v.bindings; {
	case key.Matches(k, b.Prev):
		v.move(-1)
	case key.Matches(k, b.Next):
		v.move(1)
	case key.Matches(k, b.PrevMend):
		v.mend--
	case key.Matches(k, b.NextMend):
		v.mend++
	case key.Matches(k, b.Take):
		v.take(m)
	default:
		return false, nil
	}
	return true, v.show(v.scene)
}

// move chooses another check, so many farther down.
func (v *checkView) move(by int) {
	list := v.list()
	if len(list) == 0 {
		return
	}
	at := min(max(v.at(list)+by, 0), len(list)-1)
	v.chosen, v.mend = list[at].Key, 0
}

// at is the place of the check chosen.
func (v *checkView) at(list []checkEntry) int {
	return max(slices.IndexFunc(list, func(e checkEntry) bool { return e.Key == v.chosen }), 0)
}
