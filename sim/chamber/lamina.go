package chamber

// lamina is one unidirectional layer of fibre and resin.
type lamina struct {
	along, across, shear float64 // moduli E1, E2, G12, Pa
	poisson              float64 // nu12
}

// mix makes a lamina of a composite's constituents: E1 and nu12 after the rule of
// mixtures, E2 and G12 after Halpin and Tsai with ξ 2 and 1 (Jones, Mechanics of
// Composite Materials, 1975, chapter 3).
func mix(s *stuff, fraction float64) lamina {
	f := s.fibre
	return lamina{
		along:   fraction*f.along + (1-fraction)*s.modulus,
		across:  halpinTsai(f.across, s.modulus, fraction, 2),
		shear:   halpinTsai(f.shear, s.modulus/(2*(1+s.poisson)), fraction, 1),
		poisson: fraction*f.poisson + (1-fraction)*s.poisson,
	}
}

// halpinTsai goes between the moduli of resin and fibre as the share of fibre grows.
func halpinTsai(fibre, resin, fraction, xi float64) float64 {
	eta := (fibre/resin - 1) / (fibre/resin + xi)
	return resin * (1 + xi*eta*fraction) / (1 - eta*fraction)
}

// stiffness is the reduced one of plane stress: Q11, Q12, Q22, Q66, Pa.
func (l lamina) stiffness() (q11, q12, q22, q66 float64) {
	k := 1 - l.poisson*l.poisson*l.across/l.along
	return l.along / k, l.poisson * l.across / k, l.across / k, l.shear
}

// What cracks leave of a ply's stiffness across its fibres and in shear by the time these
// fail: next to nothing, and something (ply discount; typical shares, no source).
const (
	crackedAcross = 0.001
	crackedShear  = 0.1
)

// cracked is a lamina whose resin has cracked, as it has from CrackStrain on: long before
// the fibres fail, which have to carry all but alone from then.
func (l lamina) cracked() lamina {
	return lamina{along: l.along, across: crackedAcross * l.across, shear: crackedShear * l.shear, poisson: l.poisson}
}
