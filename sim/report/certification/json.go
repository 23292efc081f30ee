package certification

import (
	"io"
	"math"
	"strings"

	"ullage/sim/plan"
	"ullage/sim/quantity"
	"ullage/sim/report/machine"
	"ullage/sim/report/page"
	"ullage/sim/report/words"
	"ullage/sim/results"
	"ullage/sim/rocket"
	"ullage/thrust"
)

// WriteJSON writes the page as one object, in SI.
func WriteJSON(w io.Writer, r *rocket.Rocket, motors []plan.Certification, sys quantity.System) error {
	s := sheet{words.In(sys), r, motors}
	doc := new(machine.Object).Add("name", r.Name).Add("source", memory)
	doc.Add("flyer", new(machine.Object).Add("name", r.Flyer.Name).Add("certification", r.Flyer.Certification))
	own := &motors[0]
	doc.Add("verdict", Word(own)).Add("pass", own.Invalid == nil && own.Verdict.Pass())
	flights := machine.List{}
	for _, f := range plan.CertifyingFlights() {
		o := new(machine.Object).Add("flight", f.Name).Add("classes", strings.Split(f.Classes, ""))
		o.Put("impulse_above_ns", f.Above)
		o.Put("impulse_most_ns", f.Most)
		flights = append(flights, o.Add("asks", s.asks(f)))
	}
	all := machine.List{}
	for i := range motors {
		all = append(all, object(&motors[i]))
	}
	return machine.WriteDocument(w, doc.Add("asks", asked()).Add("flights", flights).Add("motors", all).Add("bring", s.bring()))
}

// object is a motor in JSON: null where a flight has no such thing.
func object(c *plan.Certification) *machine.Object {
	m := c.Rocket.Motor
	var flight, problem any
	if c.Flight.Name != "" {
		flight = c.Flight.Name
	}
	if c.Invalid != nil {
		problem = page.OneLine(c.Invalid)
	}
	o := new(machine.Object).Add("motor", c.Name).Add("class", thrust.Class(m.Impulse())).Add("impulse_ns", machine.Pointer(m.Impulse())).
		Add("flight", flight).Add("fit", words.FitObject(c.Fit)).Add("problem", problem).Add("verdict", Word(c)).Add("qualifies", c.Qualifies())
	failed, open := []string{}, []string{}
	for i := range c.Verdict.Checks {
		switch check := &c.Verdict.Checks[i]; {
		case check.Fails():
			failed = append(failed, check.Key)
		case !check.Judged:
			open = append(open, check.Key)
		}
	}
	o.Add("failed", failed).Add("not_judged", open)
	table := results.For(c.Rocket)
	for _, name := range figures {
		v := math.NaN()
		if d := c.Verdict.Day; d != nil {
			v = table.Must(name).Of(d)
		}
		o.Put(table.Must(name).Column(), v)
	}
	return o
}
