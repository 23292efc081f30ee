package main

import (
	"strings"
	"unicode/utf8"
)

// refused is what keeps arguments from meaning anything to any command: one that is not UTF-8, or a blank one, as a
// variable of the shell that holds nothing gives it. Nobody means that: taken for "not given" it would be
// the rocket built in, standard output or no log at all, in silence.
func refused(args []string) error {
	for i, a := range args {
		switch name, value, given := strings.Cut(a, "="); {
		case !utf8.ValidString(a):
			return badInput("%q is not UTF-8, which all names and values have to be here; give the file another name", a)
		case strings.TrimSpace(a) == "" && i == 0:
			return badInput("the first argument is blank; give a command or the name of a rocket file, or nothing at all")
		case strings.TrimSpace(a) == "":
			return badInput("the argument after %s is blank; give what is meant, or leave it out", args[i-1])
		case given && strings.TrimSpace(value) == "" && strings.HasPrefix(name, "--"):
			return badInput("%s is blank; give what is meant, or leave it out", a)
		}
	}
	return nil
}
