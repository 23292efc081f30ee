//go:build darwin || dragonfly || freebsd || linux || netbsd || openbsd

package atomicfile

import (
	"errors"
	"os"

	"golang.org/x/sys/unix"
)

// TryLock takes a lock that belongs to the open file, so that two holders in
// one program exclude each other as well. The system drops it when the file is closed or
// the program ends, however that happens. It is ErrHeld when another has it.
func TryLock(f *os.File) error {
	err := unix.Flock(int(f.Fd()), unix.LOCK_EX|unix.LOCK_NB)
	if errors.Is(err, unix.EWOULDBLOCK) {
		return ErrHeld
	}
	return err
}
