package airframe

import "math"

// The contours of conic arcs, closed throughout: textbook solids of revolution.

// cone has r = R·x/L.
type cone struct{ length, base float64 }

func (c cone) radius(x float64) float64 { return c.base * x / c.length }
func (c cone) volume() float64          { return math.Pi / 3 * c.base * c.base * c.length }
func (c cone) wetted() float64          { return math.Pi * c.base * math.Hypot(c.length, c.base) }
func (c cone) plan() (area, centroid float64) {
	return c.base * c.length, 2 * c.length / 3
}

// ogive is a circular arc tangent to the tube behind it: with u = L − x from the base,
// ρ = (R² + L²)/(2R) and a = ρ − R, r = √(ρ² − u²) − a. It needs L ≥ R.
type ogive struct {
	length, base float64
	rho, a       float64 // the arc's radius, and how far its centre lies beyond the axis
	angle        float64 // that the arc spans, asin(L/ρ)
	under        float64 // ∫√(ρ² − u²) du over the length
}

func newOgive(length, base float64) ogive {
	rho := (base*base + length*length) / (2 * base)
	o := ogive{length: length, base: base, rho: rho, a: rho - base}
	o.angle = math.Atan2(length, math.Abs(o.a)) // asin(L/ρ), since ρ² − L² = a²
	o.under = (length*math.Abs(o.a) + rho*rho*o.angle) / 2
	return o
}

func (o ogive) radius(x float64) float64 {
	u := o.length - x
	// √(ρ² − u²) − a without the difference of two large numbers.
	return o.base - u*u/(o.rho+math.Sqrt(o.rho*o.rho-u*u))
}

// volume is π[ρ²L − L³/3 + a²L − 2a∫√(ρ² − u²)du].
func (o ogive) volume() float64 {
	l := o.length
	return math.Pi * (l*(o.rho*o.rho+o.a*o.a-l*l/3) - 2*o.a*o.under)
}

// wetted is 2πρ(L − a·asin(L/ρ)): 2π∫r ds over the arc.
func (o ogive) wetted() float64 {
	return 2 * math.Pi * o.rho * (o.length - o.a*o.angle)
}

func (o ogive) plan() (area, centroid float64) {
	half := o.under - o.a*o.length
	// ∫u·r du = (ρ³ − a³)/3 − aL²/2.
	first := o.base*(o.rho*o.rho+o.rho*o.a+o.a*o.a)/3 - o.a*o.length*o.length/2
	return 2 * half, o.length - first/half
}

// ellipsoid is half an ellipsoid of revolution: r = R√(1 − (u/L)²), u from the base.
type ellipsoid struct{ length, base float64 }

func (e ellipsoid) radius(x float64) float64 {
	share := x / e.length
	return e.base * math.Sqrt(share*(2-share))
}

func (e ellipsoid) volume() float64 { return 2 * math.Pi / 3 * e.base * e.base * e.length }

// wetted is half the surface of a prolate (L > R) or oblate spheroid.
func (e ellipsoid) wetted() float64 {
	l, r := e.length, e.base
	const sphere = 1e-9 // 1 − the ratio squared, below which either formula is the sphere's
	long := 1 - r*r/(l*l)
	flat := 1 - l*l/(r*r)
	switch {
	case long > sphere:
		k := math.Sqrt(long)
		return math.Pi * r * (r + l*math.Asin(k)/k)
	case flat > sphere:
		k := math.Sqrt(flat)
		return math.Pi * (r*r + l*l*math.Atanh(k)/k)
	}
	return 2 * math.Pi * r * r
}

func (e ellipsoid) plan() (area, centroid float64) {
	return math.Pi / 2 * e.base * e.length, e.length * (1 - 4/(3*math.Pi))
}
