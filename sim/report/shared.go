package report

import (
	"math"

	"ullage/sim"
	"ullage/sim/gates"
	"ullage/sim/report/machine"
	"ullage/sim/report/page"
	"ullage/sim/report/words"
	"ullage/sim/study"
)

// greatestMargin is the greatest of the margins that are judged.
func greatestMargin(fl *sim.Flight) float64 {
	st := &fl.Stability
	most := math.Inf(-1)
	for _, x := range [...]sim.StabilityAt{st.RailExit, st.LiquidOut, st.Burnout} {
		if x.Happened {
			most = math.Max(most, x.Margin)
		}
	}
	return most
}

// shared writes what serves all drives at once.
func (s *sheet) shared(p words.Printer, z *study.Shared) {
	if z == nil {
		return
	}
	s.Line("")
	s.Line("on all drives at once, for " + p.Number(z.Margin) + " calibres")
	t := page.NewTable(s, page.Heading{Lines: []string{"by"}, Left: true, Width: 12},
		page.Heading{Lines: []string{"in the", "nose"}, Unit: p.Unit("g"), Width: 6}, page.Heading{Lines: []string{"span"}, Unit: p.Unit("mm"), Width: 5}, page.Heading{Lines: []string{"on"}, Left: true, Width: 5},
		page.Heading{Lines: []string{"least", "margin"}}, page.Heading{Lines: []string{"most"}, Width: 5}, verdictColumn,
		page.Heading{Lines: []string{"rail", "exit"}, Unit: p.Unit("m/s"), Width: 5}, verdictColumn, page.Heading{Lines: []string{"apogee"}, Unit: p.Unit("m")})
	_ = t.Head()
	for i := range z.Ways {
		w := &z.Ways[i]
		if w.Out {
			_ = t.Row(string(w.Name) + ": nothing in reach is enough")
			continue
		}
		cells := []string{string(w.Name), p.Bare(w.Weight, "g"), "-"}
		if !math.IsNaN(w.Span) {
			cells[2] = p.Bare(w.Span, "mm")
		}
		for _, fl := range w.On {
			most := greatestMargin(fl)
			word, _ := gates.JudgeMargin(fl.Rocket, most)
			exit, _ := gates.JudgeResult(fl.Rocket, "rail_exit.speed", fl.RailExit.Speed)
			_ = t.Row(append(cells, string(fl.Rocket.Power), p.Number(fl.Stability.Least), p.Number(most), word,
				p.Bare(fl.RailExit.Speed, "m/s"), exit, p.Bare(fl.Apogee.Height, "m"))...)
			cells = []string{"", "", ""}
		}
	}
	straight := "no alignment of the thrust serves all of them"
	if z.Tolerance > 0 {
		straight = "thrust within " + p.Angle(z.Tolerance) + " of the centreline serves all of them in calm air; ullage bench holds it to the field and the day's wind too"
	}
	s.Hung("  ", "Weight stands "+p.Size(z.NoseAt)+" from the tip of the nose; span is that of the last fins, their own weight as it is. "+
		"Each row was flown on the day of the file; what is high for one drive is so though the other needs it. As for alignment, "+straight+". After building, weigh, balance, and run ullage check on every drive.")
}

// sharedObject is that of `airframe --json`.
func sharedObject(z *study.Shared) *machine.Object {
	out := new(machine.Object)
	out.Put("margin_cal", z.Margin)
	out.Put("nose_at_m", z.NoseAt)
	out.Put("alignment_rad", z.Tolerance)
	ways := machine.List{}
	for i := range z.Ways {
		w := &z.Ways[i]
		o := new(machine.Object).Add("by", w.Name).Add("in_reach", !w.Out)
		o.Put("nose_weight_kg", w.Weight)
		o.Put("span_m", w.Span)
		on := new(machine.Object)
		for _, fl := range w.On {
			drive := new(machine.Object)
			drive.Put("least_margin_cal", fl.Stability.Least)
			drive.Put("most_margin_cal", greatestMargin(fl))
			drive.Put("rail_exit_mps", fl.RailExit.Speed)
			drive.Put("apogee_m", fl.Apogee.Height)
			on.Add(string(fl.Rocket.Power), drive)
		}
		ways = append(ways, o.Add("drives", on))
	}
	return out.Add("ways", ways)
}
