//go:build darwin || dragonfly || freebsd || linux || netbsd || openbsd

package recovery

import (
	"errors"
	"os"

	"golang.org/x/sys/unix"
)

// tryLock takes a lock that belongs to the open file, so that two keepers in
// one program exclude each other as well.
func tryLock(f *os.File) error {
	err := unix.Flock(int(f.Fd()), unix.LOCK_EX|unix.LOCK_NB)
	if errors.Is(err, unix.EWOULDBLOCK) {
		return errHeld
	}
	return err
}
