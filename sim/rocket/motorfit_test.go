package rocket

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestMotorFit(t *testing.T) {
	mm := func(v float64) float64 { return v / 1000 }
	for name, x := range map[string]struct {
		motor    Motor
		mount    *MotorMount
		problems []string
		unknown  []string
		adapter  float64
	}{
		"fills it":      {Motor{Diameter: mm(29), Length: mm(236)}, &MotorMount{Diameter: mm(29), Length: mm(250), Retainer: mm(27)}, nil, nil, 0},
		"slides":        {Motor{Diameter: mm(29), Length: mm(236)}, &MotorMount{Diameter: mm(29.4), Length: mm(250), Retainer: mm(27)}, nil, nil, 0},
		"adapter":       {Motor{Diameter: mm(24), Length: mm(70)}, &MotorMount{Diameter: mm(29), Length: mm(250), Retainer: mm(27)}, nil, nil, mm(2.5)},
		"both":          {Motor{Diameter: mm(38), Length: mm(300)}, &MotorMount{Diameter: mm(29), Length: mm(250), Retainer: mm(27)}, []string{"wider than the mount", "longer than the mount"}, nil, 0},
		"liner":         {Motor{Diameter: mm(29), Length: mm(236)}, &MotorMount{Diameter: mm(30), Length: mm(250), Liner: mm(28.5), Retainer: mm(27)}, []string{"wider than the liner"}, nil, 0},
		"slips through": {Motor{Diameter: mm(28.5), Length: mm(236)}, &MotorMount{Diameter: mm(29), Length: mm(250), Retainer: mm(28.6)}, []string{"slides out through the retainer"}, nil, 0},
		"no sizes":      {Motor{}, &MotorMount{Diameter: mm(29), Length: mm(250)}, nil, []string{"motor.diameter", "motor.length", "motor_mount.retainer"}, 0},
		"no mount":      {Motor{Diameter: mm(29), Length: mm(236)}, nil, nil, []string{"motor_mount"}, 0},
	} {
		t.Run(name, func(t *testing.T) {
			r := Rocket{Motor: &x.motor, MotorMount: x.mount}
			f := r.MotorFit()
			assert.Equal(t, x.problems, f.Problems)
			assert.Equal(t, x.unknown, f.Unknown)
			assert.InDelta(t, x.adapter, f.Adapter, 1e-12)
			assert.Equal(t, name == "fills it" || name == "slides" || name == "adapter", f.Goes(), "what is not known does not fit")
			assert.Equal(t, x.mount == nil || x.motor.Length == 0, math.IsNaN(f.Spare))
		})
	}
	assert.Empty(t, (&Rocket{}).MotorFit().Problems)
}
