package main

import (
	"fmt"
	"io"
	"os"
	"strings"

	"github.com/charmbracelet/x/term"
	"github.com/muesli/termenv"

	"ullage/sim/rocketfile"
	"ullage/tui/draw"
	"ullage/tui/plot"
)

// growing draws a rocket from the side while it is asked for, whenever an answer changed its shape.
type growing struct {
	w       io.Writer // nil: not at all
	theme   *draw.Theme
	columns int
	last    string
}

// growing is where messages go: a terminal as wide as it is, or whatever reads them where a charset is asked for by name.
func (s *streams) growing(charset string) (*growing, error) {
	g := &growing{columns: 80}
	if isTerminal(s.err) {
		g.w = s.err
		g.columns = terminalColumns(s.err, g.columns)
	}
	if charset != "" {
		g.w = s.err
	} else {
		charset = "braille"
	}
	signs, err := plot.ParseCharset(charset)
	g.theme = draw.NewTheme(signs, termenv.Ascii, false, draw.AnyBackground)
	return g, err
}

// terminalColumns is how wide a stream's terminal is; other where it does not say.
func terminalColumns(stream any, other int) int {
	if e, ok := stream.(escaping); ok {
		stream = e.w
	}
	if f, ok := stream.(*os.File); ok {
		if width, _, err := term.GetSize(f.Fd()); err == nil && width > 0 {
			return width
		}
	}
	return other
}

// show draws the rocket, unless it looks as it did.
func (g *growing) show(f *rocketfile.File) {
	const indent, least, mostRows = 2, 30, 14
	shape := draw.Growing(f.Described())
	if g.w == nil || shape == nil || g.columns < least {
		return
	}
	columns := g.columns - indent - 1 // a full row would wrap on some terminals
	stack := draw.Side(g.theme.Charset, shape, draw.Unit("mm"))
	var grid plot.Grid
	var b strings.Builder
	for _, row := range draw.PaintStack(g.theme, &grid, &stack, columns, draw.SideRows(shape, columns, mostRows)) {
		if row = strings.TrimRight(row, " "); row != "" {
			b.WriteString(strings.Repeat(" ", indent) + row + "\n")
		}
	}
	if drawn := strings.Trim(b.String(), " \n"); drawn != g.last {
		g.last = drawn
		fmt.Fprint(g.w, "\n"+strings.Trim(b.String(), "\n")+"\n\n")
	}
}
