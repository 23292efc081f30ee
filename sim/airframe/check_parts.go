package airframe

import (
	"ullage/sim/fault"
	"ullage/sim/quantity"
)

// CheckParts tells everything that is wrong with a mass list on a shape that passed
// Check, or nil. Parts may lie inside each other: most do.
func (s *Shape) CheckParts(parts []Part) fault.List {
	var c checker
	widest := s.Diameter
	for i := range s.Fins {
		widest = max(widest, s.Diameter+2*s.Fins[i].Span)
	}
	var total float64
	for i := range parts {
		p := &parts[i]
		total += p.Mass
		p.check(&c, "part."+fault.Entry(p.Name, i)+".", s.Length, widest)
	}
	if len(parts) > 0 && total == 0 {
		c.add("part."+fault.Entry(parts[0].Name, 0)+".mass", "and all others are zero: the list has no mass", "weigh the parts")
	}
	return c.faults
}

// check holds that a part lies within the rocket; a tail's end may stand out by as much
// as a body is wide, as nozzles do.
func (p *Part) check(c *checker, name string, length, widest float64) {
	if !quantity.Check(&c.faults, p, partFields, name) {
		return
	}
	if p.Diameter > widest*(1+step) {
		c.add(name+"diameter", "is wider than body and fins", "give at most "+mm(widest)+", the width over body and fins; leave it out for the body's")
	}
	switch {
	case p.Position > length+fit:
		c.odds(name+"position", "body.length", "floats: it is off the body, "+mm(length)+" long", "give where the part balances, from the tip of the nose")
	case p.Position-p.Length/2 < -fit:
		c.odds(name+"length", name+"position", "reaches ahead of the tip of the nose", "give at most "+mm(2*p.Position)+" for a part that balances in its middle there")
	case p.Position+p.Length/2 > length+widest+fit:
		c.odds(name+"length", "body.length", "reaches behind the body, "+mm(length)+" long", "shorten the part or move it forward")
	}
}
