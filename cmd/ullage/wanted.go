package main

import (
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
	rocket *rocket.Rocket // that all begin from
	goals  []study.Goal
	bases  []*rocket.Rocket
	chosen [][]study.Choice // the words of each
	motors []string         // the motor of each; "" for the file's own
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
		w.motors = make([]string, len(w.bases))
		return w, err
	}
	motors, err := readMotors(file, o.Motor)
	if err != nil {
		return wanted{}, err
	}
	var w wanted
	for _, m := range motors {
		r := file.Rocket().Clone()
		r.Power, r.Motor = rocket.MotorPower, m.Motor
		goals, bases, chosen, err := parseWanted(r, inputs)
		if err != nil {
			return w, err
		}
		if w.rocket == nil {
			w.rocket, w.goals = r, goals
		}
		for range bases {
			w.motors = append(w.motors, m.Name)
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
