package tui

import (
	"context"
	"io"
	"os"
	"runtime"

	tea "github.com/charmbracelet/bubbletea"

	"ullage/tui/draw"
	"ullage/tui/terminal"
)

// program is the Model on a terminal. Of Bubble Tea it takes the loop of messages and the
// meaning of keys; what is shown goes out by package terminal, since Bubble Tea's own
// renderer wakes by a clock and sends whole rows.
type program struct {
	Model
	on *terminal.Terminal
}

type (
	suspendMsg struct{ kept keptMsg } // to be stopped; what came of keeping the edits
	redrawMsg  struct{}
)

// runner is a program with its loop.
type runner struct {
	*tea.Program
	on     *terminal.Terminal
	layout layout // at the start
}

func newProgram(ctx context.Context, m Model, on *terminal.Terminal, in io.Reader) runner {
	r := runner{on: on, layout: m.layout}
	if _, isFile := in.(*os.File); !isFile || runtime.GOOS != "windows" {
		in = terminal.NewKeys(in, func(light bool) { r.Send(backgroundMsg(backgroundOf(light, true))) })
	}
	r.Program = tea.NewProgram(program{m, on}, tea.WithContext(ctx), tea.WithInput(in), tea.WithOutput(io.Discard),
		tea.WithoutRenderer(), tea.WithoutSignalHandler())
	return r
}

func (r runner) run() error {
	done := make(chan struct{})
	defer close(done)
	r.on.Watch(done, func() { r.Send(sizeOf(r.on)) })
	if w, h, ok := r.on.Size(); ok && newLayout(w, h) != r.layout {
		go r.Send(sizeOf(r.on)) // it became another before anybody watched
	}
	_, err := r.Run()
	return err
}

// sizeOf is the terminal's size as a message; nil when there is no telling.
func sizeOf(t *terminal.Terminal) tea.Msg {
	if w, h, ok := t.Size(); ok {
		return tea.WindowSizeMsg{Width: w, Height: h}
	}
	return nil
}

// backgroundOf is what is known of the background.
func backgroundOf(light, known bool) draw.Background {
	switch {
	case !known:
		return draw.AnyBackground
	case light:
		return draw.LightBackground
	}
	return draw.DarkBackground
}

// Init shows the first frame, and starts as the Model does.
func (p program) Init() tea.Cmd {
	p.show()
	return p.guarded(p.Model.Init())
}

// Update takes one message and has shown what came of it.
func (p program) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	defer p.giveBack()
	switch s := msg.(type) {
	case suspendMsg:
		if !p.on.Suspend() {
			p.Model.say(draw.Caution, "There is no shell here that could let the program go on.")
		}
		msg = s.kept
	case redrawMsg:
		p.on.Redraw()
	}
	m, cmd := p.Model.Update(msg)
	p.Model = m.(Model)
	p.show()
	return p, p.guarded(cmd)
}

// View is empty: Update has shown it.
func (p program) View() string { return "" }

func (p program) show() { p.on.Show(p.rows(), p.layout.width) }

// guarded is a command after whose panic the terminal is as it was, so that what is said
// of it can be read.
func (p program) guarded(cmd tea.Cmd) tea.Cmd {
	if cmd == nil {
		return nil
	}
	return func() tea.Msg {
		defer p.giveBack()
		msg := cmd()
		if batch, ok := msg.(tea.BatchMsg); ok {
			for i := range batch {
				batch[i] = p.guarded(batch[i])
			}
		}
		return msg
	}
}

// giveBack gives the terminal back in a panic.
func (p program) giveBack() {
	if r := recover(); r != nil {
		p.on.Close()
		panic(r)
	}
}
