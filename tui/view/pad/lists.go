package pad

import (
	"fmt"
	"slices"

	"ullage/sim/report/checklist"
	"ullage/sim/report/words"
	"ullage/tui/draw"
	"ullage/tui/view"
)

// list is a checklist step by step.
type list struct {
	checklist.Named
	checklist.List
	steps   []step
	leads   bool // it fills, arms or launches
	refused bool // of a rocket that is no go: what stands in its place is what is left to do
}

// step is one line of a list.
type step struct{ phase, does string }

func newList(n checklist.Named, l checklist.List, leads, refused bool) list {
	out := list{Named: n, List: l, leads: leads, refused: refused}
	for _, p := range l.Phases {
		for _, text := range p.Steps {
			out.steps = append(out.steps, step{p.Name, text})
		}
	}
	return out
}

// list is the one in sight; nil when there is none of its name.
func (v *View) list() *list {
	if i := v.index(v.name); i >= 0 {
		return &v.lists[i]
	}
	return nil
}

func (v *View) index(name string) int {
	return slices.IndexFunc(v.lists, func(l list) bool { return l.Named.Name == name })
}

// at is the step at hand of the list in sight.
func (v *View) at() int {
	l := v.list()
	return max(0, min(v.ticks.at[v.name], len(l.steps)-1))
}

// move goes to another step, so many farther down.
func (v *View) move(by int) {
	if l := v.list(); l != nil && len(l.steps) > 0 {
		v.ticks.at[v.name] = max(0, min(v.at()+by, len(l.steps)-1))
	}
}

// turn goes to another list.
func (v *View) turn(by int) {
	if i := v.index(v.name); i >= 0 {
		v.name, v.from = v.lists[max(0, min(i+by, len(v.lists)-1))].Named.Name, ""
	}
}

// amiss goes to the list of a rocket that did not release or light, and back from it.
func (v *View) amiss(view.Frame) {
	for _, name := range checklist.Amiss() {
		switch {
		case v.index(name) < 0:
		case v.name == name && v.from != "":
			v.name, v.from = v.from, ""
		case v.name != name:
			v.name, v.from = name, v.name
		}
		if v.index(name) >= 0 {
			return
		}
	}
}

// tick ticks the step at hand, or takes its tick back; after the last of a list that leads the next one follows.
func (v *View) tick(frame view.Frame) {
	l := v.list()
	switch {
	case l == nil:
		return
	case l.leads && v.judged() == nil:
		frame.Say(draw.Bad, "Nothing is ticked before go or no-go is known.")
		return
	case l.refused:
		frame.Say(draw.Bad, fmt.Sprintf("There is nothing to tick: the rocket is %s.", v.judged().Word()))
		return
	case len(l.steps) == 0:
		return
	}
	at := v.at()
	if v.ticks.has(v.name, at) {
		v.ticks.set(v.name, at, false)
		return
	}
	v.ticks.set(v.name, at, true)
	i := v.index(v.name)
	switch {
	case at+1 < len(l.steps):
		v.move(1)
	case l.leads && i+1 < len(v.lists) && v.lists[i+1].leads && v.ticks.count(v.name) == len(l.steps):
		v.name = v.lists[i+1].Named.Name
	case v.ticks.count(v.name) < len(l.steps):
		frame.Say(draw.Caution, fmt.Sprintf("The last step; %d before it are not ticked.", len(l.steps)-v.ticks.count(v.name)))
	}
}

// wipe takes back all ticks of the list, or brings back what it took.
func (v *View) wipe(frame view.Frame) {
	n := v.ticks.count(v.name)
	switch {
	case n > 0:
		v.ticks.wipe(v.name)
		frame.Say(draw.Plain, fmt.Sprintf("%s taken back; %s again brings them back.", words.Plural(n, "tick"), v.bindings.Wipe.Help().Key))
	case v.ticks.restore(v.name):
		frame.Say(draw.Plain, "The ticks are back.")
	}
}
