// Package quiet keeps the terminal libraries from questioning the terminal
// while the program loads.
//
// Bubble Tea v1 asks the terminal for its background colour from an init
// function and waits up to five seconds for the answer, in every command of a
// program that links it, and swallows keys typed meanwhile. The libraries ask
// nothing of a terminal named "dumb", so this package names it so before they
// load, and package tui, which loads after them, calls [Restore].
//
// It has to be initialised before the libraries are. Go (since 1.21) initialises
// packages in the order of their import paths as soon as what they import is
// ready; this one needs nothing but syscall, while every terminal library needs
// strings, which needs unicode, whose path sorts after this one's. A test of
// package tui holds that no question leaves the program.
package quiet

import "syscall"

const variable = "TERM"

var term, had = syscall.Getenv(variable)

func init() {
	// Without a TERM they would ask too. The only error is of a malformed name.
	_ = syscall.Setenv(variable, "dumb")
}

// Restore gives the environment its TERM back, or takes it out again.
func Restore() {
	if had {
		_ = syscall.Setenv(variable, term)
	} else {
		_ = syscall.Unsetenv(variable)
	}
}
