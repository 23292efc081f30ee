package rocketfile

import (
	"bytes"
	"slices"
	"strings"
)

// splice replaces a stretch of a text.
type splice struct {
	at   span
	text string
}

// spliced is the text with the splices done.
func spliced(text []byte, splices []splice) []byte {
	slices.SortFunc(splices, func(a, b splice) int { return a.at.start - b.at.start })
	var b bytes.Buffer
	done := 0
	for _, s := range splices {
		start := max(s.at.start, done) // removed blank lines may be shared
		b.Write(text[done:start])
		b.WriteString(s.text)
		done = max(s.at.end, start)
	}
	b.Write(text[done:])
	return b.Bytes()
}

// pair is a key, dotted or not, with its value in TOML.
type pair struct{ key, value string }

// eol is how the document ends its lines.
func (d *document) eol() string {
	if i := bytes.IndexByte(d.text, '\n'); i > 0 && d.text[i-1] == '\r' {
		return "\r\n"
	}
	return "\n"
}

// table finds the table of an item of a section; nil when it is not there.
func (d *document) table(s *section, item int) *node {
	if s.path == "" {
		return d.root
	}
	n := d.root.find(strings.Split(s.path, ".")...)
	switch {
	case n == nil || !s.many && n.kind != tableNode:
		return nil
	case s.many && (n.kind != tablesNode || item >= len(n.members)):
		return nil
	case s.many:
		return n.members[item]
	}
	return n
}

// insert adds a key to a table in the way that the table is written.
func (d *document) insert(s *section, table *node, p pair) splice {
	switch {
	case table == nil:
		return d.insertSection(s, []pair{p})
	case table.kind == tableNode && table.origin == inlineOrigin:
		return d.insertInline(table, p)
	case table.origin == dottedOrigin:
		return d.insertDotted(table, p)
	case table.origin == implicitOrigin:
		return d.newBlock(d.beforeFirst(table), "["+s.path+"]", []pair{p}, true)
	}
	return d.insertLine(s, table, p)
}

// insertInline adds a key between the braces of a table.
func (d *document) insertInline(table *node, p pair) splice {
	text := p.key + " = " + p.value
	if len(table.members) == 0 {
		at := table.value.start + 1
		return splice{span{at, at}, " " + text + " "}
	}
	at := table.members[len(table.members)-1].extent()
	return splice{span{at, at}, ", " + text}
}

// insertDotted adds a key below its siblings, with the path they have.
func (d *document) insertDotted(table *node, p pair) splice {
	sibling, depth := table, 0
	for sibling.value.end == 0 {
		last := len(sibling.members) - 1
		for sibling.members[last].key.end == 0 {
			last-- // a table with a header, further down
		}
		sibling, depth = sibling.members[last], depth+1
	}
	path := string(d.text[sibling.key.start:sibling.key.end])
	for ; depth > 1; depth-- {
		path = strings.TrimRight(strings.TrimSpace(path[:lastPart(path)]), ".")
	}
	p.key = path[:lastPart(path)] + p.key
	if sibling.inBraces() {
		at := sibling.extent()
		return splice{span{at, at}, ", " + p.key + " = " + p.value}
	}
	return d.lineAfter(sibling, p)
}

// lastPart is where the last part of a dotted key starts.
func lastPart(raw string) int {
	quote := byte(0)
	last := 0
	for i := range len(raw) {
		switch c := raw[i]; {
		case quote != 0:
			if c == quote {
				quote = 0
			}
		case c == '"' || c == '\'':
			quote = c
		case c == '.':
			last = i + 1
		}
	}
	return last + len(raw[last:]) - len(strings.TrimLeft(raw[last:], " \t"))
}

// insertLine adds a line to the block of a table: after the nearest key that
// comes before it in the schema, else at the top of the block.
func (d *document) insertLine(s *section, table *node, p pair) splice {
	var before *node
	for _, f := range s.fields {
		key, _, _ := strings.Cut(f.key, ".")
		if key == p.key {
			break
		}
		if n := table.member(key); n != nil && n.key.end > 0 {
			before = n
		}
	}
	if before != nil {
		return d.lineAfter(before, p)
	}
	if table == d.root {
		return d.insertAtTop(p)
	}
	at := d.lineEnd(table.header.end)
	return d.newLine(at, indentOf(d, table.header.start)+p.key+" = "+p.value)
}

// insertAtTop adds a key above the first table.
func (d *document) insertAtTop(p pair) splice {
	top := d.blocks[0]
	for _, n := range d.root.members {
		if n.key.end > 0 {
			at := d.lineStart(n.key.start)
			return splice{span{max(at, top.start), max(at, top.start)}, p.key + " = " + p.value + d.eol()}
		}
	}
	at := len(d.text)
	if len(d.blocks) > 1 {
		at = d.aboveHeader(d.blocks[1].start, top.start)
	}
	s := d.newLine(at, p.key+" = "+p.value)
	if at < len(d.text) {
		s.text += d.eol()
	}
	return s
}

// lineAfter adds a line below that of another key, in its manner: indented the
// same, and with the equals signs in line if they were.
func (d *document) lineAfter(sibling *node, p pair) splice {
	key := p.key + strings.Repeat(" ", max(1, d.alignment(sibling)-len(p.key)))
	return d.newLine(d.lineEnd(sibling.extent()), indentOf(d, sibling.key.start)+key+"= "+p.value)
}

// alignment is the width of a key with its blanks when the equals signs around
// it stand in line, else 0.
func (d *document) alignment(n *node) int {
	width := func(n *node) (all, blanks int) {
		equals := n.key.end + bytes.IndexByte(d.text[n.key.end:], '=')
		return equals - n.key.start, equals - n.key.end
	}
	all, _ := width(n)
	for _, m := range n.parent.members {
		if m.key.end == 0 {
			continue
		}
		if other, blanks := width(m); other == all && blanks > 1 {
			return all
		}
	}
	return 0
}

// newLine adds a line at the start of a line or at the end of the text.
func (d *document) newLine(at int, line string) splice {
	if at > 0 && d.text[at-1] != '\n' && at != d.blocks[0].start {
		return splice{span{at, at}, d.eol() + line}
	}
	return splice{span{at, at}, line + d.eol()}
}

// indentOf is the white space that the line at an offset starts with.
func indentOf(d *document, offset int) string {
	line := d.text[max(d.lineStart(offset), d.blocks[0].start):offset]
	return string(line[:len(line)-len(bytes.TrimLeft(line, " \t"))])
}

// extent is where a key with all that is written below it ends.
func (n *node) extent() int {
	if n.value.end > 0 {
		return n.value.end
	}
	end := n.key.end
	for _, m := range n.members {
		if m.key.end > 0 {
			end = max(end, m.extent())
		}
	}
	return end
}

// insertSection adds a section with its keys: within the braces of the section
// it belongs to, with its dots, or under a header of its own.
func (d *document) insertSection(s *section, pairs []pair) splice {
	whole := inBraces(pairs)
	if s.many {
		if n := d.root.find(strings.Split(s.path, ".")...); n != nil && n.value.end > 0 {
			return d.insertItem(n, whole)
		}
		whole = "[" + whole + "]"
	}
	outer, inner, nested := cutLast(s.path)
	if nested {
		parent := d.root.find(strings.Split(outer, ".")...)
		if parent != nil && parent.origin == inlineOrigin {
			return d.insertInline(parent, pair{inner, whole})
		}
		if parent != nil && parent.origin == dottedOrigin {
			return d.insertDotted(parent, pair{inner, whole})
		}
	}
	at, before := d.placeFor(s)
	return d.newBlock(at, s.header(), pairs, before)
}

// insertItem adds an item to an array in brackets.
func (d *document) insertItem(array *node, item string) splice {
	if len(array.members) == 0 {
		at := array.value.start + 1
		return splice{span{at, at}, item}
	}
	at := array.members[len(array.members)-1].value.end
	return splice{span{at, at}, ", " + item}
}

func inBraces(pairs []pair) string {
	items := make([]string, len(pairs))
	for i, p := range pairs {
		items[i] = p.key + " = " + p.value
	}
	return "{ " + strings.Join(items, ", ") + " }"
}

func cutLast(path string) (outer, inner string, ok bool) {
	i := strings.LastIndexByte(path, '.')
	if i < 0 {
		return "", path, false
	}
	return path[:i], path[i+1:], true
}

// newBlock adds a header with its keys, and a blank line between it and its
// neighbour.
func (d *document) newBlock(at int, header string, pairs []pair, before bool) splice {
	width := 0
	for _, p := range pairs {
		width = max(width, len(p.key))
	}
	lines := []string{header}
	for _, p := range pairs {
		lines = append(lines, p.key+strings.Repeat(" ", width-len(p.key))+" = "+p.value)
	}
	eol := d.eol()
	block := strings.Join(lines, eol) + eol
	switch {
	case before:
		block += eol
	case at > 0 && d.text[at-1] != '\n' && at != d.blocks[0].start:
		block = eol + eol + block
	case at > d.blocks[0].start:
		block = eol + block
	}
	return splice{span{at, at}, block}
}

// placeFor finds where a new section goes: below the last that comes before it
// in the schema, else above the first.
func (d *document) placeFor(s *section) (at int, before bool) {
	last := -1
	for i, b := range d.blocks[1:] {
		if rank(b.owner) <= slices.Index(schema(), s) {
			last = i + 1
		}
	}
	switch {
	case last > 0:
		return d.belowBlock(d.blocks[last].end), false
	case len(d.blocks) > 1:
		return d.aboveHeader(d.blocks[1].start, d.blocks[0].start), true
	}
	return len(d.text), false
}

// rank is the place in the schema of the section that a table belongs to.
func rank(table *node) int {
	var names []string
	for n := table; n.parent != nil; n = n.parent {
		if n.name != "" {
			names = append([]string{n.name}, names...)
		}
	}
	for ; len(names) > 0; names = names[:len(names)-1] {
		path := strings.Join(names, ".")
		if i := slices.IndexFunc(schema(), func(s *section) bool { return s.path == path }); i >= 0 {
			return i
		}
	}
	return len(schema())
}

// beforeFirst is where the first table below another starts.
func (d *document) beforeFirst(table *node) int {
	for _, b := range d.blocks[1:] {
		if within(b.owner, table) {
			return d.aboveHeader(b.start, d.blocks[0].start)
		}
	}
	return len(d.text)
}

// within tells whether a node is a table or somewhere below it.
func within(n, table *node) bool {
	for ; n != nil; n = n.parent {
		if n == table {
			return true
		}
	}
	return false
}

// aboveHeader is where the comment right above a header starts, which belongs
// to it; a comment that starts the file belongs to the file.
func (d *document) aboveHeader(start, top int) int {
	at := start
	for at > top {
		line := d.lineStart(at - 1)
		if !isComment(d.text[max(line, top):at]) {
			return at
		}
		at = max(line, top)
	}
	return start
}

// belowBlock is where the comment right below the last key of a block ends,
// unless the comment belongs to the header below it.
func (d *document) belowBlock(end int) int {
	at := end
	for at < len(d.text) {
		next := d.lineEnd(at)
		line := d.text[at:next]
		if len(bytes.TrimSpace(line)) == 0 {
			return at
		}
		if !isComment(line) {
			return end
		}
		at = next
	}
	return at
}

func isComment(line []byte) bool { return bytes.HasPrefix(bytes.TrimSpace(line), []byte("#")) }
