package rocketfile

import (
	"math"
	"strings"

	"ullage/sim/fault"
	"ullage/sim/quantity"
	"ullage/sim/rocket"
)

// Spread is the uncertainty of one input: one standard deviation around the
// rocket's value, SI. That of a temperature is a difference.
type Spread struct {
	Input Input
	SD    float64 // 0 and more; 0 says that the input is certain
}

// Spreads are the uncertainties that the file states in [spread], in its order.
// One of an input that has no value now, such as the delay of a motor without a
// charge, has nothing to vary and is left out.
func (f *File) Spreads() []Spread {
	spreads := make([]Spread, 0, len(f.rd.spreads))
	for _, s := range f.rd.spreads {
		in, err := Find(f.rd.rocket, s.input)
		if err != nil {
			continue
		}
		if v, given := in.Get(f.rd.rocket); given || v != 0 {
			spreads = append(spreads, Spread{in, s.sd})
		}
	}
	return spreads
}

// ParseSpread reads the uncertainty of an input as a file has it, quotes left
// out: "0.01", "20 g", "15 deg"; for a temperature a difference, "2 degC"; "0", which is
// none in any unit. The error is a fault.List.
func ParseSpread(r *rocket.Rocket, input, text string) (Spread, error) {
	in, err := Find(r, input)
	if err != nil {
		return Spread{}, err
	}
	_, row, p := resolve(r, input)
	n := &node{kind: stringNode, text: strings.TrimSpace(text)}
	if n.text == "0" {
		n.text = strings.TrimSpace("0 " + in.Unit.Name)
	}
	if isNumber(n.text) {
		n.kind = numberNode
	}
	sd, bad := readSpread(in.Name, row, p, n)
	if bad != nil {
		return Spread{}, fault.List{bad.Of("spread."+in.Name, excerpt(text))}
	}
	return Spread{in, sd}, nil
}

// spreadSection is the table of uncertainties. Its keys are the dotted names of
// inputs, so that it has no rows of its own.
func spreadSection() *section {
	return &section{path: "spread", group: "spread", count: one, free: true}
}

// stated is an uncertainty that a text states.
type stated struct {
	input string
	sd    float64
}

// spread reads [spread], once the rocket's parts are known: the names in it
// depend on them.
func (rd *reading) spread() {
	s := sectionAt("spread")
	seen := map[string]bool{}
	for _, table := range rd.find(s) {
		for _, n := range leaves(table) {
			name := strings.TrimPrefix(n.dotted(), s.path+".")
			switch {
			case rd.faults.full():
				return
			case n.kind == brokenNode:
			case seen[name]:
				rd.fault(located{rd.doc, n}, excerpt(s.path+"."+name), "", "given twice, with dots and in quotes", "keep one of the two")
			default:
				seen[name] = true
				rd.spreadOf(name, n)
			}
		}
	}
}

// spreadOf reads the uncertainty of one input.
func (rd *reading) spreadOf(name string, n *node) {
	at := located{rd.doc, n}
	key, value := excerpt("spread."+name), rd.doc.written(n)
	s, row, p := resolve(rd.rocket, name)
	there := row != nil && p.item < s.count(rd.rocket) && has(rd.rocket, s, row)
	if !there {
		if rd.unfinished(name, s, row) {
			return
		}
		bad := noInput(rd.rocket, name)
		rd.fault(at, key, value, bad.Problem, bad.Remedy)
		return
	}
	sd, bad := readSpread(name, row, p, n)
	if bad != nil {
		rd.fault(at, key, value, bad.Problem, bad.Remedy)
		return
	}
	rd.spreads = append(rd.spreads, stated{name, sd})
}

// unfinished tells that an input may be missing only because its section could
// not be read or is left out, being of the drive that does not fly.
func (rd *reading) unfinished(name string, s *section, row *field) bool {
	top, _, _ := strings.Cut(name, ".")
	return rd.doc.partial || rd.unsure == top || row != nil && len(rd.tables[s]) > 0
}

// leaves are the values of a table and of the tables within it: a name may be
// written in quotes, "water.fill", or with its dots.
func leaves(table *node) []*node {
	var found []*node
	for _, n := range table.members {
		if n.kind == tableNode {
			found = append(found, leaves(n)...)
		} else {
			found = append(found, n)
		}
	}
	return found
}

// dotted is a node's name with those of the tables it is in.
func (n *node) dotted() string {
	name := n.name
	for p := n.parent; p != nil && p.parent != nil; p = p.parent {
		name = p.name + "." + name
	}
	return name
}

// readSpread reads an uncertainty of an input that the rocket has.
func readSpread(name string, row *field, p place, n *node) (float64, *fault.Fault) {
	is := row.codec.scale(row, p)
	if s, _, _ := resolve(p.rocket, name); s != nil && s.apart {
		return 0, flaw("no flight depends on it, so its uncertainty changes none", "vary what the flight depends on, such as water.pressure")
	}
	switch row.codec.kind(p) {
	case ChoiceKind, TextKind:
		return 0, flaw("no number, so it has no standard deviation", "vary a number, such as body.mass")
	}
	is.Min, is.Max = 0, is.Max-is.Min
	switch is.Dimension { // a difference of two
	case quantity.Temperature:
		is.Dimension, is.Unit = quantity.TemperatureDifference, quantity.Usual(quantity.TemperatureDifference)
	case quantity.Bearing:
		is.Dimension, is.Unit = quantity.Angle, quantity.Usual(quantity.Angle)
	}
	q, bad := readQuantity(n, is, nil)
	if bad == nil {
		bad = is.Check(q.Value)
	}
	return math.Abs(q.Value), bad // no −0
}

// dropSpreads takes the uncertainties of a part out of the text.
func (d *document) dropSpreads(part string) []splice {
	return d.dropSpread(func(name string) bool { return strings.HasPrefix(name, part+".") })
}

// dropSpread takes the uncertainties of some inputs out of the text.
func (d *document) dropSpread(gone func(name string) bool) []splice {
	var splices []splice
	for _, n := range d.spreads() {
		if gone(n.spreadName()) {
			splices = append(splices, d.remove(n)...)
		}
	}
	return splices
}
