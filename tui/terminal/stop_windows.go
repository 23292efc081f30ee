package terminal

import (
	"os"

	"golang.org/x/sys/windows"
)

// understand has the console take control sequences.
func understand(f *os.File) (undo func()) {
	console := windows.Handle(f.Fd())
	var mode uint32
	if windows.GetConsoleMode(console, &mode) != nil ||
		windows.SetConsoleMode(console, mode|windows.ENABLE_VIRTUAL_TERMINAL_PROCESSING) != nil {
		return nil
	}
	return func() { _ = windows.SetConsoleMode(console, mode) }
}

// Watch does nothing: a console tells of its size among its keys.
func (t *Terminal) Watch(<-chan struct{}, func()) {}

// Suspend does nothing: there is no shell to go back to.
func (t *Terminal) Suspend() (stopped bool) { return false }
