package study

import (
	"context"
	"errors"
	"fmt"
	"strings"

	"ullage/sim"
	"ullage/sim/fault"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
)

// Among is what FindBestAmong found.
type Among struct {
	Best
	Of  int    // which of the bases it is of
	All []Best // of each base; one without a flight may not be the best, for Why
	Why []error
}

// FindBestAmong finds the best over several rockets, which differ in what has no number (a motor, a gas),
// and the values of none or more inputs of each. When no flight of any may be the best, the error is a
// *NoneAdmissible of all together. What is wrong with the goals is a fault.List.
func FindBestAmong(ctx context.Context, bases []*rocket.Rocket, goals []Goal, aim Aim, o Options) (Among, error) {
	a := Among{All: make([]Best, len(bases)), Why: make([]error, len(bases)), Of: -1}
	all := new(NoneAdmissible)
	before := 0
	top := 0.0
	for i, base := range bases {
		own := o
		if o.Progress != nil {
			own.Progress = func(done, _ int) { o.Progress(before+done, 0) }
		}
		own.Keep = false
		b, err := bestOf(ctx, base, goals, aim, own)
		var none *NoneAdmissible
		switch {
		case errors.As(err, &none):
			all.add(none)
			a.Why[i], before = err, before+none.Flights
			continue
		case err != nil:
			return a, err
		}
		a.All[i], before = b, before+b.Flights
		if v := aim.Value(b.Flight); a.Of < 0 || v > top {
			a.Of, top = i, v
		}
	}
	if a.Of < 0 {
		return a, all
	}
	a.Best = a.All[a.Of]
	a.Flights = before
	if !o.Keep {
		return a, nil
	}
	var err error
	a.Flight, err = sim.Fly(ctx, a.Flight.Rocket, o.flight())
	return a, err
}

// bestOf is the best of one rocket, whose flight may be all there is to look at.
func bestOf(ctx context.Context, base *rocket.Rocket, goals []Goal, aim Aim, o Options) (Best, error) {
	if len(goals) > 0 {
		return FindBest(ctx, base, goals, aim, o)
	}
	s := &search{ctx: ctx, base: base, aim: aim.Within(base), options: o}
	a, err := s.fly(ctx, nil)
	if err != nil {
		return Best{}, err
	}
	s.note(a)
	if !a.admissible() {
		return Best{}, &s.tally
	}
	return s.result(nil)
}

// add counts what another search did not find.
func (e *NoneAdmissible) add(o *NoneAdmissible) {
	e.Flights += o.Flights
	e.LiquidLeft += o.LiquidLeft
	e.NeverLeft += o.NeverLeft
	e.Overpressed += o.Overpressed
	e.Leaking += o.Leaking
	e.Undefined += o.Undefined
	e.Failing += o.Failing
	e.InvalidCount += o.InvalidCount
	if e.First == nil {
		e.First = o.First
	}
}

// Choice is a word that an input may have: "gas", "helium".
type Choice struct {
	Input rocketfile.Input
	Word  string
}

// mostChoices bounds the combinations of words: each costs a search.
const mostChoices = 100

// ParseWanted reads inputs to turn, as [ParseGoals] reads numbers, and besides such as hold words: "water.gas" is all its words,
// "water.gas=air,helium" some. What the words make of the rocket comes back as rockets, with the words of
// each, in the order of writing, the last the fastest; without words it is the rocket alone. The error is a fault.List.
func ParseWanted(r *rocket.Rocket, texts []string) (goals []Goal, bases []*rocket.Rocket, chosen [][]Choice, err error) {
	var numbers []string
	var faults fault.List
	bases, chosen = []*rocket.Rocket{r}, [][]Choice{nil}
	seen := map[string]bool{}
	for _, text := range texts {
		name, values, given := strings.Cut(text, "=")
		in, err := rocketfile.Find(r, strings.TrimSpace(name))
		if err != nil || in.Kind != rocketfile.ChoiceKind || in.Apart {
			numbers = append(numbers, text)
			continue
		}
		words := in.Choices
		if strings.Contains(values, "..") {
			p := axisParser{in: in, trial: r.Clone()}
			_, _, err := p.ends(values)
			faults = append(faults, fault.In(err)...)
			continue
		}
		if given {
			a, err := ParseAxis(r, in.Name+"="+values)
			if err != nil {
				faults = append(faults, fault.In(err)...)
				continue
			}
			words = nil
			for _, v := range a.Values {
				words = append(words, v.Word)
			}
		}
		switch {
		case seen[in.Name]:
			faults = append(faults, fault.Fault{Key: in.Name, Problem: "given twice", Remedy: "name it once"})
			continue
		case len(bases)*len(words) > mostChoices:
			faults = append(faults, fault.Fault{Key: in.Name, Problem: fmt.Sprintf("more than %d combinations of words", mostChoices), Remedy: "name fewer, as in " + in.Name + "=" + words[0]})
			continue
		}
		seen[in.Name] = true
		bases, chosen = spelled(in, words, bases, chosen)
	}
	if len(numbers) > 0 || len(seen) == 0 && len(faults) == 0 {
		if goals, err = ParseGoals(r, numbers); err != nil {
			faults = append(faults, fault.In(err)...)
		}
	}
	if len(faults) > 0 {
		return nil, nil, nil, faults
	}
	return goals, bases, chosen, nil
}

// spelled is every rocket with every word; a word that makes no rocket is left to its flight to tell.
func spelled(in rocketfile.Input, words []string, bases []*rocket.Rocket, chosen [][]Choice) ([]*rocket.Rocket, [][]Choice) {
	var outBases []*rocket.Rocket
	var outChosen [][]Choice
	for i, base := range bases {
		for _, word := range words {
			r := base.Clone()
			if in.SetText(r, word) != nil {
				continue
			}
			outBases = append(outBases, r)
			outChosen = append(outChosen, append(chosen[i][:len(chosen[i]):len(chosen[i])], Choice{in, word}))
		}
	}
	return outBases, outChosen
}
