package main

import (
	"fmt"
	"io"
	"os"
	"path"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
)

// licence is a text and the file it is from.
type licence struct {
	owner, file string
	text        string
}

var (
	licenceFile   = regexp.MustCompile(`(?i)^(licen[cs]e|copying|notice|patents)([-.].*)?$`)
	licenceFolder = regexp.MustCompile(`(?i)licen[cs]es$`)
)

// notTaken are licences that their owners leave to choose, where we choose another.
var notTaken = []string{
	"github.com/golang/freetype/licenses/gpl.txt", // but licenses/ftl.txt
}

// unwritten are modules without a file of their licence: what of their README tells of it.
var unwritten = map[string]string{
	"github.com/mattn/go-localereader": "## License",
}

// licences finds the texts of a module: those at its top, in a folder of licences there,
// and in the folders of the packages that are linked.
func (m module) licences() ([]licence, error) {
	var files []string
	for _, folder := range m.folders() {
		entries, err := os.ReadDir(filepath.Join(m.dir, folder))
		if err != nil {
			return nil, err
		}
		for _, e := range entries {
			name := path.Join(folder, e.Name())
			switch {
			case slices.Contains(notTaken, path.Join(m.path(), name)), path.Ext(name) == ".go":
			case !e.IsDir() && (licenceFile.MatchString(e.Name()) || licenceFolder.MatchString(folder)):
				files = append(files, name)
			}
		}
	}
	if len(files) == 0 {
		return m.told()
	}
	var found []licence
	for _, name := range files {
		text, err := os.ReadFile(filepath.Join(m.dir, name))
		if err != nil {
			return nil, err
		}
		found = append(found, licence{m.name, name, clean(string(text))})
	}
	return found, nil
}

// path is the module's name without its version.
func (m module) path() string {
	name, _, _ := strings.Cut(m.name, " ")
	return name
}

// folders are those to look in, from the module's top, with slashes.
func (m module) folders() []string {
	found := []string{"."}
	if entries, err := os.ReadDir(m.dir); err == nil {
		for _, e := range entries {
			if e.IsDir() && licenceFolder.MatchString(e.Name()) {
				found = append(found, e.Name())
			}
		}
	}
	for _, p := range m.packages {
		for at, err := filepath.Rel(m.dir, p); err == nil && at != "."; at = filepath.Dir(at) {
			found = append(found, filepath.ToSlash(at))
		}
	}
	slices.Sort(found)
	return slices.Compact(found)
}

// told is what the README of a module tells that has no file of its licence.
func (m module) told() ([]licence, error) {
	heading, known := unwritten[m.path()]
	if !known {
		return nil, fmt.Errorf("%s has no licence file", m.name)
	}
	text, err := os.ReadFile(filepath.Join(m.dir, "README.md"))
	if err != nil {
		return nil, err
	}
	_, after, found := strings.Cut(clean(string(text)), heading)
	if !found {
		return nil, fmt.Errorf("%s: %q is not in its README", m.name, heading)
	}
	return []licence{{m.name, "README.md", heading + after}}, nil
}

// clean takes off what editors add: carriage returns, blanks at the ends of lines, empty
// lines around the text.
func clean(text string) string {
	lines := strings.Split(strings.TrimPrefix(text, "\ufeff"), "\n")
	for i := range lines {
		lines[i] = strings.TrimRight(lines[i], " \t\r")
	}
	return strings.Trim(strings.Join(lines, "\n"), "\n") + "\n"
}

const head = `Ullage is under the MIT licence, the first text below. The program holds work of
others as well, under the licences that follow. Each text stands once, below the
names of all that come under it. Plots are set in Liberation Sans, whose licence
is that of LICENSE-SIL. Ullage is based in part of the work of the FreeType Team;
it takes their code under the FreeType License.
`

// write writes the texts, those that are the same once.
func write(w io.Writer, found []licence) error {
	var order []string
	owners := map[string][]string{}
	for _, l := range found {
		if owners[l.text] == nil {
			order = append(order, l.text)
		}
		owners[l.text] = append(owners[l.text], l.owner+": "+l.file)
	}
	rule := strings.Repeat("=", 80)
	if _, err := io.WriteString(w, head); err != nil {
		return err
	}
	for _, text := range order {
		_, err := fmt.Fprintf(w, "\n%s\n%s\n%s\n\n%s", rule, strings.Join(owners[text], "\n"), rule, text)
		if err != nil {
			return err
		}
	}
	return nil
}
