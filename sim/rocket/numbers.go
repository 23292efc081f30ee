package rocket

import (
	"slices"
	"sync"

	"ullage/atmosphere"
	"ullage/sim/airframe"
	"ullage/sim/bench"
	"ullage/sim/chamber"
	"ullage/sim/layup"
	"ullage/sim/quantity"
)

// Number is a number that describes a rocket: what a file may give, a screen change and
// a study vary. Its range is what every check goes by.
type Number struct {
	Name     string // dotted; * stands for the name of an item, as in "canopy.*.diameter"
	Range    quantity.Range
	Optional bool    // Absent says that the number is not given
	Absent   float64 // 0 or NaN

	// At is where a rocket holds the number; of an item of a list, of that item. It is
	// nil where the rocket has no such part. Count is the same for a count of things:
	// one of the two functions is nil.
	At    func(r *Rocket, item int) *float64
	Count func(r *Rocket, item int) *int
}

// numbers is the table of all numbers, by name.
var numbers = sync.OnceValue(func() map[string]*Number {
	all := make(map[string]*Number, 300) // about as many as there are
	for _, list := range [][]Number{
		numbersOf("", bodyFields, func(r *Rocket, _ int) *Body { return &r.Body }),
		numbersOf("", dragFields, func(r *Rocket, i int) *MachDrag { return item(r.Body.Drag, i) }),
		numbersOf("", slices.Concat(filledFields, waterFields), func(r *Rocket, _ int) *Water { return r.Water }),
		numbersOf("", tubeFields, func(r *Rocket, _ int) *LaunchTube {
			if r.Water == nil {
				return nil
			}
			return r.Water.Tube
		}),
		numbersOf("", motorFields, func(r *Rocket, _ int) *Motor { return r.Motor }),
		numbersOf("", delayFields, func(r *Rocket, i int) *float64 {
			if r.Motor == nil {
				return nil
			}
			return item(r.Motor.Delays, i)
		}),
		numbersOf("", motorMountFields, func(r *Rocket, _ int) *MotorMount { return r.MotorMount }),
		numbersOf("hole.*.", holeFields, func(r *Rocket, i int) *Hole { return item(r.Holes, i) }),
		numbersOf("canopy.*.", canopyFields, func(r *Rocket, i int) *Canopy { return item(r.Canopies, i) }),
		numbersOf("", atmosphere.SiteFields(), func(r *Rocket, _ int) *atmosphere.Site { return &r.Site }),
		numbersOf("", railFields, func(r *Rocket, _ int) *Rail { return &r.Rail }),
		numbersOf("", atmosphere.WindFields(), func(r *Rocket, _ int) *atmosphere.Wind { return &r.Wind }),
		numbersOf("wind.layer.*.", atmosphere.LayerFields(), func(r *Rocket, i int) *atmosphere.Layer { return item(r.Wind.Layers, i) }),
		numbersOf("", gustFields, func(r *Rocket, _ int) *Gust { return &r.Gust }),
		numbersOf("", alignmentFields, func(r *Rocket, _ int) *Alignment { return &r.Alignment }),
		numbersOf("", bench.Fields(), func(r *Rocket, _ int) *bench.Bench { return &r.Bench }),
		numbersOf("", layup.Fields(), func(r *Rocket, _ int) *layup.Practice { return &r.Layup }),
		numbersOf("", limitFields, func(r *Rocket, _ int) *Limits { return &r.Limits }),
		numbersOf("", fieldFields, func(r *Rocket, _ int) *Field { return &r.Field }),

		numbersOf("", airframe.ShapeFields(), func(r *Rocket, _ int) *airframe.Shape { return r.Shape }),
		numbersOf("", airframe.NoseFields(), func(r *Rocket, _ int) *airframe.Nose {
			if r.Shape == nil {
				return nil
			}
			return &r.Shape.Nose
		}),
		numbersOf("section.*.", airframe.SectionFields(), func(r *Rocket, i int) *airframe.Section {
			if r.Shape == nil {
				return nil
			}
			return item(r.Shape.Sections, i)
		}),
		numbersOf("fins.*.", airframe.FinsFields(), func(r *Rocket, i int) *airframe.Fins {
			if r.Shape == nil {
				return nil
			}
			return item(r.Shape.Fins, i)
		}),
		numbersOf("part.*.", airframe.PartFields(), func(r *Rocket, i int) *airframe.Part { return item(r.Parts, i) }),

		numbersOf("", chamber.Fields(), func(r *Rocket, _ int) *chamber.Chamber { return r.Chamber }),
		numbersOf("chamber.ply.*.", chamber.PlyFields(), inChamber(func(c *chamber.Chamber, i int) *chamber.Ply { return item(c.Plies, i) })),
		numbersOf("chamber.forward.", chamber.ClosureFields(), inChamber(func(c *chamber.Chamber, _ int) *chamber.Closure { return c.Forward })),
		numbersOf("chamber.aft.", chamber.ClosureFields(), inChamber(func(c *chamber.Chamber, _ int) *chamber.Closure { return c.Aft })),
		numbersOf("", chamber.ThreadFields(), inChamber(func(c *chamber.Chamber, _ int) *chamber.Thread { return c.Thread })),
		numbersOf("", chamber.AdhesiveFields(), inChamber(func(c *chamber.Chamber, _ int) *chamber.Adhesive { return c.Adhesive })),
		numbersOf("", chamber.BossFields(), inChamber(func(c *chamber.Chamber, _ int) *chamber.Boss { return c.Boss })),
		numbersOf("", chamber.HeatingFields(), inChamber(func(c *chamber.Chamber, _ int) *chamber.Heating { return c.Heating })),
		numbersOf("", chamber.MountFields(), func(r *Rocket, _ int) *chamber.Mount { return r.Recovery }),
	} {
		for i := range list {
			if n := &list[i]; all[n.Name] == nil { // a shape has the body's diameter too
				all[n.Name] = n
			}
		}
	}
	return all
})

// NumberNamed finds a number by its dotted name, with * for the name of an item; nil when
// there is none.
func NumberNamed(name string) *Number { return numbers()[name] }

// numbersOf makes numbers of a rocket of the fields of one of its parts.
func numbersOf[T any](prefix string, fields []quantity.Field[T], part func(r *Rocket, item int) *T) []Number {
	list := make([]Number, len(fields))
	for i := range fields {
		f := &fields[i]
		n := &list[i]
		*n = Number{Name: prefix + f.Key, Range: f.Range, Optional: f.Optional, Absent: f.Absent}
		if f.Count != nil {
			n.Count = within(part, f.Count)
		} else {
			n.At = within(part, f.At)
		}
	}
	return list
}

// within is where something of a part of a rocket is; nil where there is no such part.
func within[T, V any](part func(r *Rocket, item int) *T, of func(*T) *V) func(r *Rocket, item int) *V {
	return func(r *Rocket, item int) *V {
		if t := part(r, item); t != nil {
			return of(t)
		}
		return nil
	}
}

// inChamber is a part of the chamber; nil where there is no chamber.
func inChamber[T any](part func(c *chamber.Chamber, item int) *T) func(r *Rocket, item int) *T {
	return func(r *Rocket, item int) *T {
		if r.Chamber == nil {
			return nil
		}
		return part(r.Chamber, item)
	}
}

// item is an item of a list; nil beyond its end.
func item[T any](list []T, i int) *T {
	if i < 0 || i >= len(list) {
		return nil
	}
	return &list[i]
}
