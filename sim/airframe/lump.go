package airframe

// Lump is a mass with its balance point and its inertias about it: all that the motion
// of a rigid body asks of a part.
type Lump struct {
	Mass  float64 // kg
	At    float64 // balance point from the tip of the nose, m
	Pitch float64 // inertia about a line across the axis through the balance point, kg·m²
	Roll  float64 // inertia about the axis, kg·m²
}

// Combine joins lumps on one axis into one, by the parallel-axis theorem (Huygens and
// Steiner): pitch inertia Σ(I + m(x − x̄)²) about the common balance point x̄. Without
// mass the balance point is 0.
func Combine(lumps ...Lump) Lump {
	var all Lump
	for _, l := range lumps {
		all.Mass += l.Mass
		all.At += l.Mass * l.At
		all.Roll += l.Roll
	}
	if all.Mass == 0 {
		all.At = 0
	} else {
		all.At /= all.Mass
	}
	for _, l := range lumps {
		arm := l.At - all.At
		all.Pitch += l.Pitch + l.Mass*arm*arm
	}
	return all
}

// Cylinder is a solid cylinder on the axis from fore to aft, m from the tip of the
// nose: pitch m(3r² + l²)/12, roll m·r²/2 (textbook).
func Cylinder(mass, fore, aft, radius float64) Lump {
	l, r := aft-fore, radius
	return Lump{Mass: mass, At: (fore + aft) / 2, Pitch: mass * (3*r*r + l*l) / 12, Roll: mass * r * r / 2}
}

// Shell is a thin open tube on the axis from fore to aft, m from the tip of the nose:
// pitch m(6r² + l²)/12, roll m·r² (textbook).
func Shell(mass, fore, aft, radius float64) Lump {
	l, r := aft-fore, radius
	return Lump{Mass: mass, At: (fore + aft) / 2, Pitch: mass * (6*r*r + l*l) / 12, Roll: mass * r * r}
}

// Estimate is a finished airframe of which only mass and balance point were measured,
// for want of a swing test: the mass as a tube of the largest diameter, even before
// the balance point and even behind it, so much on either side that it balances there.
// With b from the tip and L the length that gives m·b(L − b)/3 + m·r²/2 in pitch (an
// even tube's m·L²/12 when b = L/2) and m·r² in roll. Derived; a heavy nose or tail
// far from the balance point makes the true pitch inertia greater, a heavy middle less.
func Estimate(s *Shape, mass, balance float64) Lump {
	b := min(max(balance, 0), s.Length)
	if !(s.Length > 0) {
		return Lump{Mass: mass, At: balance}
	}
	r := s.Diameter / 2
	l := Combine(Shell(mass*(s.Length-b)/s.Length, 0, b, r), Shell(mass*b/s.Length, b, s.Length, r))
	l.At = balance
	return l
}

// Sum is an airframe known by its mass list. A part whose diameter is given is a solid
// cylinder of its length, a disc when it has none; one without a diameter is spread
// over the skin, a tube or a ring of the body's largest diameter. Parts lie on the axis.
func Sum(s *Shape, parts []Part) Lump {
	lumps := make([]Lump, len(parts))
	for i := range parts {
		lumps[i] = parts[i].lump(s.Diameter)
	}
	return Combine(lumps...)
}

func (p *Part) lump(body float64) Lump {
	fore, aft := p.Position-p.Length/2, p.Position+p.Length/2
	if p.Diameter == 0 {
		return Shell(p.Mass, fore, aft, body/2)
	}
	return Cylinder(p.Mass, fore, aft, p.Diameter/2)
}
