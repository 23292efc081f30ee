package rocket

// Precedes tells whether one canopy is meant to open before another: the one of less drag
// area comes first, as a drogue before its main (common practice, no source). Of equals, and
// where one has no rule on the drive that flies, neither does.
func (r *Rocket) Precedes(first, second int) bool {
	a, b := &r.Canopies[first], &r.Canopies[second]
	if a.Rule(r.Power).Trigger == Never || b.Rule(r.Power).Trigger == Never {
		return false
	}
	return a.Coefficient*a.NominalArea() < b.Coefficient*b.NominalArea()
}
