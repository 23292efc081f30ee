package report

import (
	"io"
	"math"

	"ullage/sim/gates"
	"ullage/sim/plan"
	"ullage/sim/quantity"
	"ullage/sim/report/machine"
	"ullage/sim/report/page"
	"ullage/sim/report/words"
	"ullage/sim/results"
	"ullage/sim/rocket"
)

// Outlook is what a day's planning found.
type Outlook struct {
	Rocket   *rocket.Rocket
	Forecast string // name of the file that the slots are from; empty for a table of winds
	Outcomes []plan.Outcome
	System   quantity.System
}

// OutlookDocument is the table, what each row needs below it, and the cautions.
func OutlookDocument(o Outlook) page.Document {
	p := words.In(o.System)
	doc := page.Document{Title: words.Name(o.Rocket) + ": planning the day"}
	var head page.Section
	text := "Every check in calm air, in the wind of the row and in the worst corner of what is uncertain"
	if o.Forecast != "" {
		text += "; times, winds and air by " + page.Printable(o.Forecast)
	}
	head.Add(page.Prose(text + "."))
	for _, drive := range o.drives() {
		if text := o.beyond(p, drive); text != "" {
			head.Add(page.Alarm(text))
		}
	}
	doc.Sections = append(doc.Sections, head)
	for _, drive := range o.drives() {
		doc.Sections = append(doc.Sections, o.table(p, drive))
	}
	last := page.Section{Name: "What this is"}
	last.Add(page.Prose("A change is one at a time, flown again with every check; where none is told, none that was tried makes all of them pass. "+
		"Gusts are what a forecast tells; wind that nobody told is no pass."),
		page.Prose("Within the limits given is all this can say: local law, the range officer and qualified people decide."))
	told := map[string]bool{}
	for _, drive := range o.drives() {
		for _, c := range words.Cautions(drive) {
			if !told[c] {
				last.Add(page.Prose(c))
			}
			told[c] = true
		}
	}
	doc.Sections = append(doc.Sections, last)
	return doc
}

// beyond tells of the most pressure of a drive that the chamber is not proved for; empty where it is proved for all.
func (o *Outlook) beyond(p words.Printer, drive rocket.Power) (text string) {
	most := math.Inf(-1)
	for i := range o.Outcomes {
		out := &o.Outcomes[i]
		if out.Drive != drive || !out.Known {
			continue
		}
		if told := p.Beyond(out.Verdict.Rocket); told != "" && out.Verdict.Rocket.Water.Pressure > most {
			text, most = told, out.Verdict.Rocket.Water.Pressure
		}
	}
	return text
}

// drives are those looked at, in order.
func (o *Outlook) drives() []rocket.Power {
	var out []rocket.Power
	for i := range o.Outcomes {
		d := o.Outcomes[i].Drive
		if len(out) > 0 && d == out[0] {
			break
		}
		out = append(out, d)
	}
	return out
}

// table is what becomes of one drive.
func (o *Outlook) table(p words.Printer, drive rocket.Power) page.Section {
	x := page.Section{Name: "On " + string(drive) + " power"}
	timed := o.Forecast != ""
	grid := page.Grid{}
	if timed {
		grid.Heads = append(grid.Heads, page.Words("time"))
	}
	grid.Heads = append(grid.Heads, page.Figures("wind"))
	if timed {
		grid.Heads = append(grid.Heads, page.Figures("gusts"))
	}
	grid.Heads = append(grid.Heads, page.Words("verdict"), page.Figures("apogee"), page.Figures("drift"))
	var needs page.Points
	for i := range o.Outcomes {
		out := &o.Outcomes[i]
		if out.Drive != drive {
			continue
		}
		var row []string
		if timed {
			row = append(row, out.Slot.Label)
		}
		row = append(row, p.SlotWind(out.Slot.Wind))
		if timed {
			row = append(row, p.SlotWind(out.Slot.Gust))
		}
		row = append(row, words.Outcome(out))
		for _, name := range []string{"apogee.height", "landing.drift"} {
			row = append(row, o.result(p, out, name))
		}
		grid.Rows = append(grid.Rows, row)
		if change := p.OutcomeChange(out); change != "" {
			at := out.Slot.Label
			if !timed {
				at = p.SlotWind(out.Slot.Wind)
			}
			needs = append(needs, page.Printable(at)+": "+change)
		}
	}
	x.Add(grid)
	if len(needs) > 0 {
		x.Add(needs)
	}
	return x
}

// result is one of the day's flight.
func (o *Outlook) result(p words.Printer, out *plan.Outcome, name string) string {
	if row, v, there := words.OutcomeResult(out, name); there {
		return p.Row(row, v)
	}
	return "-"
}

// WriteOutlookJSON writes one object: every slot on every drive. SI, angles in degrees.
func WriteOutlookJSON(w io.Writer, o Outlook) error {
	rows := []*machine.Object{}
	for i := range o.Outcomes {
		out := &o.Outcomes[i]
		row := new(machine.Object)
		if o.Forecast != "" {
			row.Add("time", out.Slot.Label).Add("gust_mps", number(out.Slot.Gust))
		}
		row.Add("wind_mps", number(out.Slot.Wind)).Add("power", string(out.Drive)).Add("verdict", words.Outcome(out)).Add("passes", out.Passes())
		fails, open := []string{}, []string{}
		if out.Known {
			for k := range out.Verdict.Checks {
				switch c := &out.Verdict.Checks[k]; {
				case c.Fails():
					fails = append(fails, c.Key)
				case !c.Judged:
					open = append(open, c.Key)
				}
			}
			t := results.For(out.Verdict.Rocket)
			row.Add("apogee_m", number(t.Must("apogee.height").Of(out.Verdict.Day))).Add("drift_m", number(t.Must("landing.drift").Of(out.Verdict.Day)))
			words.AddPressure(row, out.Verdict.Rocket)
		} else {
			row.Add("apogee_m", nil).Add("drift_m", nil).Add("pressure", nil)
			open = append(open, gates.LimitWind)
		}
		row.Add("fails", fails).Add("not_judged", open)
		if out.Change != nil {
			row.Add("change", words.In(quantity.Metric).Remedy(*out.Change)).Add("changed_verdict", out.Changed.Word())
		} else {
			row.Add("change", nil).Add("changed_verdict", nil)
		}
		rows = append(rows, row)
	}
	var doc machine.Object
	doc.Add("name", words.Name(o.Rocket)).Add("rows", rows)
	return machine.WriteLine(w, &doc)
}
