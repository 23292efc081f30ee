package proof

import (
	"math"
	"strconv"

	"ullage/sim/chamber"
	"ullage/sim/report/page"
	"ullage/sim/study"
)

// typicalWords go with every built-in strength.
const typicalWords = "typical, unverified: test your own"

// head says which chamber it is, and for what pressure it is looked at.
func (p *proof) head() page.Section {
	v := &p.Vessel
	var s page.Section
	f := page.Facts{
		{"chamber", p.Text(p.volume(), "L") + ", " + p.Size(v.Diameter) + " inside, tube " + p.Size(v.Length) + " long; " + string(v.Material)},
		{"closures", "forward " + p.closure(v.Forward) + "; aft " + p.closure(v.Aft)},
		{"working pressure", p.workingWords()},
	}
	s.Add(f)
	return s
}

// volume is the chamber's, as measured where [water] tells it.
func (p *proof) volume() float64 {
	if p.Service.Volume != 0 {
		return p.Service.Volume
	}
	return p.Vessel.Volume()
}

// closure describes one end in a few words.
func (p *proof) closure(c *chamber.Closure) string {
	if c == nil {
		return "not described"
	}
	return string(c.Shape) + ", lap " + p.Size(c.Overlap)
}

func (p *proof) workingWords() string {
	switch p.Basis {
	case study.WorkingProved:
		return p.workingFigure() + ", what the proof on record is for: the file does not fill it"
	case study.WorkingUnknown:
		return "none: give water.pressure, or chamber.proof once it is proved"
	}
	return p.workingFigure() + " gauge, from water.pressure"
}

// workingFigure is the working pressure: as it was set, or not above what it was proved for.
func (p *proof) workingFigure() string {
	if p.Basis == study.WorkingFilled {
		return p.Given(p.Service.Working, "bar")
	}
	return p.AtMost(p.Service.Working)
}

// layUp says what the tube is made of, what it weighs and what to buy.
func (p *proof) layUp() page.Section {
	s := page.Section{Name: "Wall and lay-up"}
	v, t := &p.Vessel, &p.Result.Tube
	basis := "as measured"
	if v.Wall == 0 {
		basis = "the sum of the plies"
	}
	f := page.Facts{{"wall", p.Text(t.Wall, "mm") + ", " + basis}}
	if t.FibreFraction > 0 {
		how := "usual in hand lay-up, unverified"
		switch {
		case v.Wall != 0 && len(v.Plies) > 0:
			how = "from the wall as measured"
		case v.FibreFraction != 0:
			how = "as given"
		}
		f = append(f, [2]string{"fibre", p.Given(t.FibreFraction, "%") + " of the volume, " + how})
	}
	f = append(f, [2]string{"tube", p.known(p.Mass, t.Mass, "unknown: give chamber.density") + " with its laps, without closures"})
	s.Add(f)
	if len(t.Cloth) > 0 {
		s.Add(p.clothTable())
		bought := "Areas and masses are what to buy, " + p.Given(v.Waste, "%") + " of them added for waste."
		if v.Waste == 0 {
			bought = "Nothing is added for waste: give chamber.waste."
		}
		s.Add(page.Prose(p.Mass(t.Resin) + " of resin to mix. " + bought))
	}
	if p.Result.Thick {
		s.Add(page.Alarm("The wall is over a tenth of the radius: its inner face has more stress than the mean that is shown."))
	}
	return s
}

// clothTable lists the plies from the inside out.
func (p *proof) clothTable() page.Grid {
	g := page.Grid{Heads: []page.GridHead{page.Words("ply"), page.Figures("layers"), page.Words("weave"), page.Figures("direction"), page.Figures("thickness"), page.Figures("cloth"), page.Figures("mass")}}
	for i, c := range p.Result.Tube.Cloth {
		ply := &p.Vessel.Plies[i]
		g.Rows = append(g.Rows, []string{page.Printable(c.Ply), strconv.Itoa(ply.Count), string(ply.Weave),
			p.Given(ply.Direction, "deg"), p.Text(c.Thickness, "mm"), p.ClothArea(c.Area), p.Mass(c.Mass)})
	}
	return g
}

// known writes a figure, or what to say where there is none.
func (p *proof) known(as func(float64) string, v float64, otherwise string) string {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return otherwise
	}
	return as(v)
}
