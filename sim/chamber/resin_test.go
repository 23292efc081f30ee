package chamber

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

// A wall that is thicker by resin alone holds no more, whatever was stated of it: the plies
// are what they were.
func TestMoreResinIsNeverStronger(t *testing.T) {
	base := Chamber{Diameter: 0.08, Length: 0.8, Material: GlassEpoxy, FibreFraction: 0.35,
		Plies:   []Ply{{Cloth: 0.2, Count: 4, Weave: Woven}, {Cloth: 0.085, Count: 2, Weave: Woven}},
		Forward: &Closure{Shape: Ellipsoid, Overlap: 0.03}, Aft: &Closure{Shape: Hemisphere, Overlap: 0.03}}
	for name, change := range map[string]func(*Chamber){
		"typical":  func(*Chamber) {},
		"own":      func(c *Chamber) { c.Around, c.Along = 240e6, 140e6 },
		"one own":  func(c *Chamber) { c.Along = 140e6 },
		"modulus":  func(c *Chamber) { c.Around, c.Along, c.Modulus = 240e6, 140e6, 15e9 },
		"no share": func(c *Chamber) { c.Around, c.Along, c.FibreFraction = 240e6, 140e6, 0 },
	} {
		t.Run(name, func(t *testing.T) {
			c := base
			change(&c)
			planned := c.WallThickness()
			last, ends := math.Inf(1), math.Inf(1)
			for _, times := range []float64{1, 1.05, 1.2, 1.6, 2.5} {
				c.Wall = planned * times
				r := c.At(Service{})
				// A thicker wall has its middle farther out, which takes a hair; nothing may add one.
				assert.LessOrEqual(t, r.Estimate, last*(1+1e-9), "%v times", times)
				assert.InDelta(t, c.Material.FibreFraction()/times, c.FibreFractionInForce(), 1e-9)
				last = r.Estimate
				assert.LessOrEqual(t, r.Laps[0].Ends, ends*(1+1e-9))
				ends = r.Laps[0].Ends
			}
		})
	}
}
