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

	"ullage/tui/draw"
	"ullage/tui/quiet"
	"ullage/tui/recovery"
)

func init() { quiet.Restore() }

// framesPerSecond is how often what is drawn may reach the terminal.
const framesPerSecond = 120

// Run shows the screen until the user quits. When ctx ends, or the program is
// told to end (hang-up, termination), it leaves with context.Canceled and
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
	m.keepEdits(recovery.Dir())
	kept := m.records
	defer func() {
		if closing := kept.keeper.Close(); closing != nil && err == nil {
			err = closing
		}
	}()

	options := []tea.ProgramOption{
		tea.WithContext(ctx), tea.WithInput(in), tea.WithOutput(o.output()),
		tea.WithAltScreen(), tea.WithFPS(framesPerSecond), tea.WithoutSignalHandler(),
	}
	if o.Mouse {
		options = append(options, tea.WithMouseCellMotion())
	}
	if o.asksBackground() {
		m.ask = func() tea.Msg {
			_, _ = io.WriteString(o.output(), askBackground)
			return nil
		}
	}
	if f, ok := o.output().(*os.File); ok {
		if w, h, err := term.GetSize(f.Fd()); err == nil {
			m.resize(w, h)
			m.draw()
		}
	}
	p := tea.NewProgram(m, options...)
	if t, ok := in.(*terminalInput); ok {
		t.filter.found = func(bg draw.Background) { p.Send(backgroundMsg(bg)) }
	}
	_, err = p.Run()
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
		return filtered(o.Input), func() {}, nil
	}
	if term.IsTerminal(os.Stdin.Fd()) {
		return filtered(os.Stdin), func() {}, nil
	}
	tty := "/dev/tty"
	if runtime.GOOS == "windows" {
		tty = "CONIN$"
	}
	f, err := os.Open(tty)
	if err != nil {
		return nil, nil, errNoTerminal
	}
	return filtered(f), func() { _ = f.Close() }, nil
}

// filtered takes the terminal's answers out of its input. The Windows console
// gives keys as records, not bytes, and is not asked.
func filtered(r io.Reader) io.Reader {
	f, ok := r.(*os.File)
	if !ok || runtime.GOOS == "windows" || !term.IsTerminal(f.Fd()) {
		return r
	}
	return &terminalInput{File: f, filter: answerFilter{found: func(draw.Background) {}}}
}

// asksBackground tells whether the terminal is asked for its background: the
// Linux console would print the question.
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
