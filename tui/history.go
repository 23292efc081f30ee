package tui

import (
	"ullage/sim/rocketfile"
	"ullage/tui/view"
)

// history is the rocket file as it stands and the edits that led to it and away from it. It
// is a value: an older copy stays what it was. An edit is kept as what it changed in the
// text, some bytes, so that thousands take no room.
type history struct {
	file         *rocketfile.File
	past, future *step // the edit done last, and the one undone last
}

// step is an edit in a chain of them.
type step struct {
	view.Edit
	at       int              // where the text was changed
	old, new string           // what stood there, and stands there now
	home     *rocketfile.File // where the file lived
	next     *step            // the edit done before, or undone before
}

func newHistory(f *rocketfile.File) history { return history{file: f} }

// done is the history with one more edit, of a file that lives in home; what had been undone
// is forgotten.
func (h history) done(did view.Edit, f, home *rocketfile.File) history {
	old, new := string(h.file.Text()), string(f.Text())
	at := 0
	for at < min(len(old), len(new)) && old[at] == new[at] {
		at++
	}
	old, new = old[at:], new[at:]
	same := 0
	for same < min(len(old), len(new)) && old[len(old)-1-same] == new[len(new)-1-same] {
		same++
	}
	s := &step{Edit: did, at: at, old: copyOf(old[:len(old)-same]), new: copyOf(new[:len(new)-same]), home: home, next: h.past}
	return history{file: f, past: s}
}

// copyOf is a text that does not keep the one it is a part of.
func copyOf(s string) string { return string([]byte(s)) }

// undone steps back, to a file read from its text by open, and returns the edit it took back.
func (h history) undone(open func(s *step, text string) (*rocketfile.File, error)) (history, *step, error) {
	s := h.past
	if s == nil {
		return h, nil, nil
	}
	f, err := open(s, s.swapped(h.file, s.new, s.old))
	if err != nil {
		return h, s, err
	}
	again := *s
	again.next = h.future
	return history{file: f, past: s.next, future: &again}, s, nil
}

// redone steps forward again.
func (h history) redone(open func(s *step, text string) (*rocketfile.File, error)) (history, *step, error) {
	s := h.future
	if s == nil {
		return h, nil, nil
	}
	f, err := open(s, s.swapped(h.file, s.old, s.new))
	if err != nil {
		return h, s, err
	}
	again := *s
	again.next = h.past
	return history{file: f, past: &again, future: s.next}, s, nil
}

// swapped is the text of a file with the step's other state in place of one.
func (s *step) swapped(f *rocketfile.File, one, other string) string {
	text := string(f.Text())
	return text[:s.at] + other + text[s.at+len(one):]
}

// moved is the history with the present state under another file of the same text, as after
// saving it elsewhere.
func (h history) moved(f *rocketfile.File) history {
	h.file = f
	return h
}
