package rocketfile

import (
	"errors"

	"ullage/sim/fault"
	"ullage/sim/quantity"
	"ullage/sim/rocket"
)

// amountCodec is how full a chamber is: a share of its volume, or what is poured into it, by volume or by mass, which
// follows the chamber's volume and the liquid's density.
type amountCodec struct{ numberCodec }

// poured is an amount that is written by volume or by mass.
func poured(n *node) (quantity.Quantity, bool) {
	if n.kind != stringNode {
		return quantity.Quantity{}, false
	}
	if _, err := quantity.Parse(n.text, quantity.Fraction); err == nil {
		return quantity.Quantity{}, false
	}
	for _, d := range []quantity.Dimension{quantity.Volume, quantity.Mass} {
		if q, err := quantity.Parse(n.text, d); err == nil {
			return q, true
		}
	}
	return quantity.Quantity{}, false
}

// inThousands refuses an amount by volume or by mass whose comma could part thousands; nil for any other text.
func inThousands(n *node) *fault.Fault {
	for _, d := range []quantity.Dimension{quantity.Volume, quantity.Mass} {
		_, err := quantity.Parse(n.text, d)
		if bad := (fault.Fault{}); n.kind == stringNode && errors.As(err, &bad) && bad.Problem == quantity.InParts {
			return flaw(bad.Problem, bad.Remedy)
		}
	}
	return nil
}

// brimful is what a full chamber holds, in the dimension of an amount, SI; 0 where that is not known yet.
func brimful(w *rocket.Water, d quantity.Dimension) float64 {
	if w == nil || !(w.Volume > 0) {
		return 0
	}
	if d == quantity.Mass {
		return w.Volume * w.Density
	}
	return w.Volume
}

func (c *amountCodec) read(f *field, p place, n *node) *fault.Fault {
	q, ok := poured(n)
	if !ok {
		bad := c.numberCodec.read(f, p, n)
		if bad == nil || n.kind != stringNode {
			return bad
		}
		if parted := inThousands(n); parted != nil {
			return parted
		}
		if _, err := quantity.Parse(n.text, quantity.Fraction); err != nil {
			bad = flaw(bad.Problem, bad.Remedy+`, or what is poured in, such as "1.3 L" or "1300 g"`)
		}
		return bad
	}
	full := brimful(p.rocket.Water, q.Unit.Dimension)
	if !(full > 0) {
		return nil // the volume is missing, and told
	}
	return c.setNumber(f, p, q.Value/full)
}

func (c *amountCodec) encode(f *field, p place, n *node, s style) (string, *fault.Fault) {
	if q, ok := poured(n); ok {
		if full := brimful(p.rocket.Water, q.Unit.Dimension); full > 0 {
			if bad := c.check(q.Value / full); bad != nil {
				return "", flaw("more than the chamber takes", "give at most "+quantity.Exact(quantity.Rounded(c.of.Range.Max*full*(1-5e-4), 4), q.Unit))
			}
		}
		return inTOML(quantity.Exact(q.Value, q.Unit), q.Unit, s.quote), nil
	}
	if bad := inThousands(n); bad != nil {
		return "", bad
	}
	if full := brimful(p.rocket.Water, s.poured.Dimension); n.kind == numberNode && s.poured.Name != "" && full > 0 {
		q, bad := readQuantity(n, c.is(), s.bare) // a number on the screen is a share; the file keeps its measure
		if bad == nil {
			bad = c.check(q.Value)
		}
		if bad != nil {
			return "", bad
		}
		return inTOML(quantity.Exact(quantity.Rounded(q.Value*full, 4), s.poured), s.poured, s.quote), nil
	}
	return c.numberCodec.encode(f, p, n, s)
}

// also is the amount by volume and by mass.
func (c *amountCodec) also(r *rocket.Rocket) []quantity.Quantity {
	var out []quantity.Quantity
	for _, u := range []quantity.Unit{quantity.Usual(quantity.Volume), quantity.Usual(quantity.Mass)} {
		if full := brimful(r.Water, u.Dimension); full > 0 && r.Water.Fill > 0 {
			out = append(out, quantity.Quantity{Value: r.Water.Fill * full, Unit: u})
		}
	}
	return out
}
