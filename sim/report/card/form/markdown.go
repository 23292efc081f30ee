package form

import (
	"io"
	"strings"

	"ullage/sim/report/page"
)

// WriteMarkdown writes a card as Markdown with tables and task lists. Every page begins
// with a heading, after a rule but the first.
func WriteMarkdown(w io.Writer, c Form) error {
	var s markSheet
	for i := range c {
		if i > 0 {
			s.line("---")
			s.line("")
		}
		s.page(&c[i])
	}
	_, err := io.WriteString(w, s.String())
	return err
}

// markSheet gathers Markdown.
type markSheet struct{ strings.Builder }

func (s *markSheet) line(text string) { s.WriteString(text + "\n") }

func (s *markSheet) page(p *Page) {
	s.line("# " + page.Escape(p.Title) + " – " + page.Escape(p.Kind))
	s.line("")
	if p.Alarm != "" {
		s.line("# **" + page.Escape(p.Alarm) + "**")
		s.line("")
	}
	s.line("**" + page.Escape(p.Verdict) + "**")
	s.line("")
	s.blanks(p.Facts)
	for _, blocks := range [][]Block{p.Beside, p.Below} {
		for i := range blocks {
			s.block(&blocks[i])
		}
	}
}

func (s *markSheet) block(b *Block) {
	if b.Title != "" {
		s.line("## " + page.Escape(b.Title))
		s.line("")
	}
	if b.Table != nil {
		s.table(b.Table)
	}
	for _, t := range b.Ticks {
		s.line("- [ ] " + page.Escape(t))
	}
	if len(b.Ticks) > 0 {
		s.line("")
	}
	for _, n := range b.Notes {
		s.line(page.Escape(n))
		s.line("")
	}
	s.blanks(b.Blanks)
}

// byHand is a line to write on.
func byHand() string { return page.Escape(strings.Repeat("_", 20)) }

func (s *markSheet) blanks(list []Blank) {
	for _, b := range list {
		switch {
		case len(b.Choices) > 0:
			s.line("- " + page.Escape(b.Label) + ":")
			for _, c := range b.Choices {
				s.line("  - [ ] " + page.Escape(c))
			}
		case b.Text == "":
			s.line("- " + page.Escape(b.Label) + ": " + byHand())
		default:
			s.line("- " + page.Escape(b.Label) + ": " + page.Escape(b.Text))
		}
	}
	if len(list) > 0 {
		s.line("")
	}
}

// table has a column for the marks, if there are any, and rows for what stands below.
func (s *markSheet) table(t *Table) {
	var head, rule []string
	some := t.marked()
	if some {
		head, rule = append(head, ""), append(rule, "---")
	}
	for _, c := range t.Columns {
		head = append(head, page.Escape(strings.TrimSpace(c.Head+" "+c.Unit)))
		if c.Kind == Figures {
			rule = append(rule, "---:")
		} else {
			rule = append(rule, "---")
		}
	}
	s.row(head)
	s.row(rule)
	for i := range t.Rows {
		r := &t.Rows[i]
		var cells []string
		if some {
			cells = append(cells, r.Mark.String())
		}
		for j := range t.Columns {
			text := page.Escape(r.Cell(j))
			if r.Mark == Failed && text != "" {
				text = "**" + text + "**"
			}
			cells = append(cells, text)
		}
		s.row(cells)
		for _, b := range r.Below {
			below := make([]string, len(cells))
			if some {
				below[1] = page.Escape(b)
			} else {
				below[0] = page.Escape(b)
			}
			s.row(below)
		}
	}
	s.line("")
}

func (s *markSheet) row(cells []string) { s.line("| " + strings.Join(cells, " | ") + " |") }
