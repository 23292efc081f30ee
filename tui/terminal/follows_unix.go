//go:build unix

package terminal

import (
	"errors"
	"os"
	"time"

	"golang.org/x/sys/unix"
)

// follows waits until there is something to read, or no more, and tells whether there is
// within some time. It uses select, which some systems need for terminals.
func follows(f *os.File, within time.Duration) bool {
	fd := int(f.Fd())
	for end := time.Now().Add(within); ; {
		var set unix.FdSet
		set.Set(fd)
		left := unix.NsecToTimeval(max(time.Until(end), 0).Nanoseconds())
		n, err := unix.Select(fd+1, &set, nil, nil, &left)
		if !errors.Is(err, unix.EINTR) {
			return n > 0 || err != nil // a failure is what the next read tells
		}
	}
}
