package layup

import "math"

// Mix is mixed resin, kg. Where the ratio is not known, Resin and Hardener are NaN.
type Mix struct{ Whole, Resin, Hardener float64 }

func (b *builder) mix(whole float64) Mix {
	if b.p.Hardener == 0 {
		return Mix{whole, math.NaN(), math.NaN()}
	}
	resin := whole / (1 + b.p.Hardener)
	return Mix{whole, resin, whole - resin}
}

func (m Mix) plus(o Mix) Mix {
	if m == (Mix{}) {
		return o
	}
	return Mix{m.Whole + o.Whole, m.Resin + o.Resin, m.Hardener + o.Hardener}
}

// Pot is what is mixed at once, and the layers that it wets.
type Pot struct {
	Mixed       Mix
	First, Last int
	Of, Share   int // of one layer that takes several pots: the how manieth of how many; 0 of whole layers
}

// pots shares the resin of a part out: whole layers as long as they fit into a pot, and what no pot
// holds in equal ones.
func (b *builder) pots(x *Part) {
	need := map[int]float64{}
	last := 0
	for i := range x.Plies {
		p := &x.Plies[i]
		n := p.Last - p.First + 1
		each := b.resinFor(p.Area*p.Cloth, b.v) * (1 + b.c.Waste) / float64(n)
		for l := p.First; l <= p.Last; l++ {
			need[l] += each
			last = max(last, l)
		}
	}
	var now Pot
	sum := 0.
	empty := func() {
		if sum > 0 {
			now.Mixed = b.mix(sum)
			x.Pots = append(x.Pots, now)
		}
		sum = 0
	}
	total := 0.
	for l := 1; l <= last; l++ {
		total += need[l]
		if need[l] > b.p.Pot {
			empty()
			n := int(math.Ceil(need[l]/b.p.Pot - 1e-9))
			n = min(n, mostPots)
			for k := range n {
				x.Pots = append(x.Pots, Pot{Mixed: b.mix(need[l] / float64(n)), First: l, Last: l, Share: k + 1, Of: n})
			}
			continue
		}
		if sum > 0 && sum+need[l] > b.p.Pot*(1+1e-9) {
			empty()
		}
		if sum == 0 {
			now = Pot{First: l}
		}
		now.Last = l
		sum += need[l]
	}
	empty()
	x.Mixed = b.mix(total)
}

// mostPots is how many one layer is shared out over at most: nobody mixes more.
const mostPots = 999
