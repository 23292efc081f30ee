package main

import (
	"errors"
	"fmt"
	"strings"

	"ullage/sim/rocketfile"
)

// newCommand writes the starter rocket.
type newCommand struct {
	File string `arg:"" placeholder:"FILE" help:"The file to write, such as heron.toml. One that exists is kept."`
}

// Help teaches by example.
func (newCommand) Help() string {
	return helpText(
		"Writes the rocket built into the program to a file of your own, with comments that explain each "+
			"value, and the thrust curve of its motor beside it. An existing file is never written over.",
		"ullage new heron.toml",
		"ullage heron.toml",
		"ullage fly heron.toml")
}

// Run writes the file.
func (c *newCommand) Run(s *streams) error {
	if c.File == "-" {
		return badInput("new writes two files and needs a name, as in ullage new heron.toml")
	}
	err := rocketfile.WriteStarter(c.File)
	switch {
	case errors.Is(err, rocketfile.ErrExists):
		// The mend that the error offers, replacing it, is not one of this command's.
		what := strings.TrimSuffix(err.Error(), rocketfile.ErrExists.Error())
		return badInput("%sit exists and is kept; give another name", what)
	case err != nil:
		return err
	}
	// Standard output is for results, and the file is the result.
	fmt.Fprintf(s.err, "wrote %s; ullage %s opens it on the screen, ullage fly %s flies it\n", c.File, c.File, c.File)
	return nil
}
