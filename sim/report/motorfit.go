package report

import (
	"math"
	"slices"
	"strings"

	"ullage/sim/gates"
	"ullage/sim/report/machine"
	"ullage/sim/report/page"
	"ullage/sim/report/words"
	"ullage/sim/rocket"
	"ullage/sim/study"
)

// retainer is the key of what keeps a motor from sliding aft, which is told once for all of them.
const retainer = "motor_mount.retainer"

// FitText says how a motor sits in its mount: why not, what is not known, what it takes.
func FitText(p words.Printer, f rocket.MotorFit) string {
	unknown := slices.DeleteFunc(slices.Clone(f.Unknown), func(key string) bool { return key == retainer })
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

// fits writes which motors go into the mount, its liner and retainer, and why not.
func (s *sheet) fits(p words.Printer, m *Motors) {
	described := slices.ContainsFunc(m.Compared, func(c study.Compared) bool { return c.Rocket != nil && c.Rocket.Motor != nil })
	if !described {
		return
	}
	mount := m.Rocket.MotorMount
	head := "The file describes no [motor_mount] to hold them against"
	if mount != nil {
		head = "The mount takes " + p.Size(mount.Bore()) + " across"
		if mount.Liner != 0 {
			head += " in its liner"
		}
		head += " and " + p.Size(mount.Length) + " of length"
	}
	s.Hung("  ", head+".")
	t := page.NewTable(s, page.Heading{Lines: []string{"motor"}, Left: true, Width: 20}, page.Heading{Lines: []string{"across"}, Unit: p.Unit("mm"), Width: 6},
		page.Heading{Lines: []string{"long"}, Unit: p.Unit("mm"), Width: 6}, page.Heading{Lines: []string{"spare"}, Unit: p.Unit("mm"), Width: 6}, page.Heading{Lines: []string{"fit"}, Left: true})
	_ = t.Head()
	size := func(v float64) string {
		if v == 0 || math.IsNaN(v) {
			return "-"
		}
		return strings.TrimSuffix(p.Size(v), " "+p.Unit("mm"))
	}
	adapted := false
	for i := range m.Compared {
		c := &m.Compared[i]
		if c.Rocket == nil || c.Rocket.Motor == nil {
			continue
		}
		motor, f := c.Rocket.Motor, c.Rocket.MotorFit()
		adapted = adapted || f.Adapter > 0 && len(f.Problems) == 0
		_ = t.Row(page.Printable(c.Name), size(motor.Diameter), size(motor.Length), size(f.Spare), FitText(p, f))
	}
	if mount == nil {
		return
	}
	text := "The file says nothing of a retainer (" + retainer + "): what keeps a motor from sliding aft is not known."
	if mount.Retainer > 0 {
		text = "The retainer's opening, " + p.Size(mount.Retainer) + ", holds what is wider."
	}
	if adapted {
		text += " An adapter fills the mount, is held by the retainer, and itself keeps the motor from sliding either way."
	}
	s.Hung("  ", text+" Sizes of the files: try each motor in the mount, empty, before it is bought.")
}

// fitObject is the fit in JSON.
func fitObject(f rocket.MotorFit) *machine.Object {
	o := new(machine.Object).Add("problems", append([]string{}, f.Problems...)).Add("unknown", append([]string{}, f.Unknown...))
	o.Put("adapter_m", f.Adapter)
	o.Put("spare_m", f.Spare)
	return o
}
