package chamber

// Typical is the chamber without any strength of its own: of each part what is built in for its material, which was never measured
// on this one. Of a material of one's own nothing is built in, and its strengths stay.
func (c *Chamber) Typical() *Chamber {
	t := *c
	if c.Material != Own {
		t.Around, t.Along = 0, 0
	}
	for _, end := range [...]**Closure{&t.Forward, &t.Aft} {
		if *end != nil {
			plain := **end
			plain.Strength, plain.BondStrength = 0, 0
			*end = &plain
		}
	}
	if c.Boss != nil {
		boss := *c.Boss
		boss.BondStrength = 0
		t.Boss = &boss
	}
	if c.Thread != nil {
		thread := *c.Thread
		thread.Strength, thread.Female = 0, 0
		t.Thread = &thread
	}
	t.Adhesive = nil
	return &t
}
