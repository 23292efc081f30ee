package measured

import (
	"slices"

	"ullage/sim/flown"
	"ullage/sim/report/page"
	"ullage/sim/report/words"
	"ullage/sim/rocket"
)

// closing ends a page of predicted flights: the pressures that no proof is for, what the model leaves out, the cautions.
func closing(x *page.Section, p words.Printer, rockets ...*rocket.Rocket) {
	for _, text := range beyond(p, rockets...) {
		x.Add(page.Alarm(text))
	}
	x.Add(page.Prose(words.LeftOut(rockets[0])))
	cautions(x, rockets[0])
}

func cautions(x *page.Section, r *rocket.Rocket) {
	for _, c := range words.Cautions(r.Power) {
		x.Add(page.Prose(c))
	}
}

// beyond says once each what pressures of rockets no proof is for.
func beyond(p words.Printer, rockets ...*rocket.Rocket) []string {
	var all []string
	for _, r := range rockets {
		if text := p.Beyond(r); text != "" && !slices.Contains(all, text) {
			all = append(all, text)
		}
	}
	return all
}

// Beyond says what pressures of the logs' flights no proof is for.
func Beyond(p words.Printer, all []*flown.Compared) []string { return beyond(p, rocketsOf(all)...) }

func rocketsOf(all []*flown.Compared) []*rocket.Rocket {
	rockets := make([]*rocket.Rocket, len(all))
	for i, c := range all {
		rockets[i] = c.Rocket
	}
	return rockets
}
