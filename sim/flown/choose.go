package flown

import (
	"context"
	"strings"

	"ullage/sim"
	"ullage/sim/fault"
	"ullage/sim/flown/logfile"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
)

// tellable are the inputs that the log of a drive tells of, beside those of its canopies.
func tellable(p rocket.Power) []string {
	if p == rocket.MotorPower {
		return []string{"body.drag_factor", "motor.thrust_factor"}
	}
	return []string{"body.drag_factor", "water.discharge", "water.exponent"}
}

// Choose gives the inputs that the drive and the logs can tell of, of those that are uncertain:
// drag and what pushes; and, of canopies under which a log goes on for some seconds, drag and the
// moment of opening.
func Choose(ctx context.Context, logs []Logged, spreads []study.Spread) ([]study.Spread, error) {
	want := map[string]bool{}
	for _, l := range logs {
		r := l.Rocket
		for _, name := range tellable(r.Power) {
			drag := name == "body.drag_factor"
			if !drag || l.Best() != nil || l.has(logfile.Speed) || l.has(logfile.Acceleration) {
				want[name] = true
			}
		}
		fl, err := sim.Fly(ctx, r, sim.Options{})
		if err != nil {
			return nil, err
		}
		for i := range r.Canopies {
			if !l.tellsDescent(fl, i, l.LiftOff) {
				continue
			}
			c := &r.Canopies[i]
			want["canopy."+c.Name+".coefficient"] = true
			want["canopy."+c.Name+".deploy."+string(r.Power)] = true
			if r.Power == rocket.MotorPower && c.Rule(r.Power).Trigger == rocket.Ejection {
				want["motor.delay"] = true
			}
		}
	}
	var chosen []study.Spread
	for _, s := range spreads {
		if want[s.Input.Name] {
			chosen = append(chosen, s)
		}
	}
	if len(chosen) == 0 {
		return nil, fault.Fault{Problem: "none of the inputs that the logs tell of is uncertain", Remedy: "name one, as in --vary body.drag_factor, and give it a line in [spread]"}
	}
	return chosen, nil
}

// has tells whether a reading has a channel of a quantity.
func (rd *Reading) has(q logfile.Quantity) bool {
	for i := range rd.Channels {
		if rd.Channels[i].Column.Quantity == q {
			return true
		}
	}
	return false
}

// Vary gives the inputs of some names with their spreads; one without is a fault that names the
// line to add.
func Vary(r *rocket.Rocket, spreads []study.Spread, names []string) ([]study.Spread, error) {
	var chosen []study.Spread
	for _, name := range names {
		in, err := rocketfile.Find(r, name)
		if err != nil {
			return nil, err
		}
		s := study.Spread{Input: in}
		for _, known := range spreads {
			if known.Input.Name == name {
				s = known
			}
		}
		for _, before := range chosen {
			if before.Input.Name == name {
				return nil, fault.Fault{Key: name, Problem: "is named twice", Remedy: "name it once"}
			}
		}
		chosen = append(chosen, s)
	}
	return chosen, fittableInputs(r, chosen)
}

// turnsCanopies tells whether one of the inputs is of a canopy or its opening.
func turnsCanopies(inputs []study.Spread) bool {
	for _, s := range inputs {
		if strings.HasPrefix(s.Input.Name, "canopy.") || s.Input.Name == "motor.delay" {
			return true
		}
	}
	return false
}
