package tui

import "fmt"

// The least room the screen works in.
const (
	leastWidth  = 80
	leastHeight = 24
)

// The most room it takes, more than any window has; what a terminal claims beyond stays blank.
const (
	mostWidth  = 1000
	mostHeight = 400
)

// layout is where everything stands for one size of the screen: a title line,
// the body with the inputs at the left and the view at the right, the findings,
// two lines about the chosen input (or a question), and a line of keys.
type layout struct {
	width, height int
	body          int // rows of inputs and view
	inputs        int // columns of the inputs, the border right of them not counted
	view          int // columns of the view
	findings      int // rows of the findings
}

const (
	titleRows  = 1
	statusRows = 2
	keyRows    = 1
)

func newLayout(w, h int) layout {
	l := layout{width: min(w, mostWidth), height: min(h, mostHeight)}
	if l.short() {
		return l
	}
	l.inputs = min(30+(l.width-leastWidth)/12, 38)
	l.view = l.width - l.inputs - 3 // the border, and a blank on both sides
	l.findings = min(3+(l.height-leastHeight)/12, 8)
	l.body = l.height - titleRows - statusRows - keyRows - l.findings
	return l
}

// whole is the room of a view that has the screen to itself but for the title, a line for messages and the keys.
func (l layout) whole() (columns, rows int) { return l.width - 2, l.height - titleRows - keyRows - 1 }

// short tells that the screen is smaller than what the layout needs.
func (l layout) short() bool { return l.width < leastWidth || l.height < leastHeight }

// needs says how much room is missing.
func (l layout) needs() string {
	return fmt.Sprintf("This screen needs %d by %d characters; here are %d by %d.",
		leastWidth, leastHeight, l.width, l.height)
}
