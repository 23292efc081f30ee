package main

import (
	"io"

	"ullage/cmd/ullage/notices"
)

// noticesCommand prints the licences of what the program is made of.
type noticesCommand struct {
	outputOptions
}

// Help teaches by example.
func (noticesCommand) Help() string {
	return helpText(
		"The licence of Ullage, and those of the libraries and the font that are inside, word for word. "+
			"Whoever hands the program on hands them on with it.",
		"ullage notices",
		"ullage notices -o NOTICES.txt")
}

// Run prints them.
func (c *noticesCommand) Run(s *streams) error {
	return c.write(s, func(w io.Writer) error {
		_, err := io.WriteString(w, notices.Text())
		return err
	})
}
