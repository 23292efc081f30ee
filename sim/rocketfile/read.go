package rocketfile

import (
	"fmt"
	"strconv"
	"strings"

	"ullage/sim/fault"
	"ullage/sim/rocket"
)

// maxItems bounds a repeated section that has no limit of its own.
const maxItems = 16

// located is where a value or a table stands: a node and its document.
type located struct {
	doc  *document
	node *node
}

// reading is one reading of a document into a rocket, driven by the schema.
type reading struct {
	doc     *document
	disk    *files
	rocket  *rocket.Rocket
	faults  *faultList         // what is written wrong
	open    *faultList         // what is missing, and what is at odds with something else
	draft   bool               // what is open may stay so
	missed  []string           // inputs that have to be there and are not, by name
	idle    []*section         // of the drive that does not fly, not all there
	where   map[string]located // every value the text gives, by dotted name
	tables  map[*section][]*node
	spreads []stated        // of [spread]
	unread  []unread        // values that are missing or could not be read
	unsure  string          // the section of which not all could be read
	meant   map[string]bool // keys and sections that unknown ones seem to mean
}

// unread is a number that the rocket should hold and does not.
type unread struct {
	field *field
	place place
}

// read makes the rocket of a document. The faults of the document's syntax are
// in the list already.
func read(doc *document, disk *files, faults *faultList, draft bool) *reading {
	rd := &reading{doc: doc, disk: disk, faults: faults, open: &faultList{}, draft: draft, rocket: &rocket.Rocket{},
		where: map[string]located{}, tables: map[*section][]*node{}, meant: map[string]bool{}}
	if ofMotor(doc) {
		rd.faults.add(fault.Fault{File: doc.name, Problem: "a motor file, not a rocket file", Remedy: "name it in the [motor] of a rocket file"})
		return rd
	}
	rd.power()
	rd.shape()
	for _, s := range schema() {
		rd.section(s)
	}
	rd.logbook()
	rd.coordinates()
	rd.boundary()
	for _, s := range schema() {
		rd.complete(s)
	}
	rd.spread()
	rd.validate()
	return rd
}

// section reads every item of a section.
func (rd *reading) section(s *section) {
	if s.free {
		return
	}
	tables := rd.find(s)
	if most := s.limit(); len(tables) > most {
		rd.fault(located{rd.doc, tables[most]}, s.path, "", fmt.Sprintf("more than %d of them", most), "take some out")
		tables = tables[:most]
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
		// A motor has two: the keys in the rocket file come before those of the
		// motor's own file.
		layers := []located{{rd.doc, table}}
		if s.title != nil {
			rd.name(s, p, layers[0])
		}
		rd.unknown(layers[0], s, p)
		if s.path == "motor" {
			layers = rd.motorFile(layers)
		}
		for _, late := range []bool{false, true} {
			for _, f := range s.fields {
				if f.late == late && (s.title == nil || f.key != "name") {
					rd.field(s, f, p, layers)
				}
			}
		}
		if s.path == "motor" {
			rd.ownCurve()
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
	rd.fault(located{rd.doc, n}, s.path, "", "not written as it must be", "write it as "+s.header()+" with keys below")
	return nil
}

// name gives an item of a repeated section its name, by which its dotted names
// go: its own, or its place among the others.
func (rd *reading) name(s *section, p place, l located) {
	title := s.title(p)
	*title = strconv.Itoa(p.item + 1)
	f := s.field("name")
	if n := l.node.member("name"); n != nil && n.kind != brokenNode {
		if bad := f.codec.read(f, p, n); bad != nil {
			rd.fault(located{l.doc, n}, s.prefix(p)+"name", l.doc.written(n), bad.Problem, bad.Remedy)
		}
		rd.where[s.prefix(p)+"name"] = located{l.doc, n}
	}
	for i := range p.item {
		if *s.title(place{p.rocket, i}) == *title {
			rd.fault(l, s.prefix(p)+"name", "", "a name that another "+s.header()+" has too", "give each a name of its own")
			*title = strconv.Itoa(p.item+1) + "?" // no file can have this one
			return
		}
	}
}

// field reads one key, or lets its default hold.
func (rd *reading) field(s *section, f *field, p place, layers []located) {
	at, ok := lookup(f, layers)
	if !ok {
		if f.fallback != "" {
			if bad := f.codec.read(f, p, typed(f.fallback, f.codec)); bad != nil && bad != notThere {
				panic("rocketfile: bad default of " + f.key)
			}
		}
		return
	}
	name := s.prefix(p) + f.key
	rd.where[name] = at
	if at.node.kind == brokenNode {
		rd.unread = append(rd.unread, unread{f, p})
		return
	}
	outer, _, within := strings.Cut(f.key, ".")
	shared := within && at.node.name == outer
	if shared && f.drive != "" && !rd.drives(f.drive) {
		return // one value for every drive says nothing of one that is not there
	}
	if bad := f.codec.read(f, p, at.node); bad != nil {
		rd.unread = append(rd.unread, unread{f, p})
		if rd.unsettled(s, f, name, at) {
			return
		}
		if shared {
			if name = s.prefix(p) + outer; rd.faults.has(name) {
				return // told for the other drive
			}
		}
		rd.fault(at, name, at.doc.written(at.node), bad.Problem, bad.Remedy)
	}
}

// drives tells whether the text has a section for a drive.
func (rd *reading) drives(p rocket.Power) bool { return rd.doc.root.member(string(p)) != nil }

// lookup finds a key in the first layer that has it. A key within a key, such
// as deploy.water, is also given by the outer one when that is no table.
func lookup(f *field, layers []located) (located, bool) {
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

// power finds what flies before anything else is read, since it decides which
// keys are required.
func (rd *reading) power() {
	f := schema()[0].field("power")
	water, motor := rd.drives(rocket.WaterPower), rd.drives(rocket.MotorPower)
	n := rd.doc.root.member("power")
	switch {
	case n != nil:
		if n.kind == stringNode && (n.text == string(rocket.WaterPower) || n.text == string(rocket.MotorPower)) {
			rd.rocket.Power = rocket.Power(n.text)
			rd.flying()
			return
		}
		// A word that is wrong is reported where it is read.
		if water {
			rd.rocket.Power = rocket.WaterPower
		} else if motor {
			rd.rocket.Power = rocket.MotorPower
		}
	case water && motor:
		if !rd.doc.partial {
			rd.open.add(fault.Fault{File: rd.doc.name, Key: f.key, Problem: "missing, and the file has [water] and [motor]",
				Remedy: `add power = "water" or power = "motor" at the top`, Missing: true})
		}
	case water:
		rd.rocket.Power = rocket.WaterPower
	case motor:
		rd.rocket.Power = rocket.MotorPower
	case !rd.doc.partial:
		rd.open.add(fault.Fault{File: rd.doc.name, Key: f.key, Problem: "nothing drives the rocket", Remedy: "add [water] or [motor]", Missing: true})
	}
}

// shape gives the rocket a shape before anything else is read, if the text has
// a word of one.
func (rd *reading) shape() {
	root := rd.doc.root
	for _, s := range []string{"nose", "section", "fins"} {
		if root.member(s) != nil {
			giveShape(rd.rocket)
		}
	}
	for _, f := range sectionAt("body").fields {
		if f.group != "" && root.find("body", f.key) != nil {
			giveShape(rd.rocket)
		}
	}
}

// flying reports a drive that is to fly and is not there.
func (rd *reading) flying() {
	drive := rd.rocket.Power
	if rd.drives(drive) || rd.doc.partial || rd.meant[string(drive)] {
		return
	}
	var keys []string
	for _, s := range schema() {
		for _, f := range s.fields {
			if s.path == string(drive) && f.needed != nil {
				keys = append(keys, f.key)
			}
		}
	}
	rd.open.add(fault.Fault{File: rd.doc.name, Key: string(drive), Problem: "the section is missing, and power asks for it",
		Remedy: fmt.Sprintf("add [%s] with %s", drive, list(keys, "and")), Missing: true})
}

// coordinates holds the site's coordinates together.
func (rd *reading) coordinates() {
	latitude, north := rd.where["site.latitude"]
	longitude, east := rd.where["site.longitude"]
	switch {
	case north && east:
		rd.rocket.Site.Located = true
	case north:
		rd.odds(latitude, "site.latitude", "site.longitude", "given without longitude", "give both or neither")
	case east:
		rd.odds(longitude, "site.longitude", "site.latitude", "given without latitude", "give both or neither")
	}
}

func (rd *reading) fault(at located, key, value, problem, remedy string) {
	rd.faults.add(fault.Fault{File: at.doc.name, Line: at.doc.line(at.node.at()), Key: key, Value: value, Problem: problem, Remedy: remedy})
}

// odds leaves open that a value does not go with what another is.
func (rd *reading) odds(at located, key, with, problem, remedy string) {
	rd.open.add(fault.Fault{File: at.doc.name, Line: at.doc.line(at.node.at()), Key: key, With: with, Value: at.doc.written(at.node), Problem: problem, Remedy: remedy})
}
