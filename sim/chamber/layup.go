package chamber

import "math"

// layup is a laid wall at one pascal, as it is judged. Where fibres cross they hold the
// load as a net and outlive the resin: they are judged with it cracked (netting analysis,
// all but). Where they do not, the wall fails as the resin cracks, whole until then.
type layup struct {
	s     *stuff
	share float64 // of the strength that counts
	net   bool
	as    laminate
	at    strains
	shear float64 // the greatest in a ply, whole or as judged, Pa
}

func newLayup(whole laminate, along, around, share float64, s *stuff) layup {
	w := layup{s: s, share: share, net: whole.crosses(), as: whole, at: whole.under(along, around)}
	w.shear = w.mostShear()
	if w.net {
		// Once cracked, resin no longer helps by being pulled, and what the net cannot
		// hold comes to be shear.
		w.as.of = whole.of.cracked()
		w.at = w.as.under(along, around)
		w.shear = math.Max(w.shear, w.mostShear())
	}
	return w
}

func (w *layup) mostShear() float64 {
	most := 0.
	for _, f := range w.as.families {
		most = math.Max(most, math.Abs(w.as.seenBy(f, w.at).shear))
	}
	return most
}

// leastCrossing is the angle between two families of fibres from which they are a net.
// Common sense, no source: a net of less holds no pressure vessel's loads without the
// resin's giving way in shear as soon as it does across the fibres.
const leastCrossing = 29.99 * math.Pi / 180

func (l *laminate) crosses() bool {
	for i, f := range l.families {
		for _, g := range l.families[:i] {
			if math.Abs(math.Sin(f.angle-g.angle)) >= math.Sin(leastCrossing) {
				return true
			}
		}
	}
	return false
}

// fromAxis and fromCircle are how far fibres lie off the tube's axis and off its
// circumference, 0 to π/2.
func fromAxis(angle float64) float64   { return math.Acos(math.Min(1, math.Abs(math.Cos(angle)))) }
func fromCircle(angle float64) float64 { return math.Pi/2 - fromAxis(angle) }

// near is how far off a way fibres carry it by themselves: a little over 45°, where cloth
// carries both. In a net that has none so near, all do together, as in a tube wound at
// 54.7°; where they are no net, those at 45° carry neither.
const (
	near  = 45.001 * math.Pi / 180
	alone = 44.999 * math.Pi / 180
)

// part is the wall one way: the fibres that carry it against their strain at failure, or
// the resin pulled across them where none do. The stress shown is the wall's mean one,
// and the strength what makes that the same use.
func (w *layup) part(name string, stress float64, off func(float64) float64) Part {
	limit := near
	if !w.net {
		limit = alone
	}
	use, note, found := w.fibres(off, limit)
	if !found && w.net {
		use, note, found = w.fibres(off, math.Pi)
	}
	if found {
		return newPart(name, stress, stress/use*w.share, true, note)
	}
	for _, f := range w.as.families {
		use = math.Max(use, w.as.seenBy(f, w.at).across/resinTransverse)
	}
	return newPart(name+resinAlone, stress, stress/use*w.share, true, FirstCrack)
}

// fibres is the worst use of those up to a limit off a way, if there are any.
func (w *layup) fibres(off func(float64) float64, limit float64) (use float64, note Note, found bool) {
	for _, f := range w.as.families {
		if off(f.angle) > limit {
			continue
		}
		found = true
		strain := w.as.seenBy(f, w.at).fibre
		u, n := strain/w.s.fibre.failure, Note("")
		if strain < 0 {
			u, n = -u/w.s.crush, Squeezed
		}
		if !(u <= use) { // a strain that is no number shows
			use, note = u, n
		}
	}
	return use, note, found
}
