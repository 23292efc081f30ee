package proof

import (
	"ullage/sim/chamber"
	"ullage/sim/report/page"
)

// cautions go with every figure about pressure.
func (p *proof) cautions() page.Section {
	return page.Section{Name: "Cautions", Blocks: []page.Block{page.Points{
		"A pressurised chamber can burst and kill. Never stand by one, not even for a moment; fill and release it from a distance.",
		"Laminates age, creep and soften with heat: room-cured epoxy from " + p.Warmth(chamber.EpoxySoftens) + " to " + p.Warmth(chamber.EpoxyGone) + " (common practice, no source), which a dark tube reaches in the sun.",
		"Every typical strength is built in, " + typicalWords + ". Hand lay-ups scatter, and bonds more than walls.",
		"Thin-wall theory. Left out: buckling of an ellipsoid's equator, bending where wall and closure meet, peel and the ends of laps, " +
			"holes and scratches, the push of the liquid under acceleration, blows.",
		"These are estimates. Local codes, the range officer and qualified people decide whether a chamber is pressurised.",
	}}}
}
