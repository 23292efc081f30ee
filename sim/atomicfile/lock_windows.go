package atomicfile

import (
	"errors"
	"os"

	"golang.org/x/sys/windows"
)

// TryLock takes a lock on an open file, as long as it is open. It is ErrHeld when another has it.
func TryLock(f *os.File) error {
	const how = windows.LOCKFILE_EXCLUSIVE_LOCK | windows.LOCKFILE_FAIL_IMMEDIATELY
	err := windows.LockFileEx(windows.Handle(f.Fd()), how, 0, 1, 0, &windows.Overlapped{})
	if errors.Is(err, windows.ERROR_LOCK_VIOLATION) {
		return ErrHeld
	}
	return err
}
