package view

import (
	"ullage/sim/gates"
	"ullage/sim/rocketfile"
)

// Settable tells of a mend that sets inputs: a calmer day is waited for, not set; a chamber is rebuilt.
func Settable(m *gates.Remedy) bool {
	for one := m; one != nil; one = one.And {
		if one.Waits() || one.Kind != gates.SetInput && one.Kind != gates.OtherDelay && one.Kind != gates.TiltIntoWind {
			return false
		}
	}
	return true
}

// Mended is a rocket file with a mend made that sets inputs: the rail's heading with its tilt, to where the wind
// comes from, rad; a second input with the first.
func Mended(f *rocketfile.File, mend *gates.Remedy, from float64) (*rocketfile.File, error) {
	var err error
	for m := mend; m != nil && err == nil; m = m.And {
		if m.Rule != "" { // all of it, since a file takes nothing less
			f, err = f.Set(m.Input.Name, m.Rule)
			continue
		}
		if f, err = f.SetValue(m.Input.Name, m.To); err == nil && m.Kind == gates.TiltIntoWind {
			f, err = f.SetValue("rail.heading", from)
		}
	}
	return f, err
}
