package bench

import (
	"cmp"
	"math"
)

// Seal is an O-ring, or a ring of cord, in a groove around a plug within a bore: a static seal
// that is squeezed across.
type Seal struct {
	Cord     float64 // thickness of the ring, m; 0: no seal is described
	Inside   float64 // its inside diameter before it is stretched, m
	Groove   float64 // diameter of the groove's floor, m
	Width    float64 // of the groove along the plug, m
	Bore     float64 // that it seals against, m
	Plug     float64 // diameter of the plug beside the groove, on the side away from the pressure, m
	Hardness float64 // Shore A; 0 takes UsualHardness
}

// UsualHardness is that of the common nitrile ring, Shore A: common practice, no source.
const UsualHardness = 70.

// What a static groove is cut for: of a squeeze, a fill and a stretch. From Parker's O-Ring Handbook (ORD 5700),
// static seal glands and design considerations, from memory.
const (
	LeastSqueeze = 0.15
	MostSqueeze  = 0.32
	MostFill     = 0.85
	MostStretch  = 0.05
)

// What a new groove is proposed at: well within those (common practice, no source).
const (
	goodSqueeze = 0.20
	goodFill    = 0.72
)

// Missing are the keys, the last part of their names, without which squeeze, fill or gap are not known.
func (s *Seal) Missing() []string {
	var keys []string
	for _, x := range []struct {
		key string
		v   float64
	}{{"groove", s.Groove}, {"width", s.Width}, {"bore", s.Bore}, {"plug", s.Plug}} {
		if x.v == 0 {
			keys = append(keys, x.key)
		}
	}
	return keys
}

// Depth is the room for the ring between the floor of the groove and the bore, m.
func (s *Seal) Depth() float64 { return (s.Bore - s.Groove) / 2 }

// Stretch is by what share the groove's floor is wider than the ring; NaN where its inside is not given.
func (s *Seal) Stretch() float64 {
	if s.Inside == 0 {
		return math.NaN()
	}
	return s.Groove/s.Inside - 1
}

// thickness is the cord's once stretched: its volume stays.
func (s *Seal) thickness() float64 {
	if stretch := s.Stretch(); stretch > 0 {
		return s.Cord / math.Sqrt(1+stretch)
	}
	return s.Cord
}

// Squeeze is by what share of its thickness the ring is flattened.
func (s *Seal) Squeeze() float64 { return 1 - s.Depth()/s.thickness() }

// Fill is the ring's share of the groove's section.
func (s *Seal) Fill() float64 {
	t := s.thickness()
	return math.Pi / 4 * t * t / (s.Depth() * s.Width)
}

// Gap is the clearance through which pressure can push the ring, m: all that plug and bore have
// between them, as where the plug lies to one side.
func (s *Seal) Gap() float64 { return s.Bore - s.Plug }

// extrusion are the gaps, m, that a ring bridges, by its thickness and the pressure, at two hardnesses. Tables of
// seal makers' catalogues for radial gaps without back-up rings, from memory.
var extrusion = []struct {
	hardness float64
	up       []float64   // pressures, Pa
	gaps     [][]float64 // for each of them by thickness, mm: up to 2, 3, 5, 7 and beyond
}{
	{70, []float64{3.5e6, 7e6, 10.5e6}, [][]float64{{0.08, 0.09, 0.10, 0.13, 0.15}, {0.05, 0.07, 0.08, 0.09, 0.10}, {0.03, 0.04, 0.05, 0.07, 0.08}}},
	{90, []float64{3.5e6, 7e6, 10.5e6}, [][]float64{{0.13, 0.15, 0.20, 0.23, 0.25}, {0.10, 0.13, 0.15, 0.18, 0.20}, {0.07, 0.09, 0.10, 0.13, 0.15}}},
}

// AllowedGap is the widest gap that the ring bridges at a pressure, m; that of the next lower hardness
// listed. 0 at more pressure than the table has, NaN for a ring softer than it has.
func (s *Seal) AllowedGap(pressure float64) float64 {
	hardness := cmp.Or(s.Hardness, UsualHardness)
	allowed := math.NaN()
	for _, row := range extrusion {
		if hardness < row.hardness {
			break
		}
		allowed = 0
		for i, most := range row.up {
			if pressure <= most {
				allowed = row.gaps[i][thicknessClass(s.Cord)] * 1e-3
				break
			}
		}
	}
	return allowed
}

func thicknessClass(cord float64) int {
	for i, most := range []float64{2e-3, 3e-3, 5e-3, 7e-3} {
		if cord <= most {
			return i
		}
	}
	return 4
}

// Proposed is a groove for the ring and its bore: the diameter of its floor and its width, m.
func (s *Seal) Proposed() (groove, width float64) {
	depth := s.Cord * (1 - goodSqueeze)
	return s.Bore - 2*depth, math.Pi / 4 * s.Cord * s.Cord / (depth * goodFill)
}
