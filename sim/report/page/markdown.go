package page

import (
	"fmt"
	"strings"
	"sync"
)

// markdown gathers a page as Markdown with the tables and tick boxes of GitHub's.
type markdown struct{ strings.Builder }

// Markdown writes the document to be printed.
func (p *Document) Markdown() string {
	var m markdown
	m.para("# " + escaped(p.Title))
	for i := range p.Sections {
		x := &p.Sections[i]
		if x.Name != "" {
			m.para("## " + escaped(x.Name))
		}
		for _, b := range x.Blocks {
			b.markdown(&m)
		}
	}
	return m.String()
}

// para writes lines that belong together, set off from what stands before them.
func (m *markdown) para(lines ...string) {
	if len(lines) == 0 {
		return
	}
	if m.Len() > 0 {
		m.WriteByte('\n')
	}
	for _, l := range lines {
		m.WriteString(l + "\n")
	}
}

func (b Prose) markdown(m *markdown) { m.para(escaped(string(b))) }
func (b Alarm) markdown(m *markdown) { m.para("> **" + escaped(string(b)) + "**") }

func (b Facts) markdown(m *markdown) {
	lines := make([]string, len(b))
	for i, f := range b {
		lines[i] = "- **" + escaped(f[0]) + "**: " + escaped(f[1])
	}
	m.para(lines...)
}

func (b Points) markdown(m *markdown) {
	lines := make([]string, len(b))
	for i, p := range b {
		lines[i] = "- " + escaped(p)
	}
	m.para(lines...)
}

func (b Steps) markdown(m *markdown) {
	m.para("**" + escaped(b.Phase) + "**")
	lines := make([]string, len(b.Does))
	for i, d := range b.Does {
		lines[i] = fmt.Sprintf("%d. [ ] %s", b.From+i, escaped(d))
	}
	m.para(lines...)
}

func (b Grid) markdown(m *markdown) {
	names, rules := make([]string, len(b.Heads)), make([]string, len(b.Heads))
	for j, h := range b.Heads {
		names[j], rules[j] = h.name, "---:"
		if h.words {
			rules[j] = ":---"
		}
	}
	as := func(s string) string { return s }
	if b.Ticks {
		names, rules = append([]string{""}, names...), append([]string{":---"}, rules...)
	}
	lines := []string{tableRow(names, escaped), tableRow(rules, as)}
	for _, row := range b.Rows {
		line := tableRow(row, escaped)
		if b.Ticks {
			line = "| [ ] " + line
		}
		lines = append(lines, line)
	}
	m.para(lines...)
}

func tableRow(cells []string, as func(string) string) string {
	var b strings.Builder
	b.WriteByte('|')
	for _, c := range cells {
		b.WriteString(" " + as(c) + " |")
	}
	return b.String()
}

// escaped is text that Markdown shows as it is.
func escaped(text string) string { return Escape(Printable(text)) }

// marks are the signs that mean something in Markdown within a line (CommonMark 0.31,
// section 2.4; GitHub's tables, strike-through and formulas on top).
var marks = sync.OnceValue(func() *strings.Replacer {
	var pairs []string
	for _, c := range "\\`*_[]<>#|~$&" {
		pairs = append(pairs, string(c), `\`+string(c))
	}
	return strings.NewReplacer(pairs...)
})

// Escape is text that Markdown shows as it is.
func Escape(text string) string { return marks().Replace(text) }
