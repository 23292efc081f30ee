package measured

import (
	"fmt"
	"io"
	"math"

	"ullage/sim"
	"ullage/sim/fault"
	"ullage/sim/flown"
	"ullage/sim/quantity"
	"ullage/sim/report/machine"
	"ullage/sim/report/page"
	"ullage/sim/report/words"
	"ullage/sim/results"
	"ullage/sim/rocket"
)

// Test is a static test to be written, with what a fit made of it.
type Test struct {
	*flown.Stand
	Fit    *Fit // nil without one
	System quantity.System
}

// figures are what a burn is told in.
func (t *Test) figures() []struct {
	row                  *results.Row
	measured, predicted  float64
	measuredW, expectedW string
} {
	table := results.For(t.Rocket)
	type figure = struct {
		row                  *results.Row
		measured, predicted  float64
		measuredW, expectedW string
	}
	m, e := &t.Burn, &t.Expected
	all := []figure{
		{table.Must("drive.impulse"), m.Impulse, e.Impulse, "", ""},
		{table.Must("max.thrust"), m.Peak, e.Peak, "", ""},
		{table.Must("drive.average"), m.Average, e.Average, "", ""},
		{table.Must("drive.burn"), m.BurnTime, e.BurnTime, "", ""},
	}
	if m.Class != "" || e.Class != "" {
		all = append(all, figure{table.Must("drive.class"), 0, 0, m.Class, e.Class})
	}
	return all
}

// WriteStandText writes a static test beside the prediction of the rocket held still.
func WriteStandText(w io.Writer, t Test) error {
	p := words.In(t.System)
	d := page.Document{Title: words.Title(t.Rocket) + ": a static test"}
	d.Sections = append(d.Sections, t.understood(p))
	x := page.Section{Name: "Measured beside predicted, held still"}
	grid := page.Grid{Heads: []page.GridHead{page.Words(""), page.Figures("measured"), page.Figures("predicted"), page.Figures("off")}}
	for _, f := range t.figures() {
		if f.row.IsWord() {
			grid.Rows = append(grid.Rows, []string{f.row.Label, orNone(f.measuredW), orNone(f.expectedW), ""})
			continue
		}
		off := fmt.Sprintf("%+.1f %%", 100*(f.measured/f.predicted-1))
		grid.Rows = append(grid.Rows, []string{f.row.Label, figure(p, f.row, f.measured), figure(p, f.row, f.predicted), off})
	}
	if !math.IsNaN(t.Start) {
		grid.Rows = append(grid.Rows, []string{"pressure before", p.Pressure(t.Start), p.Pressure(t.Rocket.Water.Pressure), fmt.Sprintf("%+.1f %%", 100*(t.Start/t.Rocket.Water.Pressure-1))})
	}
	x.Add(grid, page.Prose("The burn time is that between 5 % of the peak. Both are read in the same way: the prediction is sampled like the log."))
	const far = 1.6
	if ratio := t.Impulse / t.Expected.Impulse; ratio > far || ratio < 1/far {
		x.Add(page.Alarm(fmt.Sprintf("The impulse is %.2g times what is predicted: look whether the file's drive and settings are those of the test (--set power=motor, --set water.pressure=…), and whether the cell's unit is another (--column 'thrust=2 kgf').", ratio)))
	}
	if text := t.doubt(p); text != "" {
		x.Add(page.Alarm(text))
	}
	for _, text := range t.Beyond() {
		x.Add(page.Alarm(text))
	}
	if text := words.TubeLeftAway(t.Rocket); text != "" {
		x.Add(page.Prose(text))
	}
	d.Sections = append(d.Sections, x)
	if t.Fit != nil {
		d.Sections = append(d.Sections, t.Fit.inputs(p))
		if t.Fit.Written != "" {
			var kept page.Section
			kept.Add(page.Prose("Written to " + page.Printable(t.Fit.Written) + "."))
			d.Sections = append(d.Sections, kept)
		}
	}
	d.Sections = append(d.Sections, standCautions(t.Rocket))
	_, err := io.WriteString(w, d.Text())
	return err
}

// doubt says why the figures cannot be relied on; empty for no reason.
func (t *Test) doubt(p words.Printer) string {
	const most = 0.1 // of the peak: a choice of this program's, no source
	switch {
	case t.Begun:
		return "The log begins in the burn: impulse and burn time are those of the part in it, and the zero before is not known."
	case math.Abs(t.Drift) > most*t.Peak:
		return fmt.Sprintf("The zero drifts by %s, %.0f %% of the greatest thrust, so that the figures cannot be relied on: look whether the log begins or ends in the burn, whether the cell slipped, and how the rocket stands (--nozzle).",
			p.Force(t.Drift), 100*math.Abs(t.Drift)/t.Peak)
	}
	return ""
}

// Beyond says what pressures no proof is for: the file's, and the one the log begins with.
func (t *Test) Beyond() []string {
	p, r := words.In(t.System), t.Rocket
	all := beyond(p, r)
	if r.Water == nil || math.IsNaN(t.Start) {
		return all
	}
	told := r.Clone()
	told.Water.Pressure = t.Start
	if text := p.Beyond(told); text != "" && t.Start > r.Water.Pressure {
		all = append(all, "The log begins at "+text)
	}
	return all
}

func orNone(word string) string {
	if word == "" {
		return "none"
	}
	return word
}

func figure(p words.Printer, r *results.Row, v float64) string {
	if r.Dimension == quantity.Impulse {
		return p.Impulse(v)
	}
	return p.Row(r, v)
}

// understood is how the test was read.
func (t *Test) understood(p words.Printer) page.Section {
	log := t.Log
	x := page.Section{Name: page.Printable(log.Name)}
	facts := page.Facts{{"read as", fmt.Sprintf("%d rows, cells parted by %s, %s", log.Rows, log.Separator, log.Encoding)}}
	for i := range t.Channels {
		c := &t.Channels[i]
		facts = append(facts, [2]string{string(c.Column.Quantity), page.Printable(c.Column.Name()) + ", " + unitOf(&c.Column) + "; " + channel(p, c)})
	}
	stands := map[flown.Mount]string{
		flown.NozzleDown: "nozzle down: the reading gains the weight of what leaves, which is taken off",
		flown.NozzleUp:   "nozzle up: the reading loses the weight of what leaves, which is put back",
		flown.Lying:      "lying: the reading is the thrust",
	}[t.Mount]
	if t.Own {
		stands = "samples of this program's own flight, held still: the thrust itself, no weight in it"
	}
	if t.Flipped {
		stands += "; the cell counts the other way round"
	}
	facts = append(facts, [2]string{"stands", stands},
		[2]string{"zero", "tare " + p.Force(t.Tare) + ", drifts by " + p.Force(t.Drift)},
		[2]string{"thrust", fmt.Sprintf("from %.3f s to %.3f s by the log's clock", t.Onset, t.End)})
	if t.Entry != nil {
		facts = append(facts, [2]string{"the day", page.Printable(t.Day)})
	}
	x.Add(facts)
	for _, n := range append(append(fault.List(nil), log.Notes...), t.Notes...) {
		x.Add(page.Prose(page.Printable(note(n))))
	}
	return x
}

// standCautions are those of one who tests on the ground.
func standCautions(r *rocket.Rocket) page.Section {
	var x page.Section
	x.Add(page.Prose("On a stand everyone is away from it and behind cover, and it is started from a distance: what bursts or comes loose flies as far as in any other test."))
	cautions(&x, r)
	return x
}

// WriteStandJSON writes one object: the burn measured and predicted, SI.
func WriteStandJSON(w io.Writer, t Test) error {
	var out, measured, predicted machine.Object
	put := func(o *machine.Object, b *flown.Burn) *machine.Object {
		o.Add("impulse_ns", machine.Number(b.Impulse)).Add("peak_n", machine.Number(b.Peak)).Add("average_n", machine.Number(b.Average)).Add("burn_s", machine.Number(b.BurnTime))
		if b.Class == "" {
			return o.Add("class", nil)
		}
		return o.Add("class", b.Class)
	}
	out.Add("file", t.Log.Name).Add("nozzle", string(t.Mount)).Add("flipped", t.Flipped).Add("tare_n", machine.Number(t.Tare)).
		Add("drift_n", machine.Number(t.Drift)).Add("noise_n", machine.Number(t.Noise)).Add("onset_s", machine.Number(t.Onset)).Add("end_s", machine.Number(t.End)).
		Add("pressure_pa", machine.Number(t.Start)).Add("measured", put(&measured, &t.Burn)).Add("predicted", put(&predicted, &t.Expected))
	out.Add("own_samples", t.Own).Add("begins_in_burn", t.Begun)
	if text := t.doubt(words.In(quantity.Metric)); text != "" {
		out.Add("doubt", text)
	} else {
		out.Add("doubt", nil)
	}
	words.AddPressure(&out, t.Rocket)
	out.Add("without_launch_tube", words.TubeLeftAway(t.Rocket) != "")
	if t.Fit != nil {
		out.Add("inputs", t.Fit.object())
	}
	return machine.WriteLine(w, &out)
}

// WriteStandCSV writes the thrust after the onset, measured and predicted, SI.
func WriteStandCSV(w io.Writer, t Test) error {
	if _, err := io.WriteString(w, "time_s,thrust_n,predicted_n\n"); err != nil {
		return err
	}
	end := t.Predicted.Duration()
	predicted := make([]float64, len(t.T))
	t.Predicted.Read(t.T, func(i int, s sim.Sample) {
		if t.T[i] >= 0 && t.T[i] <= end {
			predicted[i] = s.Thrust
		}
	})
	var line []byte
	for i := range t.T {
		line = machine.AppendNumber(line[:0], machine.Tidy(t.T[i]))
		line = machine.AppendNumber(append(line, ','), machine.Tidy(t.F[i]))
		line = machine.AppendNumber(append(line, ','), machine.Tidy(predicted[i]))
		if _, err := w.Write(append(line, '\n')); err != nil {
			return err
		}
	}
	return nil
}

// WriteHeldText writes what a rocket that is held still would show on a stand. The rocket of the file
// tells what was left away to hold it.
func WriteHeldText(w io.Writer, fl *sim.Flight, file *rocket.Rocket, sys quantity.System) error {
	p := words.In(sys)
	r := fl.Rocket
	table := results.For(r)
	d := page.Document{Title: words.Title(r) + ", held still"}
	var x page.Section
	facts := page.Facts{}
	for _, name := range []string{"drive.impulse", "max.thrust", "drive.average", "drive.burn", "drive.class", "startup.thrust", "liquid_out.time", "liquid_out.left"} {
		row := table.Find(name)
		if row == nil {
			continue
		}
		if word := row.Word(fl); word != "" {
			facts = append(facts, [2]string{row.Label, word})
		} else if v := row.Of(fl); !row.IsWord() && !math.IsNaN(v) && !(name == "startup.thrust" && v == 0) {
			facts = append(facts, [2]string{row.Label, figure(p, row, v)})
		}
	}
	x.Add(facts)
	for _, text := range beyond(p, r) {
		x.Add(page.Alarm(text))
	}
	if text := words.TubeLeftAway(file); text != "" {
		x.Add(page.Prose(text))
	}
	d.Sections = append(d.Sections, x, standCautions(r))
	_, err := io.WriteString(w, d.Text())
	return err
}
