package layup

import (
	"errors"
	"math"

	"ullage/sim/chamber"
	"ullage/sim/gore"
)

// Plan is how a chamber is laid up, from the tube to the bonds.
type Plan struct {
	Practice Practice // in force
	Fibre    float64  // share by volume that is meant
	Usual    bool     // that is the material's usual one, which nobody stated
	Parts    []Part   // tube, forward closure, aft closure, recovery mount, those there are
	Rolls    []Roll   // what to take off the rolls
	Bonds    []Bond
	Mixed    Mix // resin of all pots and bonds
	Peel     float64
	Strength Strength
}

// Part is one thing that is laid up.
type Part struct {
	Name  Name
	Plies []Ply
	Area  float64 // of its middle surface, finished, m²
	Wall  float64 // expected, m
	Dry   float64 // cloth in the finished part, overlaps in it, kg
	Areal float64 // cloth in its wall, overlaps left out, kg/m²
	Mass  float64 // expected, finished and trimmed, kg
	Mixed Mix     // to mix for it, allowance in it
	Pots  []Pot
	Peel  float64 // peel ply, m²

	Plug     gore.Profile // what a dome is laid over, from its rim on; empty of other parts
	Radius   float64      // of mandrel or plug, m; 0 of a mount
	Measured float64      // wall, m; 0: not yet
	Counted  bool         // its layers were counted from its wall: nobody stated them
	Weighed  *Weighed     // nil: not yet
}

// Name names a part.
type Name string

// The parts.
const (
	Tube    Name = "tube"
	Forward Name = "forward closure"
	Aft     Name = "aft closure"
	Mount   Name = "recovery mount"
)

// Roll is what one cloth takes off its roll.
type Roll struct {
	Ply    string
	Cloth  float64 // kg/m²
	Sleeve bool    // a braided sleeve, which is cut to length alone
	Length float64 // m
	Area   float64 // as cut, m²
	Mass   float64 // as cut, kg
}

// Bond is a joint that is glued once the parts are cured.
type Bond struct {
	Name     string
	Area     float64 // m²
	GlueLine float64 // m
	Mixed    Mix     // of adhesive, allowance in it: taken as dense as the resin
}

// ErrNoPlies is a chamber that is not laid up, or of whose plies nothing is said.
var ErrNoPlies = errors.New("there is nothing to lay up: the chamber has no plies")

// Of plans a chamber that passed its Check, with diameter and length filled in, and the mount of the
// recovery gear, which may be nil.
func Of(c *chamber.Chamber, m *chamber.Mount, p *Practice) (Plan, error) {
	fibre, _ := c.Material.LaidUp()
	if fibre == 0 || len(c.Plies) == 0 {
		return Plan{}, ErrNoPlies
	}
	b := builder{c: c, p: p.InForce(), v: c.FibreFractionPlanned()}
	b.plan = Plan{Practice: b.p, Fibre: b.v, Usual: c.FibreFraction == 0}
	b.tube()
	b.closure(Forward, c.Forward, b.p.ForwardLayers, b.p.Forward)
	b.closure(Aft, c.Aft, b.p.AftLayers, b.p.Aft)
	b.mount(m)
	b.bonds(m)
	for i := range b.plan.Parts {
		b.finish(&b.plan.Parts[i])
	}
	b.rolls()
	b.plan.Strength = b.strength()
	return b.plan, nil
}

// builder is a plan in the making.
type builder struct {
	c    *chamber.Chamber
	p    Practice
	v    float64 // share of fibre that is meant
	plan Plan
}

// thickness is that of a layer of cloth at the share of fibre that is meant, m: g/(ρ_f V_f).
func (b *builder) thickness(cloth float64) float64 {
	fibre, _ := b.c.Material.LaidUp()
	return cloth / (fibre * b.v)
}

// resinFor is how much mixed resin cloth of a mass holds at a share of fibre: (1−V)/V · ρ_r/ρ_f of it.
func (b *builder) resinFor(cloth, v float64) float64 {
	fibre, resin := b.c.Material.LaidUp()
	return cloth * (1 - v) / v * resin / fibre
}

// finish sums a part up once its plies are known.
func (b *builder) finish(x *Part) {
	for _, p := range x.Plies {
		x.Areal += p.Cloth * float64(p.Layers())
		x.Dry += p.Kept * p.Cloth
	}
	if x.Wall == 0 {
		x.Wall = b.thickness(x.Areal)
	}
	x.Mass = x.Dry + b.resinFor(x.Dry, b.v)
	b.pots(x)
	if b.p.Peel == NoPeel {
		x.Peel = 0
	}
	b.plan.Peel += x.Peel
	b.weigh(x)
	b.plan.Mixed = b.plan.Mixed.plus(x.Mixed)
}

// rolls gathers the pieces of every cloth, in the order of the plies.
func (b *builder) rolls() {
	for i := range b.plan.Parts {
		for _, p := range b.plan.Parts[i].Plies {
			r := b.roll(&p)
			r.Area += p.Area
			r.Mass += p.Area * p.Cloth
			r.Length += p.offRoll(b.p.ClothWidth)
		}
	}
}

func (b *builder) roll(p *Ply) *Roll {
	for i := range b.plan.Rolls {
		if r := &b.plan.Rolls[i]; r.Ply == p.Name && r.Cloth == p.Cloth {
			return r
		}
	}
	b.plan.Rolls = append(b.plan.Rolls, Roll{Ply: p.Name, Cloth: p.Cloth, Sleeve: p.Shape == Sleeve})
	return &b.plan.Rolls[len(b.plan.Rolls)-1]
}

// bonds are the joints that the description has.
func (b *builder) bonds(m *chamber.Mount) {
	line := chamber.TypicalGlueLine
	if a := b.c.Adhesive; a != nil && a.GlueLine != 0 {
		line = a.GlueLine
	}
	add := func(name string, area float64) {
		_, resin := b.c.Material.LaidUp()
		mix := b.mix(area * line * resin * (1 + b.c.Waste))
		b.plan.Bonds = append(b.plan.Bonds, Bond{Name: name, Area: area, GlueLine: line, Mixed: mix})
		b.plan.Mixed = b.plan.Mixed.plus(mix)
	}
	for _, end := range [...]struct {
		name string
		of   *chamber.Closure
	}{{"forward closure into the tube", b.c.Forward}, {"aft closure into the tube", b.c.Aft}} {
		if end.of != nil {
			add(end.name, math.Pi*b.c.Diameter*end.of.Overlap)
		}
	}
	if s := b.c.Boss; s != nil {
		add("boss into the aft closure", math.Pi*s.Diameter*s.Length)
	}
	if m != nil && m.BondArea > 0 {
		add("recovery mount", m.BondArea)
	}
}
