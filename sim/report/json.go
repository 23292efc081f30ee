package report

import (
	"io"
	"math"
	"slices"

	"ullage/sim"
	"ullage/sim/quantity"
	"ullage/sim/report/machine"
	"ullage/sim/report/page"
	"ullage/sim/results"
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

// addDocument adds what flew, every result of the table, and the warnings.
func addDocument(doc *machine.Object, fl *sim.Flight, t results.Table) {
	doc.Add("name", fl.Rocket.Name).Add("power", string(fl.Rocket.Power))
	var canopies canopyList
	for i := range t {
		g := &t[i]
		if g.Canopy == "" {
			addResults(doc, g, fl)
			continue
		}
		if canopies == nil {
			doc.Add("canopies", &canopies)
		}
		var c machine.Object
		addResults(c.Add("name", g.Canopy), g, fl)
		canopies = append(canopies, &c)
	}
	if canopies == nil {
		doc.Add("canopies", canopyList{})
	}
	warnings := []warningJSON{}
	for _, w := range fl.Warnings {
		warnings = append(warnings, warningJSON{w.Code, WarningText(w, quantity.Metric)})
	}
	doc.Add("warnings", warnings)
}

type (
	canopyList  []*machine.Object
	warningJSON struct {
		Code sim.WarningCode `json:"code"`
		Text string          `json:"text"`
	}
)

// addResults adds the results of a group, each below the keys of its row.
func addResults(to *machine.Object, g *results.Group, fl *sim.Flight) {
	for i := range g.Rows {
		at, path := to, g.Rows[i].Path()
		for len(path) > 1 {
			at, path = at.In(path[0]), path[1:]
		}
		at.Add(path[0], resultValue(&g.Rows[i], fl))
	}
}

// resultValue is a result as JSON has it: a number, a word, or null.
func resultValue(r *results.Row, fl *sim.Flight) any {
	if word := r.Word(fl); word != "" {
		return word
	}
	v := r.Of(fl)
	if math.IsNaN(v) {
		return nil
	}
	return number(results.Machine(r.Dimension, v))
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
	keys := []string{"name", "power"}
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
	return append(keys, "warnings")
}
