package layup

import (
	"math"
	"strconv"
	"strings"

	"ullage/sim/chamber"
	"ullage/sim/layup"
	"ullage/sim/quantity"
	"ullage/sim/report/page"
	"ullage/sim/report/words"
	"ullage/sim/rocket"
)

// Sheet is a plan on its way to a page.
type Sheet struct {
	words.Printer
	rocket *rocket.Rocket
	vessel *chamber.Chamber
	plan   layup.Plan
}

// For is the sheet of a rocket whose chamber is laid up; its error is that of rocket.LayUp.
func For(r *rocket.Rocket, sys quantity.System) (*Sheet, error) {
	plan, err := r.LayUp()
	if err != nil {
		return nil, err
	}
	return &Sheet{words.In(sys), r, r.Vessel(), plan}, nil
}

// Plan is what the sheet tells.
func (s *Sheet) Plan() *layup.Plan { return &s.plan }

// Document says everything, in the order in which a builder needs it.
func (s *Sheet) Document() page.Document {
	doc := page.Document{Title: words.Name(s.rocket) + ": laying up the chamber"}
	doc.Sections = append(doc.Sections, s.head(), s.expected())
	doc.Sections = append(doc.Sections, s.cutting()...)
	doc.Sections = append(doc.Sections, s.rolls(), s.resin(), s.bonds())
	work := page.Section{Name: "Order of work"}
	work.Add(s.Work()...)
	doc.Sections = append(doc.Sections, work, s.weighIn(), s.record(), s.cautions())
	kept := doc.Sections[:0]
	for _, x := range doc.Sections {
		if len(x.Blocks) > 0 {
			kept = append(kept, x)
		}
	}
	doc.Sections = kept
	return doc
}

func (s *Sheet) head() page.Section {
	v := s.vessel
	var x page.Section
	how := "as given"
	if s.plan.Usual {
		how = "usual in hand lay-up, unverified"
	}
	x.Add(page.Facts{
		{"chamber", s.Size(v.Diameter) + " inside, tube " + cutSize(s.Printer, v.TubeLength()) + " long with the laps of its closures; " + string(v.Material)},
		{"fibre", s.Given(s.plan.Fibre, "%") + " of the volume is meant, " + how},
		{"cut with", "trim " + s.Size(s.plan.Practice.Trim) + " at every open edge, overlap " + s.Size(s.plan.Practice.Overlap) + "; " + string(s.plan.Practice.Wrap)},
	})
	if s.plan.Practice.Hardener == 0 {
		x.Add(page.Alarm("The file has no mix ratio: give layup.hardener from the data sheet. No ratio is usual, and a wrong one never cures."))
	}
	return x
}

// expected is what the parts are to be.
func (s *Sheet) expected() page.Section {
	x := page.Section{Name: "Parts as they are to be"}
	g := page.Grid{Heads: []page.GridHead{page.Words("part"), page.Figures("layers"), page.Figures("wall"), page.Figures("cloth"), page.Figures("resin in it"), page.Figures("weight")}}
	for i := range s.plan.Parts {
		p := &s.plan.Parts[i]
		g.Rows = append(g.Rows, []string{string(p.Name), strconv.Itoa(Layers(p)), s.Text(p.Wall, "mm"), s.Mass(p.Dry), s.Mass(p.Mass - p.Dry), s.Mass(p.Mass)})
	}
	x.Add(g, page.Prose("Trimmed and bare, overlaps in the weight and not in the wall. Densities are built in, typical, unverified. "+
		"Whether such a wall holds, ullage proof tells; closures are as thick as the file says, in whole layers of "+s.closureCloth()+"."))
	return x
}

// Layers is how many layers of cloth a part has.
func Layers(p *layup.Part) int {
	n := 0
	for i := range p.Plies {
		n = max(n, p.Plies[i].Last)
	}
	return n
}

func (s *Sheet) closureCloth() string {
	return s.Given(s.plan.Practice.ClosureClothInForce(s.vessel), "g/m2")
}

// Piece names the pieces of a row of the cutting list: "2 sheets", "6 gores".
func Piece(p *layup.Ply) string { return words.Plural(p.Pieces, string(p.Shape)) }

// Span names the layers from one to another: "3", "1 to 4".
func Span(first, last int) string {
	if first == last {
		return strconv.Itoa(first)
	}
	return strconv.Itoa(first) + " to " + strconv.Itoa(last)
}

// Cut is the size that a piece is cut to, rounded up: "1160 × 665 mm".
func Cut(p words.Printer, x *layup.Ply) string {
	if x.Shape == layup.Sleeve {
		return cutSize(p, x.Length) + " long"
	}
	length, unit, _ := strings.Cut(cutSize(p, x.Length), " ")
	width, _, _ := strings.Cut(cutSize(p, x.Width), " ")
	return length + " × " + width + " " + unit
}

// cutSize is a length to cut to: whole millimetres or sixteenths of an inch, never short.
func cutSize(p words.Printer, v float64) string {
	const inch, noise = 0.0254, 1e-6
	if p.System == quantity.US {
		return strconv.FormatFloat(math.Ceil(v/inch*16-noise)/16, 'f', -1, 64) + " in"
	}
	return strconv.FormatFloat(math.Ceil(v*1e3-noise), 'f', 0, 64) + " mm"
}

// Rows are the cutting list of a part: layers, cloth, pieces, the size of each, the warp's angle, area. Layers whose
// pieces are cut to the same size share a row.
func Rows(p words.Printer, x *layup.Part) [][6]string {
	var out [][6]string
	for i := 0; i < len(x.Plies); {
		y := &x.Plies[i]
		n, area, last := 0, 0., y.Last
		for ; i < len(x.Plies); i++ {
			z := &x.Plies[i]
			if z.Name != y.Name || z.Cloth != y.Cloth || Piece(z) != Piece(y) || Cut(p, z) != Cut(p, y) || n > 0 && z.First != last+1 {
				break
			}
			n, area, last = n+1, area+z.Area, z.Last
		}
		pieces := Piece(y)
		switch {
		case n > 1 && y.Pieces == 1:
			pieces = words.Plural(n, string(y.Shape))
		case n > 1:
			pieces = strconv.Itoa(n) + " × " + pieces
		}
		out = append(out, [6]string{Span(y.First, last), p.Given(y.Cloth, "g/m2") + " " + page.Printable(y.Name), pieces, Cut(p, y), p.Given(y.Warp, "deg"), p.ClothArea(area)})
	}
	return out
}

// cutting is a list of pieces a part.
func (s *Sheet) cutting() []page.Section {
	var all []page.Section
	for i := range s.plan.Parts {
		p := &s.plan.Parts[i]
		x := page.Section{Name: "Cut for the " + string(p.Name)}
		g := page.Grid{Heads: []page.GridHead{page.Words("layer"), page.Words("cloth"), page.Words("pieces"), page.Words("each cut to"), page.Figures("warp"), page.Figures("area")}, Ticks: true}
		for _, row := range Rows(s.Printer, p) {
			g.Rows = append(g.Rows, row[:])
		}
		x.Add(g)
		x.Add(s.cuttingNotes(p)...)
		all = append(all, x)
	}
	return all
}

// cuttingNotes say how the pieces lie.
func (s *Sheet) cuttingNotes(p *layup.Part) []page.Block {
	text := "Sizes are length along the axis by width around, trim and overlap in them; warp is its angle to the length."
	joints, gores, one := 0, false, false
	for i := range p.Plies {
		y := &p.Plies[i]
		joints += y.Joints
		gores = gores || y.Shape == layup.Gore
		one = one || y.Shape == layup.Sheet && y.Last > y.First
	}
	if one {
		text += " Several layers in one row are one wrap that goes around so often."
	}
	if gores {
		text = "A gore is as long as its middle with skirt and trim, and as wide as its rim; warp is its angle to the middle, where cloth gives. " +
			"They overlap each other by " + s.Size(s.plan.Practice.Overlap) + "; turn every layer by half a gore, so that no seam lies on another, and trim tips so that they meet at the pole. " +
			"ullage patterns draws them at true size. The boss's hole is cut once cured."
	}
	if p.Name == layup.Mount {
		text = "Patches over the bond, the smallest first; corners rounded."
	}
	out := []page.Block{page.Prose(text)}
	if joints > 0 {
		out = append(out, page.Prose("The roll is narrower than some pieces: their parts overlap by "+s.Size(s.plan.Practice.Overlap)+
			", where fibres that end carry through the resin alone. Wider cloth is better; joints of two layers never lie on each other."))
	}
	return out
}

// rolls is what to take off the rolls.
func (s *Sheet) rolls() page.Section {
	x := page.Section{Name: "Off the rolls"}
	g := page.Grid{Heads: []page.GridHead{page.Words("cloth"), page.Figures("cut"), page.Figures("weighs dry"), page.Figures("length of roll")}}
	for _, r := range s.plan.Rolls {
		length := cutSize(s.Printer, r.Length)
		if r.Sleeve {
			length += " of sleeve"
		}
		g.Rows = append(g.Rows, []string{s.Given(r.Cloth, "g/m2") + " " + page.Printable(r.Ply), s.ClothArea(r.Area), s.Mass(r.Mass), length})
	}
	if s.plan.Peel > 0 {
		g.Rows = append(g.Rows, []string{"peel ply", s.ClothArea(s.plan.Peel), "-", "-"})
	}
	x.Add(g, page.Prose("Rolls "+s.Size(s.plan.Practice.ClothWidth)+" wide, pieces side by side as they fit, nothing added for mistakes."))
	return x
}

// mixCells are a mix as cells: whole, resin, hardener.
func (s *Sheet) mixCells(m layup.Mix) []string {
	if math.IsNaN(m.Hardener) {
		return []string{s.Mass(m.Whole), "unknown", "unknown"}
	}
	return []string{s.Mass(m.Whole), s.Mass(m.Resin), s.Mass(m.Hardener)}
}

// resin is what is mixed, pot by pot.
func (s *Sheet) resin() page.Section {
	x := page.Section{Name: "Resin, pot by pot"}
	n, g := 0, page.Grid{Heads: []page.GridHead{page.Words("pot"), page.Words("part"), page.Words("layers"), page.Figures("mixed"), page.Figures("resin"), page.Figures("hardener")}, Ticks: true}
	for i := range s.plan.Parts {
		for _, q := range s.plan.Parts[i].Pots {
			n++
			g.Rows = append(g.Rows, append([]string{strconv.Itoa(n), string(s.plan.Parts[i].Name), potLayers(q)}, s.mixCells(q.Mixed)...))
		}
	}
	x.Add(g)
	cells := s.mixCells(s.plan.Mixed)
	text := "With the bonds below " + cells[0] + " in all"
	if s.plan.Practice.Hardener > 0 {
		text += ", " + cells[1] + " of resin and " + cells[2] + " of hardener, 100 to " + words.Ratio(100*s.plan.Practice.Hardener) + " by weight"
	}
	text += "; " + s.Given(s.vessel.Waste, "%") + " of it (chamber.waste) for what stays in cups, rollers and peel ply. No pot holds more than " + s.Mass(s.plan.Practice.Pot) +
		" (layup.pot): more in a cup heats itself up and gels early."
	switch life := s.plan.Practice.PotLife; {
	case life > 0:
		text += " Each is used up within " + minutes(life) + " of the first stir, or thrown away."
	default:
		text += " How long a pot lasts is not known: give layup.pot_life."
	}
	x.Add(page.Prose(text))
	return x
}

func minutes(v float64) string { return words.Plural(int(math.Round(v/60)), "minute") }

func potLayers(q layup.Pot) string {
	text := Span(q.First, q.Last)
	if q.Of > 1 {
		text += ", pot " + strconv.Itoa(q.Share) + " of " + strconv.Itoa(q.Of)
	}
	return text
}

func (s *Sheet) bonds() page.Section {
	x := page.Section{Name: "Adhesive"}
	if len(s.plan.Bonds) == 0 {
		return x
	}
	g := page.Grid{Heads: []page.GridHead{page.Words("joint"), page.Figures("area"), page.Figures("glue line"), page.Figures("adhesive")}, Ticks: true}
	for _, b := range s.plan.Bonds {
		g.Rows = append(g.Rows, []string{b.Name, s.Text(b.Area, "cm2"), s.Size(b.GlueLine), s.Mass(b.Mixed.Whole)})
	}
	x.Add(g, page.Prose("What fills the glue line, as dense as the resin; a fillet takes more. Mix no less than "+s.Mass(leastMix)+
		" at once, whatever a joint takes: less is not weighed right (common practice, no source)."))
	return x
}

// leastMix is what can be weighed on a kitchen scale to a few per cent of hardener, kg: common practice, no source.
const leastMix = 0.02

func (s *Sheet) cautions() page.Section {
	return page.Section{Name: "Cautions", Blocks: []page.Block{page.Points{
		"Uncured resin, hardener and the dust of cured laminates harm skin, eyes and lungs: gloves, goggles, moving air, a dust mask; read what their makers warn of.",
		"What is laid up is no pressure chamber before it was proved with water: never try it with gas, at no pressure.",
		"These are estimates from typical figures. Local law and qualified people decide whether a chamber is pressurised.",
	}}}
}
