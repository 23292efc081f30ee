package rocketfile

import (
	"strconv"
	"strings"
)

// respread lets the uncertainties of a list's items follow them to other places: items without a name of
// their own go by their place, in the names of inputs too. to is the new place of each, -1 of one
// that is taken out, whose uncertainties go with it.
func (f *File) respread(s *section, to func(i int) int) []func(*document) []splice {
	gone, prefix := "", map[string]string{}
	for i := range s.count(f.rd.rocket) {
		was := s.path + "." + s.label(place{f.rd.rocket, i})
		switch n := f.rd.doc.table(s, i); {
		case to(i) < 0:
			gone = was
		case to(i) != i && (s.title == nil || n.member("name") == nil):
			prefix[was] = s.path + "." + strconv.Itoa(to(i)+1)
		}
	}
	renamed := func(name string) string {
		head, key, ok := cutLast(name)
		if now := prefix[head]; ok && now != "" {
			return now + "." + key
		}
		// A key may have a dot itself: deploy.water.
		head, inner, _ := cutLast(head)
		if now := prefix[head]; now != "" {
			return now + "." + inner + "." + key
		}
		return name
	}
	var moved []pair // that stand below a header with the place in it
	inPlace := func(d *document) []splice {
		var splices []splice
		for _, n := range d.spreads() {
			name := n.spreadName()
			now := renamed(name)
			if gone != "" && strings.HasPrefix(name, gone+".") {
				splices = append(splices, d.remove(n)...)
				continue
			}
			if now == name {
				continue
			}
			raw := string(d.text[n.key.start:n.key.end])
			head := strings.TrimSuffix(name, unquotedKey(raw))
			if rest, same := strings.CutPrefix(now, head); same && head != name {
				if strings.ContainsAny(raw, `"'`) {
					rest = `"` + rest + `"`
				}
				splices = append(splices, splice{n.key, rest})
				continue
			}
			moved = append(moved, pair{`"` + now + `"`, string(d.text[n.value.start:n.value.end])})
			splices = append(splices, d.remove(n)...)
		}
		return splices
	}
	steps := []func(*document) []splice{inPlace}
	for i := range s.count(f.rd.rocket) * len(s.fields) { // each sees the text that the one before made
		steps = append(steps, func(d *document) []splice {
			if i >= len(moved) {
				return nil
			}
			spread := sectionAt("spread")
			return []splice{d.insert(spread, d.table(spread, 0), moved[i])}
		})
	}
	return steps
}

// spreads are the uncertainties that a text states.
func (d *document) spreads() []*node {
	table := d.root.member("spread")
	if table == nil || table.kind != tableNode {
		return nil
	}
	return leaves(table)
}

// spreadName is the input of an uncertainty.
func (n *node) spreadName() string { return strings.TrimPrefix(n.dotted(), "spread.") }

// unquotedKey is a key as it is written, with its dots and without its quotes.
func unquotedKey(raw string) string {
	doc, _ := parse("", "", []byte(raw+" = 0"))
	if doc == nil {
		return raw
	}
	if all := leaves(doc.root); len(all) == 1 {
		return all[0].dotted()
	}
	return raw
}
