package terminal

import (
	"io"
	"os"
	"sync"
	"time"

	"github.com/charmbracelet/x/ansi"
	"github.com/charmbracelet/x/term"
)

// mouse modes: presses and drags, told in decimal numbers.
const (
	mouseOn  = ansi.SetModeMouseButtonEvent + ansi.SetModeMouseExtSgr
	mouseOff = ansi.ResetModeMouseExtSgr + ansi.ResetModeMouseButtonEvent
)

// Terminal is a terminal that shows frames. Its methods may be called from several
// goroutines.
type Terminal struct {
	in    io.Reader
	out   io.Writer
	mouse bool
	next  chan frame // the newest frame that is not shown yet
	ended chan struct{}

	mu     sync.Mutex
	open   bool
	closed bool
	saved  *term.State // of the input, before
	undo   func()      // what understand did
	shows  canvas
	last   frame
	text   []byte // memory for what is written
}

// frame is what is to be shown: painted rows of a width.
type frame struct {
	rows  []string
	width int
}

// New is a terminal that is read from in and written to out, with its mouse or without.
func New(in io.Reader, out io.Writer, mouse bool) *Terminal {
	return &Terminal{in: in, out: out, mouse: mouse, next: make(chan frame, 1), ended: make(chan struct{})}
}

// Open takes the terminal: keys come as they are pressed, and the alternate screen is
// shown. It is opened once; Close gives it back.
func (t *Terminal) Open() error {
	t.mu.Lock()
	defer t.mu.Unlock()
	if err := t.enter(); err != nil {
		return err
	}
	go t.showAll()
	return nil
}

// enter takes the terminal, or takes it again. What it shows is not known from then on.
func (t *Terminal) enter() error {
	if t.closed {
		return nil
	}
	if f := terminalOf(t.in); f != nil {
		before, err := term.MakeRaw(f.Fd())
		if err != nil {
			return err
		}
		if t.saved == nil {
			t.saved = before
		}
	}
	if f := terminalOf(t.out); f != nil {
		t.undo = understand(f)
	}
	modes := ansi.SetModeAltScreenSaveCursor + ansi.ResetModeTextCursorEnable + ansi.SetModeBracketedPaste
	if t.mouse {
		modes += mouseOn
	}
	t.shows = canvas{}
	t.open = true
	_, err := io.WriteString(t.out, modes)
	return err
}

// leave gives the terminal back.
func (t *Terminal) leave() {
	if !t.open {
		return
	}
	t.open = false
	modes := ansi.ResetStyle + ansi.ResetModeBracketedPaste
	if t.mouse {
		modes += mouseOff
	}
	_, _ = io.WriteString(t.out, modes+ansi.ResetModeAltScreenSaveCursor+ansi.SetModeTextCursorEnable)
	if t.undo != nil {
		t.undo()
	}
	if f := terminalOf(t.in); f != nil && t.saved != nil {
		_ = term.Restore(f.Fd(), t.saved)
	}
}

// Show has a frame shown, in place of one that still waits.
func (t *Terminal) Show(rows []string, width int) {
	for f := (frame{rows, width}); ; {
		select {
		case t.next <- f:
			return
		case <-t.next:
		case <-t.ended:
			return
		}
	}
}

// showAll writes frames, the newest as soon as the one before is out.
func (t *Terminal) showAll() {
	for {
		select {
		case <-t.ended:
			return
		case f := <-t.next:
			t.mu.Lock()
			t.last = f
			t.show()
			t.mu.Unlock()
		}
	}
}

// show writes the last frame, all of it at once for terminals that can.
func (t *Terminal) show() {
	if !t.open {
		return
	}
	const begin, end = ansi.SetModeSynchronizedOutput, ansi.ResetModeSynchronizedOutput
	t.text = t.shows.paint(append(t.text[:0], begin...), t.last.rows, t.last.width)
	if len(t.text) > len(begin) {
		t.text = append(t.text, end...)
		_, _ = t.out.Write(t.text)
	}
}

// Redraw writes everything again.
func (t *Terminal) Redraw() {
	t.mu.Lock()
	defer t.mu.Unlock()
	t.shows = canvas{}
	t.show()
}

// forget has the next frame written whole, whatever was shown.
func (t *Terminal) forget() {
	t.mu.Lock()
	defer t.mu.Unlock()
	t.shows = canvas{}
}

// Resume takes the terminal again after the program was stopped.
func (t *Terminal) Resume() {
	t.mu.Lock()
	defer t.mu.Unlock()
	if t.enter() == nil {
		t.show()
	}
}

// Ask asks the terminal for its background; what it says comes out of [Keys].
func (t *Terminal) Ask() {
	t.mu.Lock()
	defer t.mu.Unlock()
	if t.open {
		_, _ = io.WriteString(t.out, askBackground)
	}
}

// Size is how many columns and rows there are; not ok where there is no telling.
func (t *Terminal) Size() (width, height int, ok bool) {
	f := terminalOf(t.out)
	if f == nil {
		return 0, 0, false
	}
	width, height, err := term.GetSize(f.Fd())
	return width, height, err == nil
}

// drained is how long the last frame may take to get out at the end.
const drained = 200 * time.Millisecond

// Close gives the terminal back as it was. What is shown afterwards is not.
func (t *Terminal) Close() {
	done := make(chan struct{})
	go func() {
		t.mu.Lock()
		defer t.mu.Unlock()
		if !t.closed {
			t.closed = true
			close(t.ended)
			t.leave()
		}
		close(done)
	}()
	select {
	case <-done:
	case <-time.After(drained): // a terminal that takes nothing any more
	}
}

// terminalOf is a stream that is a terminal; nil when it is none.
func terminalOf(stream any) *os.File {
	if f, ok := stream.(*os.File); ok && term.IsTerminal(f.Fd()) {
		return f
	}
	return nil
}
