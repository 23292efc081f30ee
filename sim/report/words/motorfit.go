package words

import (
	"slices"

	"ullage/sim/gates"
	"ullage/sim/report/machine"
	"ullage/sim/report/page"
	"ullage/sim/rocket"
)

// Retainer is the key of what keeps a motor from sliding aft, which is told once for all of them.
const Retainer = rocket.MotorRetainer

// Fit says how a motor sits in its mount: why not, what is not known, what it takes.
func (p Printer) Fit(f rocket.MotorFit) string {
	unknown := slices.DeleteFunc(slices.Clone(f.Unknown), func(key string) bool { return key == Retainer })
	switch {
	case len(f.Problems) > 0:
		return page.Listed(f.Problems)
	case len(unknown) > 0:
		return gates.WordUnknown + ": give " + page.Listed(unknown)
	case f.Adapter > 0:
		return "takes an adapter, " + p.Size(f.Adapter) + " of wall"
	}
	return "fits the mount"
}

// FitObject is the fit in JSON.
func FitObject(f rocket.MotorFit) *machine.Object {
	o := new(machine.Object).Add("problems", append([]string{}, f.Problems...)).Add("unknown", append([]string{}, f.Unknown...))
	o.Put("adapter_m", f.Adapter)
	o.Put("spare_m", f.Spare)
	return o
}
