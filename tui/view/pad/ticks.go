package pad

import "maps"

// ticks are the steps that were ticked, of one rocket: another has none of them.
type ticks struct {
	of    string // text of the file they are of
	done  map[string]map[int]bool
	at    map[string]int // the step at hand, by list
	wiped map[string]map[int]bool
	lost  *ticks // those of the rocket before, until a step of this one is ticked
}

func newTicks() ticks {
	return ticks{done: map[string]map[int]bool{}, at: map[string]int{}, wiped: map[string]map[int]bool{}}
}

// belong holds the ticks to a rocket file. With another they are put aside, not forgotten: an edit that is undone
// brings them back, a tick for the new rocket ends that.
func (t *ticks) belong(text string) {
	switch {
	case t.of == text:
	case t.lost != nil && t.lost.of == text:
		*t = *t.lost
	case t.all() == 0:
		t.of = text
	default:
		old := *t
		*t = newTicks()
		t.of, t.lost = text, &old
	}
}

func (t *ticks) has(list string, step int) bool { return t.done[list][step] }

func (t *ticks) count(list string) int { return len(t.done[list]) }

// all is how many there are.
func (t *ticks) all() int {
	n := 0
	for list := range t.done {
		n += t.count(list)
	}
	return n
}

// set ticks a step or takes its tick back.
func (t *ticks) set(list string, step int, done bool) {
	t.lost = nil
	delete(t.wiped, list)
	if !done {
		delete(t.done[list], step)
		return
	}
	if t.done[list] == nil {
		t.done[list] = map[int]bool{}
	}
	t.done[list][step] = true
}

// wipe takes back all of a list, which goes to its first step.
func (t *ticks) wipe(list string) {
	t.wiped[list] = maps.Clone(t.done[list])
	delete(t.done, list)
	delete(t.at, list)
}

// restore brings back what wipe took and tells whether there was anything.
func (t *ticks) restore(list string) bool {
	if len(t.wiped[list]) == 0 {
		return false
	}
	t.done[list] = t.wiped[list]
	delete(t.wiped, list)
	t.at[list] = 0
	for t.has(list, t.at[list]) {
		t.at[list]++
	}
	return true
}
