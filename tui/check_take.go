package tui

import (
	"ullage/sim/gates"
	"ullage/sim/report/words"
	"ullage/tui/draw"
)

// take makes the mend chosen of the check chosen, as an edit that can be undone.
func (v *checkView) take(m *Model) {
	list := v.list()
	if len(list) == 0 {
		return
	}
	e := &list[v.at(list)]
	switch {
	case len(e.Remedies) == 0:
		m.say(draw.Dim, "Nothing to mend: "+e.Name+" is within its limit.")
		return
	case e.old || m.file() != v.scene.now.file:
		m.say(draw.Dim, "The mends are those of the rocket before the last edit; in a moment there are new ones.")
		return
	}
	can := e.settable()
	if len(can) == 0 {
		m.say(draw.Dim, "No number among the inputs does it: "+words.In(m.units).Remedy(e.Remedies[0])+".")
		return
	}
	mend := e.Remedies[can[v.among(can)]]
	before, says := m.file(), words.In(m.units).Remedy(mend)
	if mend.Kind == gates.LeanIntoWind {
		v.lean(m, mend, says)
	} else {
		m.put(mend.Input.Name, mend.To)
	}
	if m.file() != before {
		m.say(draw.Plain, "Done: "+says+". "+v.frame.Undo.Help().Key+" takes it back.")
	}
}

// among is the place of the mend chosen among those that can be made here.
func (v *checkView) among(can []int) int {
	v.mend = min(max(v.mend, 0), max(len(can)-1, 0))
	return v.mend
}

// lean turns the rail to where the wind comes from and leans it.
func (v *checkView) lean(m *Model, mend gates.Remedy, says string) {
	f, err := m.file().SetValue(mend.Input.Name, mend.To)
	if err == nil {
		f, err = f.SetValue("rail.heading", v.scene.now.flight.Rocket.Wind.From)
	}
	if m.take(f, err, step{input: mend.Input.Name, says: says}) {
		m.refill()
		m.inputs.choose(mend.Input.Name)
	}
}
