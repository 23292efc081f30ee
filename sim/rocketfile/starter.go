package rocketfile

import (
	"embed"
	"path"
	"path/filepath"

	"ullage/sim/fault"
)

//go:embed starter.toml starter-h.csv forms/*.toml
var starterFiles embed.FS

const starterName = "starter"

// Form is a rocket built into the program, to start from.
type Form struct {
	Name string // as ullage new --from takes it
	Help string // what it is
}

// Forms lists them, the usual one first.
func Forms() []Form {
	return []Form{
		{starterName, "a composite airframe that flies on water and on a motor, all of it described"},
		{"bottle", "a drink bottle on a rod, as a point mass"},
		{"tube", "a bottle on a launch tube, as a point mass"},
		{"motor", "a rocket on a solid motor, as a point mass"},
		{"bare", "nothing yet: it is asked for, from the tube to the site"},
	}
}

// Starter is the rocket built into the program: an invented airframe that
// flies on water and on a motor. It has no path.
func Starter() *File {
	f, err := FromForm(starterName)
	if err != nil {
		panic("rocketfile: the starter has faults: " + err.Error())
	}
	return f
}

// FromForm is a rocket to start from, by the name of its form. It has no path; the bare one is a draft.
// Its error is a fault.List.
func FromForm(name string) (*File, error) {
	file := ""
	var names []string
	for _, form := range Forms() {
		if names = append(names, form.Name); form.Name == name {
			file = path.Join("forms", name+".toml")
		}
	}
	switch name {
	case starterName:
		file = "starter.toml"
	case "bare":
	default:
		if file == "" {
			return nil, fault.List{{Value: excerpt(name), Problem: "no rocket to start from", Remedy: "there are " + list(names, "and")}}
		}
	}
	text, err := readBuiltIn(file)
	if err != nil {
		panic("rocketfile: " + name + " is not built in")
	}
	return load(name, ".", text, newFiles(readBuiltIn), name == "bare")
}

func readBuiltIn(name string) ([]byte, error) {
	text, err := starterFiles.ReadFile(path.Clean(filepath.ToSlash(name)))
	if err != nil {
		return readBeside(name) // a motor that the user puts in
	}
	return text, nil
}

// WriteForm writes a rocket to start from to a path and its thrust curve beside it,
// never over a file that exists. A curve that is there already and is the
// same stays as it is.
func WriteForm(form, path string) (*File, error) {
	f, err := FromForm(form)
	if err != nil {
		return nil, err
	}
	return f.SaveAs(path, false)
}

// WriteStarter is WriteForm of the usual one.
func WriteStarter(path string) error {
	_, err := WriteForm(starterName, path)
	return err
}
