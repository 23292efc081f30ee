package recovery

import (
	"errors"
	"os"

	"ullage/sim/atomicfile"
)

// lock is an advisory lock on a file of its own. The system drops it when the
// program ends, however that happens.
type lock struct{ f *os.File }

func acquire(path string) (*lock, error) {
	for {
		f, err := os.OpenFile(path, os.O_CREATE|os.O_RDWR, 0o600)
		if err != nil {
			return nil, err
		}
		if err := atomicfile.TryLock(f); err != nil && !errors.Is(err, errors.ErrUnsupported) {
			_ = f.Close()
			return nil, err
		}
		// A holder removes the file before it lets go, so the one locked here
		// may be gone by now: then try the one that has its name.
		held, err := f.Stat()
		if err == nil {
			if named, err := os.Stat(path); err == nil && os.SameFile(held, named) {
				return &lock{f}, nil
			}
		}
		_ = f.Close()
		if err != nil {
			return nil, err
		}
	}
}

func (l *lock) release() {
	// Removed while held, see acquire; where an open file cannot be removed
	// (Windows) an empty one stays behind.
	_ = os.Remove(l.f.Name())
	_ = l.f.Close()
}
