package atmosphere

import (
	"math"
	"slices"
)

// Profile is a prepared wind, made by Wind.Profile or Turn; the zero Profile is a calm.
// Reading it does not change it.
//
// It is smooth but for the heights between two of its stretches: where a layer lies it has a
// kink, where a gust steps in it jumps. Whoever integrates through it goes from stretch to
// stretch with [Profile.In]; [Profile.At] finds the stretch itself.
type Profile struct {
	blows       bool    // there is wind somewhere
	plain       bool    // by the power law alone
	rooted      bool    // some of it is the power law, from the ground up
	east, north float64 // of the power law at its reference height, m/s
	inverse     float64 // of that height, 1/m
	growth      power
	stretches   []stretch // from the ground up; none: the power law alone
	gust        gustForm
	eddies      eddies
}

// stretch is a range of heights in which the wind is smooth, up to where the next begins.
type stretch struct {
	low         float64 // m
	linear      bool    // between layers or above them; else the power law
	jumps       bool    // at its lower end
	gust        gustPart
	east, north float64 // of the linear wind at the ground, m/s
	slope       [2]float64
}

// Profile prepares the wind. Values out of range are held at its ends.
func (w Wind) Profile() Profile {
	var p Profile
	p.Turn(&w, &Gust{})
	return p
}

// Turn makes a profile that of another wind and gust, in the memory it has. The table of its
// growth is kept as long as the exponent is the same: it takes most of the time.
func (p *Profile) Turn(w *Wind, g *Gust) {
	p.stretches, p.plain = p.stretches[:0], false
	p.east, p.north = 0, 0
	if len(w.Layers) > 0 {
		p.layer(w)
	} else if speed := speedRange.Hold(w.Speed); speed != 0 {
		p.root(speed, w.Reference(), w.From)
	}
	p.rooted = p.east != 0 || p.north != 0
	if p.rooted {
		p.growth.fit(exponentRange.Hold(w.Exponent))
	}
	p.blows = p.rooted || len(p.stretches) > 0
	p.eddies.stir(w, p)
	p.blow(g)
	p.blows = p.rooted || len(p.stretches) > 0
	p.plain = p.rooted && len(p.stretches) == 0 && !p.eddies.on
}

// root lays the power law through a wind at a height. A wind from the west, 270°, blows to the
// east.
func (p *Profile) root(speed, height, from float64) {
	sin, cos := math.Sincos(fromRange.Hold(from))
	p.east, p.north, p.inverse = -speed*sin, -speed*cos, 1/height
}

// layer lays out the stretches between layers, and the power law below them.
func (p *Profile) layer(w *Wind) {
	factor := w.Scale()
	if !slices.ContainsFunc(w.Layers, func(l Layer) bool { return l.Speed > 0 }) {
		return
	}
	at := func(i int) (height, east, north float64) {
		l := &w.Layers[i]
		speed := factor * speedRange.Hold(l.Speed)
		sin, cos := math.Sincos(turned(fromRange.Hold(l.From), fromRange.Hold(w.Veer)))
		return layerHeightRange.Hold(l.Height), -speed * sin, -speed * cos
	}
	h, e, n := at(0)
	p.east, p.north, p.inverse = e, n, 1/h
	p.stretches = append(p.stretches, stretch{})
	for i := 1; i < len(w.Layers); i++ {
		h1, e1, n1 := at(i)
		if !(h1 > h) {
			continue
		}
		slope := [2]float64{(e1 - e) / (h1 - h), (n1 - n) / (h1 - h)}
		p.stretches = append(p.stretches, stretch{low: h, linear: true, east: e - slope[0]*h, north: n - slope[1]*h, slope: slope})
		h, e, n = h1, e1, n1
	}
	p.stretches = append(p.stretches, stretch{low: h, linear: true, east: e, north: n})
}

// blow lays a gust over it.
func (p *Profile) blow(g *Gust) {
	speed := gustSpeedRange.Hold(g.Speed)
	if speed == 0 {
		return
	}
	sin, cos := math.Sincos(fromRange.Hold(g.From))
	height, length := gustHeightRange.Hold(g.Height), gustHeightRange.Hold(g.Length)
	p.gust = gustForm{-speed * sin, -speed * cos, height, 0}
	if len(p.stretches) == 0 {
		p.stretches = append(p.stretches, stretch{})
	}
	first := p.cut(height)
	part := gustBlows
	if length > 0 {
		p.gust.perLength, part = math.Pi/length, gustRises
	} else {
		p.stretches[first].jumps = true
	}
	full := p.cut(height + length)
	for i := first; i < len(p.stretches); i++ {
		if p.stretches[i].gust = part; i >= full {
			p.stretches[i].gust = gustBlows
		}
	}
}

// cut makes a stretch begin at a height, and tells which; at the ground one does.
func (p *Profile) cut(height float64) int {
	i := p.Stretch(height)
	if s := p.stretches[i]; height > s.low {
		i++
		p.stretches = append(p.stretches, stretch{})
		copy(p.stretches[i+1:], p.stretches[i:])
		s.low, s.jumps = height, false
		p.stretches[i] = s
	}
	return i
}

// Calm says that there is no wind at any height.
func (p *Profile) Calm() bool { return !p.blows }

// Rooted says that it grows from the ground up by the power law, which begins there with an
// infinite slope.
func (p *Profile) Rooted() bool { return p.rooted }

// Even says that there is one stretch only.
func (p *Profile) Even() bool { return len(p.stretches) < 2 }

// Stretch finds the stretch of a height.
func (p *Profile) Stretch(h float64) int {
	i := max(len(p.stretches)-1, 0)
	for i > 0 && !(h >= p.stretches[i].low) {
		i--
	}
	return i
}

// Ends are where a stretch begins and ends, m above the ground, infinite where it does not.
func (p *Profile) Ends(i int) (low, high float64) {
	low, high = math.Inf(-1), math.Inf(1)
	if i > 0 {
		low = p.stretches[i].low
	}
	if i+1 < len(p.stretches) {
		high = p.stretches[i+1].low
	}
	return low, high
}

// Jumps says that the wind jumps where a stretch begins.
func (p *Profile) Jumps(i int) bool { return p.stretches[i].jumps }

// At gives the direction the air moves to and how fast, m/s, at a height above
// the ground, m. At the ground and below it the air is still.
func (p *Profile) At(h float64) (east, north float64) { return p.In(p.Stretch(h), h) }

// In is At, of a stretch that is carried on smoothly beyond its ends.
func (p *Profile) In(i int, h float64) (east, north float64) {
	if h > windCeiling {
		h = windCeiling
	}
	switch {
	case !(h > 0):
		return 0, 0
	case p.plain:
		f := p.growth.of(h * p.inverse)
		return p.east * f, p.north * f
	case p.blows:
		return p.varied(i, h)
	}
	return 0, 0
}

// straight is the wind of a linear stretch.
func (s *stretch) straight(h float64) (east, north float64) {
	return s.east + h*s.slope[0], s.north + h*s.slope[1]
}

// varied is In of a wind that is more than the power law.
func (p *Profile) varied(i int, h float64) (east, north float64) {
	var s stretch
	if len(p.stretches) > 0 {
		s = p.stretches[i]
	}
	switch {
	case s.linear:
		east, north = s.straight(h)
	case p.rooted:
		f := p.growth.of(h * p.inverse)
		east, north = p.east*f, p.north*f
	}
	if s.gust != noGust {
		share := 1.0
		if s.gust == gustRises {
			share = p.gust.share(h)
		}
		east += share * p.gust.east
		north += share * p.gust.north
	}
	if p.eddies.on {
		e, n := p.eddies.at(h)
		east, north = east+e, north+n
	}
	return east, north
}
