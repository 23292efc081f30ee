package view

import (
	tea "github.com/charmbracelet/bubbletea"

	"ullage/sim/quantity"
	"ullage/sim/results"
	"ullage/sim/rocket"
	"ullage/sim/study"
	"ullage/tui/draw"
)

// Wish is what a view looks for the best of, as it was typed; the zero value is the highest apogee.
type Wish struct{ Text string }

// For is the wish for a rocket; of one that does not have the result, the usual wish.
func (w Wish) For(r *rocket.Rocket) study.Wish {
	t := results.For(r)
	if wish, err := study.ReadWish(t, w.Text); err == nil {
		return wish
	}
	return study.MostOf(*t.Must(study.UsualWish))
}

// Ask has the user say what is wanted, of the results of a rocket, and does what follows of it.
func (w *Wish) Ask(frame Frame, r *rocket.Rocket, then func() tea.Cmd) {
	t := results.For(r)
	text := w.Text
	if text == "" {
		text = study.UsualWish
	}
	frame.Ask(Question{
		Says: "Best for:", Text: text, Names: t.Numbers(),
		Rules: "A result for the most of it, least and a result, or a result at a value: landing.drift, least landing.drift, apogee.height = 300 m. Empty for the highest apogee.",
		Submit: func(_ Frame, text string) (string, tea.Cmd) {
			if _, err := study.ReadWish(t, text); err != nil {
				return FaultText(err, ""), nil
			}
			w.Text = text
			return "", then()
		},
	})
}

// WishFact is the column of what is wanted, where a table has none of it yet.
func WishFact(w *study.Wish, facts []Fact) []Fact {
	for _, f := range facts {
		if f.Result == w.Row.Name {
			return facts
		}
	}
	return append([]Fact{{Result: w.Row.Name, Long: w.Row.Label}}, facts...)
}

// WishLimit is the value of a wish for one, in a unit, to draw; not there without.
func WishLimit(w *study.Wish, unit quantity.Unit) (y float64, label string, there bool) {
	if !w.Aimed() {
		return 0, "", false
	}
	return unit.FromSI(w.Target), "wanted: " + draw.Exact(w.Target, unit, 4), true
}
