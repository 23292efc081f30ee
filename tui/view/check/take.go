package check

import (
	"ullage/sim/gates"
	"ullage/sim/report/words"
	"ullage/tui/draw"
	"ullage/tui/view"
)

// take makes the mend chosen of the check chosen, as an edit that can be undone.
func (v *View) take(frame view.Frame) {
	list := v.list()
	if len(list) == 0 {
		return
	}
	e := &list[v.at(list)]
	switch {
	case e.awaits:
		frame.Say(draw.Dim, "What would mend it is being looked for.")
		return
	case len(e.Remedies) == 0 && e.Fails():
		frame.Say(draw.Dim, "What would mend it is not known.")
		return
	case len(e.Remedies) == 0:
		frame.Say(draw.Dim, "Nothing to mend: "+e.Name+" is within its limit.")
		return
	case e.old || e.oldMends || frame.File() != v.Scene.Now.File:
		frame.Say(draw.Dim, "The mends are those of the rocket before the last edit; in a moment there are new ones.")
		return
	}
	can := e.settable()
	if len(can) == 0 {
		frame.Say(draw.Dim, "No number among the inputs does it: "+words.In(v.Scene.Units).Remedy(e.Remedies[0])+".")
		return
	}
	mend := e.Remedies[can[v.among(can)]]
	before, says := frame.File(), words.In(v.Scene.Units).Remedy(mend)
	if mend.Kind == gates.TiltIntoWind || mend.And != nil {
		v.make(frame, mend, says)
	} else {
		frame.Put(mend.Input.Name, mend.To)
	}
	if frame.File() != before {
		frame.Say(draw.Plain, "Done: "+says+". "+v.shared.Undo.Help().Key+" takes it back.")
	}
}

// among is the place of the mend chosen among those that can be made here.
func (v *View) among(can []int) int {
	v.mend = min(max(v.mend, 0), max(len(can)-1, 0))
	return v.mend
}

// make sets what a mend sets as one edit: the rail's heading with its tilt, a second input
// with the first.
func (v *View) make(frame view.Frame, mend gates.Remedy, says string) {
	_, from := v.Scene.Now.Flight.Rocket.Wind.Surface()
	f, err := view.Mended(frame.File(), &mend, from)
	if frame.Take(f, err, view.Edit{Input: mend.Input.Name, Says: says}) {
		frame.Choose(mend.Input.Name)
	}
}
