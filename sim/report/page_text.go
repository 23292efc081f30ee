package report

import (
	"fmt"
	"regexp"
	"strings"
	"unicode/utf8"
)

// text writes the page in 80 columns.
func (p *page) text() string {
	var s sheet
	s.hung("", p.title)
	for i := range p.sections {
		x := &p.sections[i]
		if x.print {
			continue
		}
		if x.name != "" {
			s.line("")
			s.hung("", x.name)
		}
		for _, b := range x.blocks {
			b.text(&s)
		}
	}
	return strings.ReplaceAll(s.String(), glue, " ")
}

// glue keeps a figure and its unit on one line; names from files cannot hold it.
const glue = "\x00"

// figures are digits with a unit after them.
var figures = regexp.MustCompile(`(\d) (%|°[CF]|(?:bar|psi|MPa|mm|m|in|ft|mL|L|in3|kg|g|lb|oz|N|lbf|J|s|minutes?)\b)`)

func glued(text string) string { return figures.ReplaceAllString(text, "${1}"+glue+"${2}") }

func (b prose) text(s *sheet) { s.hung("  ", glued(string(b))) }
func (b alarm) text(s *sheet) { s.hung("  ! ", glued(string(b))) }

func (b facts) text(s *sheet) {
	for _, f := range b {
		s.field(f.label, glued(f.value))
	}
}

func (b points) text(s *sheet) {
	for _, p := range b {
		s.hung("  - ", glued(p))
	}
}

func (b steps) text(s *sheet) {
	s.line("  " + b.phase)
	for i, d := range b.does {
		s.hung(fmt.Sprintf("  %2d. ", b.from+i), glued(d))
	}
}

func (b grid) text(s *sheet) {
	heads := make([]heading, len(b.heads))
	for j, h := range b.heads {
		heads[j] = heading{lines: []string{h.name}, left: h.words, width: utf8.RuneCountInString(h.name)}
		for _, row := range b.rows {
			heads[j].width = max(heads[j].width, utf8.RuneCountInString(row[j]))
		}
		if j > 0 {
			heads[j].width++ // room between columns of figures
			if h.words {
				heads[j].lines[0] = " " + h.name
			}
		}
	}
	t := newTable(s, heads...)
	// A long name is worth a line of its own more than a line too wide.
	if excess := t.wide() - width; excess > 0 {
		t.heads[0].width = max(utf8.RuneCountInString(b.heads[0].name), t.heads[0].width-excess)
	}
	t.head()
	for _, row := range b.rows {
		cells := append([]string(nil), row...)
		for j := 1; j < len(cells); j++ {
			if b.heads[j].words {
				cells[j] = " " + cells[j]
			}
		}
		if utf8.RuneCountInString(cells[0]) > t.heads[0].width {
			t.row(cells[0])
			cells[0] = ""
		}
		t.row(cells...)
	}
}
