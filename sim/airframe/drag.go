package airframe

import (
	"math"

	"ullage/sim/fault"
)

// Flow is the air as the rocket meets it.
type Flow struct {
	Speed      float64 // m/s
	Density    float64 // kg/m³
	SoundSpeed float64 // m/s
	Viscosity  float64 // dynamic, Pa·s
}

// Share is one part's share of the drag coefficient.
type Share struct {
	Name string  // as Component has it: "nose", "section.NAME", "body", "fins.NAME"; and "base", "rail buttons"
	Drag float64 // coefficient on π/4·Diameter²
}

// resistance is a shape's drag with all but the flow worked out: areas are over the
// reference area.
type resistance struct {
	length, roughness float64
	form              float64   // of the body
	wetted            []Share   // of nose, sections and body, in place of drag
	faces             []float64 // pressure drag of what faces the flow, of the same
	wettedAll         float64
	facesAll          float64
	baseRatio         float64 // d_b/d
	baseArea          float64 // m²
	fins              []finDrag
	buttons           float64
}

// finDrag is one fin set's.
type finDrag struct {
	name            string
	chord           float64 // mean, m
	roughness       float64 // over the chord
	wetted          float64 // both sides of all fins
	form            float64
	fore, aft       float64 // blunt edges' frontal areas, less what their sweep saves
	wettedOverFront float64 // one fin's wetted area over its frontal area
}

// edges are the shares of a fin's thickness that meet or leave the flow with a blunt
// edge. A rounded trailing edge leaves a wake nearly as wide as a square one; a wedge
// is sharp in front and thickest behind.
var edges = map[FinSection]struct{ fore, aft float64 }{
	FlatSection:    {1, 1},
	RoundedSection: {0, 1},
	WedgeSection:   {0, 1},
	AirfoilSection: {0, 0},
}

func newResistance(s *Shape) resistance {
	ref := math.Pi / 4 * s.Diameter * s.Diameter
	r := resistance{length: s.Length, form: bodyForm(s.Length / s.Diameter), buttons: s.RailButtons / ref}
	if s.Length > 0 {
		r.roughness = s.Roughness / s.Length
	}
	nose := s.Forebody()
	r.wetted = append(r.wetted, Share{"nose", nose.Wetted() / ref})
	r.faces = append(r.faces, nose.pressureDrag()*nose.Diameter*nose.Diameter/(s.Diameter*s.Diameter))
	for f := range s.trunk {
		r.wetted = append(r.wetted, Share{f.name, f.wetted() / ref})
		face := 0.
		if f.aft > f.fore {
			face = coneDrag(f.taperAngle()) * (f.aft*f.aft - f.fore*f.fore) / (s.Diameter * s.Diameter)
		}
		r.faces = append(r.faces, face)
	}
	for i, w := range r.wetted {
		r.wettedAll += w.Drag
		r.facesAll += r.faces[i]
	}
	base := s.wakeDiameter()
	r.baseRatio = base / s.Diameter
	r.baseArea = math.Pi / 4 * base * base
	for i := range s.Fins {
		r.fins = append(r.fins, newFinDrag(&s.Fins[i], "fins."+fault.Entry(s.Fins[i].Name, i), s.Roughness, ref))
	}
	return r
}

func newFinDrag(f *Fins, name string, roughness, ref float64) finDrag {
	n := float64(f.Count)
	front := n * f.Thickness * f.Span / ref
	blunt := edges[f.Section]
	d := finDrag{
		name: name, chord: f.chord(), roughness: roughness / f.chord(),
		wetted: 2 * n * f.area() / ref, form: finForm(f.Thickness / f.chord()),
		fore: blunt.fore * front * swept(f.Span, f.Sweep),
		aft:  blunt.aft * front * swept(f.Span, f.Sweep+f.Tip-f.Root),
	}
	if front > 0 {
		d.wettedOverFront = d.wetted / front
	}
	return d
}

// swept is cos² of an edge's sweep: only the flow across the edge makes pressure there
// (R. T. Jones, NACA Report 884: simple sweep).
func swept(span, back float64) float64 {
	return span * span / (span*span + back*back)
}

// body, base and fin are the drag coefficients in a flow; squeeze is Prandtl and
// Glauert's 1/β for the terms of pressure.
func (r *resistance) body(skin, squeeze float64) float64 { return skin * (1 + r.form*squeeze) }

func (r *resistance) base(skin, squeeze, jetArea float64) float64 {
	if !(r.baseArea > jetArea) {
		return 0
	}
	bare := 1 - max(jetArea, 0)/r.baseArea
	return baseDrag(r.baseRatio, r.body(skin, 1)*r.wettedAll) * squeeze * bare
}

func (d *finDrag) drag(f Flow, squeeze float64) float64 {
	skin := friction(f.reynolds(d.chord), d.roughness)
	pressure := skin*d.wetted*d.form + d.fore*squareEdge +
		d.aft*edgeBaseDrag(skin*(1+d.form)*d.wettedOverFront)
	return skin*d.wetted + pressure*squeeze
}

func (f Flow) reynolds(length float64) float64 {
	return f.Density * f.Speed * length / f.Viscosity
}

// squeeze is 1/√(1 − M²), held from MachLimit on.
func (f Flow) squeeze() float64 {
	m := held(f.Speed / f.SoundSpeed)
	return 1 / math.Sqrt(1-m*m)
}

// Drag is the drag coefficient at no angle of attack on π/4·Diameter²: friction on all
// that is wetted, the form of body and fins, the pressure on a blunt nose and on what widens, blunt edges of the fins, the base, and the
// rail buttons. jetArea is the exit area, m², of a jet that runs, over which there is no base
// drag; 0 when none does. Prandtl and Glauert's factor stands on the terms of pressure
// up to MachLimit and is held past it: there a measured table is needed. Steps, the joint of fin and body, and lift are not in it. It allocates nothing.
func (a *Aero) Drag(f Flow, jetArea float64) float64 {
	r, squeeze := &a.resistance, f.squeeze()
	skin := friction(f.reynolds(r.length), r.roughness)
	total := r.wettedAll*r.body(skin, squeeze) + r.facesAll*squeeze + r.base(skin, squeeze, jetArea) + r.buttons*squeeze
	for i := range r.fins {
		total += r.fins[i].drag(f, squeeze)
	}
	return total
}

// shares is Drag part by part, from the nose aft: nose, sections and body, each fin set,
// base, and rail buttons when there are any.
func (a *Aero) shares(f Flow, jetArea float64) []Share {
	r, squeeze := &a.resistance, f.squeeze()
	skin := friction(f.reynolds(r.length), r.roughness)
	shares := make([]Share, 0, len(r.wetted)+len(r.fins)+2)
	for i, w := range r.wetted {
		shares = append(shares, Share{w.Name, w.Drag*r.body(skin, squeeze) + r.faces[i]*squeeze})
	}
	for i := range r.fins {
		shares = append(shares, Share{r.fins[i].name, r.fins[i].drag(f, squeeze)})
	}
	shares = append(shares, Share{"base", r.base(skin, squeeze, jetArea)})
	if r.buttons > 0 {
		shares = append(shares, Share{"rail buttons", r.buttons * squeeze})
	}
	return shares
}

// Drag is Aero.Drag with its shares, for one look at a shape; who asks often prepares
// the Aero once.
func (s *Shape) Drag(f Flow, jetArea float64) (total float64, shares []Share) {
	a := s.Aero()
	return a.Drag(f, jetArea), a.shares(f, jetArea)
}
