package tui

import (
	"path/filepath"

	tea "github.com/charmbracelet/bubbletea"

	"ullage/sim/rocketfile"
	"ullage/tui/recovery"
)

// records is where unsaved edits are kept. The Model and Run share it, so that
// they are written however the program ends.
type records struct {
	dir    string           // empty: edits are not kept
	keeper *recovery.Keeper // nil when they are not kept
}

// open takes a record for a file and returns what an earlier run left behind.
func (r *records) open(file string) (*recovery.Left, error) {
	if r.dir == "" {
		return nil, nil
	}
	keeper, left, err := recovery.Open(r.dir, file)
	r.keeper = keeper
	return left, err
}

// move takes a record for another file in place of the present one.
func (r *records) move(file string) error {
	r.keeper.Forget()
	err := r.keeper.Close()
	r.keeper = nil
	if err != nil {
		return err
	}
	left, err := r.open(file)
	left.Release() // of a file that has just been replaced on purpose
	return err
}

// recordName is what the edits of a rocket are kept under: the file's full
// path, or the name of what is no file.
func recordName(f *rocketfile.File) string {
	if f.Path() == "" {
		return f.Name()
	}
	if abs, err := filepath.Abs(f.Path()); err == nil {
		return abs
	}
	return f.Path()
}

// recordMsg brings the record that unsaved edits are kept in, and what an earlier run left.
type recordMsg struct {
	keeper *recovery.Keeper
	left   *recovery.Left
	err    error
}

// findRecord looks for a record in a directory, which waits for a disk.
func (m *Model) findRecord(dir string) tea.Cmd {
	m.records.dir = dir
	name := recordName(m.lodged)
	return func() tea.Msg {
		keeper, left, err := recovery.Open(dir, name)
		return recordMsg{keeper, left, err}
	}
}

// keepEdits keeps unsaved edits from now on, and offers what an earlier run left.
func (m *Model) keepEdits(msg recordMsg) tea.Cmd {
	if m.records.keeper != nil { // saved elsewhere already, and kept there
		msg.left.Release()
		m.editsKept(keptMsg{msg.keeper.Close()})
		return nil
	}
	m.records.keeper = msg.keeper
	m.editsKept(keptMsg{msg.err})
	if msg.left != nil {
		m.offer(msg.left)
	}
	if m.hist.past != nil {
		return m.note() // what was edited meanwhile
	}
	return nil
}
