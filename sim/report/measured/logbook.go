package measured

import (
	"cmp"
	"fmt"
	"io"
	"maps"
	"math"
	"slices"
	"strings"
	"time"

	"ullage/sim/flown"
	"ullage/sim/flown/logbook"
	"ullage/sim/gates"
	"ullage/sim/quantity"
	"ullage/sim/report/machine"
	"ullage/sim/report/page"
	"ullage/sim/report/words"
	"ullage/sim/results"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
)

// Book is a logbook to be written, for a rocket and one of its chambers.
type Book struct {
	*logbook.Book
	Rocket *rocket.Rocket
	Serial string // of the chamber; empty for all entries
	Today  time.Time
	System quantity.System
	// Uncounted says what keeps the checks from counting by the book; empty where nothing does.
	Uncounted string
	// Says is what its flights say of the uncertainties; nil for nothing.
	Says *flown.Pasts
}

// LogbookDocument is the book as a page.
func LogbookDocument(b Book) page.Document {
	p := words.In(b.System)
	d := page.Document{Title: words.Name(b.Rocket) + ": logbook"}
	d.Sections = append(d.Sections, b.entries(p), b.totals(p))
	if x := past(p, b.Says); len(x.Blocks) > 0 {
		d.Sections = append(d.Sections, x)
	}
	var end page.Section
	end.Add(page.Prose("A chamber that was dropped, cut, heated or pressed harder than its proof is for is proved again before it is filled. What is not in the book is not known here."))
	for _, c := range words.Cautions(rocket.WaterPower) {
		end.Add(page.Prose(c))
	}
	d.Sections = append(d.Sections, end)
	return d
}

// entries are the table.
func (b *Book) entries(p words.Printer) page.Section {
	x := page.Section{}
	grid := page.Grid{Heads: []page.GridHead{page.Words("date"), page.Words("what"), page.Figures("pressure"), page.Figures("held"), page.Figures("apogee"), page.Figures("predicted"), page.Figures("landing"), page.Words("chamber")}}
	given := func(v float64, unit string) string {
		if math.IsNaN(v) {
			return "-"
		}
		return p.Given(v, unit)
	}
	var remarks []string
	for i := range b.Entries {
		e := &b.Entries[i]
		result := func(of map[string]string) string {
			const name = "apogee.height"
			if row, v, ok := flown.Entered(b.Rocket, of, name); ok {
				return p.Row(row, v)
			}
			return cmp.Or(page.Printable(of[name]), "-")
		}
		grid.Rows = append(grid.Rows, []string{page.Printable(e.Date[:min(len(e.Date), len(time.DateOnly))]), string(e.Kind), given(e.Pressure, "bar"), given(e.Held, "s"),
			result(e.Measured), result(e.Predicted), given(e.Landing, "m/s"), cmp.Or(page.Printable(e.Chamber), "-")})
		for _, text := range []string{e.Damage, e.Note} {
			if text != "" {
				remarks = append(remarks, page.Printable(e.Date+": "+text))
			}
		}
	}
	if len(grid.Rows) == 0 {
		x.Add(page.Prose("No entry yet."))
		return x
	}
	x.Add(grid)
	if len(remarks) > 0 {
		x.Add(page.Points(remarks))
	}
	return x
}

// totals are the sums and what is due.
func (b *Book) totals(p words.Printer) page.Section {
	s := b.Of(b.Serial, b.Rocket.ProofWanted())
	x := page.Section{Name: "In all"}
	if b.Serial != "" {
		x.Name = "Chamber " + page.Printable(b.Serial)
	}
	facts := page.Facts{{"under pressure", words.Plural(s.Cycles, "time") + " in all"}}
	if s.Proof == nil {
		facts = append(facts, [2]string{"proof", "none in the book"})
	} else {
		text := "on " + page.Printable(s.Proof.Date)
		text = p.Pressure(s.Proof.Pressure) + " " + text
		if days, ok := b.days(s.Proof); ok {
			text += fmt.Sprintf(", %d days ago", days)
		}
		since := "since then"
		if !s.Enough {
			since = "since " + p.AtLeast(b.Rocket.ProofWanted()) // the last settles nothing
		}
		facts = append(facts, [2]string{"proof", text}, [2]string{since, words.Plural(s.Since, "time") + " under pressure" + most(p, s)})
	}
	if !math.IsNaN(s.Hardest) {
		facts = append(facts, [2]string{"hardest landing", p.Speed(s.Hardest)})
	}
	x.Add(facts)
	if b.Serial != "" && s.Unmarked > 0 {
		text := "1 entry that names no chamber counts"
		if s.Unmarked > 1 {
			text = fmt.Sprint(s.Unmarked) + " entries that name no chamber count"
		}
		x.Add(page.Prose(text + " as this one's."))
	}
	for _, due := range b.dues(p, s) {
		x.Add(page.Alarm(due))
	}
	if b.Uncounted != "" {
		x.Add(page.Prose(b.Uncounted))
	}
	return x
}

func most(p words.Printer, s logbook.State) string {
	text := ""
	if s.Most > 0 {
		text = ", up to " + p.Pressure(s.Most)
	}
	if s.Untold > 0 {
		text += ", " + words.Plural(s.Untold, "time") + " to a pressure not told"
	}
	return text
}

func (b *Book) days(e *logbook.Entry) (int, bool) {
	day, err := e.Day()
	if err != nil || b.Today.IsZero() {
		return 0, false
	}
	y, m, d := b.Today.Date()
	return int(time.Date(y, m, d, 0, 0, 0, 0, time.UTC).Sub(day).Hours() / 24), true
}

// dues are what makes a proof due, or leaves it unknown whether one is.
func (b *Book) dues(p words.Printer, s logbook.State) []string {
	var due []string
	booked := rocketfile.Booked(s)
	for _, c := range gates.Due(b.Rocket, booked, b.Today) {
		text := page.Printable(c.Name)
		switch {
		case c.Key == gates.CheckDamage:
			text = "a proof is due: damage on " + page.Printable(strings.Join(booked.Damage, "; "))
		case len(c.Remedies) > 0 && !c.Judged:
			text += ", " + c.Word + ": " + p.Remedy(c.Remedies[0])
		case math.IsNaN(c.Value):
			text += ", " + c.Word + " in the book: prove the chamber with water before it is filled with gas"
		default:
			text = "a proof is due: " + text + " " + p.CheckValue(&c) + ", " + c.Word + " (limit " + p.Bounded(c.Limit, "≥ ", "≤ ") + ")"
		}
		due = append(due, sentence(text))
	}
	return due
}

// WriteLogbookJSON writes one object: entries and totals, SI.
func WriteLogbookJSON(w io.Writer, b Book) error {
	s := b.Of(b.Serial, b.Rocket.ProofWanted())
	entries := machine.List{}
	for i := range b.Entries {
		e := &b.Entries[i]
		var o machine.Object
		for _, f := range logbook.Fields() {
			switch {
			case f.Number != nil:
				o.Add(f.Key+suffix(f.Dimension), machine.Number(machine.Tidy(results.Machine(f.Dimension, *f.Number(e)))))
			case f.Text != nil:
				o.Add(f.Key, *f.Text(e))
			case f.List != nil:
				o.Add(f.Key, append([]string{}, *f.List(e)...))
			case f.Results != nil:
				o.Add(f.Key, b.figures(*f.Results(e)))
			}
		}
		entries = append(entries, &o)
	}
	var out machine.Object
	out.Add("chamber", b.Serial).Add("entries", entries).Add("cycles", s.Cycles).Add("since_proof", s.Since)
	if s.Proof != nil {
		out.Add("proof_pa", machine.Number(s.Proof.Pressure)).Add("proof_date", s.Proof.Date)
	} else {
		out.Add("proof_pa", nil).Add("proof_date", nil)
	}
	dues := b.dues(words.In(quantity.Metric), s)
	if dues == nil {
		dues = []string{}
	}
	out.Add("most_pa", machine.Number(s.Most)).Add("untold", s.Untold).Add("hardest_landing_mps", machine.Number(s.Hardest)).Add("due", dues).Add("counted", b.Uncounted == "").Add("uncertainties", pastObject(b.Says))
	return machine.WriteLine(w, &out)
}

// figures are results as programs read them, by their names; what is no figure of this rocket's stays
// as it was written.
func (b *Book) figures(of map[string]string) *machine.Object {
	out := &machine.Object{}
	for _, name := range slices.Sorted(maps.Keys(of)) {
		if row, v, ok := flown.Entered(b.Rocket, of, name); ok {
			out.Add(name, machine.Number(machine.Tidy(results.Machine(row.Dimension, v))))
		} else {
			out.Add(name, of[name])
		}
	}
	return out
}

// suffix is a unit behind a key.
func suffix(d quantity.Dimension) string {
	u, ok := map[quantity.Dimension]string{quantity.Pressure: "pa", quantity.Time: "s", quantity.Temperature: "k", quantity.Length: "m",
		quantity.Angle: "deg", quantity.Speed: "mps", quantity.Wind: "mps"}[d]
	if !ok {
		return ""
	}
	return "_" + strings.ToLower(u)
}
