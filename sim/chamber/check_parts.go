package chamber

import (
	"ullage/sim/fault"
	"ullage/sim/quantity"
)

// How the numbers of a thread must go together. Common practice, no source.
const (
	coarsest    = 0.25 // pitch over diameter; ISO's coarsest, M1, has that
	mostEngaged = 3.0  // length engaged over diameter: what is farther in carries next to nothing
)

const closures = "write hemisphere, ellipsoid, cone or flat"

// check looks at a closure on a tube of a radius and a length.
func (e *Closure) check(k *checker, name string, radius, length float64) {
	if e == nil {
		return
	}
	switch e.Shape {
	case Hemisphere, Ellipsoid, Flat, Cone:
	case "":
		k.faults.Need(name+"shape", closures)
	default:
		k.add(name+"shape", "is not a shape known here", closures)
	}
	if !quantity.Check(&k.faults, e, closureFields, name) {
		return
	}
	if e.Wall > radius {
		k.add(name+"wall", "is thicker than the inside radius, "+mm(radius), "check its unit")
	}
	if e.Overlap > length {
		k.odds(name+"overlap", "chamber.length", "is longer than the tube, "+mm(length), "check its unit")
	}
}

func (t *Thread) check(k *checker) {
	if t == nil || !quantity.Check(&k.faults, t, threadFields) {
		return
	}
	if t.Pitch > coarsest*t.Diameter {
		k.odds("chamber.thread.pitch", "chamber.thread.diameter", "is more than a quarter of the diameter, "+mm(t.Diameter), "give the distance from crest to crest: an M20×2 thread has 2 mm")
		return
	}
	switch {
	case t.Engaged < t.Pitch:
		k.odds("chamber.thread.engaged", "chamber.thread.pitch", "is less than one turn, "+mm(t.Pitch), "give the length of thread engaged, not its turns")
	case t.Engaged > mostEngaged*t.Diameter:
		k.odds("chamber.thread.engaged", "chamber.thread.diameter", "is more than three diameters, of which the far turns carry next to nothing", "give at most "+mm(mostEngaged*t.Diameter))
	}
	if root := t.Diameter - rootShort*t.Pitch; t.Hole >= root {
		k.odds("chamber.thread.hole", "chamber.thread.diameter", "is as wide as the thread's root, "+mm(root), "give a smaller hole, or the major diameter of the thread")
	}
}

func (h *Heating) check(k *checker) {
	if h != nil {
		quantity.Check(&k.faults, h, heatingFields)
	}
}

// Check tells everything that is wrong with a mount, or nil.
func (m *Mount) Check() fault.List {
	var faults fault.List
	quantity.Check(&faults, m, mountFields)
	return faults
}
