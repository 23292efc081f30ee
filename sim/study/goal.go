package study

import (
	"fmt"
	"math"
	"strings"

	"ullage/sim/fault"
	"ullage/sim/quantity"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
)

// Goal is an input to find the best value of, and where to look, in SI.
type Goal struct {
	Input    rocketfile.Input
	From, To float64 // From < To
}

// maxGoals bounds a search: flights grow fast with the inputs.
const maxGoals = 6

// ParseGoals reads one or more goals over different inputs. The error is
// fault.List, all at once.
func ParseGoals(r *rocket.Rocket, texts []string) ([]Goal, error) {
	var goals []Goal
	var faults fault.List
	for _, text := range texts {
		g, err := ParseGoal(r, text)
		if err != nil {
			faults = append(faults, fault.In(err)...)
			continue
		}
		goals = append(goals, g)
	}
	faults = append(faults, goalFaults(r, goals, len(texts))...)
	if len(faults) > 0 {
		return nil, faults
	}
	return goals, nil
}

// goalFaults is what is wrong with goals together, and with their ranges.
func goalFaults(r *rocket.Rocket, goals []Goal, n int) fault.List {
	var faults fault.List
	seen := map[string]bool{}
	trial := r.Clone()
	for _, g := range goals {
		switch {
		case seen[g.Input.Name]:
			faults = append(faults, fault.Fault{Key: g.Input.Name, Problem: "given twice", Remedy: "name it once"})
		case !(g.From < g.To):
			faults = append(faults, fault.Fault{Key: g.Input.Name, Problem: "the range is empty", Remedy: "begin it below its end"})
		default:
			faults = append(faults, fault.In(g.Input.Set(trial, g.From))...)
			faults = append(faults, fault.In(g.Input.Set(trial, g.To))...)
		}
		seen[g.Input.Name] = true
	}
	switch {
	case n == 0:
		faults = append(faults, fault.Fault{Problem: "no input to find the best of", Remedy: goalMend})
	case n > maxGoals:
		faults = append(faults, fault.Fault{Problem: fmt.Sprintf("%d inputs at once", n), Remedy: fmt.Sprintf("name at most %d", maxGoals)})
	}
	return faults
}

const goalMend = "write NAME or NAME=FROM..TO, such as water.fill=0.2..0.6"

// ParseGoal reads "water.fill" or "water.fill=0.2..0.6". Without a range it is
// [DefaultRange]. The error is a fault.List.
func ParseGoal(r *rocket.Rocket, text string) (Goal, error) {
	name, ends, given := strings.Cut(text, "=")
	in, err := rocketfile.Find(r, strings.TrimSpace(name))
	if err != nil {
		return Goal{}, err
	}
	p := axisParser{in: in, trial: r.Clone()}
	g := Goal{Input: in}
	switch {
	case in.Apart:
		return Goal{}, p.apart()
	case !p.numeric():
		return Goal{}, p.fault("", "has no number to find the best of", "name a number; sweep over the words: "+p.listMend())
	case given:
		if g.From, g.To, err = p.ends(ends); err != nil {
			return Goal{}, err
		}
		g.From, g.To = min(g.From, g.To), max(g.From, g.To)
	default:
		if g.From, g.To = DefaultRange(in, r); !(g.From < g.To) {
			return Goal{}, p.fault("", "has no range of its own", "give one: "+in.Name+"=FROM..TO")
		}
	}
	return g, nil
}

// DefaultRange is where to look for an input's best value when nobody says: all of
// the range of a share, of an angle, and of what is 0 today; for any other number from a quarter of
// today's value to four times that, since the limits of the table are far out. Never
// more pressure than today's: that is not for a search to propose.
func DefaultRange(in rocketfile.Input, r *rocket.Rocket) (from, to float64) {
	const factor = 4
	v, _ := in.Get(r)
	switch {
	case in.Name == "water.pressure":
		return max(in.Min, v/factor), min(in.Max, v)
	case in.Dimension == quantity.Angle, in.Dimension == quantity.Bearing:
		return max(in.Min, 0), in.Max
	case in.Dimension == quantity.Fraction, in.Dimension == quantity.Temperature, !(v > 0):
		return in.Min, in.Max
	}
	return max(in.Min, v/factor), min(in.Max, v*factor)
}

// stretched maps 0 … 1 onto the goal's range: by ratio where it spans more than a
// decade, as throats do, else evenly.
func (g *Goal) stretched(u float64) float64 {
	switch {
	case u <= 0:
		return g.From
	case u >= 1:
		return g.To
	case g.From > 0 && g.To > 10*g.From:
		return g.From * math.Pow(g.To/g.From, u)
	}
	return g.From + (g.To-g.From)*u
}

// place is where in 0 … 1 a value of the range lies.
func (g *Goal) place(v float64) float64 {
	v = math.Min(g.To, math.Max(g.From, v))
	u := (v - g.From) / (g.To - g.From)
	if g.From > 0 && g.To > 10*g.From {
		u = math.Log(v/g.From) / math.Log(g.To/g.From)
	}
	return math.Min(1, math.Max(0, u))
}
