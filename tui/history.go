package tui

import (
	"slices"

	"ullage/sim/rocketfile"
	"ullage/tui/view"
)

// step is one state of the rocket file and the edit that led to it.
type step struct {
	view.Edit
	file *rocketfile.File
}

// history is every state since the start, with a place in it. It is a value:
// an older copy stays what it was.
type history struct {
	steps []step
	at    int
}

func newHistory(f *rocketfile.File) history { return history{steps: []step{{file: f}}} }

func (h history) file() *rocketfile.File { return h.steps[h.at].file }

// done is the history with one more edit; what had been undone is forgotten.
func (h history) done(s step) history {
	h.steps = append(h.steps[:h.at+1:h.at+1], s)
	h.at++
	return h
}

// undone steps back and returns the edit it took back.
func (h history) undone() (history, step, bool) {
	if h.at == 0 {
		return h, step{}, false
	}
	h.at--
	return h, h.steps[h.at+1], true
}

// redone steps forward again.
func (h history) redone() (history, step, bool) {
	if h.at+1 == len(h.steps) {
		return h, step{}, false
	}
	h.at++
	return h, h.steps[h.at], true
}

// moved is the history with the present state under another file of the same
// text, as after saving it elsewhere.
func (h history) moved(f *rocketfile.File) history {
	steps := slices.Clone(h.steps)
	steps[h.at].file = f
	h.steps = steps
	return h
}
