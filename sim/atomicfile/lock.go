package atomicfile

import "errors"

// ErrHeld says that a running program holds a lock.
var ErrHeld = errors.New("held by a running program")
