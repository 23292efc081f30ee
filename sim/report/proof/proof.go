package proof

import (
	"ullage/sim/quantity"
	"ullage/sim/report/page"
	"ullage/sim/report/words"
	"ullage/sim/study"
)

// Procedure is the proof with water by itself: its steps, what is to be expected, when a chamber is written off, and the
// record of it.
func Procedure(s *study.Structure, sys quantity.System) []page.Section {
	p := proof{words.In(sys), s}
	var out []page.Section
	for _, x := range []page.Section{p.procedure(), p.growth(), p.writeOff(), p.record()} {
		if len(x.Blocks) > 0 {
			out = append(out, x)
		}
	}
	return out
}

// proof is a structure on its way to a page.
type proof struct {
	words.Printer
	*study.Structure
}

// Document says all about a rocket's pressure chamber, in the order in which a builder asks: what is it, what does
// it hold, how is that proved, what if it bursts, what does a flight ask of it.
func Document(s *study.Structure, sys quantity.System) page.Document {
	p := proof{words.In(sys), s}
	doc := page.Document{Title: words.Name(s.Rocket) + ": the pressure chamber and its proof"}
	for _, x := range []page.Section{
		p.head(), p.layUp(), p.partsTable(), p.pressures(), p.procedure(), p.growth(), p.writeOff(), p.record(),
		p.storedEnergy(), p.sealed(), p.flightLoads(), p.mountLoads(), p.cautions(),
	} {
		if len(x.Blocks) > 0 {
			doc.Sections = append(doc.Sections, x)
		}
	}
	return doc
}
