package report

import (
	"io"

	"ullage/sim/quantity"
	"ullage/sim/study"
)

// WriteProofText writes all about a rocket's pressure chamber for a terminal: what it is
// made of and holds, how to prove it with water, what it stores, and what a flight asks
// of it and of the recovery mount.
func WriteProofText(w io.Writer, s *study.Structure, sys quantity.System) error {
	page := newProof(s, sys)
	_, err := io.WriteString(w, page.text())
	return err
}

// WriteProofMarkdown writes the same as a document to print and keep beside the pump,
// with boxes to tick and blanks for what is measured.
func WriteProofMarkdown(w io.Writer, s *study.Structure, sys quantity.System) error {
	page := newProof(s, sys)
	_, err := io.WriteString(w, page.markdown())
	return err
}

// proof is a structure on its way to a page.
type proof struct {
	printer
	*study.Structure
}

// newProof says everything, in the order in which a builder asks: what is it, what does
// it hold, how is that proved, what if it bursts, what does a flight ask of it.
func newProof(s *study.Structure, sys quantity.System) page {
	p := proof{printer{sys}, s}
	name := printable(s.Rocket.Name)
	if name == "" {
		name = "A rocket without a name"
	}
	doc := page{title: name + ": the pressure chamber and its proof"}
	for _, x := range []section{
		p.head(), p.layUp(), p.partsTable(), p.pressures(), p.procedure(), p.growth(), p.writeOff(), p.record(),
		p.storedEnergy(), p.sealed(), p.flightLoads(), p.mountLoads(), p.cautions(),
	} {
		if len(x.blocks) > 0 {
			doc.sections = append(doc.sections, x)
		}
	}
	return doc
}
