package tui

import (
	"path/filepath"

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

// keepEdits keeps unsaved edits in a directory from now on, and offers what an
// earlier run left there.
func (m *Model) keepEdits(dir string) {
	m.records.dir = dir
	left, err := m.records.open(recordName(m.lodged))
	m.editsKept(keptMsg{err})
	if left != nil {
		m.offer(left)
	}
}
