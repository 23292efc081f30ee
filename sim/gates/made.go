package gates

import (
	"ullage/sim/rocket"
	"ullage/sim/study"
)

// Made is a rocket with a mend made that can be made at the field, with what goes with it: an input set, the rail tilted, a
// weight put in. Nil for any other, and where the rocket cannot have it.
func (m *Remedy) Made(base *rocket.Rocket) *rocket.Rocket {
	r := base.Clone()
	switch m.Kind {
	case SetInput, OtherDelay, TiltIntoWind:
		var err error
		if m.Rule != "" {
			err = m.Input.SetText(r, m.Rule)
		} else {
			err = m.Input.Set(r, m.To)
		}
		if err != nil {
			return nil
		}
		if m.Kind == TiltIntoWind {
			_, r.Rail.Heading = r.Wind.Surface()
		}
	case AddNoseWeight:
		if r.Shape == nil {
			return nil
		}
		if r = study.WithWeight(r, m.To, r.Shape.Nose.Length/2); r == nil {
			return nil
		}
	default:
		return nil
	}
	if m.And != nil {
		return m.And.Made(r)
	}
	return r
}
