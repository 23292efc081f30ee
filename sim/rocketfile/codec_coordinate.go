package rocketfile

import (
	"ullage/sim/fault"
)

// coordinateCodec is the latitude or the longitude of the site, which are
// given both or not at all.
type coordinateCodec struct{ numberCodec }

func (c *coordinateCodec) bind(name string) {
	c.numberCodec.bind(name)
	c.in = coordinateCell{(*rowCell)(&c.numberCodec)}
}

func (c *coordinateCodec) setNumber(f *field, p place, v float64) *fault.Fault {
	if !p.rocket.Site.Located {
		return flaw("the site has no place yet", "give latitude and longitude together in the file")
	}
	return c.numberCodec.setNumber(f, p, v)
}

type coordinateCell struct{ *rowCell }

func (c coordinateCell) get(p place) (v float64, given, there bool) {
	v, _, there = c.rowCell.get(p)
	return v, p.rocket.Site.Located || v != 0, there // of a draft one alone
}
