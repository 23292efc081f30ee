package rocketfile

import (
	"strings"

	"ullage/sim/fault"
	"ullage/sim/quantity"
	"ullage/sim/rocket"
)

// dragCodec is a drag coefficient: a number, or a table of them against Mach.
type dragCodec struct {
	numberCodec
	table func(place) *[]rocket.MachDrag
}

// maxDragPoints bounds the table; a wind tunnel gives a few dozen.
const maxDragPoints = 200

const dragMend = "give a number such as 0.48, or [[Mach, number], …] such as [[0.0, 0.46], [0.8, 0.55]]"

// mach is what the other number of a point may be.
var mach = scale{Range: rocket.NumberNamed("body.drag.mach").Range}

func (c *dragCodec) kind(p place) Kind {
	if len(*c.table(p)) > 1 {
		return TextKind
	}
	return NumberKind
}

func (c *dragCodec) read(f *field, p place, n *node) *fault.Fault {
	if n.kind != arrayNode {
		q, bad := readQuantity(n, c.is, nil)
		if bad == nil {
			bad = c.is.Check(q.Value)
		}
		if bad == nil {
			*c.table(p) = []rocket.MachDrag{{Drag: q.Value}}
		}
		return bad
	}
	points, bad := c.points(n)
	if bad == nil {
		*c.table(p) = points
	}
	return bad
}

// points reads the table.
func (c *dragCodec) points(n *node) ([]rocket.MachDrag, *fault.Fault) {
	var points []rocket.MachDrag
	if len(n.members) == 0 || len(n.members) > maxDragPoints {
		return nil, flaw("not 1 to 200 points of drag against Mach", dragMend)
	}
	for _, row := range n.members {
		if row.kind != arrayNode || len(row.members) != 2 {
			return nil, flaw("a point is not a pair", dragMend)
		}
		var v [2]float64
		for i, s := range []scale{mach, c.is} {
			q, bad := readQuantity(row.members[i], s, nil)
			if bad == nil {
				bad = s.Check(q.Value)
			}
			if bad != nil {
				return nil, flaw(excerpt(row.members[i].text)+" in it: "+bad.Problem, bad.Remedy)
			}
			v[i] = q.Value
		}
		if k := len(points); k > 0 && v[0] <= points[k-1].Mach {
			return nil, flaw("the Mach numbers do not rise at "+excerpt(row.members[0].text), "put the points in order of Mach, each once")
		}
		points = append(points, rocket.MachDrag{Mach: v[0], Drag: v[1]})
	}
	return points, nil
}

func (c *dragCodec) text(f *field, p place) string {
	points := *c.table(p)
	if v, _ := c.number(f, p); len(points) == 0 && v == 0 {
		return ""
	} else if len(points) == 0 {
		points = []rocket.MachDrag{{Drag: v}}
	}
	plain := quantity.Usual(quantity.Number)
	if len(points) == 1 {
		return quantity.Exact(points[0].Drag, plain)
	}
	rows := make([]string, len(points))
	for i, m := range points {
		rows[i] = "[" + quantity.Exact(m.Mach, plain) + ", " + quantity.Exact(m.Drag, plain) + "]"
	}
	return "[" + strings.Join(rows, ", ") + "]"
}

func (c *dragCodec) number(f *field, p place) (float64, bool) {
	points := *c.table(p)
	switch {
	case len(points) == 0 && f.inForce != nil:
		return f.inForce(p), false
	case len(points) == 0:
		return 0, false
	}
	return points[0].Drag, len(points) == 1
}

func (c *dragCodec) setNumber(_ *field, p place, v float64) *fault.Fault {
	if len(*c.table(p)) > 1 {
		return flaw("a table against Mach, not one number", "turn body.drag_factor, which multiplies it")
	}
	bad := c.is.Check(v)
	if bad == nil {
		*c.table(p) = []rocket.MachDrag{{Drag: v}}
	}
	return bad
}

func (c *dragCodec) encode(f *field, p place, n *node, s style) (string, *fault.Fault) {
	if n.kind != arrayNode {
		return c.numberCodec.encode(f, p, n, s)
	}
	points, bad := c.points(n)
	if bad != nil {
		return "", bad
	}
	scratch := &rocket.Rocket{Body: rocket.Body{Drag: points}}
	return c.text(f, place{rocket: scratch}), nil
}

// listCodec is a list of quantities of one dimension.
type listCodec struct {
	is scale
	at func(place) *[]float64
}

func (c *listCodec) bind(name string) { c.is.Range = rocket.NumberNamed(name).Range }

const maxListed = 100

func (c *listCodec) kind(place) Kind           { return TextKind }
func (c *listCodec) scale(*field, place) scale { return scale{} }

func (c *listCodec) read(_ *field, p place, n *node) *fault.Fault {
	values, _, bad := c.values(n)
	if bad != nil {
		return bad
	}
	at := c.at(p)
	if at == nil {
		return notThere
	}
	*at = values
	return nil
}

func (c *listCodec) values(n *node) ([]float64, []quantity.Unit, *fault.Fault) {
	if n.kind != arrayNode || len(n.members) > maxListed {
		return nil, nil, flaw("not a list of quantities", `write it as ["6 s", "8 s"]`)
	}
	var values []float64
	var units []quantity.Unit
	for _, item := range n.members {
		q, bad := readQuantity(item, c.is, nil)
		if bad == nil {
			bad = c.is.Check(q.Value)
		}
		if bad != nil {
			return nil, nil, flaw(excerpt(item.text)+" in it: "+bad.Problem, bad.Remedy)
		}
		values, units = append(values, q.Value), append(units, q.Unit)
	}
	return values, units, nil
}

func (c *listCodec) text(_ *field, p place) string {
	at := c.at(p)
	if at == nil || len(*at) == 0 {
		return ""
	}
	return c.join(*at, func(int) quantity.Unit { return c.is.Unit })
}

func (c *listCodec) join(values []float64, unit func(i int) quantity.Unit) string {
	items := make([]string, len(values))
	for i, v := range values {
		items[i] = quoted(quantity.Exact(v, unit(i)), `"`)
	}
	return "[" + strings.Join(items, ", ") + "]"
}

func (c *listCodec) number(*field, place) (float64, bool) { return 0, false }

func (c *listCodec) setNumber(*field, place, float64) *fault.Fault {
	return flaw("a list, not a number", `write it as ["6 s", "8 s"]`)
}

func (c *listCodec) encode(_ *field, _ place, n *node, _ style) (string, *fault.Fault) {
	values, units, bad := c.values(n)
	if bad != nil {
		return "", bad
	}
	return c.join(values, func(i int) quantity.Unit { return units[i] }), nil
}
