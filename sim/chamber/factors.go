package chamber

import "math"

// leastCycleFactor is where the loss to cycles is held: the line is for the decades that
// were tested.
const leastCycleFactor = 0.3

// factors are the shares of the cold, new strength that count.
type factors struct{ wall, bond float64 }

func (c *Chamber) factors() factors {
	return factors{
		wall: c.HeatFactorInForce() * c.CycleFactorInForce(),
		bond: c.bondHeat() * c.bondCycles(),
	}
}

// HeatFactorInForce is the share of the wall's strength that counts at its greatest
// temperature, 0 to 1: HeatFactor if given, else 1 up to where the material begins to
// soften and a straight line from there to 0 where its strength is counted as gone
// (room-cured epoxy: 45 to 65 °C, common practice, no source). Own softens like epoxy
// until it is told otherwise.
func (c *Chamber) HeatFactorInForce() float64 {
	if c.HeatFactor != 0 {
		return c.HeatFactor
	}
	s := c.Material.stuff()
	return softened(c.Temperature, s.softens, s.gone)
}

// bondHeat is the same for the adhesive, which is epoxy whatever the wall is.
func (c *Chamber) bondHeat() float64 {
	if c.HeatFactor != 0 {
		return c.HeatFactor
	}
	return softened(c.Temperature, EpoxySoftens, EpoxyGone)
}

// HeatLeft is the share of a cold chamber's strength left at its temperature, the lesser
// of the wall's and the bonds': what a cold proof is worth to a warm chamber.
func (c *Chamber) HeatLeft() float64 { return math.Min(c.HeatFactorInForce(), c.bondHeat()) }

// HeatLeftAt is the same at another temperature, K. A factor that was given holds up to
// the temperature it was given for.
func (c *Chamber) HeatLeftAt(temperature float64) float64 {
	hot := *c
	if hot.Temperature = temperature; temperature > c.Temperature {
		hot.HeatFactor = 0
	}
	return math.Min(hot.HeatLeft(), c.HeatLeft())
}

// hotShare is how much less a chamber as hot as the air of its Heating holds than at its
// own temperature, on a day with air that warm, K.
func (c *Chamber) hotShare(air float64) float64 {
	if left := c.HeatLeft(); left > 0 {
		return c.HeatLeftAt(c.Heating.Reached(air)) / left
	}
	return 0
}

func softened(temperature, softens, gone float64) float64 {
	if temperature == 0 {
		return 1
	}
	return math.Max(0, math.Min(1, (gone-temperature)/(gone-softens)))
}

// CycleFactorInForce is the share of the wall's strength left after Cycles, 0.3 to 1:
// CycleFactor if given, else 1 less a material's loss a decade of cycles (glass a tenth:
// Mandell, from memory; carbon half of that; aluminium from some thousands on). Own tires
// like glass until it is told otherwise.
func (c *Chamber) CycleFactorInForce() float64 {
	if c.CycleFactor != 0 {
		return c.CycleFactor
	}
	s := c.Material.stuff()
	return tired(c.Cycles, s.tires, s.fresh)
}

// bondCycles is the same for the adhesive, which is taken to tire like glass laminates.
func (c *Chamber) bondCycles() float64 {
	if c.CycleFactor != 0 {
		return c.CycleFactor
	}
	s := GlassEpoxy.stuff()
	return tired(c.Cycles, s.tires, s.fresh)
}

func tired(cycles int, tires, fresh float64) float64 {
	return math.Max(leastCycleFactor, 1-tires*math.Log10(math.Max(float64(cycles)/fresh, 1)))
}
