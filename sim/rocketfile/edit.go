package rocketfile

import (
	"strings"

	"ullage/sim/fault"
	"ullage/sim/quantity"
	"ullage/sim/rocket"
)

// Change is one edit: an input and its new value, written as in a file.
type Change struct{ Input, Value string }

// Set changes one input to a value written as in a file, quotes left out: 0.33,
// 9 bar, motor, apogee + 2 s, or 2 s for the number in a rule. A key that is
// absent is added; of two keys that exclude each other the new one takes the
// place of the old. Besides the inputs it takes motor.curve and motor.file.
// The errors are a fault.List.
func (f *File) Set(input, value string) (*File, error) {
	return f.SetAll(Change{input, value})
}

// SetAll makes several changes as one: only the outcome has to be a rocket.
func (f *File) SetAll(changes ...Change) (*File, error) {
	return f.set(changes, nil)
}

// SetIn is Set for a field of the screen: a bare number takes the unit that
// the field shows, and is written in the unit that the file uses.
func (f *File) SetIn(input, value string, bare quantity.Unit) (*File, error) {
	return f.set([]Change{{input, value}}, &bare)
}

// SetValue changes the number of an input, given in SI, and writes it in the
// unit that the file uses.
func (f *File) SetValue(input string, v float64) (*File, error) {
	r := f.rd.rocket
	_, row, p := resolve(r, input)
	if row == nil {
		return nil, fault.List{noInput(r, input)}
	}
	if bad := row.codec.setNumber(row, place{r.Clone(), p.item}, v); bad != nil && bad != notThere {
		return nil, fault.List{bad.Of(input, quantity.Exact(v, row.codec.scale(row, p).Unit))}
	}
	if c, ok := row.codec.(*choiceCodec); ok {
		return f.Set(input, c.choices(r)[int(v)])
	}
	unit := f.Unit(input)
	number := unit
	number.Name = ""
	text := quantity.Exact(v, number)
	if !isNumber(text) {
		text = "0" // too small to be written
	}
	return f.SetIn(input, text, unit)
}

// set makes the changes, one text after the other.
func (f *File) set(changes []Change, bare *quantity.Unit) (*File, error) {
	doc := f.rd.doc
	faults := &faultList{}
	for _, c := range changes {
		s, row, p := resolve(f.rd.rocket, c.Input)
		if row == nil {
			faults.add(noInput(f.rd.rocket, c.Input))
			continue
		}
		n := typed(c.Value, row.codec)
		style := f.style(c.Input, row, p)
		style.bare = bare
		value, bad := row.codec.encode(row, p, n, style)
		if bad != nil {
			faults.add(bad.Of(c.Input, excerpt(c.Value)))
			continue
		}
		if tableOf(row) != nil {
			value = strings.ReplaceAll(value, "\n", doc.eol()) // rows stand below each other
		}
		if at, ok := f.rd.where[c.Input]; ok && doc == f.rd.doc { // an earlier change may have taken it away
			there := style
			there.bare = nil // what a field shows says nothing of a number in the text
			if old, bad := row.codec.encode(row, p, at.node, there); bad == nil && strings.ReplaceAll(old, "\n", doc.eol()) == value {
				if own, there := lookup(row, []located{{doc, doc.table(s, p.item)}}); there && own.node.name == lastKey(row.key) {
					continue // says so already
				}
			}
		}
		doc = doc.edited(doc.set(s, row, p.item, value))
		if doc == nil {
			return nil, fault.List{{Key: c.Input, Value: excerpt(c.Value), Problem: "cannot be put into this text", Remedy: "edit the file by hand"}}
		}
	}
	if err := faults.sorted(""); err != nil {
		return nil, err
	}
	return f.with(doc)
}

// style tells how the file writes an input now.
func (f *File) style(input string, row *field, p place) style {
	at, ok := f.rd.where[input]
	if !ok {
		return style{quote: `"`}
	}
	s := style{quote: quoteOf(string(at.doc.text[at.node.value.start:at.node.value.end]))}
	switch c := row.codec.(type) {
	case *amountCodec:
		if q, ok := poured(at.node); ok {
			s.poured = q.Unit
			break
		}
		q, bad := readQuantity(at.node, c.scale(row, p), nil)
		s.unit, s.hasUnit = q.Unit, bad == nil
	case *ruleCodec:
		_, q, _ := readRule(at.node, c.now(p), nil)
		s.unit, s.hasUnit = q.Unit, q.Unit.Name != ""
	case *choiceCodec, *textCodec: // words have no unit
	default:
		if at.node.kind == numberNode || at.node.kind == stringNode {
			q, bad := readQuantity(at.node, c.scale(row, p), nil)
			s.unit, s.hasUnit = q.Unit, bad == nil
		}
	}
	return s
}

// Unit is the unit that the file uses for an input, else the input's default.
func (f *File) Unit(input string) quantity.Unit {
	_, row, p := resolve(f.rd.rocket, input)
	if row == nil {
		return quantity.Unit{Scale: 1}
	}
	if s := f.style(input, row, p); s.hasUnit && s.unit.Name != "" {
		return s.unit
	}
	return row.codec.scale(row, p).Unit
}

// Reset takes an input out of the text, so that its default holds.
func (f *File) Reset(input string) (*File, error) {
	s, row, p := resolve(f.rd.rocket, input)
	if row == nil {
		return nil, fault.List{noInput(f.rd.rocket, input)}
	}
	doc := f.rd.doc
	table := doc.table(s, p.item)
	own, ok := lookup(row, []located{{doc, table}})
	if !ok {
		return f, nil
	}
	var edit []splice
	if outer, _, within := strings.Cut(row.key, "."); within && own.node.name == outer {
		other := ruleOfOther(doc, s, row)
		if other == nil {
			return nil, fault.List{{Key: input, Problem: "the only rule of the canopy", Remedy: "remove the canopy instead"}}
		}
		_, inner, _ := strings.Cut(other.key, ".")
		edit = []splice{{own.node.value, inBraces([]pair{{inner, string(doc.text[own.node.value.start:own.node.value.end])}})}}
	} else {
		edit = doc.remove(own.node)
	}
	if doc = doc.edited(edit); doc == nil {
		return nil, fault.List{{Key: input, Problem: "cannot be taken out of this text", Remedy: "edit the file by hand"}}
	}
	return f.with(doc)
}

// set writes a value, in TOML, for a key of an item of a section.
func (d *document) set(s *section, f *field, item int, value string) []splice {
	table := d.table(s, item)
	key, inner, within := strings.Cut(f.key, ".")
	if n := table.member(key); within && n != nil {
		if n.kind == tableNode {
			table, key = n, inner
		} else if other := ruleOfOther(d, s, f); other != nil {
			_, otherKey, _ := strings.Cut(other.key, ".")
			pairs := []pair{{inner, value}, {otherKey, string(d.text[n.value.start:n.value.end])}}
			if otherKey == string(rocket.WaterPower) {
				pairs[0], pairs[1] = pairs[1], pairs[0]
			}
			return []splice{{n.value, inBraces(pairs)}}
		}
	} else if within {
		value = inBraces([]pair{{inner, value}})
	}
	if n := table.member(key); n != nil && n.value.end > 0 {
		return []splice{{n.value, value}}
	}
	if n := table.member(f.instead); n != nil && n.value.end > 0 && f.instead != "" {
		raw := string(d.text[n.key.start:n.key.end])
		return []splice{{span{n.key.start + lastPart(raw), n.key.end}, key}, {n.value, value}}
	}
	return []splice{d.insert(s, table, pair{key, value})}
}

// ruleOfOther is the row for the same rule on the other drive; nil when the
// text has no such drive.
func ruleOfOther(d *document, s *section, f *field) *field {
	for _, other := range s.fields {
		if other.drive != "" && other.drive != f.drive && f.drive != "" && d.root.member(string(other.drive)) != nil {
			return other
		}
	}
	return nil
}

func lastKey(key string) string {
	_, inner, ok := cutLast(key)
	if ok {
		return inner
	}
	return key
}

// edited is the document with the splices done; nil when the outcome is no
// TOML, which no edit should make of a file.
func (d *document) edited(splices []splice) *document {
	doc, faults := parse(d.name, d.dir, spliced(d.text, splices))
	if doc == nil || doc.partial || len(faults.faults) > 0 {
		return nil
	}
	return doc
}
