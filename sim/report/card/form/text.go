package form

import (
	"io"
	"strings"
	"unicode/utf8"

	"ullage/sim/report/page"
)

// The text page, in columns.
const (
	textWidth  = 80
	textIndent = 2
	textGap    = 2
	textBlank  = 10 // to write in, in a table
	leastWords = 10 // a column of words is not made narrower
)

// pageBreak begins a page of text but the first.
const pageBreak = "\f"

// WriteText writes a card as plain text.
func WriteText(w io.Writer, c Form) error {
	var s textSheet
	for i := range c {
		if i > 0 {
			s.WriteString(pageBreak)
		}
		s.page(&c[i])
	}
	_, err := io.WriteString(w, s.String())
	return err
}

// textSheet gathers text line by line.
type textSheet struct{ strings.Builder }

func (s *textSheet) line(text string) { s.WriteString(strings.TrimRight(text, " ") + "\n") }

// hung writes text below a prefix that stands before its first line.
func (s *textSheet) hung(prefix, text string) {
	n := utf8.RuneCountInString(prefix)
	for _, l := range page.Chopped(text, textWidth-n) {
		s.line(prefix + l)
		prefix = blanks(n)
	}
}

func (s *textSheet) page(p *Page) {
	room := textWidth - utf8.RuneCountInString(p.Kind) - textGap
	for i, l := range page.Chopped(p.Title, room) {
		if i == 0 {
			l = padded(l, room+textGap, false) + p.Kind
		}
		s.line(l)
	}
	s.line("")
	if p.Alarm != "" {
		s.alarm(p.Alarm)
	}
	s.hung("", p.Verdict)
	s.line("")
	s.blanks("", p.Facts)
	for _, blocks := range [][]Block{p.Beside, p.Below} {
		for i := range blocks {
			s.block(&blocks[i])
		}
	}
}

// alarm is a word in a frame.
func (s *textSheet) alarm(word string) {
	edge, inside := strings.Repeat("#", textWidth), textWidth-2
	before := (inside - utf8.RuneCountInString(word)) / 2
	side := "#" + blanks(inside) + "#"
	s.line(edge)
	s.line(side)
	s.line("#" + padded(blanks(before)+word, inside, false) + "#")
	s.line(side)
	s.line(edge)
	s.line("")
}

func (s *textSheet) block(b *Block) {
	s.line("")
	if b.Title != "" {
		s.line(strings.ToUpper(b.Title))
	}
	if b.Table != nil {
		s.table(b.Table)
	}
	for _, t := range b.Ticks {
		s.hung("  [ ] ", t)
	}
	for _, n := range b.Notes {
		s.hung("  ", n)
	}
	s.blanks(blanks(textIndent), b.Blanks)
}

// blanks writes labels, each with its text or a line to write on.
func (s *textSheet) blanks(prefix string, list []Blank) {
	wide := 0
	for _, b := range list {
		wide = max(wide, utf8.RuneCountInString(b.Label))
	}
	for _, b := range list {
		text := b.Text
		if len(b.Choices) > 0 {
			text = "[ ] " + strings.Join(b.Choices, "    [ ] ")
			s.line(prefix + padded(b.Label, wide+textGap, false) + text)
			continue
		}
		if text == "" {
			text = strings.Repeat("_", 4*textBlank)
		}
		s.hung(prefix+padded(b.Label, wide+textGap, false), text)
	}
}

func (s *textSheet) table(t *Table) {
	lead := blanks(textIndent)
	widths := t.widths(textWidth-textIndent, textGap)
	heads, units := Row{}, Row{}
	named := false
	for _, c := range t.Columns {
		heads.Cells, units.Cells = append(heads.Cells, c.Head), append(units.Cells, c.Unit)
		named = named || c.Unit != ""
	}
	if t.Headed() {
		s.row(lead, t, widths, &heads, "")
	}
	if named {
		s.row(lead, t, widths, &units, "")
	}
	for i := range t.Rows {
		r := &t.Rows[i]
		s.row(padded(r.Mark.String(), textIndent, false), t, widths, r, strings.Repeat("_", textBlank))
		for _, b := range r.Below {
			s.hung(lead+"    ", b)
		}
	}
}

// row writes one row, cells that are too wide on several lines.
func (s *textSheet) row(lead string, t *Table, widths []int, r *Row, hand string) {
	cells, high := make([][]string, len(widths)), 1
	for i, w := range widths {
		text := r.Cell(i)
		if t.Columns[i].Kind == ByHand && text == "" {
			text = hand
		}
		cells[i] = page.Chopped(text, w)
		high = max(high, len(cells[i]))
	}
	for l := range high {
		line := lead
		for i, w := range widths {
			if i > 0 {
				line += blanks(textGap)
			}
			text := ""
			if l < len(cells[i]) {
				text = cells[i][l]
			}
			line += padded(text, w, t.Columns[i].Kind == Figures)
		}
		s.line(line)
		lead = blanks(utf8.RuneCountInString(lead))
	}
}

// widths are as wide as the columns' texts, the widest columns of words narrowed until
// all of them fit.
func (t *Table) widths(room, gap int) []int {
	widths := make([]int, len(t.Columns))
	sum := gap * (len(widths) - 1)
	for i, c := range t.Columns {
		widths[i] = max(utf8.RuneCountInString(c.Head), utf8.RuneCountInString(c.Unit))
		if c.Kind == ByHand {
			widths[i] = max(widths[i], textBlank)
		}
		for j := range t.Rows {
			widths[i] = max(widths[i], utf8.RuneCountInString(t.Rows[j].Cell(i)))
		}
		sum += widths[i]
	}
	for ; sum > room; sum-- {
		widest := -1
		for i, c := range t.Columns {
			if c.Kind == Words && widths[i] > leastWords && (widest < 0 || widths[i] > widths[widest]) {
				widest = i
			}
		}
		if widest < 0 {
			break
		}
		widths[widest]--
	}
	return widths
}

func blanks(n int) string { return strings.Repeat(" ", max(0, n)) }

func padded(text string, width int, right bool) string {
	pad := blanks(width - utf8.RuneCountInString(text))
	if right {
		return pad + text
	}
	return text + pad
}
