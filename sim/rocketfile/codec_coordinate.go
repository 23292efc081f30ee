package rocketfile

import "ullage/sim/fault"

// coordinateCodec is the latitude or the longitude of the site, which are
// given both or not at all.
type coordinateCodec struct{ numberCodec }

func (c *coordinateCodec) number(_ *field, p place) (float64, bool) {
	return *c.at(p), p.rocket.Site.Located
}

func (c *coordinateCodec) setNumber(f *field, p place, v float64) *fault.Fault {
	if !p.rocket.Site.Located {
		return flaw("the site has no place yet", "give latitude and longitude together in the file")
	}
	return c.numberCodec.setNumber(f, p, v)
}

func (c *coordinateCodec) text(f *field, p place) string {
	if !p.rocket.Site.Located {
		return ""
	}
	return c.numberCodec.text(f, p)
}
