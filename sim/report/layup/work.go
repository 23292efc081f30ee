package layup

import (
	"math"
	"strconv"

	"ullage/sim/chamber"
	"ullage/sim/layup"
	"ullage/sim/report/page"
	"ullage/sim/report/words"
)

// Work is the order of work with what to look at in every step, to tick off. Common practice, no source.
func (s *Sheet) Work() []page.Block {
	var out []page.Block
	n := 1
	add := func(phase string, does []string) {
		if len(does) > 0 {
			out = append(out, page.Steps{Phase: phase, From: n, Does: does})
			n += len(does)
		}
	}
	add("Prepare", s.prepare())
	pot := 1
	for i := range s.plan.Parts {
		p := &s.plan.Parts[i]
		if p.Name == layup.Mount {
			continue
		}
		add("Lay up the "+string(p.Name), s.laying(p, &pot))
	}
	add("Trim, look, measure, weigh", s.trimming())
	add("Bond", s.bonding(&pot))
	add("Before any pressure", []string{
		"Let bonds cure as their data sheet says. Look at every fillet with a lamp; a hollow or a crack is opened and bonded again.",
		"No pressure yet. ullage checklist FILE proof leak has the next steps: with water, from behind a barrier.",
	})
	return out
}

func (s *Sheet) prepare() []string {
	c, p := s.vessel, &s.plan.Practice
	ratio := "the ratio of the data sheet"
	if p.Hardener > 0 {
		ratio = "100 parts of resin to " + words.Ratio(100*p.Hardener) + " of hardener"
	}
	weighs := ""
	for i, r := range s.plan.Rolls {
		if i > 0 {
			weighs += ", "
		}
		weighs += page.Printable(r.Ply) + " " + s.Mass(r.Mass)
	}
	out := []string{
		"Gloves, goggles and moving air, for everybody in the room. What the makers of resin and hardener warn of is read.",
		"Room, cloth, resin and mandrel are dry and as warm as the data sheet asks, and stay so until it has cured. Write the temperature down.",
		"Mandrel: " + s.Size(c.Diameter) + " outside, measured at three places, and at least " + cutSize(s.Printer, c.TubeLength()+2*p.Trim+2*handle) +
			" long; straight, smooth, waxed or wrapped with release film. Try now that it can be drawn out.",
	}
	for i := range s.plan.Parts {
		if x := &s.plan.Parts[i]; x.Name == layup.Forward || x.Name == layup.Aft {
			out = append(out, "Plug for the "+string(x.Name)+": "+s.Text(2*x.Radius, "mm")+" across, "+s.plugDepth(x)+
				"with a straight skirt of "+cutSize(s.Printer, s.closureOf(x.Name).Overlap+p.Trim)+" or more, waxed.")
		}
	}
	return append(out,
		"Cut every piece of the lists, number it, roll it up loosely; creased or dirty cloth is thrown away.",
		"Weigh the cloth dry: "+weighs+". Where it is off by more than 3 %, it is not the cloth of the file, and all figures change.",
		"Try the scales with something known. By weight, never by eye: "+ratio+". Weigh a trial mix first and let it cure hard before any of this begins.",
		"Lay out a flat sample to be laid with the same plies and the last of each pot: coupons for strength, and a witness that it cured.",
	)
}

// handle is by how much a mandrel sticks out at either end, m: common practice, no source.
const handle = 0.05

// plugDepth says how deep the dome of a plug is; nothing of a plate.
func (s *Sheet) plugDepth(x *layup.Part) string {
	if x.Plug.Depth() == 0 {
		return "flat, "
	}
	return string(s.closureOf(x.Name).Shape) + " " + s.Text(x.Plug.Depth(), "mm") + " deep, "
}

func (s *Sheet) closureOf(n layup.Name) *chamber.Closure {
	if n == layup.Forward {
		return s.vessel.Forward
	}
	return s.vessel.Aft
}

// laying goes through the pots of a part.
func (s *Sheet) laying(x *layup.Part, pot *int) []string {
	var out []string
	for _, q := range x.Pots {
		text := "Pot " + strconv.Itoa(*pot) + ": " + s.mixWords(q.Mixed) + ". Stir two minutes, scraping sides and bottom; write the time down. Wet out "
		if q.First == q.Last {
			text += "layer " + potLayers(q)
		} else {
			text += "layers " + potLayers(q)
		}
		text += " of the " + string(x.Name) + ": resin first, cloth into it, rolled from the middle outwards."
		if *pot == 1 {
			text += " Look: no white or dry spot, no bubble, no bridge, no wrinkle; warp as listed; seams and starts of wraps never on one another."
		} else {
			text += " Look, as before, at every layer before the next covers it."
		}
		out = append(out, text)
		*pot++
	}
	if s.plan.Practice.Peel == layup.PeelOutside {
		out = append(out, "Peel ply over all of the outside, rolled down. What resin comes through is wiped off: it is weight, and holds nothing.")
	}
	turn := "Turn it slowly until it gels, so that resin does not run to one side. "
	if x.Name != layup.Tube {
		turn = "Stand it dome up until it gels. "
	}
	return append(out, turn+"Cure as the data sheet says, warm if it says so. It is cured when the witness from its last pot breaks hard and a fingernail leaves no mark: soft or tacky parts are thrown away.")
}

func (s *Sheet) mixWords(m layup.Mix) string {
	if math.IsNaN(m.Hardener) {
		return "mix " + s.Mass(m.Whole) + " in all, resin and hardener by the data sheet's ratio"
	}
	return "mix " + s.Mass(m.Resin) + " of resin and " + s.Mass(m.Hardener) + " of hardener"
}

func (s *Sheet) trimming() []string {
	out := []string{
		"Dust mask and goggles. Draw the parts off, trim them by " + s.Size(s.plan.Practice.Trim) + " at every open edge, break the edges. The tube is then " +
			cutSize(s.Printer, s.vessel.TubeLength()) + " long.",
		"Look at wall and domes against a lamp, inside too: white patches, dry cloth, bubbles longer than a grain of rice, wrinkles, cracks. One of them in a wall is a part thrown away.",
		"Measure the wall at eight places: four around at either end. The mean is chamber.wall; a place a tenth thinner than that, or worse, is a part thrown away.",
	}
	for i := range s.plan.Parts {
		x := &s.plan.Parts[i]
		if key := weighKey(x.Name); key != "" {
			out = append(out, "Weigh the "+string(x.Name)+", bare: "+s.Mass(x.Mass)+" is expected. Write it into the file as "+key+".")
		}
	}
	return append(out, "Run ullage layup on the file again: it tells the fibre that was reached, hints at voids, and what the wall holds by estimate then.")
}

// weighKey is the input that holds the weight of a part.
func weighKey(n layup.Name) string {
	return map[layup.Name]string{layup.Tube: "layup.tube", layup.Forward: "layup.forward", layup.Aft: "layup.aft"}[n]
}

// layersKey is the input that says how many layers a closure has.
func layersKey(n layup.Name) string {
	return map[layup.Name]string{layup.Forward: "layup.forward_layers", layup.Aft: "layup.aft_layers"}[n]
}

func (s *Sheet) bonding(pot *int) []string {
	if len(s.plan.Bonds) == 0 {
		return nil
	}
	out := []string{"Try every joint dry: it goes together by hand with a gap of " + s.Size(s.plan.Bonds[0].GlueLine) + " all around and no more, or it is made again. Mark how deep it goes."}
	out = append(out, "Take the peel ply off now, not earlier; roughen both faces until no gloss is left, wipe them with a clean solvent, and do not touch them again. Mix no less than "+s.Mass(leastMix)+" of adhesive at once, by its own data sheet.")
	for _, b := range s.plan.Bonds {
		out = append(out, "Bond the "+b.Name+": "+s.Mass(b.Mixed.Whole)+" of adhesive at least, on both faces, pushed in with a turn until the mark; squeeze-out all around shows that it is full. Make a fillet, and hold it still until it gels.")
	}
	for i := range s.plan.Parts {
		x := &s.plan.Parts[i]
		if x.Name != layup.Mount {
			continue
		}
		for _, q := range x.Pots {
			out = append(out, "Pot "+strconv.Itoa(*pot)+": "+s.mixWords(q.Mixed)+". Lay patches "+potLayers(q)+" over the recovery mount, the smallest first, edges rolled down.")
			*pot++
		}
	}
	return out
}
