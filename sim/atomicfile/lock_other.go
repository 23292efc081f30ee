//go:build !(darwin || dragonfly || freebsd || linux || netbsd || openbsd || windows)

package atomicfile

import (
	"errors"
	"os"
)

// TryLock has no lock to take here and says so: what is left behind stays, and programs
// that edit one file at the same time share a record.
func TryLock(*os.File) error { return errors.ErrUnsupported }
