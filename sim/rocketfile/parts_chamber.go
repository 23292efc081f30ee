package rocketfile

import (
	"math"
	"strconv"
	"strings"

	"ullage/sim/chamber"
	"ullage/sim/fault"
	"ullage/sim/quantity"
	"ullage/sim/rocket"
)

// usualCloth is a glass cloth that every supplier has, kg/m².
const usualCloth = 200 * gram

// AddChamber describes the chamber of a rocket that flies on water: glass cloth and
// epoxy between bonded ellipsoids, in as many layers as its working pressure takes by
// typical figures, or as the body's diameter has room for. It is there to be changed to
// what was built; no proof is on record, for none was made.
func (f *File) AddChamber() (*File, error) {
	const path = "chamber"
	r := f.rd.rocket
	switch {
	case r.Water == nil:
		return nil, fault.List{{Key: path, Problem: "the rocket has no water drive", Remedy: "add [water] first"}}
	case r.Chamber != nil:
		return nil, fault.List{{Key: path, Problem: "the rocket has a chamber", Remedy: "change that one"}}
	}
	c := usualChamber(r)
	ply := c.Plies[0]
	closure := []pair{{"shape", quoted(string(c.Forward.Shape), `"`)}, {"wall", inMillimetres(c.Forward.Wall)},
		{"overlap", inMillimetres(c.Forward.Overlap)}}
	insert := func(path string, pairs []pair) func(*document) []splice {
		return func(doc *document) []splice { return []splice{doc.insertSection(sectionAt(path), pairs)} }
	}
	return f.steps(path,
		insert(path, []pair{{"material", quoted(string(c.Material), `"`)}}),
		insert("chamber.ply", plyPairs(ply)),
		insert("chamber.forward", closure),
		insert("chamber.aft", closure))
}

// usualChamber is a chamber that suits a rocket. Common practice, no source, but for
// what package chamber makes of its figures.
func usualChamber(r *rocket.Rocket) *chamber.Chamber {
	const least, most = 2, 200 // layers: one alone weeps
	bore := r.Water.Bore
	// A lap twice as long as its average stress asks for, since its edges see more.
	holds := chamber.ProofFactor * r.Water.Pressure * bore / 2 / (2 * chamber.EstimatedShare * chamber.TypicalBond)
	overlap := inFives(math.Max(2*holds, 0.35*bore))
	with := r.Clone()
	with.Chamber = &chamber.Chamber{
		Material: chamber.GlassEpoxy,
		Plies:    []chamber.Ply{{Name: "cloth", Cloth: usualCloth, Count: least}},
		Forward:  &chamber.Closure{Shape: chamber.Ellipsoid, Overlap: overlap},
		Aft:      &chamber.Closure{Shape: chamber.Ellipsoid, Overlap: overlap},
	}
	// Closures are moulded as thick as they need; the tube has only the body's room.
	ends := [...]*chamber.Closure{with.Chamber.Forward, with.Chamber.Aft}
	for t := 2; t <= 20; t++ {
		wall := float64(t) * millimetre / 2
		ends[0].Wall, ends[1].Wall = wall, wall
		if closuresHold(with) {
			break
		}
	}
	layers := &with.Chamber.Plies[0].Count
	for *layers < most {
		v := with.Vessel()
		if v.At(with.Service()).ProofEnough {
			break
		}
		if *layers++; bore+2*with.Vessel().WallThickness() > r.Body.Diameter {
			*layers--
			break
		}
	}
	return with.Chamber
}

// closuresHold tells whether the closures' walls let the chamber be proved.
func closuresHold(r *rocket.Rocket) bool {
	at := r.ChamberAt()
	for _, p := range at.Parts {
		if strings.HasSuffix(p.Name, " closure") && at.ProofFactor*p.Use > chamber.EstimatedShare {
			return false
		}
	}
	return true
}

// inFives is a length rounded up to five millimetres.
func inFives(v float64) float64 { return math.Ceil(v/(5*millimetre)-1e-9) * 5 * millimetre }

// AddPly adds one layer to the chamber's wall, of the cloth that lies outermost, and
// returns the name of the ply.
func (f *File) AddPly() (*File, string, error) {
	c := f.rd.rocket.Chamber
	if c == nil {
		return nil, "", fault.List{{Key: "chamber.ply", Problem: "the rocket has no chamber", Remedy: "add one first"}}
	}
	ply := chamber.Ply{Cloth: usualCloth}
	var taken []string
	for _, p := range c.Plies {
		taken, ply = append(taken, p.Name), p
	}
	ply.Name, ply.Count = freeName(taken, "ply", "cloth", "hoop"), 1
	return f.added("chamber.ply", ply.Name, plyPairs(ply))
}

// RemovePly takes a ply of the chamber's wall out of the text.
func (f *File) RemovePly(name string) (*File, error) { return f.removeItem("chamber.ply", name, "ply") }

// plyPairs are the keys of a ply; what a ply is anyway is not written.
func plyPairs(p chamber.Ply) []pair {
	s := sectionAt("chamber.ply")
	exact := func(key string, v float64) string {
		return quoted(quantity.Exact(v, s.field(key).codec.scale(nil, place{}).Unit), `"`)
	}
	pairs := []pair{{"name", quoted(p.Name, `"`)}, {"cloth", exact("cloth", p.Cloth)}, {"count", strconv.Itoa(p.Count)}}
	if p.Weave != "" && p.Weave != chamber.Woven {
		pairs = append(pairs, pair{"weave", quoted(string(p.Weave), `"`)})
	}
	if p.Direction != 0 {
		pairs = append(pairs, pair{"direction", exact("direction", p.Direction)})
	}
	return pairs
}
