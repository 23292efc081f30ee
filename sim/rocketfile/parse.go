package rocketfile

import (
	"bytes"
	"fmt"
	"unicode/utf8"

	"github.com/pelletier/go-toml/v2/unstable"

	"ullage/sim/fault"
)

const (
	maxBytes = 1 << 20 // of a rocket or motor file
	maxDepth = 8       // of keys and of values in values: no file needs half of it
)

var byteOrderMark = []byte("\xef\xbb\xbf")

// parse reads a text into a tree. The tree holds whatever could be read, so
// that the faults of its values can be told together with those of its syntax.
// It is nil when the text as a whole is no rocket file.
func parse(name, dir string, text []byte) (*document, *faultList) {
	b := &builder{
		doc:    &document{name: name, dir: dir, text: text, root: &node{origin: headerOrigin}},
		faults: &faultList{},
	}
	if fault, bad := notText(text); bad {
		fault.File = name
		b.faults.add(fault)
		return nil, b.faults
	}
	b.doc.lines = startsOfLines(text)
	if bytes.HasPrefix(text, byteOrderMark) {
		b.base = len(byteOrderMark)
	}
	b.open(b.doc.root, b.base, b.base)
	b.run()
	return b.doc, b.faults
}

// notText finds what cannot be a rocket file at all.
func notText(text []byte) (fault.Fault, bool) {
	const remedy = "give a rocket file: a TOML text in UTF-8, such as ullage new writes"
	switch {
	case len(text) > maxBytes:
		return fault.Fault{Problem: fmt.Sprintf("larger than %d bytes", maxBytes), Remedy: remedy}, true
	case len(bytes.TrimSpace(bytes.TrimPrefix(text, byteOrderMark))) == 0:
		return fault.Fault{Problem: "empty", Remedy: remedy}, true
	case bytes.HasPrefix(text, []byte("\xff\xfe")), bytes.HasPrefix(text, []byte("\xfe\xff")):
		return fault.Fault{Problem: "UTF-16 text", Remedy: "save it as UTF-8"}, true
	}
	if i := bytes.IndexByte(text, 0); i >= 0 {
		return fault.Fault{Line: 1 + bytes.Count(text[:i], []byte("\n")), Problem: "a binary file, not text", Remedy: remedy}, true
	}
	if !utf8.Valid(text) {
		line := 1
		for rest := range bytes.Lines(text) {
			if !utf8.Valid(rest) {
				break
			}
			line++
		}
		return fault.Fault{Line: line, Problem: "not UTF-8 text", Remedy: "save it as UTF-8"}, true
	}
	if i := loneReturn(text); i >= 0 {
		return fault.Fault{Line: 1 + bytes.Count(text[:i], []byte("\n")), Problem: "a carriage return stands alone", Remedy: "end the lines with LF or CRLF"}, true
	}
	return fault.Fault{}, false
}

// loneReturn is where a carriage return is that no line feed follows; -1 where there is none.
func loneReturn(text []byte) int {
	for from := 0; ; {
		i := bytes.IndexByte(text[from:], '\r')
		if i < 0 {
			return -1
		}
		if from += i + 1; from == len(text) || text[from] != '\n' {
			return from - 1
		}
	}
}

// builder grows a document's tree from the parser's expressions.
type builder struct {
	doc    *document
	faults *faultList
	parser unstable.Parser
	base   int   // offset in the text of what the parser was given
	table  *node // that keys belong to now
}

// run reads the whole text. After a key that cannot be read it goes on with
// the next line; anything else that cannot be read ends it.
func (b *builder) run() {
	for !b.faults.full() {
		b.parser.Reset(b.doc.text[b.base:])
		for b.parser.NextExpression() {
			b.expression(b.parser.Expression())
		}
		err := b.parser.Error()
		if err == nil || !b.recover(err) {
			return
		}
	}
}

func (b *builder) expression(e *unstable.Node) {
	switch e.Kind {
	case unstable.Table, unstable.ArrayTable:
		b.header(e)
	case unstable.KeyValue:
		end := b.keyValue(b.table, e, 1)
		last := &b.doc.blocks[len(b.doc.blocks)-1]
		last.end = b.doc.lineEnd(end)
	}
}

// open starts the block of a table.
func (b *builder) open(table *node, start, end int) {
	b.table = table
	b.doc.blocks = append(b.doc.blocks, block{owner: table, start: start, end: end})
}

func (b *builder) span(r unstable.Range) span {
	start := b.base + int(r.Offset)
	return span{start, start + int(r.Length)}
}

// header takes [table] and [[table]].
func (b *builder) header(e *unstable.Node) {
	var names []string
	var keys span
	for it := e.Key(); it.Next(); {
		part := b.span(it.Node().Raw)
		if len(names) == 0 {
			keys.start = part.start
		}
		keys.end = part.end
		names = append(names, string(it.Node().Data))
	}
	start := b.doc.lineStart(keys.start)
	end := b.doc.lineEnd(keys.end)
	table := b.headed(names, e.Kind == unstable.ArrayTable, keys)
	if table == nil { // reported: what is below belongs nowhere
		table = &node{origin: headerOrigin}
	}
	if table.header.end == 0 {
		table.header = keys
	}
	b.open(table, start, end)
}

// headed finds or makes the table of a header; nil after reporting a clash.
func (b *builder) headed(names []string, many bool, keys span) *node {
	if len(names) > maxDepth {
		b.tooDeep(keys.start)
		return nil
	}
	at := b.doc.root
	for _, name := range names[:len(names)-1] {
		next := at.member(name)
		switch {
		case next == nil:
			next = at.add(&node{name: name})
		case next.kind == tablesNode && next.origin == headerOrigin:
			next = next.members[len(next.members)-1]
		case next.kind != tableNode || next.origin == inlineOrigin:
			return b.clash(next, keys)
		}
		at = next
	}
	name := names[len(names)-1]
	table := at.member(name)
	if many {
		if table == nil {
			table = at.add(&node{kind: tablesNode, name: name, origin: headerOrigin})
		}
		if table.kind != tablesNode || table.origin != headerOrigin {
			return b.clash(table, keys)
		}
		return table.add(&node{origin: headerOrigin})
	}
	switch {
	case table == nil:
		return at.add(&node{name: name, origin: headerOrigin})
	case table.kind != tableNode || table.origin == inlineOrigin:
		return b.clash(table, keys)
	case table.origin != implicitOrigin:
		b.twice(table, keys, "")
	}
	table.origin = headerOrigin
	return table
}

// keyValue takes key = value into a table and returns where the value ends.
func (b *builder) keyValue(table *node, e *unstable.Node, depth int) int {
	all := b.span(e.Raw)
	key := span{start: all.start}
	var names []string
	for it := e.Key(); it.Next(); {
		names = append(names, string(it.Node().Data))
		key.end = b.span(it.Node().Raw).end
	}
	value := span{b.afterEquals(key.end), all.end}
	if depth += len(names) - 1; depth > maxDepth {
		b.tooDeep(key.start)
		return all.end
	}
	for _, name := range names[:len(names)-1] {
		next := table.member(name)
		if next == nil {
			next = table.add(&node{name: name, key: key, origin: dottedOrigin})
		} else if next.kind != tableNode || next.origin != dottedOrigin {
			b.clash(next, key)
			return all.end
		}
		table = next
	}
	name := names[len(names)-1]
	if first := table.member(name); first != nil {
		b.twice(first, key, excerpt(string(b.doc.text[value.start:value.end])))
		return all.end
	}
	n := table.add(&node{name: name, key: key, value: value})
	b.value(n, e.Value(), depth)
	return all.end
}

// afterEquals is where the value starts after a key that ends at an offset.
func (b *builder) afterEquals(i int) int {
	text := b.doc.text
	blank := func() {
		for i < len(text) && (text[i] == ' ' || text[i] == '\t') {
			i++
		}
	}
	blank()
	i++ // the equals sign
	blank()
	return i
}

// value fills a node from the parser's value.
func (b *builder) value(n *node, v *unstable.Node, depth int) {
	if depth > maxDepth {
		b.tooDeep(n.at())
		n.kind = brokenNode
		return
	}
	switch v.Kind {
	case unstable.String:
		n.kind, n.text = stringNode, string(v.Data)
	case unstable.Integer, unstable.Float:
		n.kind, n.text = numberNode, string(v.Data)
	case unstable.InlineTable:
		n.origin = inlineOrigin
		end := b.span(v.Raw).end
		for it := v.Children(); it.Next(); {
			end = b.keyValue(n, it.Node(), depth+1)
		}
		if n.value.end == 0 { // an item: the parser tells its start alone
			n.value = span{b.span(v.Raw).start, b.closing(end)}
		}
	case unstable.Array:
		n.kind = arrayNode
		tables := true
		for it := v.Children(); it.Next(); {
			item := n.add(&node{})
			if raw := b.span(it.Node().Raw); raw.end > raw.start && it.Node().Kind != unstable.InlineTable {
				item.value = raw
			}
			b.value(item, it.Node(), depth+1)
			tables = tables && item.kind == tableNode
		}
		if tables && len(n.members) > 0 {
			n.kind, n.origin = tablesNode, inlineOrigin
		}
	default:
		n.kind = otherNode
	}
}

// closing is the offset after the brace that closes an inline table whose last
// member ends at an offset.
func (b *builder) closing(i int) int {
	text := b.doc.text
	for i < len(text) && text[i] != '}' {
		if text[i] == '#' {
			i = b.doc.lineEnd(i)
			continue
		}
		i++
	}
	return min(i+1, len(text))
}

func (b *builder) report(offset int, key, value, problem, remedy string) {
	b.faults.add(fault.Fault{File: b.doc.name, Line: b.doc.line(offset), Key: key, Value: value, Problem: problem, Remedy: remedy})
}

func (b *builder) tooDeep(offset int) {
	b.report(offset, "", "", fmt.Sprintf("keys or values nested more than %d deep", maxDepth), "a rocket file has no such key")
}

func (b *builder) twice(first *node, again span, value string) {
	b.report(again.start, first.path(), value, fmt.Sprintf("given twice, first on line %d", b.doc.line(first.at())), "keep one")
}

// clash reports a key that is used both as a table and as something else.
func (b *builder) clash(first *node, again span) *node {
	b.report(again.start, first.path(), "", fmt.Sprintf("already given another way on line %d", b.doc.line(first.at())),
		"write the table in one way: a header, dotted keys or braces")
	return nil
}
