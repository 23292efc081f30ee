package tui

import (
	"errors"
	"fmt"
	"io/fs"
	"reflect"
	"slices"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"ullage/sim/rocketfile"
	"ullage/tui/draw"
	"ullage/tui/recovery"
	"ullage/tui/view"
)

// keepAfter is how long after an edit it is written to the recovery record.
const keepAfter = 400 * time.Millisecond

type (
	keepMsg struct{}            // it is time to write unsaved edits
	keptMsg struct{ err error } // they were written
)

// note remembers unsaved edits for the recovery record, or that there are
// none, and sees to it that the record follows soon.
func (m *Model) note() tea.Cmd {
	if m.unsaved() {
		m.records.keeper.Note(recovery.Digest(m.lodged.Text()), m.file().Text())
	} else {
		m.records.keeper.Forget()
	}
	if m.records.keeper == nil || m.noting {
		return nil
	}
	m.noting = true
	return tea.Tick(keepAfter, func(time.Time) tea.Msg { return keepMsg{} })
}

// flush writes the recovery record.
func (m *Model) flush() tea.Cmd {
	keeper := m.records.keeper
	return func() tea.Msg { return keptMsg{keeper.Flush()} }
}

// editsKept tells when they could not be, unless something worse is being told.
func (m *Model) editsKept(msg keptMsg) {
	if msg.err == nil || m.notice.role == draw.Bad {
		return
	}
	why := msg.err.Error()
	if bad := new(fs.PathError); errors.As(msg.err, &bad) {
		why = bad.Err.Error() + " (" + draw.ShortPath(bad.Path) + ")" // what counts first: a path may be long
	}
	m.say(draw.Caution, "Unsaved edits are not being kept: "+why)
}

// quit leaves, after asking when there are unsaved changes.
func (m *Model) quit() tea.Cmd {
	if !m.unsaved() {
		return m.goodbye()
	}
	m.asking = &question{
		says:  m.title() + " has unsaved changes.",
		quits: true,
		answers: []answer{
			{m.keys.AnswerSave, func(m *Model) tea.Cmd { m.leaving = true; return m.save() }},
			{m.keys.AnswerDiscard, (*Model).goodbye},
		},
	}
	return nil
}

// interrupt quits, asking as quit does; interrupting the question itself
// leaves at once and keeps the recovery record.
func (m *Model) interrupt() tea.Cmd {
	if m.asking != nil && m.asking.quits {
		return tea.Quit
	}
	if m.finding != nil {
		m.findKey(tea.KeyMsg{Type: tea.KeyEsc})
	}
	m.asking, m.page, m.typed, m.picking, m.guiding = nil, nil, nil, nil, nil
	return m.quit()
}

// goodbye leaves with nothing to recover: all is saved or thrown away.
func (m *Model) goodbye() tea.Cmd {
	m.records.keeper.Forget()
	return tea.Quit
}

// offer asks what to do with edits that an earlier run left unsaved. Those that would change
// no value are dropped; those older than what is on disk, whoever saved it, are not offered
// but put aside, and it is said where.
func (m *Model) offer(left *recovery.Left) {
	f, err := m.lodged.WithText([]byte(left.Text))
	if err == nil && sameValues(m.file(), f, m) {
		m.editsKept(keptMsg{left.Discard()})
		return
	}
	if moved := left.Base != recovery.Digest(m.lodged.Text()); moved && m.lodged.SavedAfter(left.At) {
		path, err := left.PutAside()
		m.editsKept(keptMsg{err})
		if err == nil {
			m.say(draw.Caution, fmt.Sprintf("Edits left unsaved on %s are older than the file and not offered; they are in %s.", left.At.Local().Format("2 January 15:04"), path))
		}
		return
	}
	m.asking = &question{
		says: fmt.Sprintf("Unsaved edits of %s from %s were left behind.", m.title(), left.At.Local().Format("2 January 15:04")),
		answers: []answer{
			{m.keys.AnswerRestore, nil},
			{m.keys.AnswerDiscard, func(m *Model) tea.Cmd {
				m.page = nil
				m.editsKept(keptMsg{left.Discard()})
				return nil
			}},
			{m.keys.AnswerKeep, func(m *Model) tea.Cmd { m.page = nil; left.Release(); return nil }},
		},
	}
	if err != nil {
		m.asking.says += " They are no rocket that can be read (" + view.FaultText(err, "") + "); their text is in " + left.Path() + "."
		m.asking.answers = m.asking.answers[1:]
		return
	}
	m.asking.answers[0].do = func(m *Model) tea.Cmd { return m.restore(f, left) }
	m.open(differencesPage(m.file(), f, left.Base != recovery.Digest(m.lodged.Text())))
}

// sameValues tells that two texts of a file differ in comments and spacing alone.
func sameValues(was, is *rocketfile.File, m *Model) bool {
	same := func(a, b rocketfile.Spread) bool { return a.Input.Name == b.Input.Name && a.SD == b.SD }
	return len(differences(was, is, m)) == 0 && reflect.DeepEqual(was.Rocket(), is.Rocket()) && slices.EqualFunc(was.Spreads(), is.Spreads(), same)
}

// restore makes the edits left behind the present state. Their record goes only
// when they stand in this run's own.
func (m *Model) restore(f *rocketfile.File, left *recovery.Left) tea.Cmd {
	m.page = nil
	m.take(f, nil, view.Edit{Says: "unsaved edits restored"})
	m.say(draw.Plain, "Restored; undo goes back to the file on disk.")
	m.note()
	err := m.records.keeper.Flush()
	if err == nil {
		err = left.Discard()
	}
	m.editsKept(keptMsg{err})
	return nil
}
