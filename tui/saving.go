package tui

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"unicode"

	tea "github.com/charmbracelet/bubbletea"

	"ullage/sim/rocketfile"
	"ullage/tui/draw"
	"ullage/tui/view"
)

// extension is what a rocket file's name ends with when the user gives none.
const extension = ".toml"

// save writes the file where it lives, or asks for a place when it has none.
// Saving is done while the keys wait: an edit made meanwhile could only be
// about a state that is no longer on the screen.
func (m *Model) save() tea.Cmd {
	f := m.file()
	switch err := f.Save(); {
	case err == nil:
		return m.wasSaved(f)
	case errors.Is(err, rocketfile.ErrNoPath):
		m.askName("")
	case errors.Is(err, rocketfile.ErrChanged):
		path := f.Path()
		m.asking = &question{
			says: draw.ShortPath(path) + " has been changed by someone else since it was read.",
			answers: []answer{
				{m.keys.AnswerReplace, func(m *Model) tea.Cmd { return m.saveAs(path, true) }},
				{m.keys.AnswerOther, func(m *Model) tea.Cmd { m.askName(""); return nil }},
				{m.keys.AnswerReload, (*Model).reload},
			},
		}
	default:
		m.say(draw.Bad, "Not saved: "+err.Error())
	}
	return nil
}

// saveAs writes the file to a path, where it lives from then on.
func (m *Model) saveAs(path string, replace bool) tea.Cmd {
	f, err := m.file().SaveAs(path, replace)
	switch {
	case err == nil:
		m.asking = nil
		m.hist = m.hist.moved(f)
		elsewhere := path != m.lodged.Path()
		m.lodged = f
		if elsewhere {
			m.editsKept(keptMsg{m.records.move(recordName(f))})
		}
		return m.wasSaved(f)
	case errors.Is(err, rocketfile.ErrExists) && !replace && exists(path): // and not a curve it names
		m.asking = &question{
			says: draw.Clean(err.Error()) + ".",
			answers: []answer{
				{m.keys.AnswerReplace, func(m *Model) tea.Cmd { return m.saveAs(path, true) }},
				{m.keys.AnswerOther, func(m *Model) tea.Cmd { m.askName(path); return nil }},
			},
		}
	case m.asking != nil && m.asking.typed != nil:
		m.wrong("Not saved: " + err.Error())
	default:
		m.say(draw.Bad, "Not saved: "+err.Error())
	}
	return nil
}

// wasSaved takes note that a file is on disk, and goes on to quit if that was
// why it was saved.
func (m *Model) wasSaved(f *rocketfile.File) tea.Cmd {
	m.lodged = f
	m.say(draw.Plain, "Saved to "+draw.ShortPath(f.Path())+".")
	if m.leaving {
		return m.goodbye()
	}
	return m.note()
}

// reload takes the file from disk again, as an edit that can be undone.
func (m *Model) reload() tea.Cmd {
	f, err := rocketfile.OpenDraft(m.lodged.Path())
	if m.take(f, err, view.Edit{Says: "file read again"}) {
		m.lodged = f
		m.say(draw.Plain, "Read from disk; undo brings your edits back.")
	}
	return nil
}

// askName asks where to save. An empty path proposes one.
func (m *Model) askName(path string) {
	if path == "" {
		path = m.lodged.Path()
	}
	if path == "" {
		path = fileName(m.file().Rocket().Name)
	}
	l := newLine(draw.ShortPath(path))
	m.asking = &question{
		says:   "Save as:",
		typed:  &l,
		path:   true,
		rules:  "A path; " + extension + " is added if there is no ending. A file that exists is not replaced without asking.",
		submit: (*Model).submitName,
	}
}

func (m *Model) submitName(text string) tea.Cmd {
	path := draw.LongPath(text)
	switch info, err := os.Stat(path); {
	case path == "" || err != nil && os.IsPathSeparator(path[len(path)-1]):
		m.wrong("A name for the file is missing.")
		return nil
	case err == nil && info.IsDir():
		m.wrong(draw.ShortPath(path) + " is a folder; give a name inside it.")
		return nil
	}
	if !exists(filepath.Dir(path)) {
		m.wrong("There is no folder " + draw.ShortPath(filepath.Dir(path)) + ".")
		return nil
	}
	if filepath.Ext(filepath.Base(path)) == "" {
		path += extension
	}
	return m.saveAs(path, false)
}

func exists(path string) bool {
	_, err := os.Stat(path)
	return err == nil
}

// fileName makes a file's name of a rocket's.
func fileName(rocket string) string {
	name := strings.Map(func(r rune) rune {
		switch {
		case unicode.IsLetter(r) || unicode.IsDigit(r):
			return unicode.ToLower(r)
		case unicode.IsSpace(r) || r == '-' || r == '_':
			return '-'
		}
		return -1
	}, draw.Clean(rocket))
	if name = strings.Trim(name, "-"); name == "" {
		name = "rocket"
	}
	return name + extension
}
