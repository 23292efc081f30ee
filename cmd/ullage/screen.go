package main

import (
	"os"
	"path/filepath"

	"github.com/mattn/go-isatty"

	"ullage/sim/fault"
	"ullage/sim/flown"
	"ullage/sim/flown/logfile"
	"ullage/sim/plan"
	"ullage/sim/rocketfile"
	"ullage/tui"
	"ullage/tui/plot"
)

// screenCommand opens the screen. It is what runs when no command is named.
type screenCommand struct {
	File string `arg:"" optional:"" placeholder:"FILE" help:"The rocket file; none asks what to start from."`

	Charset  string   `enum:"braille,block,ascii" default:"braille" placeholder:"braille|block|ascii" help:"What to draw plots with: braille, block or ascii."`
	Mouse    bool     `help:"Use the mouse (it takes the terminal's own selection)."`
	Log      []string `placeholder:"FILE" help:"Show a recorder's log beside the flight. Can be given again."`
	Forecast string   `placeholder:"FILE" help:"Show the day by a forecast, hour by hour, as ullage day takes it."`
	logOptions
	partOptions
	unitsOption
}

// Run shows the screen until the user quits.
func (c *screenCommand) Run(s *streams) error {
	if c.File != "" && filepath.Ext(c.File) == "" && missing(c.File) && c.File != "-" {
		return noSuchCommand(c.File) // more likely a mistyped command
	}
	// Text on standard input may be the rocket; keys then come from the terminal
	// that controls the program.
	if !isTerminal(s.out) || c.File != "-" && !isTerminal(s.in) {
		return badInput("the screen needs a terminal; without one, ullage fly FILE reports a flight")
	}
	if os.Getenv("TERM") == "dumb" {
		return badInput("the screen needs a terminal that moves its cursor, and TERM=dumb says that this one does not; ullage fly FILE reports a flight")
	}
	charset, err := plot.ParseCharset(c.Charset)
	if err != nil {
		return inputError{err}
	}
	logs, err := c.asked()
	if err != nil {
		return err
	}
	var file *rocketfile.File
	if c.File == "" {
		file = rocketfile.Starter()
	} else if file, err = s.openDraft(c.File); err != nil {
		return err
	}
	if c.Forecast != "" { // read again by the view, so that it has to stay
		if _, err := plan.OpenForecast(c.Forecast, file.Rocket(), fault.Files); err != nil {
			return asInput(err)
		}
	}
	limitMemory()
	return tui.Run(s.ctx, tui.Options{
		File:     file,
		Forms:    c.File == "",
		Logs:     logs,
		Forecast: c.Forecast,
		Charset:  charset,
		NoColor:  os.Getenv("NO_COLOR") != "", // https://no-color.org
		Mouse:    c.Mouse,
		Units:    c.system(),
		Drawing:  s.patternWriter,
	})
}

// asked are the logs to be shown. What is no file is refused here; the rest is told on the screen.
func (c *screenCommand) asked() ([]flown.Asked, error) {
	told, out, release := c.asTold(), c.LeaveOut, c.Release.value()
	switch {
	case len(c.Log) == 0 && (c.given() || len(out) > 0 || c.Release != nil):
		return nil, badInput("--column, --rate, --height, --from, --to, --release and --leave-out say how a log is read: give --log FILE too, or leave them out")
	case len(c.Log) == 0:
		return nil, nil
	}
	if _, err := told.Reading(); err != nil {
		return nil, asInput(err)
	}
	stretches, err := c.stretches(len(c.Log))
	if err != nil {
		return nil, err
	}
	var logs []flown.Asked
	for _, path := range c.Log {
		if err := logfile.Plain(path); err != nil {
			return nil, asInput(err)
		}
		logs = append(logs, flown.Asked{Path: path, Told: told, LeftOut: stretches, Release: release})
	}
	return logs, nil
}

// isTerminal tells whether a stream is a terminal. It asks the system, not the
// terminal.
func isTerminal(stream any) bool {
	if e, ok := stream.(escaping); ok {
		stream = e.w
	}
	f, ok := stream.(*os.File)
	return ok && isatty.IsTerminal(f.Fd())
}
