package tui

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"unicode/utf8"

	"ullage/tui/draw"
)

// mostNames is how many names of a folder are looked at.
const mostNames = 4000

// completed is a path that is being typed with what all names that it may become have in
// common, and those names, a folder's with a separator behind; none where nothing fits. Names
// that begin with a dot are meant only when the dot is there.
func completed(text string) (path string, names []string) {
	return completedIn("", text)
}

// completedIn is completed for a path from a folder, of folders and files with one of some endings; none: of any.
func completedIn(dir, text string, endings ...string) (path string, names []string) {
	cut := strings.LastIndexFunc(text, func(r rune) bool { return r < utf8.RuneSelf && os.IsPathSeparator(uint8(r)) }) + 1
	folder, begun := draw.LongPath(text[:cut]), text[cut:]
	if !filepath.IsAbs(folder) {
		folder = filepath.Join(dir, folder)
	}
	if folder == "" {
		folder = "."
	}
	f, err := os.Open(folder)
	if err != nil {
		return text, nil
	}
	defer f.Close()
	entries, _ := f.ReadDir(mostNames)
	for _, e := range entries {
		name := e.Name()
		if !strings.HasPrefix(name, begun) || begun == "" && name[0] == '.' || draw.Clean(name) != name {
			continue
		}
		if info, err := os.Stat(filepath.Join(folder, name)); err == nil && info.IsDir() {
			name += string(filepath.Separator)
		} else if len(endings) > 0 && !slices.Contains(endings, strings.ToLower(filepath.Ext(name))) {
			continue
		}
		names = append(names, name)
	}
	if len(names) == 0 {
		return text, nil
	}
	slices.Sort(names)
	return text[:cut] + inCommon(names), names
}

// inCommon is what some names begin with, all of them.
func inCommon(names []string) string {
	common := names[0]
	for _, name := range names[1:] {
		for !strings.HasPrefix(name, common) {
			_, n := utf8.DecodeLastRuneInString(common)
			common = common[:len(common)-n]
		}
	}
	return common
}

// completedName is a text with its last word completed to what all names that it may become have in common, and those names:
// where none begins so, those in which it stands.
func completedName(text string, all []string) (line string, names []string) {
	cut := strings.LastIndexByte(text, ' ') + 1
	begun := text[cut:]
	for _, fits := range []func(string, string) bool{strings.HasPrefix, strings.Contains} {
		for _, name := range all {
			if fits(name, begun) {
				names = append(names, name)
			}
		}
		if len(names) > 0 {
			break
		}
	}
	if len(names) == 0 {
		return text, nil
	}
	if common := inCommon(names); strings.HasPrefix(common, begun) || len(names) == 1 {
		return text[:cut] + common, names
	}
	return text, names
}

// complete completes the path that is typed, and shows what it may become.
func (q question) complete() question {
	before := q.typed.String()
	path, names := completed(before)
	if !q.path {
		path, names = completedName(before, q.names)
	}
	l := newLine(path)
	q.typed, q.wrong = &l, ""
	switch {
	case len(names) == 0:
		q.offers = "Nothing there begins so."
	case len(names) > 1:
		q.offers = strings.Join(names, "  ")
	default:
		q.offers = ""
	}
	return q
}

// completeTyped completes the path of a file that is typed as a value, from the rocket file's folder.
func (m *Model) completeTyped() {
	t := *m.typed
	path, names := completedIn(m.file().Dir(), t.line.String(), endingsOf[t.input]...)
	t.line = newLine(path)
	m.typed, m.fault = &t, complaint{}
	switch len(names) {
	case 0:
		m.say(draw.Dim, "Nothing there begins so.")
	case 1:
	default:
		m.say(draw.Plain, strings.Join(names, "  "))
	}
}

// endingsOf are the endings of the files that inputs name.
var endingsOf = map[string][]string{motorFileInput: {".toml"}, "motor.curve": {".csv"}, "chamber.logbook": {".toml"}, "field.boundary": {".json", ".geojson"}}

// motorFileInput names the motor's own file.
const motorFileInput = "motor.file"

// nextMotor takes the motor file before or behind the one in use, of those beside the rocket.
func (m *Model) nextMotor(by int) {
	all, err := m.file().MotorFiles()
	if err != nil || len(all) == 0 {
		m.say(draw.Dim, "There is no motor file beside the rocket: a TOML file with the keys of [motor].")
		return
	}
	d, _ := m.fieldOf(motorFileInput)
	at := -1
	for i, path := range all {
		if filepath.Base(path) == filepath.Base(d.words) {
			at = i
		}
	}
	n := len(all)
	switch {
	case at < 0 && by < 0:
		at = n - 1
	case at < 0:
		at = 0
	case n == 1:
		m.say(draw.Dim, d.words+" is the only motor file beside the rocket.")
		return
	default:
		at = ((at+by)%n + n) % n
	}
	f, err := m.file().WithMotor(all[at])
	m.change(&d, f, err)
}
