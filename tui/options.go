package tui

import (
	"io"
	"os"
	"time"

	"github.com/charmbracelet/x/term"
	"github.com/muesli/termenv"

	"ullage/sim/flown"
	"ullage/sim/quantity"
	"ullage/sim/rocketfile"
	"ullage/tui/plot"
	"ullage/tui/view/patterns"
)

// Options say what the screen shows and how. The zero value of every field but
// File is the usual choice.
type Options struct {
	File     *rocketfile.File
	Forms    bool // begin by asking what to start from
	Charset  plot.Charset
	NoColor  bool             // attributes only, as NO_COLOR asks for
	Mouse    bool             // take the mouse, and with it the terminal's own selection
	Units    quantity.System  // shown; the file keeps its own
	Input    io.Reader        // nil: the terminal
	Output   io.Writer        // nil: standard output
	Logs     []flown.Asked    // held against the flight from the start
	Forecast string           // path of one for the day, shown from the start; empty for none
	Drawing  patterns.Writer  // writes the drawings of patterns; nil: they are not written
	Clock    func() time.Time // tells the day, for the age of a proof; nil: time.Now
}

func (o Options) output() io.Writer {
	if o.Output != nil {
		return o.Output
	}
	return os.Stdout
}

func (o Options) clock() func() time.Time {
	if o.Clock != nil {
		return o.Clock
	}
	return time.Now
}

// profile is what the output can show, and whether in colours. NO_COLOR takes
// the colours away and leaves bold and underlined; only what is no terminal, or
// a dumb one, gets nothing but text.
func (o Options) profile() (p termenv.Profile, colour bool) {
	out := termenv.NewOutput(o.output(), termenv.WithProfile(termenv.Ascii))
	p = out.ColorProfile()
	f, isFile := o.output().(*os.File)
	if name := os.Getenv("TERM"); !isFile || !term.IsTerminal(f.Fd()) || name == "" || name == "dumb" {
		return termenv.Ascii, false
	}
	if p == termenv.Ascii {
		return termenv.ANSI, false
	}
	return p, !o.NoColor && !out.EnvNoColor()
}
