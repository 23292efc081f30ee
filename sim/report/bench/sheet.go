package bench

import (
	"math"
	"strconv"

	"ullage/sim/bench"
	"ullage/sim/chamber"
	"ullage/sim/gates"
	"ullage/sim/quantity"
	"ullage/sim/report/page"
	"ullage/sim/report/words"
	"ullage/sim/study"
)

// sheet is what flights said on its way to a page.
type sheet struct {
	words.Printer
	*study.Benched
}

// Document is the sheet in the order in which a rocket is put together. What is not described says so by name.
func Document(b *study.Benched, sys quantity.System) page.Document {
	s := sheet{words.In(sys), b}
	doc := page.Document{Title: words.Name(b.Rocket) + ": seals, holes, alignment, settings, filling"}
	for _, x := range []page.Section{s.seal(), s.bay(), s.vent(), s.jig(), s.electronics(), s.filling(), s.cautions()} {
		if len(x.Blocks) > 0 {
			doc.Sections = append(doc.Sections, x)
		}
	}
	return doc
}

// keyed are the names of keys of a section.
func keyed(section string, keys []string) []string {
	var all []string
	for _, k := range keys {
		all = append(all, section+"."+k)
	}
	return all
}

// seal is the groove of an O-ring.
func (s *sheet) seal() page.Section {
	x := page.Section{Name: "Seal: O-ring or cord in a groove", Inputs: keyed("seal", []string{"cord", "bore", "groove", "width", "plug"})}
	g := &s.Rocket.Bench.Seal
	if g.Cord == 0 {
		x.Add(page.Prose("No seal is described: give seal.cord and seal.bore, and a groove for it is proposed; with seal.groove, seal.width and seal.plug it is judged."))
		return x
	}
	if g.Bore > 2*g.Cord {
		floor, width := g.Proposed()
		x.Add(page.Prose("For a ring of " + s.fine(g.Cord) + " and a bore of " + s.fine(g.Bore) + ": a groove with a floor of " + s.fine(floor) + " and a width of " +
			s.fine(width) + " squeezes it by 20 % and is filled to 72 % (common practice, no source)."))
	}
	if missing := keyed("seal", g.Missing()); len(missing) > 0 {
		x.Inputs = missing
		x.Add(page.Prose("To judge the one that is cut, give " + page.Listed(missing) + "."))
		return x
	}
	pressure := gates.SealPressure(s.Rocket)
	facts := page.Facts{
		{"room for it", s.fine(g.Depth()) + " of " + s.fine(g.Cord)},
		{"squeeze", s.Percent(g.Squeeze()) + ", of " + s.span(bench.LeastSqueeze, bench.MostSqueeze) + ": " + verdict(g.Squeeze() >= bench.LeastSqueeze && g.Squeeze() <= bench.MostSqueeze)},
		{"groove filled", s.Percent(g.Fill()) + ", at most " + s.Given(bench.MostFill, "%") + ": " + verdict(g.Fill() <= bench.MostFill)},
	}
	if stretch := g.Stretch(); !math.IsNaN(stretch) {
		facts = append(facts, [2]string{"stretch", s.Percent(stretch) + ", at most " + s.Given(bench.MostStretch, "%") + ": " + verdict(stretch >= 0 && stretch <= bench.MostStretch)})
	}
	facts = append(facts, s.extrusion(g, pressure))
	x.Add(facts, page.Prose("Squeeze, fill and stretch of static seals are from Parker's O-Ring Handbook, from memory; gaps from seal makers' tables without back-up rings, from memory. "+
		"The gap is all the play between plug and bore, as where the plug lies to one side; a bore that widens under pressure adds to it. Edges that cut "+
		"the ring, scratches and a dry ring leak at any squeeze."))
	return x
}

// extrusion is the gap against what the ring bridges at proof.
func (s *sheet) extrusion(g *bench.Seal, pressure float64) [2]string {
	text := s.fine(g.Gap())
	switch allowed := g.AllowedGap(pressure); {
	case pressure == 0:
		text += ": not judged without a pressure (water.pressure)"
	case math.IsNaN(allowed):
		text += ": not judged, the tables begin at 70 Shore A (seal.hardness)"
	case allowed == 0:
		text += ": too much, the tables end before the proof of " + s.Pressure(pressure)
	default:
		text += ", at most " + s.fine(allowed) + " at the proof of " + s.Pressure(pressure) + ": " + verdict(g.Gap() <= allowed)
	}
	return [2]string{"gap", text}
}

// verdict is the word on what is within its bounds or not.
func verdict(within bool) string {
	if within {
		return gates.WordGood
	}
	return "out of bounds"
}

func (s *sheet) span(low, high float64) string {
	return s.Given(low, "%") + " to " + s.Given(high, "%")
}

// fine is a length as fine as it is measured.
func (s *sheet) fine(v float64) string { return fine(s.Printer, v) }

// drill is a hole to the next drill, never below it.
func (s *sheet) drill(hole float64) string {
	if s.System == quantity.US {
		const thousandth, noise = 0.0254e-3, 1e-6
		return s.fine(math.Ceil(hole/thousandth-noise) * thousandth)
	}
	return strconv.FormatFloat(bench.DrillFor(hole)*1e3, 'f', 1, 64) + " mm"
}

// bay is the altimeter's.
func (s *sheet) bay() page.Section {
	x := page.Section{Name: "Static ports of the altimeter's bay", Inputs: []string{"bay.volume", "bay.ports"}}
	b := &s.Rocket.Bench.Bay
	if b.Volume == 0 {
		x.Add(page.Prose("No bay is described: give bay.volume."))
		return x
	}
	facts := page.Facts{{"drill", words.Plural(b.Number(), "hole") + " of " + s.drill(b.Port()) + " (" + s.fine(b.Port()) + " at least), evenly around"}}
	fastest := 0.0
	for i := range s.Settings {
		fastest = math.Max(fastest, s.Settings[i].Flight.Max.Speed)
	}
	if fastest > 0 {
		column := s.Rocket.Site.Column()
		air := column.Air(0)
		facts = append(facts, [2]string{"lag", "at " + s.Speed(fastest) + ", the fastest, the bay reads " + s.Rough(b.Lag(fastest, air.Pressure, air.Density), "m") + " low"})
	}
	x.Add(facts, page.Prose("One hole of 1/4 in for 100 in³, its area shared (common practice, no source). Sharp, square to the skin, a body's width or more from what disturbs the flow: the nose's "+
		"base, buttons, steps; the bay tight to its neighbours. [[hole]] puts them on a wrap to drill by."))
	return x
}

// vent is that of the sealed chamber, as holes to drill.
func (s *sheet) vent() page.Section {
	x := page.Section{Name: "Vent of the chamber beside a motor", Inputs: keyed("chamber.heating", []string{"temperature", "time", "rise"})}
	if s.Rocket.Motor == nil || s.Rocket.Water == nil && s.Rocket.Chamber == nil {
		return page.Section{}
	}
	if s.Sealed == nil || s.Sealed.Result.Heated == nil {
		x.Add(page.Prose("Not worked out: give [chamber.heating] with temperature and time."))
		return x
	}
	area := s.Sealed.Result.Heated.Wider().Area
	switch {
	case math.IsNaN(area):
		x.Add(page.Prose("Not worked out: give chamber.heating.rise, the pressure that the vent is to allow."))
		return x
	case math.IsInf(area, 1):
		x.Add(page.Alarm("Water left in it would boil: no hole is enough. Dry it, and leave it open."))
		return x
	case area == 0:
		x.Add(page.Prose("Its air does not warm up: nothing to vent."))
		return x
	}
	g := page.Grid{Heads: []page.GridHead{page.Figures("holes"), page.Figures("drill"), page.Figures("least")}}
	for _, n := range []int{1, 2, 3, 4, 6} {
		hole := bench.HoleOf(area, n)
		g.Rows = append(g.Rows, []string{strconv.Itoa(n), s.drill(hole), s.fine(hole)})
	}
	x.Add(g, page.Prose("To keep the rise below "+s.Given(s.Sealed.Vessel.Heating.Rise, "bar")+" with water left in it, through sharp holes (C_d "+words.Ratio(chamber.Orifice)+"). They have to be closed and proved for water "+
		"again: a plug that is forgotten lets the chamber empty itself, one that is left in seals it. Leave it open where you can."))
	return x
}
