// Command gather writes the licence texts of what is linked into the program, from the
// module cache, to the file named or to standard output:
//
//	go generate ./cmd/ullage/notices
//
// Its output depends on go.mod alone: no time, no path of the machine.
package main

import (
	"bytes"
	"cmp"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"slices"
	"strings"
)

// program is what is looked at, and targets where it runs, as system and machine.
const program = "ullage/cmd/ullage"

var targets = [][2]string{{"linux", "amd64"}, {"windows", "amd64"}, {"darwin", "arm64"}}

func main() {
	var out bytes.Buffer
	err := gather(&out)
	switch {
	case err != nil:
	case len(os.Args) > 1:
		err = os.WriteFile(os.Args[1], out.Bytes(), 0o644)
	default:
		_, err = out.WriteTo(os.Stdout)
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, "gather:", err)
		os.Exit(1)
	}
}

// gather writes all of it: our own licence first, then that of Go, then the modules'
// by name.
func gather(w io.Writer) error {
	ours, others, err := linked()
	if err != nil {
		return err
	}
	root, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		return err
	}
	all := append([]module{
		{name: "Ullage", dir: ours},
		{name: "Go, its standard library", dir: strings.TrimSpace(string(root))},
	}, others...)
	var found []licence
	for _, m := range all {
		texts, err := m.licences()
		if err != nil {
			return err
		}
		found = append(found, texts...)
	}
	return write(w, found)
}

// module is what one licence or several belong to.
type module struct {
	name     string
	dir      string
	packages []string // folders of those linked
}

// linked lists what the program is made of on any target: the folder of our own module,
// and the other modules in the order of their names.
func linked() (ours string, others []module, err error) {
	byName := map[string]*module{}
	for _, target := range targets {
		list := exec.Command("go", "list", "-deps", "-json=Dir,Module", program)
		list.Env = append(os.Environ(), "GOOS="+target[0], "GOARCH="+target[1], "CGO_ENABLED=0")
		list.Stderr = os.Stderr
		out, err := list.Output()
		if err != nil {
			return "", nil, err
		}
		for d := json.NewDecoder(bytes.NewReader(out)); ; {
			var p struct {
				Dir    string
				Module *struct {
					Path, Version, Dir string
					Main               bool
				}
			}
			err := d.Decode(&p)
			if errors.Is(err, io.EOF) {
				break
			}
			switch m := p.Module; {
			case err != nil:
				return "", nil, err
			case m == nil: // the standard library's
			case m.Main:
				ours = m.Dir
			default:
				name := m.Path + " " + m.Version
				if byName[name] == nil {
					byName[name] = &module{name: name, dir: m.Dir}
				}
				byName[name].packages = append(byName[name].packages, p.Dir)
			}
		}
	}
	for _, m := range byName {
		others = append(others, *m)
	}
	slices.SortFunc(others, func(a, b module) int { return cmp.Compare(a.name, b.name) })
	return ours, others, nil
}
