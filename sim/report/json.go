package report

import (
	"io"
	"slices"

	"ullage/sim"
	"ullage/sim/quantity"
	"ullage/sim/report/machine"
	"ullage/sim/report/page"
	"ullage/sim/report/words"
	"ullage/sim/results"
	"ullage/sim/rocket"
)

type number = machine.Number

// WriteJSON writes the results of a table for a flight as one JSON object, indented by
// two spaces, in SI units with angles in degrees. Each stands where its row says. The same
// flight gives the same bytes. Keys are always there; what did not happen is null.
func WriteJSON(w io.Writer, fl *sim.Flight, t results.Table) error {
	var doc machine.Object
	addDocument(&doc, fl, t)
	return machine.WriteDocument(w, &doc)
}

// WriteHeldJSON writes the same of a rocket that was held still. The rocket of the file tells whether
// a launch tube was left away for it.
func WriteHeldJSON(w io.Writer, fl *sim.Flight, t results.Table, file *rocket.Rocket) error {
	var doc machine.Object
	addDocument(&doc, fl, t)
	doc.Add("held", true).Add("without_launch_tube", words.TubeLeftAway(file) != "")
	return machine.WriteDocument(w, &doc)
}

// addDocument adds what flew, every result of the table, and the warnings.
func addDocument(doc *machine.Object, fl *sim.Flight, t results.Table) {
	doc.Add("name", fl.Rocket.Name).Add("power", string(fl.Rocket.Power)).Add("model", string(fl.Rocket.Flown()))
	told := false
	for i := range t {
		switch g := &t[i]; {
		case g.Canopy == "":
			addResults(doc, g, fl)
		case !told: // all of them, where the first stands
			doc.Add("canopies", canopies(t, fl))
			told = true
		}
	}
	if !told {
		doc.Add("canopies", machine.List{})
	}
	warnings := machine.List{}
	for _, w := range fl.Warnings {
		warnings = append(warnings, new(machine.Object).Add("code", string(w.Code)).Add("text", WarningText(w, quantity.Metric)))
	}
	doc.Add("warnings", warnings)
	words.AddPressure(doc, fl.Rocket)
}

// canopies are the results of each.
func canopies(t results.Table, fl *sim.Flight) machine.List {
	var out machine.List
	for i := range t {
		if t[i].Canopy != "" {
			c := new(machine.Object).Add("name", t[i].Canopy)
			addResults(c, &t[i], fl)
			out = append(out, c)
		}
	}
	return out
}

// addResults adds the results of a group, each below the keys of its row.
func addResults(to *machine.Object, g *results.Group, fl *sim.Flight) {
	for i := range g.Rows {
		at, path := to, g.Rows[i].Path()
		for len(path) > 1 {
			at, path = at.In(path[0]), path[1:]
		}
		addResult(at, path[0], &g.Rows[i], fl)
	}
}

// addResult adds a result: a number, a word, or null.
func addResult(to *machine.Object, key string, r *results.Row, fl *sim.Flight) {
	if word := r.Word(fl); word != "" {
		to.Add(key, word)
		return
	}
	to.Put(key, results.Machine(r.Dimension, r.Of(fl)))
}

// addFlight adds why there is no flight, null when there is one, and the keys of
// `fly --json`, null when there is none.
func addFlight(line *machine.Object, fl *sim.Flight, t results.Table, invalid error) *machine.Object {
	if fl != nil {
		addDocument(line.Add("invalid", nil), fl, t)
		return line
	}
	why := "no flight"
	if invalid != nil {
		why = page.OneLine(invalid)
	}
	line.Add("invalid", why)
	for _, key := range documentKeys(t) {
		line.Add(key, nil)
	}
	return line
}

// documentKeys are the keys of `fly --json` in order.
func documentKeys(t results.Table) []string {
	keys := []string{"name", "power", "model"}
	add := func(key string) {
		if !slices.Contains(keys, key) {
			keys = append(keys, key)
		}
	}
	for i := range t {
		if t[i].Canopy != "" {
			add("canopies")
			continue
		}
		for k := range t[i].Rows {
			add(t[i].Rows[k].Path()[0])
		}
	}
	add("canopies")
	return append(keys, "warnings", "pressure")
}
