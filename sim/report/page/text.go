package page

import (
	"fmt"
	"regexp"
	"strings"
	"sync"
	"unicode/utf8"
)

// Text writes the document in 80 columns, without what is to be filled in.
func (p *Document) Text() string {
	var s Sheet
	s.Hung("", p.Title)
	for i := range p.Sections {
		x := &p.Sections[i]
		if x.Print {
			continue
		}
		if x.Name != "" {
			s.Line("")
			s.Hung("", x.Name)
		}
		for _, b := range x.Blocks {
			b.text(&s)
		}
	}
	return strings.ReplaceAll(s.String(), Glue, " ")
}

// unitFigures are digits with a unit after them.
var unitFigures = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`(\d) (%|°[CF]|(?:bar|psi|MPa|mm|m|in|ft|mL|L|in3|kg|g|lb|oz|N|lbf|J|s|minutes?)\b)`)
})

func glued(text string) string { return unitFigures().ReplaceAllString(text, "${1}"+Glue+"${2}") }

func (b Prose) text(s *Sheet) { s.Hung("  ", glued(string(b))) }
func (b Alarm) text(s *Sheet) { s.Hung("  ! ", glued(string(b))) }

func (b Facts) text(s *Sheet) {
	for _, f := range b {
		s.Field(f[0], glued(f[1]))
	}
}

func (b Points) text(s *Sheet) {
	for _, p := range b {
		s.Hung("  - ", glued(p))
	}
}

func (b Steps) text(s *Sheet) {
	s.Line("  " + b.Phase)
	for i, d := range b.Does {
		s.Hung(fmt.Sprintf("  %2d. ", b.From+i), glued(d))
	}
}

func (b Grid) text(s *Sheet) {
	heads := make([]Heading, len(b.Heads))
	for j, h := range b.Heads {
		heads[j] = Heading{Lines: []string{h.name}, Left: h.words, Width: utf8.RuneCountInString(h.name)}
		for _, row := range b.Rows {
			heads[j].Width = max(heads[j].Width, utf8.RuneCountInString(row[j]))
		}
		if j > 0 {
			heads[j].Width++ // room between columns of figures
			if h.words {
				heads[j].Lines[0] = " " + h.name
			}
		}
	}
	t := NewTable(s, heads...)
	// A long name is worth a line of its own more than a line too wide.
	if excess := t.Wide() - Width; excess > 0 {
		t.heads[0].Width = max(utf8.RuneCountInString(b.Heads[0].name), t.heads[0].Width-excess)
	}
	t.Head()
	for _, row := range b.Rows {
		cells := append([]string(nil), row...)
		for j := 1; j < len(cells); j++ {
			if b.Heads[j].words {
				cells[j] = " " + cells[j]
			}
		}
		if utf8.RuneCountInString(cells[0]) > t.heads[0].Width {
			t.Row(cells[0])
			cells[0] = ""
		}
		t.Row(cells...)
	}
}
