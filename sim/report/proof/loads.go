package proof

import (
	"math"

	"ullage/sim"
	"ullage/sim/gates"
	"ullage/sim/report/page"
)

// flightLoads are the greatest pushes of every drive, and what the pressure does to the
// ends of the chamber.
func (p *proof) flightLoads() page.Section {
	s := page.Section{Name: "Loads of the flight"}
	if len(p.Flights) > 0 {
		g := page.Grid{Heads: []page.GridHead{page.Words("on"), page.Figures("thrust"), page.Figures("acceleration"), page.Figures(""), page.Figures("start-up")}}
		for _, fl := range p.Flights {
			start := "-"
			if fl.Startup.Thrust > 0 {
				start = p.Force(fl.Startup.Thrust) + " for " + p.Text(fl.Startup.Duration, "ms")
			}
			g.Rows = append(g.Rows, []string{string(fl.Rocket.Power), p.Force(fl.Max.Thrust), p.Acceleration(fl.Max.Acceleration), p.Gravities(fl.Max.Acceleration), start})
		}
		s.Add(g)
	}
	if p.Service.Working > 0 {
		g := page.Grid{Heads: []page.GridHead{page.Words("pushed out by the pressure"), page.Figures("at work"), page.Figures("at proof")}}
		row := func(name string, of func(float64) float64) {
			if v := of(p.Service.Working); !math.IsNaN(v) {
				proof := "-"
				if p.provable() {
					proof = p.Force(of(p.Result.Proof))
				}
				g.Rows = append(g.Rows, []string{name, p.Force(v), proof})
			}
		}
		row("each closure, on the whole bore", p.ClosureForce)
		row("retainer and its thread, on the seal", p.RetainerForce)
		s.Add(g)
	}
	if p.Vessel.Thread == nil {
		s.Add(page.Prose("The thread that retains the nozzle is not described: give [chamber.thread] to have it looked at."))
	}
	if len(p.Flights) > 0 {
		s.Add(page.Prose("Each drive flown on the day of the file. The start-up surge is an upper bound, of a valve that opens at once."))
	}
	return s
}

// mountLoads hold what the canopies pull against everything that holds them.
func (p *proof) mountLoads() page.Section {
	s := page.Section{Name: "Recovery mount"}
	m := p.Rocket.Recovery
	pulls := p.pulls()
	if len(pulls) == 0 {
		s.Add(page.Prose("No canopy opens on any of the drives: there is no load to hold against the recovery mount."))
	} else {
		g := page.Grid{Heads: []page.GridHead{page.Words("canopy"), page.Words("on"), page.Figures("opens at"), page.Figures("load"), page.Figures("at most"), page.Figures("snatch")}}
		for _, x := range pulls {
			snatch := "-"
			if !math.IsNaN(x.snatch) {
				snatch = p.Force(x.snatch)
			}
			g.Rows = append(g.Rows, []string{x.canopy, string(x.flight.Rocket.Power), p.Speed(x.c.Airspeed), p.Force(x.c.Load), p.Force(x.c.LoadBound), snatch})
		}
		s.Add(g)
	}
	if m == nil || len(m.Uses(0)) == 0 {
		s.Add(page.Prose("What holds the canopies is not described: give [recovery] with pin, bond_area and line to have the loads held against it; " +
			"line_length and canopy_mass beside line tell the snatch."))
		return s
	}
	greatest := greatestPull(pulls)
	g := page.Grid{Heads: []page.GridHead{page.Words("holds"), page.Figures("strength"), page.Figures("over the load"), page.Figures("over the most"), page.Words(""), page.Words("strength is")}}
	limit := gates.LimitFor(p.Rocket, gates.LimitMount)
	for _, h := range m.Uses(0) {
		kind := "your own"
		if h.Typical {
			kind = "typical"
		}
		load, most, word := "-", "-", ""
		if greatest.load > 0 {
			load = p.Number(h.Strength / greatest.load)
			most = p.Number(h.Strength / greatest.most)
			if word, _ = limit.Judge(h.Strength / greatest.load); h.Strength < greatest.most {
				word = gates.WordLow
			}
		}
		g.Rows = append(g.Rows, []string{h.Name, p.Force(h.Strength), load, most, word, kind})
	}
	s.Add(g)
	text := "Asked for: " + p.Bounds(limit) + " times the opening load (" + limit.Source + "). The most is the larger of the bound of a canopy that fills " +
		"before the rocket slows, and the snatch."
	if snatchUnknown(pulls) {
		text += " The snatch, as a slack line stops the canopy, is not known: give line, line_length and canopy_mass under [recovery]."
	} else if _, typical := m.Snatch(1); typical {
		text += " The line's stretch is typical, unverified."
	}
	s.Add(page.Prose(text + " Neither heat nor wear is counted, nor how the pin bears on the wall and may tear out of it. Typical strengths are unverified: test your own."))
	return s
}

// pull is what one canopy does to the mount on one drive.
type pull struct {
	flight *sim.Flight
	canopy string
	c      *sim.CanopyResult
	snatch float64 // N; NaN when not known
}

// pulls are those of every canopy that opens, on every drive.
func (p *proof) pulls() []pull {
	var out []pull
	for _, fl := range p.Flights {
		for i := range fl.Canopies {
			c := &fl.Canopies[i]
			if !c.Opened {
				continue
			}
			x := pull{fl, page.Printable(c.Name), c, math.NaN()}
			if m := p.Rocket.Recovery; m != nil {
				x.snatch, _ = m.Snatch(c.Airspeed)
			}
			out = append(out, x)
		}
	}
	return out
}

type greatest struct{ load, most float64 }

func greatestPull(pulls []pull) greatest {
	var g greatest
	for _, x := range pulls {
		g.load = math.Max(g.load, x.c.Load)
		g.most = math.Max(g.most, math.Max(x.c.Load, x.c.LoadBound))
		if x.snatch > g.most {
			g.most = x.snatch
		}
	}
	return g
}

func snatchUnknown(pulls []pull) bool {
	for _, x := range pulls {
		if math.IsNaN(x.snatch) {
			return true
		}
	}
	return false
}
