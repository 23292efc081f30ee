package rocketfile

import "bytes"

// remove takes a key or a whole table out of the text.
func (d *document) remove(n *node) []splice {
	switch {
	case n.parent != nil && n.parent.kind != arrayNode && n.parent.origin == inlineOrigin:
		return []splice{d.removeItem(n)}
	case n.key.end > 0 && n.value.end > 0:
		at := n.key.start
		return []splice{{span{max(d.lineStart(at), d.blocks[0].start), d.lineEnd(n.value.end)}, ""}}
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

// removeItem takes one of several out of braces or brackets, with a comma.
func (d *document) removeItem(n *node) splice {
	all := n.parent.members
	i := 0
	for all[i] != n {
		i++
	}
	start := func(n *node) int {
		if n.key.end > 0 {
			return n.key.start
		}
		return n.value.start
	}
	at := span{start(n), n.extent()}
	switch {
	case i > 0:
		at.start = all[i-1].extent()
	case len(all) > 1:
		at.end = start(all[1])
	default:
		// A comma after the only item has to go too.
		if rest := bytes.TrimLeft(d.text[at.end:], " \t\r\n"); len(rest) > 0 && rest[0] == ',' {
			at.end = len(d.text) - len(rest) + 1
		}
	}
	return splice{at, ""}
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
