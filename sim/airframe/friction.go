package airframe

import "math"

// transition is the Reynolds number below which the flow along a surface is taken as
// laminar (H. Schlichting, Boundary-Layer Theory).
const transition = 5e5

// friction is the mean friction coefficient of a surface at the Reynolds number of its
// length, roughness being its height over that length (Schlichting):
//
//	laminar below Re = 5e5   1.328/√Re (Blasius)
//	beyond                   0.455/(log₁₀ Re)^2.58 − 1700/Re, a laminar run before
//	                         turbulent flow, but not below the laminar value
//	rough and turbulent      not below 0.032·(k/L)^0.2
//
// On a smooth surface it is continuous; a rough one is tripped at once at 5e5. Outside
// 1e3 to 1e10 it stays at the ends, where none of the formulas hold.
func friction(reynolds, roughness float64) float64 {
	re := reynolds
	if !(re > 1e3) {
		re = 1e3
	}
	re = min(re, 1e10)
	laminar := 1.328 / math.Sqrt(re)
	if re < transition {
		return laminar
	}
	c := max(laminar, 0.455/math.Pow(math.Log10(re), 2.58)-1700/re)
	if roughness > 0 {
		c = max(c, 0.032*math.Pow(roughness, 0.2))
	}
	return c
}

// bodyForm is the pressure drag of a body of revolution over its friction, by length
// over diameter: 60/(l/d)³ + 0.0025·l/d (USAF DATCOM, section 4.2.3.1).
func bodyForm(fineness float64) float64 {
	return 60/(fineness*fineness*fineness) + 0.0025*fineness
}

// finForm is the pressure drag of a streamlined section over its friction, by thickness
// over chord: 2t/c + 60(t/c)⁴ (S. F. Hoerner, Fluid-Dynamic Drag).
func finForm(thickness float64) float64 {
	t2 := thickness * thickness
	return 2*thickness + 60*t2*t2
}

// baseDrag is the drag coefficient of the blunt end of a body of revolution on the
// reference area: 0.029·(d_b/d)³/√C_Df, C_Df being what lies before it (Hoerner; DATCOM).
func baseDrag(ratio, forebody float64) float64 {
	if !(forebody > 0) {
		return 0
	}
	return 0.029 * ratio * ratio * ratio / math.Sqrt(forebody)
}

// edgeBaseDrag is the same for a blunt trailing edge on its own area, with the drag of
// what lies before it on that area too: 0.135/∛C_f (Hoerner, from memory).
func edgeBaseDrag(before float64) float64 {
	if !(before > 0) {
		return 0
	}
	return 0.135 / math.Cbrt(before)
}

// squareEdge is the pressure drag coefficient of a square leading edge on its own area:
// a flat plate across the flow with ambient pressure behind its edges, 2π/(π + 4)
// (Kirchhoff's free streamlines; H. Lamb, Hydrodynamics, art. 76). It leaves out the
// suction where the flow turns back onto the sides, and so is on the high side.
const squareEdge = 2 * math.Pi / (math.Pi + 4)
