package rocket

import "math"

// GroundWind is the strongest wind near the ground that the rocket is flown in, m/s: that of [atmosphere.Wind.Surface], or with the gust on
// top of it, where that one sets in below the height at which the wind is told.
func (r *Rocket) GroundWind() float64 {
	wind, from := r.Wind.Surface()
	g := &r.Gust
	if g.Speed <= 0 || g.Height >= r.Wind.Reference() {
		return wind
	}
	east := wind*math.Sin(from) + g.Speed*math.Sin(g.From)
	north := wind*math.Cos(from) + g.Speed*math.Cos(g.From)
	return math.Max(wind, math.Hypot(east, north)) // it comes and goes
}
