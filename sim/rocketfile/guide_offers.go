package rocketfile

import "ullage/sim/quantity"

// What the guide offers for nothing typed: what follows from what was answered, never strength, proof, balance, mass or
// pressure.

// usualCanopy lands what was weighed at about 5 m/s.
func usualCanopy(f *File, item int) string {
	if f.rd.rocket.BodyMass() > 0 && item == 0 {
		return quantity.Exact(canopyFor(f.rd.rocket), quantity.Usual(quantity.Length))
	}
	return ""
}

// flushFins end with the body.
func flushFins(f *File, item int) string {
	s := f.rd.rocket.Shape
	if s == nil || item >= len(s.Fins) || !(s.Length > s.Fins[item].Root && s.Fins[item].Root > 0) {
		return ""
	}
	return quantity.Exact(s.Length-s.Fins[item].Root, quantity.Usual(quantity.Length))
}

func motorWidth(f *File, _ int) string {
	if m := f.rd.rocket.Motor; m != nil && m.Diameter > 0 {
		return quantity.Exact(m.Diameter, quantity.Usual(quantity.Length))
	}
	return ""
}

func motorLength(f *File, _ int) string {
	if m := f.rd.rocket.Motor; m != nil && m.Length > 0 {
		return quantity.Exact(m.Length, quantity.Usual(quantity.Length))
	}
	return ""
}

// usualMotor is the first motor file beside the rocket.
func usualMotor(f *File, _ int) string {
	if all, err := f.MotorFiles(); err == nil && len(all) > 0 {
		return all[0]
	}
	return ""
}
