package checklist

import (
	"io"

	"ullage/sim/report/machine"
	"ullage/sim/report/page"
	"ullage/sim/report/words"
	"ullage/sim/rocket"
)

// cautions go with a drive's lists.
func cautions(r *rocket.Rocket) page.Section {
	s := page.Section{Name: "Cautions"}
	s.Add(page.Points(append(words.Cautions(r.Power), "Lists are common practice, no source, but where one is named. The rules of the range and local law come first; "+
		"anyone may stop at any step, and whoever stops is right until it is settled.")))
	return s
}

// Document is lists one after the other, as one page.
func Document(d *Day, lists []List) page.Document {
	doc := page.Document{}
	for i, l := range lists {
		if i == 0 {
			doc.Title = l.Title
		}
		if len(lists) > 1 {
			doc.Title = words.Name(d.Rocket) + ": checklists on " + string(d.Rocket.Power)
		}
		own := l.sections(len(lists) > 1)
		own[0].Begins = i > 0 // each is carried to where it is worked through
		doc.Sections = append(doc.Sections, own...)
	}
	doc.Sections = append(doc.Sections, cautions(d.Rocket))
	return doc
}

// sections are those of a list, under its title where several share a page.
func (l *List) sections(titled bool) []page.Section {
	head := page.Section{}
	if titled {
		head.Name = l.Title
	}
	for _, a := range l.Alarms {
		head.Add(page.Alarm(a))
	}
	if len(l.Facts) > 0 {
		head.Add(page.Facts(l.Facts))
	}
	if len(l.People) > 0 {
		head.Add(page.Prose("Who stands where:"), page.Facts(l.People))
	}
	n := 1
	for _, p := range l.Phases {
		head.Add(page.Steps{Phase: p.Name, From: n, Does: p.Steps})
		n += len(p.Steps)
	}
	for _, t := range l.Notes {
		head.Add(page.Prose(t))
	}
	out := []page.Section{}
	if len(head.Blocks) > 0 {
		out = append(out, head)
	}
	out = append(out, l.whole...)
	return append(out, l.Print...)
}

// WriteJSON writes them as one object.
func WriteJSON(w io.Writer, d *Day, lists []List) error {
	doc := new(machine.Object).Add("name", d.Rocket.Name).Add("power", d.Rocket.Power).
		Add("verdict", d.Verdict.Word()).Add("pass", d.Verdict.Pass())
	words.AddPressure(doc, d.Rocket)
	all := machine.List{}
	for i := range lists {
		all = append(all, lists[i].object())
	}
	return machine.WriteDocument(w, doc.Add("lists", all))
}

func (l *List) object() *machine.Object {
	alarms := append([]string{}, l.Alarms...)
	people, phases := machine.List{}, machine.List{}
	for _, p := range l.People {
		people = append(people, new(machine.Object).Add("who", p[0]).Add("stands", p[1]))
	}
	for _, p := range l.Phases {
		phases = append(phases, phase(p.Name, p.Steps))
	}
	for _, s := range l.whole {
		for _, b := range s.Blocks {
			switch b := b.(type) {
			case page.Steps:
				phases = append(phases, phase(b.Phase, b.Does))
			case page.Alarm:
				alarms = append(alarms, string(b))
			}
		}
	}
	return new(machine.Object).Add("list", l.Name).Add("alarms", alarms).Add("people", people).Add("phases", phases).Add("notes", append([]string{}, l.Notes...))
}

func phase(name string, steps []string) *machine.Object {
	return new(machine.Object).Add("phase", name).Add("steps", steps)
}
