package measured

import (
	"fmt"
	"io"
	"math"
	"strings"

	"ullage/sim/flown"
	"ullage/sim/quantity"
	"ullage/sim/report/machine"
	"ullage/sim/report/page"
	"ullage/sim/report/words"
	"ullage/sim/results"
)

// WriteCompareText writes logs beside their predictions, and what they say of the uncertainties, unless that
// is nil.
func WriteCompareText(w io.Writer, all []*flown.Compared, says *flown.Pasts, sys quantity.System) error {
	p := words.In(sys)
	r := all[0].Rocket
	d := page.Document{Title: words.Title(r) + ": measured and predicted"}
	for _, c := range all {
		d.Sections = append(d.Sections, understood(p, c.Logged, c.Release), differences(p, c))
	}
	if x := past(p, says); len(x.Blocks) > 0 {
		d.Sections = append(d.Sections, x)
	}
	var end page.Section
	closing(&end, p, rocketsOf(all)...)
	d.Sections = append(d.Sections, end)
	_, err := io.WriteString(w, d.Text())
	return err
}

// The words of a measured figure beside the predicted ones.
const (
	wordInside  = "inside"
	wordOutside = "outside"
)

// Word is whether a measured figure is inside what the predicted flights do.
func Word(d *flown.Difference) string {
	if d.Inside {
		return wordInside
	}
	return wordOutside
}

// Off is how far a measured figure is off the predicted one, with its sign.
func Off(p words.Printer, d *flown.Difference) string {
	off := p.Row(&d.Row, d.Measured-d.Predicted)
	if !strings.HasPrefix(off, "-") && !strings.HasPrefix(off, "0 ") {
		off = "+" + off
	}
	return off
}

// differences are the results that a log tells.
func differences(p words.Printer, c *flown.Compared) page.Section {
	var x page.Section
	grid := page.Grid{Heads: []page.GridHead{page.Words(""), page.Figures("measured"), page.Figures("predicted"), page.Figures("off"), page.Figures("90 % of flights"), page.Words("")}}
	for i := range c.Differences {
		d := &c.Differences[i]
		grid.Rows = append(grid.Rows, []string{d.Row.Label, p.Row(&d.Row, d.Measured), p.Row(&d.Row, d.Predicted), Off(p, d),
			p.BareRow(&d.Row, d.Low) + " to " + p.BareRow(&d.Row, d.High), Word(d)})
	}
	if len(grid.Rows) == 0 {
		x.Add(page.Prose("The log tells none of the results of a flight by itself; a fit can still use it."))
		return x
	}
	x.Name = "Measured beside predicted"
	x.Add(grid)
	text := fmt.Sprintf("Both are read in the same way: the predicted flight is sampled like the log. The spread is that of %s with what is uncertain drawn at random.", words.Plural(c.Draws, "flight"))
	if best := c.Best(); best != nil && c.Width > 0 {
		text += fmt.Sprintf(" Speeds are slopes of parabolas through %d heights, %s.", c.Width, quantity.Format(float64(c.Width-1)*best.Every, second(), 2))
	}
	x.Add(page.Prose(text))
	if len(c.Stages) > 0 {
		stages := page.Grid{Heads: []page.GridHead{page.Words("the log's height is off by"), page.Figures("mean"), page.Figures("root mean square"), page.Figures("samples")}}
		for _, s := range c.Stages {
			stages.Rows = append(stages.Rows, []string{s.Name, p.Height(s.Mean), p.Height(s.RMS), fmt.Sprint(s.Count)})
		}
		x.Add(stages)
	}
	for _, s := range c.Suspicions {
		x.Add(page.Alarm(page.Printable(note(s))))
	}
	return x
}

// WriteCompareJSON writes one object: each log with how it was read and its results, SI, angles
// in degrees.
func WriteCompareJSON(w io.Writer, all []*flown.Compared, says *flown.Pasts) error {
	var out machine.Object
	var list machine.List
	for _, c := range all {
		var o, rows machine.Object
		o.Add("file", c.Log.Name).Add("release_s", machine.Number(c.Release)).Add("release_told", c.Pinned).Add("left_out", stretches(c.Logged)).Add("landing_s", machine.Number(c.Landing)).
			Add("heights", string(c.Heights)).Add("columns", columns(c.Logged))
		words.AddPressure(&o, c.Rocket)
		for i := range c.Differences {
			d := &c.Differences[i]
			v := func(x float64) machine.Number { return machine.Number(results.Machine(d.Row.Dimension, x)) }
			var row machine.Object
			row.Add("measured", v(d.Measured)).Add("predicted", v(d.Predicted)).Add("q05", v(d.Low)).Add("q95", v(d.High)).Add("inside", d.Inside)
			rows.Add(d.Row.Name, &row)
		}
		var stages machine.List
		for _, s := range c.Stages {
			var x machine.Object
			stages = append(stages, x.Add("name", s.Name).Add("from_s", machine.Number(s.From)).Add("to_s", machine.Number(s.To)).
				Add("mean_m", machine.Number(s.Mean)).Add("rms_m", machine.Number(s.RMS)).Add("samples", s.Count))
		}
		suspicions := make([]string, 0, len(c.Suspicions))
		for _, s := range c.Suspicions {
			suspicions = append(suspicions, s.Error())
		}
		o.Add("results", &rows).Add("stages", stages).Add("flights", c.Draws).Add("suspicions", suspicions)
		list = append(list, &o)
	}
	return machine.WriteLine(w, out.Add("logs", list).Add("uncertainties", pastObject(says)))
}

// stretches are what has no part, from and to, s by the log's clock.
func stretches(l *flown.Logged) [][2]machine.Number {
	out := make([][2]machine.Number, 0, len(l.LeftOut))
	for _, s := range l.LeftOut {
		out = append(out, [2]machine.Number{machine.Number(s.From), machine.Number(s.To)})
	}
	return out
}

// columns are the columns of a log that are used.
func columns(l *flown.Logged) machine.List {
	list := machine.List{}
	for i := range l.Channels {
		c := &l.Channels[i]
		var o machine.Object
		list = append(list, o.Add("quantity", string(c.Column.Quantity)).Add("column", c.Column.At).Add("head", c.Column.Head).
			Add("unit", c.Column.Unit.Name).Add("every_s", machine.Number(c.Every)).Add("step", machine.Number(c.Step)).Add("noise", machine.Number(c.Noise)))
	}
	return list
}

// WriteCompareCSV writes every sample of every log's columns beside what is predicted: the time
// after release, measured, predicted and their difference, SI.
func WriteCompareCSV(w io.Writer, all []*flown.Compared) error {
	if _, err := io.WriteString(w, "file,quantity,time_s,measured,predicted,residual\n"); err != nil {
		return err
	}
	var line []byte
	for _, c := range all {
		name := machine.Cell(c.Log.Name)
		for i := range c.Channels {
			ch := &c.Channels[i]
			times, predicted, measured := c.Course(ch)
			for k := range times {
				line = append(append(line[:0], name...), ',')
				line = append(append(line, ch.Column.Quantity...), ',')
				for j, v := range []float64{times[k], measured[k], predicted[k], measured[k] - predicted[k]} {
					if j > 0 {
						line = append(line, ',')
					}
					if !math.IsNaN(v) {
						line = machine.AppendNumber(line, machine.Tidy(v))
					}
				}
				if _, err := w.Write(append(line, '\n')); err != nil {
					return err
				}
			}
		}
	}
	return nil
}
