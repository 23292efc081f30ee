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
	cut := strings.LastIndexFunc(text, func(r rune) bool { return r < utf8.RuneSelf && os.IsPathSeparator(uint8(r)) }) + 1
	folder, begun := draw.LongPath(text[:cut]), text[cut:]
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
		}
		names = append(names, name)
	}
	if len(names) == 0 {
		return text, nil
	}
	slices.Sort(names)
	common := names[0]
	for _, name := range names[1:] {
		for !strings.HasPrefix(name, common) {
			_, n := utf8.DecodeLastRuneInString(common)
			common = common[:len(common)-n]
		}
	}
	return text[:cut] + common, names
}

// complete completes the path that is typed, and shows what it may become.
func (q question) complete() question {
	before := q.typed.String()
	path, names := completed(before)
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
