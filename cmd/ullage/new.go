package main

import (
	"errors"
	"fmt"
	"strings"

	"ullage/sim/rocketfile"
)

// newCommand writes a rocket to start from.
type newCommand struct {
	File    string `arg:"" placeholder:"FILE" help:"The file to write, such as heron.toml. One that exists is kept."`
	From    string `default:"starter" enum:"starter,bottle,tube,motor,bare" placeholder:"starter|bottle|tube|motor|bare" help:"What to start from: a whole composite airframe, a bottle, a launch tube, a motor, or nothing."`
	Ask     bool   `help:"Ask for the rocket value by value, from the tube to the site; what is answered is written at once."`
	Charset string `enum:",braille,block,ascii" default:"" placeholder:"braille|block|ascii" help:"What --ask draws the rocket with as it grows: braille, block or ascii. It is drawn on a terminal; with this also into a pipe."`
}

// Help teaches by example.
func (newCommand) Help() string {
	return helpText(
		"Writes a rocket built into the program to a file of your own, with comments that explain the "+
			"values, and the thrust curve of its motor beside it. An existing file is never written over. "+
			"A bare rocket has next to nothing in it: the screen says what each answer still takes and asks for it, "+
			"and so does --ask without a screen, which starts from the bare one and draws the rocket from the side as it grows.",
		"ullage new heron.toml",
		"ullage new --from bare mine.toml",
		"ullage new --ask mine.toml",
		"ullage heron.toml",
		"ullage fly heron.toml")
}

// Run writes the file.
func (c *newCommand) Run(s *streams) error {
	if c.File == "-" {
		return badInput("new writes a file and needs a name, as in ullage new heron.toml")
	}
	form := c.From
	if c.Ask && form == "starter" {
		form = "bare"
	}
	if c.Charset != "" && !c.Ask {
		return badInput("--charset is for --ask; give that too")
	}
	drawn, err := s.growing(c.Charset)
	if err != nil {
		return inputError{err}
	}
	f, err := rocketfile.WriteForm(form, c.File)
	switch {
	case errors.Is(err, rocketfile.ErrExists):
		// The mend that the error offers, replacing it, is not one of this command's.
		what := strings.TrimSuffix(err.Error(), rocketfile.ErrExists.Error())
		return badInput("%sit exists and is kept; give another name", what)
	case err != nil:
		return err
	}
	switch {
	case c.Ask:
		return s.interview(f, drawn)
	case form == "bare":
		fmt.Fprintf(s.err, "wrote %s; ullage %s opens it on the screen, where i asks for the rocket value by value\n", c.File, c.File)
	default:
		// Standard output is for results, and the file is the result.
		fmt.Fprintf(s.err, "wrote %s; ullage %s opens it on the screen, ullage fly %s flies it\n", c.File, c.File, c.File)
	}
	return nil
}
