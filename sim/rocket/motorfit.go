package rocket

import (
	"math"
	"slices"
)

// MotorRetainer is the key of what keeps a motor from sliding aft.
const MotorRetainer = "motor_mount.retainer"

// MotorFit is how a motor sits in its mount: what keeps it out, what nobody has said, and what it takes.
type MotorFit struct {
	Problems []string // why it cannot be used; none where nothing known keeps it out
	Unknown  []string // keys of the rocket file without which nobody knows
	Adapter  float64  // wall of the sleeve that a narrower motor takes, m; 0 of one that fills the mount
	Spare    float64  // of the mount beyond the motor, m; NaN where a length is not known
	Bore     float64  // that the motor slides into: of the liner, else of the mount, m; 0 without a mount
}

// Goes tells that a motor is known to go into its mount; what keeps it from sliding aft is another matter.
func (f *MotorFit) Goes() bool {
	return len(f.Problems) == 0 && !slices.ContainsFunc(f.Unknown, func(key string) bool { return key != MotorRetainer })
}

// equal is arithmetic's hair: a motor that just fits does.
const equal = 1 + 1e-9

// leastAdapter is the play beyond which a motor is taken as narrower than its mount and no more as one that
// slides: common practice, no source, m.
const leastAdapter = 0.5e-3

// Bore is the inside diameter that a motor slides into: of the liner where there is one, m.
func (m *MotorMount) Bore() float64 {
	if m.Liner != 0 {
		return m.Liner
	}
	return m.Diameter
}

// Held is the outside diameter of what the retainer keeps in: of a motor so wide, or of the adapter around a
// narrower one, m.
func (m *MotorMount) Held(motor float64) float64 {
	if bore := m.Bore(); bore-motor > 2*leastAdapter {
		return bore
	}
	return motor
}

// Takes tells that a motor is no wider than what it slides into; so does what is not given.
func (m *MotorMount) Takes(motor *Motor) bool {
	return m.Bore() == 0 || motor.Diameter <= m.Bore()*equal
}

// Reaches tells that a motor is no longer than its mount; so does what is not given.
func (m *MotorMount) Reaches(motor *Motor) bool {
	return m.Length == 0 || motor.Length <= m.Length*equal
}

// Keeps tells that the retainer's opening is narrower than the motor, or than its adapter; so does what is not given.
func (m *MotorMount) Keeps(motor *Motor) bool {
	return motor.Diameter == 0 || m.Retainer <= m.MostRetainer(motor)*equal
}

// MostRetainer is the widest opening that keeps a motor in, m: a hair less than the motor, or than its adapter, for as wide a one
// holds nothing.
func (m *MotorMount) MostRetainer(motor *Motor) float64 {
	const hair = 1e-6
	return m.Held(motor.Diameter) * (1 - hair)
}

// MotorFit holds the motor against its mount, the liner in it and what retains it. A motor narrower
// than its mount takes an adapter and is no problem.
func (r *Rocket) MotorFit() MotorFit {
	f := MotorFit{Spare: math.NaN()}
	m, mount := r.Motor, r.MotorMount
	if m == nil {
		return f
	}
	lack := func(key string, missing bool) {
		if missing {
			f.Unknown = append(f.Unknown, key)
		}
	}
	lack("motor_mount", mount == nil)
	lack("motor.diameter", m.Diameter == 0)
	lack("motor.length", m.Length == 0)
	if mount == nil {
		return f
	}
	lack(MotorRetainer, mount.Retainer == 0)
	f.Bore = mount.Bore()
	if m.Diameter > 0 && f.Bore > 0 {
		switch {
		case !mount.Takes(m):
			problem := "wider than the mount"
			if mount.Liner != 0 && m.Diameter <= mount.Diameter*equal {
				problem = "wider than the liner"
			}
			f.Problems = append(f.Problems, problem)
		case f.Bore-m.Diameter > 2*leastAdapter:
			f.Adapter = (f.Bore - m.Diameter) / 2
		case !mount.Keeps(m):
			f.Problems = append(f.Problems, "slides out through the retainer")
		}
	}
	if m.Length > 0 && mount.Length > 0 {
		f.Spare = mount.Length - m.Length
		if !mount.Reaches(m) {
			f.Problems = append(f.Problems, "longer than the mount")
		}
	}
	return f
}
