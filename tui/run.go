package tui

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"runtime"
	"syscall"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/term"

	"ullage/tui/quiet"
	"ullage/tui/recovery"
	"ullage/tui/terminal"
)

func init() { quiet.Restore() }

// errNoTerminal says what the screen needs.
var errNoTerminal = errors.New("the screen needs a terminal; the commands do without: ullage fly FILE")

// Interrupted is the error of a screen that was told to end; it is context.Canceled too.
type Interrupted struct {
	Kept bool  // unsaved edits are offered at the next start
	Err  error // why they are not
}

func (e Interrupted) Error() string {
	switch {
	case e.Err != nil:
		return "unsaved edits could not be kept: " + e.Err.Error()
	case e.Kept:
		return "unsaved edits are kept, and offered at the next start"
	}
	return "nothing was unsaved"
}

// Unwrap is context.Canceled.
func (e Interrupted) Unwrap() error { return context.Canceled }

// Run shows the screen until the user quits. When ctx ends, or the program is
// told to end (hang-up, termination, an interrupt twice), it leaves with [Interrupted] and
// unsaved edits are offered at the next start, as they are after a panic.
func Run(ctx context.Context, o Options) error { return run(ctx, o, New(o)) }

func run(ctx context.Context, o Options, m Model) (err error) {
	in, closeInput, err := o.openInput()
	if err != nil {
		return err
	}
	defer closeInput()
	if f, ok := o.output().(*os.File); ok && !term.IsTerminal(f.Fd()) {
		return errNoTerminal
	}

	ctx, end := signal.NotifyContext(ctx, os.Interrupt, syscall.SIGTERM, syscall.SIGHUP)
	defer end()
	m.ctx = ctx
	m.find = m.findRecord(recovery.Dir()) // once the first frame is out
	kept := m.records
	defer func() {
		closing := kept.keeper.Close()
		switch {
		case errors.Is(err, context.Canceled), err == nil && kept.keeper.Holds(): // told to end, or interrupted twice by key
			err = Interrupted{kept.keeper.Holds(), closing}
		case err == nil:
			err = closing
		}
	}()

	t := terminal.New(in, o.output(), o.Mouse)
	if w, h, ok := t.Size(); ok {
		m.begun = m.resize(w, h)
		m.draw()
	}
	if err := t.Open(); err != nil {
		return fmt.Errorf("the screen: %w", err)
	}
	defer t.Close()
	t.Show(m.rows(), m.layout.width) // it goes out while the loop of messages begins
	if o.asksBackground() {
		m.ask = func() tea.Msg { t.Ask(); return nil }
	}
	err = newProgram(ctx, m, t, in).run()
	switch {
	case ctx.Err() != nil:
		return context.Canceled
	case errors.Is(err, tea.ErrProgramPanic):
		return fmt.Errorf("the program failed; unsaved edits are offered at the next start: %w", err)
	case err != nil:
		return fmt.Errorf("the screen: %w", err)
	}
	return nil
}

// openInput is where keys come from: the terminal, even when standard input is
// a rocket file.
func (o Options) openInput() (io.Reader, func(), error) {
	if o.Input != nil {
		return o.Input, func() {}, nil
	}
	if term.IsTerminal(os.Stdin.Fd()) {
		return os.Stdin, func() {}, nil
	}
	tty := "/dev/tty"
	if runtime.GOOS == "windows" {
		tty = "CONIN$"
	}
	f, err := os.Open(tty)
	if err != nil {
		return nil, nil, errNoTerminal
	}
	return f, func() { _ = f.Close() }, nil
}

// asksBackground tells whether the terminal is asked for its background: the
// Linux console would print the question, and a Windows console gives keys as
// records, not bytes.
func (o Options) asksBackground() bool {
	f, ok := o.output().(*os.File)
	if !ok || runtime.GOOS == "windows" || !term.IsTerminal(f.Fd()) {
		return false
	}
	switch os.Getenv("TERM") {
	case "", "dumb", "linux":
		return false
	}
	return true
}
