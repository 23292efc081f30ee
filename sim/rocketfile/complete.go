package rocketfile

import (
	"slices"
	"strconv"
	"strings"

	"ullage/sim/fault"
)

// complete reports what is missing of a section, and keys that exclude each
// other. A drive that does not fly may be unfinished: it is left out.
func (rd *reading) complete(s *section) {
	count := s.count(rd.rocket)
	if rd.idles(s) {
		count = 0
	}
	for i := range count {
		p := place{rd.rocket, i}
		prefix := s.prefix(p)
		var missing []*field
		idle := false
		for _, f := range s.fields {
			if f.instead > f.key {
				rd.exclude(s, f, p)
			}
			if f.needed == nil || rd.has(prefix, f) {
				continue
			}
			if f.needed(rd.rocket) {
				missing = append(missing, f)
				rd.unread = append(rd.unread, unread{f, p})
			} else if s.drive != "" {
				idle = true
			}
		}
		rd.missing(s, p, missing)
		if idle && s.drop != nil {
			if rd.idle = append(rd.idle, s); !rd.draft {
				s.drop(rd.rocket)
			}
		}
	}
}

// idles tells of a section within one that is left out.
func (rd *reading) idles(s *section) bool {
	return slices.ContainsFunc(rd.idle, func(o *section) bool { return strings.HasPrefix(s.path, o.path+".") })
}

// exclude reports two keys of which only one may be there.
func (rd *reading) exclude(s *section, f *field, p place) {
	prefix := s.prefix(p)
	first, one := rd.where[prefix+f.key]
	second, two := rd.where[prefix+f.instead]
	if !one || !two {
		return
	}
	later := s.field(f.instead)
	if first.node.at() > second.node.at() {
		first, second, later = second, first, f
	}
	rd.fault(second, prefix+later.key, second.doc.written(second.node),
		"given beside "+first.node.name+" on line "+strconv.Itoa(first.doc.line(first.node.at())), "keep one of the two")
	clearNumber(later, p)
}

// has tells whether the text gives a key or one that does in its stead.
func (rd *reading) has(prefix string, f *field) bool {
	for _, key := range []string{f.key, f.instead, f.unless} {
		if _, ok := rd.where[prefix+key]; ok && key != "" {
			return true
		}
	}
	return false
}

// missing reports required keys that are not there: each by itself, or as one
// fault when the whole section is not there.
func (rd *reading) missing(s *section, p place, fields []*field) {
	fields = slices.DeleteFunc(fields, func(f *field) bool { return rd.meant[s.prefix(p)+f.key] })
	if len(fields) == 0 || rd.doc.partial || rd.unsure == s.path {
		return
	}
	for _, f := range fields {
		rd.missed = append(rd.missed, s.prefix(p)+f.key)
	}
	header := s.header()
	tables := rd.tables[s]
	if len(tables) == 0 {
		if rd.faults.has(s.path) || rd.open.has(s.path) || rd.meant[s.path] {
			return
		}
		keys := make([]string, len(fields))
		for i, f := range fields {
			keys[i] = f.key
		}
		rd.open.add(fault.Fault{File: rd.doc.name, Key: s.path, Problem: "the section is missing",
			Remedy: "add " + header + " with " + list(keys, "and"), Missing: true})
		return
	}
	for _, f := range fields {
		key, _, _ := strings.Cut(f.key, ".")
		what := "missing"
		if f.instead != "" {
			what = "missing, and so is " + f.instead
		}
		rd.open.add(fault.Fault{File: rd.doc.name, Line: rd.doc.line(tables[p.item].at()), Key: s.prefix(p) + key,
			Problem: what, Remedy: "add it to " + header + ", such as " + key + " = " + f.example, Missing: true})
	}
}
