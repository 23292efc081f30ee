package report

import (
	"math"
	"slices"
	"strings"

	"ullage/sim/report/page"
	"ullage/sim/report/words"
	"ullage/sim/study"
)

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
		_ = t.Row(page.Printable(c.Name), size(motor.Diameter), size(motor.Length), size(f.Spare), p.Fit(f))
	}
	if mount == nil {
		return
	}
	text := "The file says nothing of a retainer (" + words.Retainer + "): what keeps a motor from sliding aft is not known."
	if mount.Retainer > 0 {
		text = "The retainer's opening, " + p.Size(mount.Retainer) + ", holds what is wider."
	}
	if adapted {
		text += " An adapter fills the mount, is held by the retainer, and itself keeps the motor from sliding either way: its inside and its opening as motor_mount.liner and " + words.Retainer + " have that judged."
	}
	s.Hung("  ", text+" Sizes of the files: try each motor in the mount, empty, before it is bought.")
}
