package terminal

import (
	"os"

	"golang.org/x/sys/windows"
)

// understand has the console take control sequences, and not scroll when the last cell of the last row
// is written.
func understand(f *os.File) (undo func()) {
	console := windows.Handle(f.Fd())
	var mode uint32
	if windows.GetConsoleMode(console, &mode) != nil {
		return nil
	}
	wanted := mode | windows.ENABLE_PROCESSED_OUTPUT | windows.ENABLE_VIRTUAL_TERMINAL_PROCESSING
	if windows.SetConsoleMode(console, wanted|windows.DISABLE_NEWLINE_AUTO_RETURN) != nil && // which older ones do not know
		windows.SetConsoleMode(console, wanted) != nil {
		return nil
	}
	return func() { _ = windows.SetConsoleMode(console, mode) }
}

// Watch does nothing: a console tells of its size among its keys.
func (t *Terminal) Watch(<-chan struct{}, func()) {}

// Suspend does nothing: there is no shell to go back to.
func (t *Terminal) Suspend() (stopped bool) { return false }
