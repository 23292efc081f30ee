package airframe

import "math"

// FlutterSpeed is the airspeed from which a fin flutters, m/s, in air of a pressure, Pa, and a speed of sound, m/s; NaN
// without a shear modulus:
//
//	v = a·√( G / [1.337·AR³·p·(λ + 1)/((AR + 2)·(t/c)³)] )
//
// with AR the exposed panel's span²/area, λ tip over root chord and t/c on the root chord (D. J. Martin, NACA TN
// 4197, 1958: its 39.3 over the pressure of one atmosphere in psi, times (λ + 1)/2; the form from memory).
// For thin, unswept fins of one material, held stiffly at the root.
func (f *Fins) FlutterSpeed(pressure, soundSpeed float64) float64 {
	if f.ShearModulus == 0 {
		return math.NaN()
	}
	aspect := f.Span * f.Span / f.area()
	thin := f.Thickness / f.Root
	stiff := f.ShearModulus * (aspect + 2) * thin * thin * thin
	return soundSpeed * math.Sqrt(stiff/(1.337*aspect*aspect*aspect*pressure*(f.Tip/f.Root+1)))
}

// Flutter is the airspeed over that from which the first of the fins flutters, at a dynamic pressure q, Pa. With a² = γp/ρ
// the air's pressure falls out, v/v_F = √(2q/(γ·p_F)), where p_F is the pressure at which the flutter speed is that of sound: so that
// it is greatest where q is. γ is the air's. NaN without fins, and while the modulus of a set is not known.
func (s *Shape) Flutter(q, gamma float64) float64 {
	most := math.NaN()
	for i := range s.Fins {
		sonic := s.Fins[i].FlutterSpeed(1, 1) // √p_F
		share := math.Sqrt(2*q/gamma) / sonic
		if math.IsNaN(share) {
			return share
		}
		if !(share <= most) {
			most = share
		}
	}
	return most
}
