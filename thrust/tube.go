package thrust

// TubePush is the chamber pressure and the axial force after the rocket has moved
// a distance s along its launch tube, 0 ≤ s ≤ tube length: one uniform volume of
// gas, no liquid leaves, the seal at the throat taken as tight. Derived: a piston
// of the tube's outer area (p − p_a)·A_t.
func (e *Expulsion) TubePush(s, ambient float64) (pressure, force float64) {
	pressure = e.tubePressure * e.expansion.of(e.tubeVolume/(e.tubeVolume+e.tubeArea*s))
	return pressure, (pressure - ambient) * e.tubeArea
}
