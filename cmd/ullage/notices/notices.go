// Package notices holds the licence texts of everything that is linked into the program,
// whatever it runs on, and of the font inside. Command gather finds them in the module
// cache; with ULLAGE_LONG=1 the tests hold the file to be what gather finds.
package notices

import _ "embed"

//go:generate go run ./gather notices.txt

//go:embed notices.txt
var text string

// Text is all of it: our own licence first, each text once, below the names of what it
// belongs to.
func Text() string { return text }
