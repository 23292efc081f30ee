package airframe

import (
	"slices"

	"ullage/sim/quantity"
)

// place is where something lies along the rocket, from the tip of the nose.
var place = quantity.Millimetres(0, 20e3)

// The numbers of a shape and a mass list under their names in a rocket file, with the
// ranges of what the equations are for: common sense, no source.
var (
	shapeFields = []quantity.Field[Shape]{
		{Key: "body.length", Range: quantity.Millimetres(10, 20e3), At: func(s *Shape) *float64 { return &s.Length }},
		{Key: "body.diameter", Range: quantity.Millimetres(1, 2000), At: func(s *Shape) *float64 { return &s.Diameter }},
	}
	surfaceFields = []quantity.Field[Shape]{
		{Key: "body.roughness", Range: quantity.Between(quantity.Length, "um", 0, 1000), At: func(s *Shape) *float64 { return &s.Roughness }},
		{Key: "body.rail_buttons", Range: quantity.Between(quantity.Area, "mm2", 0, 10e3), At: func(s *Shape) *float64 { return &s.RailButtons }},
	}
	noseFields = []quantity.Field[Nose]{
		{Key: "nose.length", Range: quantity.Millimetres(1, 20e3), At: func(n *Nose) *float64 { return &n.Length }},
		{Key: "nose.diameter", Range: quantity.Millimetres(1, 2000), At: func(n *Nose) *float64 { return &n.Diameter }, Optional: true},
		{Key: "nose.wall", Range: quantity.Millimetres(0.05, 100), At: func(n *Nose) *float64 { return &n.Wall }, Optional: true},
	}
	contourFields = []quantity.Field[Nose]{
		{Key: "nose.exponent", Range: quantity.Between(quantity.Number, "", 0.05, 1), At: func(n *Nose) *float64 { return &n.Exponent },
			Only: func(n *Nose) bool { return n.Shape == PowerSeries }},
	}
	sectionFields = []quantity.Field[Section]{
		{Key: "length", Range: quantity.Millimetres(0.1, 20e3), At: func(s *Section) *float64 { return &s.Length }},
		{Key: "forward", Range: quantity.Millimetres(0.5, 2000), At: func(s *Section) *float64 { return &s.Forward }, Optional: true},
		{Key: "aft", Range: quantity.Millimetres(0.5, 2000), At: func(s *Section) *float64 { return &s.Aft }, Optional: true},
	}
	finsFields = []quantity.Field[Fins]{
		{Key: "count", Range: quantity.Between(quantity.Number, "", 3, 6), Count: func(f *Fins) *int { return &f.Count }}, // the equations hold for no others
		{Key: "root", Range: quantity.Millimetres(1, 5000), At: func(f *Fins) *float64 { return &f.Root }},
		{Key: "tip", Range: quantity.Millimetres(0, 5000), At: func(f *Fins) *float64 { return &f.Tip }},
		{Key: "span", Range: quantity.Millimetres(1, 5000), At: func(f *Fins) *float64 { return &f.Span }},
		{Key: "sweep", Range: quantity.Millimetres(-5000, 5000), At: func(f *Fins) *float64 { return &f.Sweep }},
		{Key: "thickness", Range: quantity.Millimetres(0.05, 100), At: func(f *Fins) *float64 { return &f.Thickness }},
		{Key: "position", Range: place, At: func(f *Fins) *float64 { return &f.Position }},
		{Key: "shear_modulus", Range: quantity.Between(quantity.Pressure, "GPa", 0.01, 200), At: func(f *Fins) *float64 { return &f.ShearModulus }, Optional: true},
		{Key: "cant", Range: quantity.Between(quantity.Angle, "deg", -10, 10), At: func(f *Fins) *float64 { return &f.Cant }},
	}
	partFields = []quantity.Field[Part]{
		{Key: "mass", Range: quantity.Between(quantity.Mass, "g", 0, 200e3), At: func(p *Part) *float64 { return &p.Mass }},
		{Key: "position", Range: place, At: func(p *Part) *float64 { return &p.Position }},
		{Key: "length", Range: place, At: func(p *Part) *float64 { return &p.Length }},
		{Key: "diameter", Range: quantity.Millimetres(0.1, 5000), At: func(p *Part) *float64 { return &p.Diameter }, Optional: true},
	}
)

// ShapeFields lists the numbers of a shape, those of its nose, sections and fins left out.
func ShapeFields() []quantity.Field[Shape] { return slices.Concat(shapeFields, surfaceFields) }

// NoseFields lists the numbers of a nose.
func NoseFields() []quantity.Field[Nose] { return slices.Concat(noseFields, contourFields) }

// SectionFields lists the numbers of a section, under the last part of their names.
func SectionFields() []quantity.Field[Section] { return slices.Clone(sectionFields) }

// FinsFields lists the numbers of a fin set, under the last part of their names.
func FinsFields() []quantity.Field[Fins] { return slices.Clone(finsFields) }

// PartFields lists the numbers of a part, under the last part of their names.
func PartFields() []quantity.Field[Part] { return slices.Clone(partFields) }
