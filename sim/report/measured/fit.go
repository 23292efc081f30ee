package measured

import (
	"fmt"
	"io"
	"math"
	"slices"
	"strings"

	"ullage/sim/flown"
	"ullage/sim/quantity"
	"ullage/sim/report/machine"
	"ullage/sim/report/page"
	"ullage/sim/report/words"
	"ullage/sim/results"
	"ullage/sim/rocket"
)

// Fit is what a fit found, to be written.
type Fit struct {
	Fitted  flown.Fitted
	Units   []quantity.Unit // that the file uses for each input
	System  quantity.System
	Failed  error  // why it is no answer; nil when it is one
	Written string // the file that took the values; empty for none
}

// WriteFitText writes what was learned.
func WriteFitText(w io.Writer, f Fit) error {
	p := words.In(f.System)
	r := f.Fitted.Logs[0].Rocket
	d := page.Document{Title: words.Title(r) + ": what the logs tell"}
	for i := range f.Fitted.Logs {
		l := &f.Fitted.Logs[i]
		d.Sections = append(d.Sections, understood(p, l.Logged, l.Release))
	}
	d.Sections = append(d.Sections, f.inputs(p), f.logs(p), f.after(p))
	_, err := io.WriteString(w, d.Text())
	return err
}

// inputs are the values before and after.
func (f *Fit) inputs(p words.Printer) page.Section {
	x := page.Section{Name: "Inputs"}
	grid := page.Grid{Heads: []page.GridHead{page.Words(""), page.Figures("before"), page.Figures("fitted"), page.Figures("learned"), page.Words("")}}
	for i := range f.Fitted.Inputs {
		in := &f.Fitted.Inputs[i]
		remark := ""
		switch {
		case in.Kept:
			remark = "kept: the logs say too little"
		case in.AtBound:
			remark = "at the end of its range"
		}
		grid.Rows = append(grid.Rows, []string{in.Input.Name, f.Value(p, i, in.Before, in.BeforeSD), f.Value(p, i, in.Value, in.SD), fmt.Sprintf("%.0f %%", 100*in.Learned), remark})
	}
	x.Add(grid, page.Prose("After ± stands one standard deviation, every input that is not turned being taken as known. Learned is the share of what was unknown that the logs took away."))
	if text := f.Daily(); text != "" {
		x.Add(page.Prose(text))
	}
	for _, names := range Groups(f.Fitted.Alike) {
		x.Add(page.Prose(page.Listed(names) + " act alike on what the logs show, so that these logs hardly tell them apart; what they do together is better known than each alone."))
	}
	if f.Failed != nil {
		x.Add(page.Alarm(Failure(f.Failed)))
	}
	return x
}

// Daily says which of what was fitted is another one on every flight; empty for none.
func (f *Fit) Daily() string {
	var daily []string
	for i := range f.Fitted.Inputs {
		if in := &f.Fitted.Inputs[i]; !in.Kept && flown.Daily(in.Input.Name) {
			daily = append(daily, in.Input.Name)
		}
	}
	if len(daily) == 0 {
		return ""
	}
	return "Another one on every flight, so that the file keeps its deviation: " + page.Listed(daily) + "."
}

// Groups joins pairs that share an input.
func Groups(pairs [][2]string) [][]string {
	var all [][]string
	for _, p := range pairs {
		into := -1
		for i, g := range all {
			if slices.Contains(g, p[0]) || slices.Contains(g, p[1]) {
				into = i
			}
		}
		if into < 0 {
			all, into = append(all, nil), len(all)
		}
		for _, name := range p {
			if !slices.Contains(all[into], name) {
				all[into] = append(all[into], name)
			}
		}
	}
	return all
}

// Failure is why a fit is no answer, as a sentence.
func Failure(err error) string { return sentence(err.Error()) }

func sentence(text string) string { return strings.ToUpper(text[:1]) + text[1:] + "." }

// Value is a value of an input with its deviation, in the unit that the file uses.
func (f *Fit) Value(p words.Printer, i int, v, sd float64) string {
	u := f.Fitted.Inputs[i].Input.Unit
	if i < len(f.Units) {
		u = f.Units[i]
	}
	u = p.System.Unit(u)
	scale := u.ToSI(1) - u.ToSI(0)
	places := 0
	if s := sd / scale; s > 0 && !math.IsInf(s, 0) {
		places = max(0, 1-int(math.Floor(math.Log10(s))))
	}
	text := fmt.Sprintf("%.*f ± %.*f", places, u.FromSI(v), places, sd/scale)
	return strings.TrimSpace(text + " " + strings.ReplaceAll(u.Name, "*", "·"))
}

// logs are the apogees and residuals.
func (f *Fit) logs(p words.Printer) page.Section {
	x := page.Section{Name: "Logs"}
	grid := page.Grid{Heads: []page.GridHead{page.Words(""), page.Figures("measured"), page.Figures("before"), page.Figures("fitted")}}
	var weights []string
	for i := range f.Fitted.Logs {
		l := &f.Fitted.Logs[i]
		name := ""
		if len(f.Fitted.Logs) > 1 {
			name = page.Printable(l.Log.Name) + ", "
		}
		if l.Best() != nil {
			apogee := results.For(l.Rocket).Must("apogee.height")
			row := func(v float64) string { return p.Row(apogee, v) }
			grid.Rows = append(grid.Rows, []string{name + apogee.Label, row(l.Apogee.Measured), row(l.Apogee.Before), row(l.Apogee.Fitted)},
				[]string{name + "height off by, root mean square", "noise " + row(l.RMS.Measured), row(l.RMS.Before), row(l.RMS.Fitted)})
		}
		for _, c := range l.Channels {
			weights = append(weights, fmt.Sprintf("%s%s: %d samples, weight divided by %.3g (neighbours repeat each other by %.2f)",
				name, c.Column.Quantity, c.Used, c.Kappa, c.Rho))
		}
	}
	if len(grid.Rows) > 0 {
		x.Add(grid)
	}
	x.Add(page.Points(weights))
	x.Add(page.Prose(fmt.Sprintf("It took %s. Residuals are weighed by Huber's rule; what is not white in them lessens the weight of their column.", words.Plural(f.Fitted.Flights, "flight"))))
	return x
}

// after says what to do with it, with the cautions.
func (f *Fit) after(p words.Printer) page.Section {
	var x page.Section
	switch {
	case f.Written != "":
		x.Add(page.Prose("Written to " + page.Printable(f.Written) + ": values, spreads, and a remark of where they are from. These logs are refused from now on: they would count twice."))
	case f.Failed == nil:
		x.Add(page.Prose("To keep them, give --write: values and spreads go into the rocket file."))
	}
	rockets := make([]*rocket.Rocket, len(f.Fitted.Logs))
	for i := range f.Fitted.Logs {
		rockets[i] = f.Fitted.Logs[i].Rocket
	}
	closing(&x, p, rockets...)
	return x
}

// WriteFitJSON writes one object: the inputs, what acts alike, the logs, and the flights it took.
// SI, angles in degrees.
func WriteFitJSON(w io.Writer, f Fit) error {
	var out machine.Object
	alike := make([][2]string, 0, len(f.Fitted.Alike))
	alike = append(alike, f.Fitted.Alike...)
	logs := machine.List{}
	for i := range f.Fitted.Logs {
		l := &f.Fitted.Logs[i]
		var o, apogee, rms, day machine.Object
		for _, s := range l.Settings {
			day.Add(s.Name, machine.Number(machine.Tidy(s.Value)))
		}
		number := func(v float64) machine.Number { return machine.Number(machine.Tidy(v)) }
		logs = append(logs, o.Add("file", l.Log.Name).Add("samples", l.Samples).Add("lift_off_s", number(l.Release)).
			Add("apogee_m", apogee.Add("measured", number(l.Apogee.Measured)).Add("before", number(l.Apogee.Before)).Add("fitted", number(l.Apogee.Fitted))).
			Add("rms_m", rms.Add("before", number(l.RMS.Before)).Add("fitted", number(l.RMS.Fitted))).Add("day", &day).Add("left_out", stretches(l.Logged)))
		words.AddPressure(&o, l.Rocket)
	}
	out.Add("inputs", f.object()).Add("alike", alike).Add("logs", logs).Add("flights", f.Fitted.Flights)
	return machine.WriteLine(w, &out)
}

// object is the inputs before and after.
func (f *Fit) object() *machine.Object {
	var inputs machine.Object
	for i := range f.Fitted.Inputs {
		in := &f.Fitted.Inputs[i]
		v := func(x float64) machine.Number {
			return machine.Number(machine.Tidy(results.Machine(in.Input.Dimension, x)))
		}
		var o machine.Object
		inputs.Add(in.Input.Name, o.Add("value", v(in.Value)).Add("sd", v(in.SD)).Add("before", v(in.Before)).Add("before_sd", v(in.BeforeSD)).Add("learned", machine.Number(in.Learned)).Add("next_sd", v(in.Next())))
	}
	return &inputs
}
