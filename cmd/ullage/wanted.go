package main

import (
	"ullage/sim/report"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
)

// motorOption has a search look among motors.
type motorOption struct {
	Motor []string `sep:"none" placeholder:"FILE" help:"Look among motors: a motor file, which has the keys of [motor] at its top level; give it once for each."`
}

// wanted is what a search turns: numbers of each of some rockets, which differ in what has none.
type wanted struct {
	rocket *rocket.Rocket // as it is
	goals  []study.Goal
	bases  []*rocket.Rocket
	chosen [][]study.Choice // the words of each
	motors []report.Motor   // the motor of each; none for the file's own
}

// wanted reads the inputs and motors of a command. With motors the rocket flies on them.
func (o motorOption) wanted(file *rocketfile.File, command string, inputs []string) (wanted, error) {
	if len(o.Motor) == 0 && len(inputs) == 0 {
		return wanted{}, badInput("name an input to turn, such as water.fill, or motors to look among\nullage %s --help shows how it is used", command)
	}
	if len(o.Motor) == 0 {
		w := wanted{rocket: file.Rocket()}
		var err error
		w.goals, w.bases, w.chosen, err = study.ParseWanted(w.rocket, inputs)
		w.motors = make([]report.Motor, len(w.bases))
		return w, err
	}
	motors, err := readMotors(file, o.Motor)
	if err != nil {
		return wanted{}, err
	}
	var w wanted
	if own := file.Rocket(); own.Motor != nil {
		if own.Power = rocket.MotorPower; own.Validate() == nil {
			w.rocket = own
		}
	}
	for i, m := range motors {
		r := m.Rocket
		r.Power = rocket.MotorPower
		goals, bases, chosen, err := parseWanted(r, inputs)
		if err != nil {
			return w, err
		}
		if w.rocket == nil {
			w.rocket = r
		}
		if i == 0 {
			w.goals = goals
		}
		for range bases {
			w.motors = append(w.motors, report.Motor{Name: m.Name, File: file.NameOf(o.Motor[i])})
		}
		w.bases, w.chosen = append(w.bases, bases...), append(w.chosen, chosen...)
	}
	return w, nil
}

// parseWanted reads inputs, of which there may be none where the motor is what is looked for.
func parseWanted(r *rocket.Rocket, inputs []string) ([]study.Goal, []*rocket.Rocket, [][]study.Choice, error) {
	if len(inputs) == 0 {
		return nil, []*rocket.Rocket{r}, [][]study.Choice{nil}, nil
	}
	return study.ParseWanted(r, inputs)
}
