package rocketfile

import (
	"embed"
	"path"
	"path/filepath"
)

//go:embed starter.toml starter-h.csv
var starterFiles embed.FS

const starterName = "starter"

// Starter is the rocket built into the program: an invented airframe that
// flies on water and on a motor. It has no path.
func Starter() *File {
	read := func(name string) ([]byte, error) {
		text, err := starterFiles.ReadFile(path.Clean(filepath.ToSlash(name)))
		if err != nil {
			return readBeside(name) // a motor that the user puts in
		}
		return text, nil
	}
	text, err := read("starter.toml")
	if err != nil {
		panic("rocketfile: the starter is not built in")
	}
	f, err := load(starterName, ".", text, newFiles(read), false)
	if err != nil {
		panic("rocketfile: the starter has faults: " + err.Error())
	}
	return f
}

// WriteStarter writes the starter to a path and its thrust curve beside it,
// never over a file that exists. A curve that is there already and is the
// same stays as it is.
func WriteStarter(path string) error {
	_, err := Starter().SaveAs(path, false)
	return err
}
