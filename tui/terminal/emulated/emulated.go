// Package emulated is for tests: what a terminal shows after what was written to it. It
// knows what package terminal writes and no more (ECMA-48: CUP, CUU, CUD, CUF, CUB, ED, EL, SGR), and notes
// what it does not know.
package emulated

import (
	"regexp"
	"strconv"
	"strings"
	"sync"
	"unicode/utf8"

	"github.com/charmbracelet/x/ansi"
)

// Screen is a terminal of some columns and rows, an io.Writer.
type Screen struct {
	mu      sync.Mutex
	width   int
	cells   [][]cell
	x, y    int
	style   string
	held    string // a sequence whose end has not come
	modes   map[string]bool
	unknown []string // sequences
}

type cell struct{ text, style string }

// New is a blank terminal.
func New(width, height int) *Screen {
	s := &Screen{width: width, cells: make([][]cell, height), modes: map[string]bool{}}
	s.erase(0, 0)
	return s
}

var sequence = regexp.MustCompile(`^\x1b\[([?0-9;]*)([A-Za-z])`)

// Write takes output.
func (s *Screen) Write(p []byte) (int, error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	in := s.held + string(p)
	s.held = ""
	for in != "" {
		switch {
		case strings.HasPrefix(in, "\x1b]"): // a question, to its end
			i := strings.Index(in, "\x1b\\")
			if i < 0 {
				s.held = in
				return len(p), nil
			}
			in = in[i+2:]
		case in[0] == '\x1b':
			m := sequence.FindStringSubmatch(in)
			if m == nil {
				if len(in) < 20 {
					s.held = in
					return len(p), nil
				}
				s.unknown, in = append(s.unknown, in[:20]), in[1:]
				continue
			}
			s.control(m[1], m[2])
			in = in[len(m[0]):]
		case !utf8.FullRuneInString(in):
			s.held = in
			return len(p), nil
		default:
			text, width := ansi.FirstGraphemeCluster(in, ansi.GraphemeWidth)
			s.put(text, width)
			in = in[len(text):]
		}
	}
	return len(p), nil
}

func (s *Screen) put(text string, width int) {
	switch text {
	case "\r", "\n", "\r\n":
		if s.x = 0; text != "\r" {
			s.y = min(s.y+1, len(s.cells)-1)
		}
		return
	}
	for i := range width {
		if s.x < s.width {
			s.cells[s.y][s.x] = cell{text, s.style}
			if i > 0 {
				s.cells[s.y][s.x].text = "" // behind a wide one
			}
			s.x++
		}
	}
}

func (s *Screen) control(arguments, name string) {
	if mode, ok := strings.CutPrefix(arguments, "?"); ok {
		s.modes[mode] = name == "h"
		return
	}
	var n []int
	for _, a := range strings.Split(arguments, ";") {
		v, _ := strconv.Atoi(a)
		n = append(n, v)
	}
	switch {
	case name == "H":
		s.y, s.x = min(max(n[0]-1, 0), len(s.cells)-1), 0
		if len(n) > 1 {
			s.x = min(max(n[1]-1, 0), s.width-1)
		}
	case strings.Contains("ABCD", name) && s.x >= s.width: // behind the last cell terminals differ
		s.unknown = append(s.unknown, arguments+name)
	case name == "A":
		s.y = max(s.y-max(n[0], 1), 0)
	case name == "B":
		s.y = min(s.y+max(n[0], 1), len(s.cells)-1)
	case name == "C":
		s.x = min(s.x+max(n[0], 1), s.width-1)
	case name == "D":
		s.x = max(s.x-max(n[0], 1), 0)
	case name == "K" && n[0] == 0:
		s.blank(s.y, min(s.x, s.width-1))
	case name == "J" && n[0] == 0:
		s.erase(s.y, min(s.x, s.width-1))
	case name == "m" && (arguments == "" || arguments == "0"):
		s.style = ""
	case name == "m":
		s.style += arguments + "m"
	default:
		s.unknown = append(s.unknown, arguments+name)
	}
}

// erase blanks everything from a place on.
func (s *Screen) erase(y, x int) {
	for ; y < len(s.cells); y, x = y+1, 0 {
		s.blank(y, x)
	}
}

func (s *Screen) blank(y, x int) {
	if s.cells[y] == nil {
		s.cells[y] = make([]cell, s.width)
	}
	for ; x < s.width; x++ {
		s.cells[y][x] = cell{" ", s.style}
	}
}

// Text is what it shows, without styles, blanks at the ends of rows left out.
func (s *Screen) Text() string {
	s.mu.Lock()
	defer s.mu.Unlock()
	var out strings.Builder
	for _, row := range s.cells {
		line := ""
		for _, c := range row {
			line += c.text
		}
		out.WriteString(strings.TrimRight(line, " ") + "\n")
	}
	return out.String()
}

// ink is a style that is not seen where there is no letter.
var ink = regexp.MustCompile(`^(([0-3]|[39][0-7]|38;5;\d+|38;2;\d+;\d+;\d+)[;m])*$`)

// looks is a cell as it is seen.
func (c cell) looks() cell {
	if c.text == " " && ink.MatchString(c.style) {
		return cell{text: " "}
	}
	return c
}

// Same tells whether another shows the same, styles included.
func (s *Screen) Same(other *Screen) bool {
	for y, row := range s.cells {
		for x, c := range row {
			if c.looks() != other.cells[y][x].looks() {
				return false
			}
		}
	}
	return len(s.cells) == len(other.cells)
}

// Column is where its cursor is, the first being 0.
func (s *Screen) Column() int {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.x
}

// On tells whether a private mode is set, by its number.
func (s *Screen) On(mode string) bool {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.modes[mode]
}

// Unknown are the sequences that came and are not known.
func (s *Screen) Unknown() []string {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.unknown
}
