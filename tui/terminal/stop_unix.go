//go:build unix

package terminal

import (
	"os"
	"os/signal"
	"syscall"
	"time"
)

// understand does nothing: terminals do.
func understand(*os.File) (undo func()) { return nil }

// Watch calls changed when the terminal has another size, and when the program goes on
// after having been stopped, until done is closed. The terminal is taken again by then.
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
				}
				changed()
			}
		}
	}()
}

// stopsWithin is how soon a process stops that is told to.
const stopsWithin = 50 * time.Millisecond

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
	select {
	case <-goesOn:
		stopped = true
	case <-time.After(stopsWithin):
	}
	t.Resume()
	return stopped
}
