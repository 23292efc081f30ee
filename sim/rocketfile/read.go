package rocketfile

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"ullage/sim"
	"ullage/sim/quantity"
)

// maxItems bounds a repeated section.
const maxItems = 16

// located is where a value stands: the document and the node that give it.
type located struct {
	doc  *document
	node *node
}

// reading is one reading of a document into a rocket, driven by the schema.
type reading struct {
	doc    *document
	disk   *files
	rocket *sim.Rocket
	faults *faultList
	where  map[string]located // every value the text gives, by dotted name
	tables map[*section][]*node
	unread []unread        // values that are missing or could not be read
	unsure string          // the section of which not all could be read
	meant  map[string]bool // keys and sections that unknown ones seem to mean
}

// unread is a number that the rocket should hold and does not.
type unread struct {
	field *field
	place place
}

// layer is a table that gives keys to a section. A motor has two: the keys in
// the rocket file come before those of the motor's own file.
type layer struct {
	doc  *document
	node *node
}

// read makes the rocket of a document. The faults of the document's syntax are
// in the list already.
func read(doc *document, disk *files, faults *faultList) *reading {
	rd := &reading{doc: doc, disk: disk, faults: faults, rocket: &sim.Rocket{},
		where: map[string]located{}, tables: map[*section][]*node{}, meant: map[string]bool{}}
	if doc.root.member("curve") != nil && doc.root.member("body") == nil {
		rd.faults.add(Fault{File: doc.name, Problem: "a motor file, not a rocket file", Mend: "name it in the [motor] of a rocket file"})
		return rd
	}
	rd.power()
	for _, s := range schema {
		rd.section(s)
	}
	rd.located()
	for _, s := range schema {
		rd.complete(s)
	}
	rd.validate()
	return rd
}

// section reads every item of a section.
func (rd *reading) section(s *section) {
	tables := rd.find(s)
	if len(tables) > maxItems {
		rd.fault(located{rd.doc, tables[maxItems]}, s.path, "", fmt.Sprintf("more than %d of them", maxItems), "take some out")
		tables = tables[:maxItems]
	}
	rd.tables[s] = tables
	if s.make == nil && len(tables) == 0 {
		tables = []*node{nil} // always part of a rocket: its defaults hold
	}
	for i, table := range tables {
		if s.make != nil {
			s.make(rd.rocket)
		}
		p := place{rd.rocket, i}
		layers := []layer{{rd.doc, table}}
		if s.many {
			rd.name(s, p, layers[0])
		}
		rd.unknown(layers[0], s, p)
		if s.path == "motor" {
			layers = rd.motorFile(layers)
		}
		for _, f := range s.fields {
			if !s.many || f.key != "name" {
				rd.field(s, f, p, layers)
			}
		}
		if s.path == "motor" {
			rd.curve(layers)
		}
	}
}

// find finds the tables of a section in the text.
func (rd *reading) find(s *section) []*node {
	if s.path == "" {
		return []*node{rd.doc.root}
	}
	n := rd.doc.root.find(strings.Split(s.path, ".")...)
	switch {
	case n == nil || n.kind == brokenNode:
		return nil
	case s.many && n.kind == tablesNode:
		return n.members
	case s.many && n.kind == arrayNode && len(n.members) == 0:
		return nil
	case !s.many && n.kind == tableNode:
		return []*node{n}
	}
	header := "[" + s.path + "]"
	if s.many {
		header = "[[" + s.path + "]]"
	}
	rd.fault(located{rd.doc, n}, s.path, "", "not written as it must be", "write it as "+header+" with keys below")
	return nil
}

// name gives an item of a repeated section its name, by which its dotted names
// go: its own, or its place among the others.
func (rd *reading) name(s *section, p place, l layer) {
	title := s.title(p)
	*title = strconv.Itoa(p.item + 1)
	f := s.field("name")
	if n := l.node.member("name"); n != nil && n.kind != brokenNode {
		if bad := f.codec.read(f, p, n); bad != nil {
			rd.fault(located{l.doc, n}, s.prefix(p)+"name", l.doc.written(n), bad.problem, bad.mend)
		}
		rd.where[s.prefix(p)+"name"] = located{l.doc, n}
	}
	for i := range p.item {
		if *s.title(place{p.rocket, i}) == *title {
			rd.fault(located{l.doc, l.node}, s.prefix(p)+"name", "", "a name that another "+s.path+" has too", "give each a name of its own")
			*title = strconv.Itoa(p.item+1) + "?" // no file can have this one
			return
		}
	}
}

// field reads one key, or lets its default hold.
func (rd *reading) field(s *section, f *field, p place, layers []layer) {
	name := s.prefix(p) + f.key
	at, ok := lookup(f, layers)
	switch {
	case !ok:
		if f.fallback != "" {
			if bad := f.codec.read(f, p, typed(f.fallback, f.codec)); bad != nil {
				panic("rocketfile: bad default of " + f.key)
			}
		}
		return
	case at.node.kind == brokenNode:
		rd.unread = append(rd.unread, unread{f, p})
		rd.where[name] = at
		return
	}
	rd.where[name] = at
	if f.drive != "" && at.node.name == "deploy" && !rd.drives(f.drive) {
		return // one rule for every drive says nothing of one that is not there
	}
	if bad := f.codec.read(f, p, at.node); bad != nil {
		rd.unread = append(rd.unread, unread{f, p})
		if outer, _, within := strings.Cut(f.key, "."); within && at.node.name == outer {
			if name = s.prefix(p) + outer; rd.faults.has(name) {
				return // told for the other drive
			}
		}
		rd.fault(at, name, at.doc.written(at.node), bad.problem, bad.mend)
	}
}

// drives tells whether the text has a section for a drive.
func (rd *reading) drives(p sim.Power) bool { return rd.doc.root.member(string(p)) != nil }

// lookup finds a key in the first layer that has it. A key within a key, such
// as deploy.water, is also given by the outer one when that is no table.
func lookup(f *field, layers []layer) (located, bool) {
	outer, inner, within := strings.Cut(f.key, ".")
	for _, l := range layers {
		n := l.node.member(outer)
		if n != nil && within && n.kind == tableNode {
			n = n.member(inner)
		}
		if n != nil {
			return located{l.doc, n}, true
		}
	}
	return located{}, false
}

// complete reports what is missing of a section, and keys that exclude each
// other. A drive that does not fly may be unfinished: it is left out.
func (rd *reading) complete(s *section) {
	count := s.count(rd.rocket)
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
		if s.many && !rd.has(prefix, &field{key: "deploy.water", instead: "deploy.motor"}) {
			missing = append(missing, &field{key: "deploy", example: `"apogee + 1 s"`})
		}
		rd.missing(s, p, missing)
		if idle && s.drop != nil {
			s.drop(rd.rocket)
		}
	}
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

// clearNumber makes a rocket hold no such number.
func clearNumber(f *field, p place) {
	if c, ok := f.codec.(*numberCodec); ok && c.at(p) != nil {
		*c.at(p) = c.absent
	}
}

// has tells whether the text gives a key or the one instead of it.
func (rd *reading) has(prefix string, f *field) bool {
	_, ok := rd.where[prefix+f.key]
	if !ok && f.instead != "" {
		_, ok = rd.where[prefix+f.instead]
	}
	return ok
}

// missing reports required keys that are not there: each by itself, or as one
// fault when the whole section is not there.
func (rd *reading) missing(s *section, p place, fields []*field) {
	fields = slices.DeleteFunc(fields, func(f *field) bool { return rd.meant[s.prefix(p)+f.key] })
	if len(fields) == 0 || rd.doc.partial || rd.unsure == s.path {
		return
	}
	header := "[" + s.path + "]"
	if s.many {
		header = "[[" + s.path + "]]"
	}
	tables := rd.tables[s]
	if len(tables) == 0 {
		if rd.faults.has(s.path) || rd.meant[s.path] {
			return
		}
		keys := make([]string, len(fields))
		for i, f := range fields {
			keys[i] = f.key
		}
		rd.faults.add(Fault{File: rd.doc.name, Key: s.path, Problem: "the section is missing",
			Mend: "add " + header + " with " + list(keys, "and")})
		return
	}
	for _, f := range fields {
		what := "missing"
		if f.instead != "" {
			what = "missing, and so is " + f.instead
		}
		rd.faults.add(Fault{File: rd.doc.name, Line: rd.doc.line(tables[p.item].at()), Key: s.prefix(p) + f.key,
			Problem: what, Mend: "add it to " + header + ", such as " + f.key + " = " + f.example})
	}
}

// power finds what flies before anything else is read, since it decides which
// keys are required.
func (rd *reading) power() {
	f := schema[0].field("power")
	water, motor := rd.drives(sim.WaterPower), rd.drives(sim.MotorPower)
	n := rd.doc.root.member("power")
	switch {
	case n != nil:
		if n.kind == stringNode && (n.text == string(sim.WaterPower) || n.text == string(sim.MotorPower)) {
			rd.rocket.Power = sim.Power(n.text)
			rd.flying()
			return
		}
		if water != motor { // a word that is wrong is reported where it is read
			rd.rocket.Power = map[bool]sim.Power{true: sim.WaterPower, false: sim.MotorPower}[water]
		}
	case water && motor:
		if !rd.doc.partial {
			rd.faults.add(Fault{File: rd.doc.name, Key: f.key, Problem: "missing, and the file has [water] and [motor]",
				Mend: `add power = "water" or power = "motor" at the top`})
		}
	case water:
		rd.rocket.Power = sim.WaterPower
	case motor:
		rd.rocket.Power = sim.MotorPower
	case !rd.doc.partial:
		rd.faults.add(Fault{File: rd.doc.name, Key: f.key, Problem: "nothing drives the rocket", Mend: "add [water] or [motor]"})
	}
}

// flying reports a drive that is to fly and is not there.
func (rd *reading) flying() {
	drive := rd.rocket.Power
	if rd.drives(drive) || rd.doc.partial || rd.meant[string(drive)] {
		return
	}
	var keys []string
	for _, s := range schema {
		for _, f := range s.fields {
			if s.path == string(drive) && f.needed != nil {
				keys = append(keys, f.key)
			}
		}
	}
	rd.faults.add(Fault{File: rd.doc.name, Key: string(drive), Problem: "the section is missing, and power asks for it",
		Mend: fmt.Sprintf("add [%s] with %s", drive, list(keys, "and"))})
}

// located holds the site's coordinates together.
func (rd *reading) located() {
	latitude, north := rd.where["site.latitude"]
	longitude, east := rd.where["site.longitude"]
	switch {
	case north && east:
		rd.rocket.Site.Located = true
	case north:
		rd.fault(latitude, "site.latitude", latitude.doc.written(latitude.node), "given without longitude", "give both or neither")
	case east:
		rd.fault(longitude, "site.longitude", longitude.doc.written(longitude.node), "given without latitude", "give both or neither")
	}
}

// validate adds what the engine finds wrong with the rocket as a whole. With
// values unread, only what is wrong whatever these are counts: they are set to
// either end of their ranges, and a fault must show both times.
func (rd *reading) validate() {
	found := rd.check(func(s scale) float64 { return s.min })
	if len(found) > 0 && len(rd.unread) > 0 {
		again := map[string]bool{}
		for _, f := range rd.check(func(s scale) float64 { return s.max }) {
			again[f.Name] = true
		}
		kept := found[:0]
		for _, f := range found {
			if again[f.Name] {
				kept = append(kept, f)
			}
		}
		found = kept
	}
	for _, f := range found {
		rd.whole(f)
	}
}

// check validates the rocket with its unread numbers set.
func (rd *reading) check(end func(scale) float64) sim.Faults {
	for _, u := range rd.unread {
		u.field.codec.setNumber(u.field, u.place, end(u.field.codec.scale(u.field, u.place)))
	}
	faults, _ := rd.rocket.Validate().(sim.Faults)
	return faults
}

// whole reports a fault of the rocket as a whole at the line of its input.
func (rd *reading) whole(f sim.Fault) {
	at, given := rd.where[f.Name]
	s, row, p := resolve(rd.rocket, f.Name)
	unsure := row != nil && s.path != "" && s.path == rd.unsure
	switch {
	case rd.faults.has(f.Name), rd.meant[f.Name], s != nil && rd.meant[s.path], !given && (rd.doc.partial || unsure):
		return
	case f.Name == "power" && (rd.faults.has(string(rd.rocket.Power)) || rd.meant[string(rd.rocket.Power)]):
		return
	}
	fault := Fault{File: rd.doc.name, Key: f.Name, Problem: f.Problem, Mend: f.Mend}
	if given {
		fault.File, fault.Line, fault.Value = at.doc.name, at.doc.line(at.node.at()), at.doc.written(at.node)
	} else if row != nil {
		if tables := rd.tables[s]; p.item < len(tables) && s.path != "" {
			fault.Line = rd.doc.line(tables[p.item].at())
		}
		if !math.IsNaN(f.Value) {
			fault.Value = quantity.Exact(f.Value, row.codec.scale(row, p).unit)
		}
	}
	rd.faults.add(fault)
}

func (rd *reading) fault(at located, key, value, problem, mend string) {
	rd.faults.add(Fault{File: at.doc.name, Line: at.doc.line(at.node.at()), Key: key, Value: value, Problem: problem, Mend: mend})
}
