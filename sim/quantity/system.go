package quantity

// System is a system of units to show.
type System int

// The systems of units.
const (
	Metric System = iota
	US
)

// Unit is the unit that the system shows instead of u: with US, psi for bar, in
// for mm; with Metric the reverse. Units at home in both, such as s, deg and
// kn, and units it does not know, stay as they are.
func (s System) Unit(u Unit) Unit {
	for i := range table {
		r := &table[i]
		if r.name != u.Name || r.dimension != u.Dimension {
			continue
		}
		other := r.metric
		if s == US {
			other = r.us
		}
		if other == "" {
			return u
		}
		shown, _ := LookupIn(other, u.Dimension)
		return shown
	}
	return u
}
