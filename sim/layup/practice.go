package layup

import (
	"cmp"

	"ullage/sim/chamber"
	"ullage/sim/fault"
	"ullage/sim/quantity"
)

// Practice is how a workshop lays up, and what it weighed. What is 0 is not given.
type Practice struct {
	Hardener float64 // over resin, by weight: of the data sheet; without it nothing is told apart
	PotLife  float64 // of mixed resin, s
	Pot      float64 // the most that is mixed at once and used up within its pot life, kg; 0 takes UsualPot

	Wrap         Wrap    // "" takes OneRoll
	Peel         Peel    // "" takes PeelOutside
	Trim         float64 // cut off at every open edge once cured, m; 0 takes UsualTrim
	Overlap      float64 // of a ply on itself, and of gores on each other, m; 0 takes UsualOverlap
	ClothWidth   float64 // of the rolls, m; 0 takes UsualClothWidth
	ClosureCloth float64 // areal mass of the closures' cloth, kg/m²; 0 takes the tube's
	MountLayers  int     // of that cloth over the bond of the recovery mount

	ForwardLayers, AftLayers int // of that cloth in a closure; 0: as many as its wall takes

	Tube, Forward, Aft float64 // weighed, trimmed and bare, kg; 0: not yet
}

// Wrap is how a ply of several layers goes around a tube.
type Wrap string

// The ways: a ply in one piece, or every layer cut by itself.
const (
	OneRoll      Wrap = "one roll"
	LayerByLayer Wrap = "layer by layer"
)

// Peel is where peel ply is laid.
type Peel string

// On the outside of all parts, or nowhere.
const (
	PeelOutside Peel = "outside"
	NoPeel      Peel = "none"
)

// What holds where a workshop says nothing: common practice, no source.
const (
	UsualPot        = 0.1   // kg: more in one cup heats itself up
	UsualTrim       = 0.01  // m
	UsualOverlap    = 0.01  // m
	UsualClothWidth = 1.    // m
	DryFrom         = 0.55  // share of fibre beyond which a hand lay-up is taken as starved of resin
	ManyVoids       = 0.05  // share of the volume
	TapeError       = 50e-6 // of a wall measured by hand, m
)

// InForce is a practice with the usual values for what is not given, those of which nothing
// can be usual left out: hardener, pot life, what was weighed.
func (p *Practice) InForce() Practice {
	var f Practice
	if p != nil {
		f = *p
	}
	f.Pot = cmp.Or(f.Pot, UsualPot)
	f.Wrap = cmp.Or(f.Wrap, OneRoll)
	f.Peel = cmp.Or(f.Peel, PeelOutside)
	f.Trim = cmp.Or(f.Trim, UsualTrim)
	f.Overlap = cmp.Or(f.Overlap, UsualOverlap)
	f.ClothWidth = cmp.Or(f.ClothWidth, UsualClothWidth)
	return f
}

// ClosureClothInForce is the areal mass of the closures' cloth, kg/m²: as given, or that of the tube's first
// woven ply, or of its first; 0 of a chamber without plies.
func (p *Practice) ClosureClothInForce(c *chamber.Chamber) float64 {
	if p.ClosureCloth != 0 {
		return p.ClosureCloth
	}
	if ply := drapes(c); ply != nil {
		return ply.Cloth
	}
	return 0
}

// drapes is the tube's ply that goes over a dome best: its first woven one, else its first.
func drapes(c *chamber.Chamber) *chamber.Ply {
	for i := range c.Plies {
		if c.Plies[i].Weave == chamber.Woven {
			return &c.Plies[i]
		}
	}
	if len(c.Plies) > 0 {
		return &c.Plies[0]
	}
	return nil
}

// narrowest is how many overlaps wide cloth has to be for pieces of it to cover anything: our own bound.
const narrowest = 4

// Check tells what is wrong with a practice, by the dotted names of the inputs, or nil.
func (p *Practice) Check() fault.List {
	var faults fault.List
	if !quantity.Check(&faults, p, Fields()) {
		return faults
	}
	if f := p.InForce(); f.ClothWidth < narrowest*f.Overlap {
		faults.Add("layup.overlap", "is more than a quarter of the cloth's width", "give a smaller overlap, or the width of the roll as layup.cloth_width")
	}
	if f := p.InForce(); f.Wrap != OneRoll && f.Wrap != LayerByLayer {
		faults.Add("layup.wrap", "is not a way known here", `write "one roll" or "layer by layer"`)
	} else if f.Peel != PeelOutside && f.Peel != NoPeel {
		faults.Add("layup.peel_ply", "is not a place known here", `write "outside" or "none"`)
	}
	return faults
}

// Fields lists the numbers of a practice under their names in a rocket file. Their ranges are
// common sense, no source.
func Fields() []quantity.Field[Practice] {
	layers := quantity.Between(quantity.Number, "", 0, 50)
	grams := quantity.Between(quantity.Mass, "g", 0.1, 50e3)
	return []quantity.Field[Practice]{
		{Key: "layup.hardener", Range: quantity.Between(quantity.Fraction, "%", 1, 200), At: func(p *Practice) *float64 { return &p.Hardener }, Optional: true},
		{Key: "layup.pot_life", Range: quantity.Between(quantity.Time, "min", 1, 1440), At: func(p *Practice) *float64 { return &p.PotLife }, Optional: true},
		{Key: "layup.pot", Range: quantity.Between(quantity.Mass, "g", 1, 5e3), At: func(p *Practice) *float64 { return &p.Pot }, Optional: true},
		{Key: "layup.trim", Range: quantity.Millimetres(0.5, 500), At: func(p *Practice) *float64 { return &p.Trim }, Optional: true},
		{Key: "layup.overlap", Range: quantity.Millimetres(1, 500), At: func(p *Practice) *float64 { return &p.Overlap }, Optional: true},
		{Key: "layup.cloth_width", Range: quantity.Millimetres(20, 5e3), At: func(p *Practice) *float64 { return &p.ClothWidth }, Optional: true},
		{Key: "layup.closure_cloth", Range: quantity.Between(quantity.ArealDensity, "g/m2", 5, 5000), At: func(p *Practice) *float64 { return &p.ClosureCloth }, Optional: true},
		{Key: "layup.forward_layers", Range: layers, Count: func(p *Practice) *int { return &p.ForwardLayers }},
		{Key: "layup.aft_layers", Range: layers, Count: func(p *Practice) *int { return &p.AftLayers }},
		{Key: "layup.mount_layers", Range: layers, Count: func(p *Practice) *int { return &p.MountLayers }},
		{Key: "layup.tube", Range: grams, At: func(p *Practice) *float64 { return &p.Tube }, Optional: true},
		{Key: "layup.forward", Range: grams, At: func(p *Practice) *float64 { return &p.Forward }, Optional: true},
		{Key: "layup.aft", Range: grams, At: func(p *Practice) *float64 { return &p.Aft }, Optional: true},
	}
}
