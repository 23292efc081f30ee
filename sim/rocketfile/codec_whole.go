package rocketfile

import (
	"math"

	"ullage/sim/fault"
	"ullage/sim/quantity"
)

// wholeCodec is a number that counts things.
type wholeCodec struct{ numberCodec }

func (c *wholeCodec) count(p place) *int { return c.of.Count(p.rocket, p.item) }

func (c *wholeCodec) read(f *field, p place, n *node) *fault.Fault {
	q, bad := readQuantity(n, c.is, nil)
	if bad != nil {
		return bad
	}
	return c.setNumber(f, p, q.Value)
}

func (c *wholeCodec) text(f *field, p place) string {
	v, given := c.number(f, p)
	if !given {
		return ""
	}
	return quantity.Exact(v, c.is.Unit)
}

func (c *wholeCodec) number(_ *field, p place) (float64, bool) {
	if at := c.count(p); at != nil {
		return float64(*at), true
	}
	return 0, false
}

func (c *wholeCodec) setNumber(_ *field, p place, v float64) *fault.Fault {
	if bad := c.check(v); bad != nil {
		return bad
	}
	at := c.count(p)
	if at == nil {
		return notThere
	}
	*at = int(v)
	return nil
}

func (c *wholeCodec) check(v float64) *fault.Fault {
	if bad := c.is.Check(v); bad != nil {
		return bad
	}
	if v != math.Trunc(v) {
		return flaw("not a whole number", "give "+quantity.Exact(c.is.Min, c.is.Unit)+" to "+quantity.Exact(c.is.Max, c.is.Unit))
	}
	return nil
}

func (c *wholeCodec) encode(f *field, p place, n *node, s style) (string, *fault.Fault) {
	q, bad := readQuantity(n, c.is, s.bare)
	if bad == nil {
		bad = c.check(q.Value)
	}
	if bad != nil {
		return "", bad
	}
	return c.numberCodec.encode(f, p, n, s)
}
