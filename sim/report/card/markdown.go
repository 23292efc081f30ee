package card

import (
	"io"
	"strings"
)

// WriteMarkdown writes a card as Markdown with tables and task lists. Every page begins
// with a heading, after a rule but the first.
func WriteMarkdown(w io.Writer, c Card) error {
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

// marks are the signs that mean something in Markdown within a line (CommonMark 0.31,
// section 2.4; GitHub's tables, strike-through and formulas on top).
var marks = func() *strings.Replacer {
	var pairs []string
	for _, c := range "\\`*_[]<>#|~$&" {
		pairs = append(pairs, string(c), `\`+string(c))
	}
	return strings.NewReplacer(pairs...)
}()

// Escape is text that Markdown shows as it is.
func Escape(text string) string { return marks.Replace(text) }

func (s *markSheet) page(p *Page) {
	s.line("# " + Escape(p.Title) + " – " + Escape(p.Kind))
	s.line("")
	if p.Alarm != "" {
		s.line("# **" + Escape(p.Alarm) + "**")
		s.line("")
	}
	s.line("**" + Escape(p.Verdict) + "**")
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
		s.line("## " + Escape(b.Title))
		s.line("")
	}
	if b.Table != nil {
		s.table(b.Table)
	}
	for _, t := range b.Ticks {
		s.line("- [ ] " + Escape(t))
	}
	if len(b.Ticks) > 0 {
		s.line("")
	}
	for _, n := range b.Notes {
		s.line(Escape(n))
		s.line("")
	}
	s.blanks(b.Blanks)
}

// byHand is a line to write on.
var byHand = Escape(strings.Repeat("_", 20))

func (s *markSheet) blanks(list []Blank) {
	for _, b := range list {
		switch {
		case len(b.Choices) > 0:
			s.line("- " + Escape(b.Label) + ":")
			for _, c := range b.Choices {
				s.line("  - [ ] " + Escape(c))
			}
		case b.Text == "":
			s.line("- " + Escape(b.Label) + ": " + byHand)
		default:
			s.line("- " + Escape(b.Label) + ": " + Escape(b.Text))
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
		head = append(head, Escape(strings.TrimSpace(c.Head+" "+c.Unit)))
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
			text := Escape(r.Cell(j))
			if r.Mark == Failed && text != "" {
				text = "**" + text + "**"
			}
			cells = append(cells, text)
		}
		s.row(cells)
		for _, b := range r.Below {
			below := make([]string, len(cells))
			if some {
				below[1] = Escape(b)
			} else {
				below[0] = Escape(b)
			}
			s.row(below)
		}
	}
	s.line("")
}

func (s *markSheet) row(cells []string) { s.line("| " + strings.Join(cells, " | ") + " |") }
