package tui

import (
	"fmt"
	"math"
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"ullage/sim/gates"
	"ullage/sim/report/words"
	"ullage/sim/rocketfile"
	"ullage/tui/draw"
	"ullage/tui/view"
)

// page is a text to read that takes the place of the body until it is left.
type page struct {
	title string
	write func(m *Model, w int) []string // painted rows of at most w cells
	top   int
}

// open shows a page.
func (m *Model) open(p page) { m.page = &p }

// turn takes a key that scrolls the page, and closes it at any key that is
// about leaving or opening one.
func (m *Model) turn(k tea.KeyMsg) {
	if m.page == nil {
		return
	}
	h := m.pageRows()
	switch keys := &m.keys; {
	case key.Matches(k, keys.Up):
		m.scroll(-1)
	case key.Matches(k, keys.Down):
		m.scroll(1)
	case key.Matches(k, keys.PageUp):
		m.scroll(-h)
	case key.Matches(k, keys.PageDown):
		m.scroll(h)
	case key.Matches(k, keys.First):
		m.scroll(-m.page.top)
	case key.Matches(k, keys.Last):
		m.scroll(math.MaxInt32)
	case m.asking != nil:
	case key.Matches(k, keys.Leave), key.Matches(k, keys.Quit), key.Matches(k, keys.Help), key.Matches(k, keys.Findings):
		m.page = nil
	}
}

// scroll moves the page by so many rows, as far as there are any.
func (m *Model) scroll(by int) {
	p := *m.page
	last := len(p.write(m, m.layout.width-2)) - m.pageRows()
	p.top = max(min(p.top+by, last), 0)
	m.page = &p
}

// pageRows is how many rows of a page are in sight, its heading not counted. It
// has the whole screen but for the title and what is asked or said below.
func (m *Model) pageRows() int {
	return max(m.layout.height-titleRows-keyRows-len(m.drawn.status)-1, 1)
}

// pageLines are the rows of the page in exactly the room there is.
func (m *Model) pageLines() []string {
	w, h := m.layout.width-2, m.pageRows()
	rows := m.page.write(m, w)
	top := max(min(m.page.top, len(rows)-h), 0)
	place := ""
	if len(rows) > h {
		place = fmt.Sprintf(" rows %d to %d of %d ", top+1, min(top+h, len(rows)), len(rows))
	}
	lines := make([]string, 0, h+1)
	rule := strings.Repeat(m.theme.Line, max(w-draw.Width(m.page.title)-1-draw.Width(place), 0))
	lines = append(lines, " "+m.theme.Paint(draw.Heading, m.page.title)+" "+m.theme.Paint(draw.RuleLine, rule)+m.theme.Paint(draw.Dim, place)+" ")
	for i := top; i < top+h; i++ {
		text := ""
		if i < len(rows) {
			text = rows[i]
		}
		lines = append(lines, " "+draw.PadPainted(text, w)+" ")
	}
	return lines
}

// helpPage says what the view in sight is, lists every key, then what the words mean and
// the cautions.
var helpPage = page{title: "keys", write: func(m *Model, w int) []string {
	theme := m.theme
	const gap = 3
	about := m.view().About()
	var rows []string
	paragraph := func(r draw.Role, text string) {
		for _, part := range draw.Wrapped(theme.Say(text), min(w, 96)) {
			rows = append(rows, theme.Paint(r, part))
		}
	}
	rows = append(rows, theme.Paint(draw.Heading, "the "+about.Name+" view"))
	paragraph(draw.Plain, about.Help)
	rows = append(rows, "")
	groups := append([]keyGroup{{"its keys", bindings(m.view())}, m.viewKeys()}, m.keys.groups()...)
	columns := max(min(w/58, 3), 1)
	each := (w - gap*(columns-1)) / columns
	var blocks [][]string
	for _, g := range groups {
		if len(g.keys) > 0 {
			blocks = append(blocks, keyBlock(theme, g, each))
		}
	}
	rows = append(rows, sideBySide(blocks, columns, each, gap)...)
	rows = append(rows, theme.Paint(draw.Heading, "values"))
	paragraph(draw.Plain, "A value may be typed in any unit of its kind: 4.5 bar, 65 psi, 0.4 in. A number alone takes the unit shown. "+
		"Greyed values are defaults that the file does not give. "+
		"A curve or a list opens as a table: a row typed as 0.05 80, lines pasted as they come from a spreadsheet, + for one more row, D to remove it.")
	rows = append(rows, "", theme.Paint(draw.Heading, "words"))
	paragraph(draw.Plain, "Every verdict is one of: "+strings.Join(gates.Words(), ", ")+".")
	rows = append(rows, "", theme.Paint(draw.Heading, "cautions"))
	for _, c := range words.Cautions(m.file().Rocket().Power) {
		paragraph(draw.Caution, c)
	}
	return rows
}}

// viewKeys are the keys that show the views.
func (m *Model) viewKeys() keyGroup {
	g := keyGroup{title: "views"}
	for _, v := range m.views {
		g.keys = append(g.keys, v.About().Open)
	}
	return g
}

// bindings are the keys of a view.
func bindings(v view.View) []key.Binding {
	var out []key.Binding
	for _, k := range v.Keys() {
		out = append(out, k.Binding)
	}
	return out
}

// keyBlock is one group of keys, with a blank row after it.
func keyBlock(theme *draw.Theme, g keyGroup, w int) []string {
	const keyCells = 13
	rows := []string{theme.Paint(draw.Heading, theme.Say(g.title))}
	for _, b := range g.keys {
		for i, part := range draw.Wrapped(theme.Say(b.Help().Desc), w-keyCells-1) {
			name := ""
			if i == 0 {
				name = theme.Say(b.Help().Key)
			}
			rows = append(rows, theme.Paint(draw.Strong, draw.Padded(name, keyCells))+" "+part)
		}
	}
	return append(rows, "")
}

// sideBySide puts blocks into columns of about the same height, in order.
func sideBySide(blocks [][]string, columns, each, gap int) []string {
	total := 0
	for _, b := range blocks {
		total += len(b)
	}
	cols := make([][]string, 1, columns)
	for _, b := range blocks {
		last := len(cols) - 1
		if len(cols) < columns && len(cols[last])+len(b)/2 > total/columns && len(cols[last]) > 0 {
			cols, last = append(cols, nil), last+1
		}
		cols[last] = append(cols[last], b...)
	}
	var rows []string
	for i := 0; ; i++ {
		row, any := "", false
		for c, col := range cols {
			text := ""
			if i < len(col) {
				text, any = col[i], true
			}
			if c < len(cols)-1 {
				text = draw.PadPainted(text, each+gap)
			}
			row += text
		}
		if !any {
			return rows
		}
		rows = append(rows, row)
	}
}

// findingsPage has every finding with what stands behind it.
var findingsPage = page{title: "findings", write: func(m *Model, w int) []string {
	var rows []string
	if m.now == nil && !m.unfinished() {
		return []string{"No flight yet."}
	}
	theme := m.theme
	list, label := m.phrases(), 0
	for i := range list {
		label = max(label, draw.Width(list[i].Label))
	}
	for i := range list {
		rows = append(rows, list[i].piece(theme, label, false).Painted)
		for _, part := range draw.Wrapped(list[i].Detail, min(w-4, 92)) {
			rows = append(rows, "    "+theme.Paint(draw.Dim, part))
		}
	}
	rows = append(rows, "", theme.Paint(draw.Heading, "cautions"))
	for _, c := range words.Cautions(m.file().Rocket().Power) {
		for _, part := range draw.Wrapped(theme.Say(c), min(w, 96)) {
			rows = append(rows, theme.Paint(draw.Caution, part))
		}
	}
	return rows
}}

// differencesPage shows what edits would change, input by input.
func differencesPage(was, is *rocketfile.File, moved bool) page {
	return page{title: "what the unsaved edits change", write: func(m *Model, w int) []string {
		theme := m.theme
		var rows []string
		if moved {
			for _, part := range draw.Wrapped("The file has been changed since these edits were made. Restoring them takes those changes back.", w) {
				rows = append(rows, theme.Paint(draw.Caution, part))
			}
			rows = append(rows, "")
		}
		changes := differences(was, is, m)
		if len(changes) == 0 {
			rows = append(rows, "No value differs; comments or spacing do.")
		}
		for _, c := range changes {
			rows = append(rows, strings.TrimRight(theme.Fit(theme.Say(c), w), " "))
		}
		return rows
	}}
}

// differences lists the inputs whose values differ, as "name: before to after": those that
// a file gives, not what follows from them, and uncertainties.
func differences(was, is *rocketfile.File, m *Model) []string {
	before, after := m.fieldsIn(was), m.fieldsIn(is)
	old := map[string]field{}
	for _, d := range before {
		old[d.Name] = d
	}
	var out []string
	for _, d := range after {
		o, known := old[d.Name]
		delete(old, d.Name)
		switch {
		case !known:
			out = append(out, d.Name+": new, "+d.value())
		case o.value() != d.value() && (o.given || d.given):
			out = append(out, d.Name+": "+o.value()+" to "+d.value())
		}
	}
	for _, d := range before {
		if _, gone := old[d.Name]; gone {
			out = append(out, d.Name+": "+d.value()+", removed")
		}
	}
	return out
}

// fieldsIn are the inputs of a file, and the uncertainties that it gives.
func (m *Model) fieldsIn(f *rocketfile.File) []field {
	r, all := f.Rocket(), f.Inputs()
	out := make([]field, 0, len(all))
	for i := range all {
		out = append(out, newField(f, r, &all[i], m.units))
	}
	return append(out, spreadFields(f, m.units)...)
}
