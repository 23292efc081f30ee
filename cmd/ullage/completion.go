package main

import (
	"embed"
	"io"
)

// completionCommand prints a shell's completion script.
type completionCommand struct {
	Shell string `arg:"" enum:"bash,zsh,fish" help:"The shell: bash, zsh or fish."`
	outputOptions
}

// Help teaches by example.
func (completionCommand) Help() string {
	return helpText(
		"The script completes commands, options, their values, files, and the names of inputs after "+
			"--set. Each script's first lines say how to keep it.",
		"source <(ullage completion bash)",
		"source <(ullage completion zsh)",
		"ullage completion fish | source")
}

//go:embed shell
var shells embed.FS

// Run prints the script.
func (c *completionCommand) Run(s *streams) error {
	script, err := shells.ReadFile("shell/ullage." + c.Shell)
	if err != nil {
		return err
	}
	return c.write(s, func(w io.Writer) error {
		_, err := w.Write(script)
		return err
	})
}
