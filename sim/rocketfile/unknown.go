package rocketfile

import (
	"strings"

	"ullage/sim/quantity"
)

// unknown reports the keys of a table that its section does not have.
func (rd *reading) unknown(l located, s *section, p place) {
	if l.node == nil {
		return
	}
	prefix := s.prefix(p)
	for _, n := range l.node.members {
		if rd.faults.full() {
			return
		}
		if knows(s, n.name) {
			rd.unknownWithin(l, s, n, prefix)
			continue
		}
		rd.stranger(located{l.doc, n}, s, prefix)
	}
}

// unknownWithin does the same for the keys within a key, as in deploy.
func (rd *reading) unknownWithin(l located, s *section, outer *node, prefix string) {
	if outer.kind != tableNode || s.field(outer.name) != nil || !s.nests(outer.name) {
		return
	}
	for _, n := range outer.members {
		if s.field(outer.name+"."+n.name) == nil {
			rd.fault(located{l.doc, n}, excerpt(prefix+outer.name+"."+n.name), "", "unknown key", "give "+outer.name+" for water, for motor or for both")
		}
	}
}

// knows tells whether a table of the section may have a key: its own, or the
// first part of one within it, or a section below it.
func knows(s *section, key string) bool {
	if strings.Contains(key, ".") {
		return false // in quotes: no key of ours
	}
	if s.field(key) != nil || s.nests(key) {
		return true
	}
	path := key
	if s.path != "" {
		path = s.path + "." + key
	}
	for _, other := range schema() {
		if other.path == path {
			return true
		}
	}
	return false
}

// nests tells a key that has keys within it.
func (s *section) nests(key string) bool {
	for _, f := range s.fields {
		if strings.HasPrefix(f.key, key+".") {
			return true
		}
	}
	return false
}

// meant says what an unknown key of a section may have meant, and which key of
// the same section that is, if it is one.
func (s *section) meant(n *node) (key, remedy string) {
	var own []string
	for _, f := range s.fields {
		key, _, _ := strings.Cut(f.key, ".")
		if len(own) == 0 || own[len(own)-1] != key {
			own = append(own, key)
		}
	}
	for _, other := range schema()[1:] {
		if path, within := strings.CutPrefix(other.path, s.path+"."); within {
			own = append(own, path)
		} else if s.path == "" {
			own = append(own, other.path)
		}
	}
	if word, ok := quantity.Nearest(n.name, own); ok {
		return word, "perhaps " + word + " is meant"
	}
	for _, other := range schema() {
		if other != s && other.path != "" && other.field(n.name) != nil {
			return "", "it belongs in " + other.header()
		}
	}
	if s.path == "" {
		return "", "the file may have " + list(own, "and")
	}
	return "", s.header() + " may have " + list(own, "and")
}
