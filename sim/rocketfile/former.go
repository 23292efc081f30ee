package rocketfile

import "strings"

// former are the dotted names that keys and sections had before, with those they have
// now; * stands for the name of an item. A file, a flag or a table of uncertainties that
// still has one is told the new one.
var former = []struct{ was, is string }{
	{"mount", "recovery"},
	{"section.*.fore", "section.*.forward"},
	{"body.guides", "body.rail_buttons"},
	{"canopy.*.shock", "canopy.*.opening_force_coefficient"},
}

const formerName = "has a new name"

// renamed is what a dotted name, or the section it begins with, is called now; ok is
// false when that is no former name.
func renamed(name string) (now string, ok bool) {
	parts := strings.Split(name, ".")
	for _, f := range former {
		was, is := strings.Split(f.was, "."), strings.Split(f.is, ".")
		if len(parts) < len(was) {
			continue
		}
		same := true
		for i, part := range was {
			if part == "*" {
				is[i] = parts[i]
			} else if part != parts[i] {
				same = false
			}
		}
		if same {
			return strings.Join(append(is, parts[len(was):]...), "."), true
		}
	}
	return "", false
}

// stranger reports a key that a table of its section does not have.
func (rd *reading) stranger(at located, s *section, prefix string) {
	n := at.node
	now, ok := renamed(prefix + n.name)
	if !ok {
		meant, remedy := s.meant(n)
		if meant != "" {
			rd.meant[prefix+meant] = true
		}
		rd.fault(at, excerpt(prefix+n.name), "", "unknown key", remedy)
		return
	}
	rd.meant[now] = true
	write := strings.TrimPrefix(now, prefix)
	if n.header.end > 0 {
		write = sectionAt(now).header()
	}
	rd.fault(at, excerpt(prefix+n.name), at.doc.written(n), formerName, "write "+write)
}
