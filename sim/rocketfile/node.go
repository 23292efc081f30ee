package rocketfile

import (
	"bytes"
	"slices"
	"sort"
	"strconv"
	"strings"
)

// span is a range of bytes of a document's text.
type span struct{ start, end int }

// kind is what a node holds.
type kind uint8

const (
	tableNode  kind = iota
	tablesNode      // an array of tables, by headers or inline
	arrayNode
	stringNode
	numberNode
	otherNode  // booleans and dates, which no key takes
	brokenNode // the line could not be read; already reported
)

// origin tells how a table came about, which decides where a key can be added.
type origin uint8

const (
	implicitOrigin origin = iota // named only on the way to another table
	headerOrigin                 // [water]
	dottedOrigin                 // water.fill = 0.3
	inlineOrigin                 // water = { fill = 0.3 }
)

// node is a key with its value in a document, or an item of an array.
type node struct {
	kind   kind
	origin origin // of a table
	name   string
	parent *node
	text   string // of a string: decoded; of a number: as written
	key    span   // all of the key as written, dots included; none for a header's table
	value  span   // none for tables that are not inline and for arrays in arrays
	header span   // the header line that opens this table, without its newline

	members []*node // of a table in the order of the text, of an array its items
	index   map[string]*node
}

// member finds a key of a table; nil when it is not there.
func (n *node) member(name string) *node {
	if n == nil {
		return nil
	}
	return n.index[name]
}

// find follows a path of keys down from a table; nil when it is not there.
func (n *node) find(path ...string) *node {
	for _, name := range path {
		n = n.member(name)
	}
	return n
}

func (n *node) add(child *node) *node {
	child.parent = n
	n.members = append(n.members, child)
	if n.kind == tableNode {
		if n.index == nil {
			n.index = make(map[string]*node)
		}
		n.index[child.name] = child
	}
	return child
}

// at is where to point when something is wrong with the node: its key, else
// its header, else whatever it holds first.
func (n *node) at() int {
	for n != nil {
		switch {
		case n.key.end > 0:
			return n.key.start
		case n.header.end > 0:
			return n.header.start
		case n.value.end > 0:
			return n.value.start
		case len(n.members) == 0:
			return 0
		}
		n = n.members[0]
	}
	return 0
}

// block is a stretch of a text whose keys belong to one table: the top of the
// file, or a header with the lines below it.
type block struct {
	owner *node
	start int // of the header's line
	end   int // after the last line that holds a key, or after the header's
}

// document is one TOML text with its tree.
type document struct {
	name   string // in messages
	dir    string // where the files it names are
	text   []byte
	lines  []int // where each line starts
	root   *node
	blocks []block // in the order of the text, the top of the file first

	// partial means that some of the text could not be read, so that a key
	// not in the tree may be in the text all the same.
	partial bool
}

// line is the number, from 1, of the line at an offset.
func (d *document) line(offset int) int {
	return sort.SearchInts(d.lines, offset+1)
}

// lineStart and lineEnd bound the line at an offset; the end is after its newline.
func (d *document) lineStart(offset int) int { return d.lines[d.line(offset)-1] }

func (d *document) lineEnd(offset int) int {
	if i := bytes.IndexByte(d.text[offset:], '\n'); i >= 0 {
		return offset + i + 1
	}
	return len(d.text)
}

// path is a node's dotted name, items of an array counted from 1.
func (n *node) path() string {
	var names []string
	for ; n.parent != nil; n = n.parent {
		name := n.name
		if n.parent.kind != tableNode {
			name = strconv.Itoa(slices.Index(n.parent.members, n) + 1)
		}
		names = append(names, name)
	}
	slices.Reverse(names)
	return excerpt(strings.Join(names, "."))
}

// written is the text of a node's value, for messages: one line, not too long.
func (d *document) written(n *node) string {
	return excerpt(string(d.text[n.value.start:n.value.end]))
}

// startsOfLines lists where the lines of a text start.
func startsOfLines(text []byte) []int {
	lines := []int{0}
	for i, b := range text {
		if b == '\n' {
			lines = append(lines, i+1)
		}
	}
	return lines
}
