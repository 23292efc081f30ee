package report

import (
	"fmt"
	"strings"

	"ullage/sim/report/card"
)

// markdown gathers a page as Markdown with the tables and tick boxes of GitHub's.
type markdown struct{ strings.Builder }

// markdown writes the page to be printed.
func (p *page) markdown() string {
	var m markdown
	m.para("# " + escaped(p.title))
	for i := range p.sections {
		x := &p.sections[i]
		if x.name != "" {
			m.para("## " + escaped(x.name))
		}
		for _, b := range x.blocks {
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

func (b prose) markdown(m *markdown) { m.para(escaped(string(b))) }
func (b alarm) markdown(m *markdown) { m.para("> **" + escaped(string(b)) + "**") }

func (b facts) markdown(m *markdown) {
	lines := make([]string, len(b))
	for i, f := range b {
		lines[i] = "- **" + escaped(f.label) + "**: " + escaped(f.value)
	}
	m.para(lines...)
}

func (b points) markdown(m *markdown) {
	lines := make([]string, len(b))
	for i, p := range b {
		lines[i] = "- " + escaped(p)
	}
	m.para(lines...)
}

func (b steps) markdown(m *markdown) {
	m.para("**" + escaped(b.phase) + "**")
	lines := make([]string, len(b.does))
	for i, d := range b.does {
		lines[i] = fmt.Sprintf("%d. [ ] %s", b.from+i, escaped(d))
	}
	m.para(lines...)
}

func (b grid) markdown(m *markdown) {
	names, rules := make([]string, len(b.heads)), make([]string, len(b.heads))
	for j, h := range b.heads {
		names[j], rules[j] = h.name, "---:"
		if h.words {
			rules[j] = ":---"
		}
	}
	lines := []string{tableRow(names, escaped), tableRow(rules, func(s string) string { return s })}
	for _, row := range b.rows {
		lines = append(lines, tableRow(row, escaped))
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
func escaped(text string) string { return card.Escape(printable(text)) }
