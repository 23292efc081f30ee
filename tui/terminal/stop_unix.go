//go:build unix

package terminal

import (
	"errors"
	"os"
	"os/signal"
	"syscall"
	"time"

	"golang.org/x/sys/unix"
)

// understand does nothing: terminals do.
func understand(*os.File) (undo func()) { return nil }

// Watch calls changed when the terminal has another size, and when the program goes on
// after having been stopped, until done is closed. The terminal is taken again by then, and
// what it shows is not known.
func (t *Terminal) Watch(done <-chan struct{}, changed func()) {
	signals := make(chan os.Signal, 2)
	signal.Notify(signals, syscall.SIGWINCH, syscall.SIGCONT)
	go func() {
		defer signal.Stop(signals)
		for {
			select {
			case <-done:
				return
			case s := <-signals:
				if s == syscall.SIGCONT {
					t.Resume()
				} else {
					t.forget() // also of a size that it had before
				}
				changed()
			}
		}
	}()
}

// Suspend gives the terminal back to the shell until it lets the program go on. It tells
// whether the program was stopped: without a shell that minds its jobs the system lets
// nobody stop, for nobody would wake it (POSIX: orphaned process groups).
func (t *Terminal) Suspend() (stopped bool) {
	goesOn := make(chan os.Signal, 1)
	signal.Notify(goesOn, syscall.SIGCONT)
	defer signal.Stop(goesOn)
	t.mu.Lock()
	t.leave()
	t.mu.Unlock()
	_ = syscall.Kill(0, syscall.SIGTSTP)
	stopped = wentOn(goesOn, stopsWithin())
	t.Resume()
	return stopped
}

// stopsWithin is how soon a process stops that is told to, on a busy machine too where
// there is a shell to wake it: the parent, in a process group of its own. Where only
// something between is the parent, that may be so or not.
func stopsWithin() time.Duration {
	parent := os.Getppid()
	group, err := unix.Getpgid(parent)
	session, err2 := unix.Getsid(parent)
	ownGroup, err3 := unix.Getpgid(0)
	ownSession, err4 := unix.Getsid(0)
	if errors.Join(err, err2, err3, err4) == nil && group != ownGroup && session == ownSession {
		return time.Second
	}
	return 50 * time.Millisecond
}

// wentOn tells whether the program goes on after having been stopped, within some time in
// which it could run.
func wentOn(goesOn <-chan os.Signal, within time.Duration) bool {
	for {
		start := time.Now()
		select {
		case <-goesOn:
			return true
		case <-time.After(within):
		}
		if time.Since(start) < 2*within {
			return false
		}
		// It did not run for a while: perhaps it was stopped, and the signal is on its way.
	}
}
