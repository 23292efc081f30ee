package main

import (
	"os"
	"path/filepath"

	"github.com/mattn/go-isatty"

	"ullage/tui"
	"ullage/tui/plot"
)

// screenCommand opens the screen. It is what runs when no command is named.
type screenCommand struct {
	File string `arg:"" optional:"" placeholder:"FILE" help:"The rocket file; none opens a rocket built into the program."`

	Charset string `enum:"braille,block,ascii" default:"braille" placeholder:"braille|block|ascii" help:"What to draw plots with: braille, block or ascii."`
	Mouse   bool   `help:"Use the mouse (it takes the terminal's own selection)."`
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
	charset, err := plot.ParseCharset(c.Charset)
	if err != nil {
		return inputError{err}
	}
	file, err := s.openOrStarter(c.File)
	if err != nil {
		return err
	}
	return tui.Run(s.ctx, tui.Options{
		File:    file,
		Charset: charset,
		NoColor: os.Getenv("NO_COLOR") != "", // https://no-color.org
		Mouse:   c.Mouse,
		Units:   c.system(),
	})
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
