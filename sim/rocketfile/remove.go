package rocketfile

import (
	"bytes"
	"slices"
)

// remove takes a key or a whole table out of the text.
func (d *document) remove(n *node) []splice {
	if n.inBraces() {
		return d.removeItems(n)
	}
	if n.key.end > 0 && n.value.end > 0 {
		line := span{max(d.lineStart(n.key.start), d.blocks[0].start), d.lineEnd(n.value.end)}
		return []splice{{line, ""}}
	}
	var splices []splice
	for _, m := range n.members { // keys with dots, wherever they stand
		if m.key.end > 0 && n.origin == dottedOrigin {
			splices = append(splices, d.remove(m)...)
		}
	}
	for _, b := range d.blocks[1:] {
		if within(b.owner, n) {
			splices = append(splices, splice{d.whole(b), ""})
		}
	}
	return splices
}

// inBraces tells whether a node stands within braces, or is itself an item in
// brackets.
func (n *node) inBraces() bool {
	for p := n.parent; p != nil; p = p.parent {
		if p.origin == inlineOrigin {
			return true
		}
		if p.origin != dottedOrigin {
			return false
		}
	}
	return false
}

// removeItems takes what belongs to a node out of braces or brackets, with the
// commas.
func (d *document) removeItems(n *node) []splice {
	list := n.parent
	for list.origin != inlineOrigin {
		list = list.parent
	}
	items := list.items(nil)
	gone := func(i int) bool { return i < len(items) && within(items[i], n) }
	var splices []splice
	for i := 0; i < len(items); i++ {
		if !gone(i) {
			continue
		}
		last := i
		for gone(last + 1) {
			last++
		}
		at := span{items[i].at(), items[last].extent()}
		switch {
		case i > 0:
			at.start = items[i-1].extent()
		case last+1 < len(items):
			at.end = items[last+1].at()
		default: // a comma after the only one has to go too
			if rest := bytes.TrimLeft(d.text[at.end:], " \t\r\n"); len(rest) > 0 && rest[0] == ',' {
				at.end = len(d.text) - len(rest) + 1
			}
		}
		splices = append(splices, splice{at, ""})
		i = last
	}
	return splices
}

// items lists what stands between the braces or brackets of a node, in the
// order of the text: the members, and those of tables that are made with dots.
func (n *node) items(list []*node) []*node {
	for _, m := range n.members {
		if m.kind == tableNode && m.origin == dottedOrigin {
			list = m.items(list)
		} else {
			list = append(list, m)
		}
	}
	slices.SortFunc(list, func(a, b *node) int { return a.at() - b.at() })
	return list
}

// whole is a block with the comments that belong to it and the blank lines
// below it, or above it at the end of the text.
func (d *document) whole(b block) span {
	top := d.blocks[0].end
	at := span{d.aboveHeader(b.start, top), d.belowBlock(b.end)}
	for at.end < len(d.text) && len(bytes.TrimSpace(d.text[at.end:d.lineEnd(at.end)])) == 0 {
		at.end = d.lineEnd(at.end)
	}
	if at.end < len(d.text) {
		return at
	}
	for at.start > top {
		line := max(d.lineStart(at.start-1), top)
		if len(bytes.TrimSpace(d.text[line:at.start])) > 0 {
			break
		}
		at.start = line
	}
	return at
}
