package tui

import (
	"context"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/muesli/termenv"

	"ullage/sim"
	"ullage/sim/fault"
	"ullage/sim/gates"
	"ullage/sim/quantity"
	"ullage/sim/rocketfile"
	"ullage/tui/draw"
	"ullage/tui/plot"
	"ullage/tui/terminal"
	"ullage/tui/view"
)

// Model is the state of the screen, a tea.Model. Update never computes a
// flight: commands do, on a copy of the rocket.
type Model struct {
	keys    KeyMap
	theme   *draw.Theme
	charset plot.Charset
	profile termenv.Profile
	colour  bool
	units   quantity.System
	pointer bool // the mouse was asked for

	hist    history
	lodged  *rocketfile.File // as it is on disk: where the file lives now
	records *records

	inputs    list
	picking   *picker    // a choice being made; nil when none is
	guiding   *guide     // what asks for the rocket value by value; nil when nothing does
	finding   *finding   // an input being looked for; nil when none is
	tabling   *tabling   // rows of numbers in the place of the inputs; nil when none are
	lastFound string     // what was looked for before
	typed     *typing    // a value being typed; nil when none is
	fault     complaint  // of the last edit, until the next key
	gaps      fault.List // what is missing or at odds of the file as it stands
	lastLack  string     // the key that was shown last of what is missing
	crash     complaint  // of the last flight, until another is flown
	notice    notice
	asking    *question // what waits for an answer; nil when nothing does
	page      *page     // what stands in place of the body; nil for the body

	ctx     context.Context
	flies   flyer
	callOff context.CancelFunc // of the flight under way
	asked   int                // number of the last flight asked for
	now     *view.Outcome      // the last good flight
	kept    *view.Outcome      // for comparison

	clock   func() time.Time
	judges  judge
	corners *view.Work[view.Cornered] // go or no-go of a flight, often the one on show

	views  []view.View
	active int

	noting  bool // unsaved edits will be written in a moment
	leaving bool // the answer under way was given to leave

	ask   tea.Cmd // asks the terminal for its background; nil when it is not asked
	begun tea.Cmd // what the view in sight asked for before the start
	find  tea.Cmd // looks for the record of unsaved edits; nil when they are not kept

	layout layout
	drawn  drawn
}

// notice is a message on the status line that the next key takes away.
type notice struct {
	says string
	role draw.Role
}

// New is a screen showing the file of o.
func New(o Options) Model {
	o.File = o.File.Draft()
	m := Model{
		keys: DefaultKeys(), charset: o.Charset, units: o.Units, pointer: o.Mouse,
		hist: newHistory(o.File), lodged: o.File, records: &records{},
		ctx: context.Background(), flies: sim.Fly,
		clock: o.clock(), judges: gates.Judge, corners: &view.Work[view.Cornered]{},
	}
	m.profile, m.colour = o.profile()
	m.views = views(m.keys.Keys, o)
	m.repaint(backgroundOf(terminal.GuessBackground()))
	m.refill()
	m.inputs.chooseDrive()
	if o.Forms {
		m.pickForm()
	}
	switch {
	case len(o.Logs) > 0:
		m.beginWith("log")
	case o.Forecast != "":
		m.beginWith("day")
	}
	return m
}

// beginWith shows a view by its name at the start.
func (m *Model) beginWith(name string) {
	for i, v := range m.views {
		if v.About().Name == name {
			m.active = i
			v.Enter(frame{m})
		}
	}
}

// file is the rocket file as it stands.
func (m *Model) file() *rocketfile.File { return m.hist.file }

// unsaved tells that the file differs from what is on disk.
func (m *Model) unsaved() bool { return m.file().Modified() }

// view is the one shown.
func (m *Model) view() view.View { return m.views[m.active] }

// Init starts the first flight and asks the terminal for its background.
func (m Model) Init() tea.Cmd { return func() tea.Msg { return startMsg{} } }

// backgroundMsg tells the terminal's background, once the terminal has said it.
type backgroundMsg draw.Background

// startMsg makes the first flight an ordinary one.
type startMsg struct{}

// Update takes one message.
func (m Model) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	cmd := m.update(msg)
	m.draw()
	return m, cmd
}

func (m *Model) update(msg tea.Msg) tea.Cmd {
	switch msg := msg.(type) {
	case startMsg:
		return tea.Batch(m.fly(), m.begun, m.find, m.ask)
	case recordMsg:
		return m.keepEdits(msg)
	case tea.WindowSizeMsg:
		return m.resize(msg.Width, msg.Height)
	case tea.KeyMsg:
		return m.press(msg)
	case tea.MouseMsg:
		return m.mouse(msg)
	case backgroundMsg:
		m.repaint(draw.Background(msg))
		return m.show()
	case flownMsg:
		return m.flown(msg)
	case keepMsg:
		m.noting = false
		return m.flush()
	case keptMsg:
		m.editsKept(msg)
		return nil
	}
	if m.corners.Take(msg) {
		return m.show()
	}
	var cmds []tea.Cmd
	for _, v := range m.views {
		cmds = append(cmds, v.Receive(msg))
	}
	return tea.Batch(cmds...)
}

// press takes a key. Keys typed or repeated fast arrive as one message with
// several characters; unless they were pasted each counts for itself.
func (m *Model) press(k tea.KeyMsg) tea.Cmd {
	before := m.file()
	var cmds []tea.Cmd
	if k.Type == tea.KeyRunes && len(k.Runes) > 1 && !k.Paste {
		for _, r := range k.Runes {
			one := k
			one.Runes = []rune{r}
			cmds = append(cmds, m.pressOne(one))
		}
	} else {
		cmds = append(cmds, m.pressOne(k))
	}
	if m.file() != before {
		m.refill()
		cmds = append(cmds, m.fly(), m.note())
	}
	if m.asking == nil {
		m.leaving = false
	}
	return tea.Batch(cmds...)
}

// refill brings the inputs up to date with the file.
func (m *Model) refill() {
	m.gaps = m.file().Unfinished()
	if m.tabling != nil && !m.file().CanBeRows(m.tabling.input) {
		m.tabling = nil // what it was of is gone
	}
	m.inputs.open = opens(m.file())
	m.inputs.refill(fieldsOf(m.file(), m.units))
}

// resize pushes the sizes down.
func (m *Model) resize(w, h int) tea.Cmd {
	m.layout = newLayout(w, h)
	if m.layout.short() {
		return nil
	}
	for _, v := range m.views {
		if v.About().Whole {
			v.Resize(m.layout.whole())
		} else {
			v.Resize(m.layout.view, m.layout.body)
		}
	}
	return m.show()
}

// visit shows another view.
func (m *Model) visit(i int) tea.Cmd {
	m.active = i
	m.view().Enter(frame{m})
	return m.show()
}

// show gives the scene to the view in sight.
func (m *Model) show() tea.Cmd {
	m.drawn.findings = nil
	file := m.file()
	switch {
	case m.blank():
		return nil
	case m.unfinished(): // views are of the last good flight, whole
		file = m.now.File
	}
	scene := view.Scene{Ctx: m.ctx, File: file, Now: m.now, Older: m.now != nil && m.now.File != m.file(), Kept: m.kept, Corners: m.corners, Units: m.units, Theme: m.theme}
	if m.now != nil {
		scene.Mends = m.judging(m.now, true)
	}
	return m.view().Show(scene)
}

// repaint prepares the theme for a background.
func (m *Model) repaint(bg draw.Background) {
	m.theme = draw.NewTheme(m.charset, m.profile, m.colour, bg)
}
