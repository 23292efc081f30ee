package report

import (
	"math"
	"strings"

	"ullage/sim"
	"ullage/sim/gates"
)

type (
	stabilityJSON struct {
		Margin        marginJSON `json:"margin_cal"`
		RailExitAngle *number    `json:"rail_exit_angle_deg"`
		MaxAngle      *number    `json:"max_angle_deg"`
	}
	marginJSON struct {
		Release   *number `json:"release"`
		RailExit  *number `json:"rail_exit"`
		LiquidOut *number `json:"liquid_out"`
		Burnout   *number `json:"burnout"`
		Least     *number `json:"least"`
	}
)

// newStability gathers how a flight balanced and pointed; nil without a shape.
func newStability(fl *sim.Flight) *stabilityJSON {
	s := &fl.Stability
	if !s.Known {
		return nil
	}
	out := &stabilityJSON{Margin: newMargins(s)}
	if fl.RailExit.Happened {
		out.RailExitAngle = pointer(degrees(s.RailExitAngle))
		if fl.Rocket.Rigid() {
			out.MaxAngle = pointer(degrees(s.MaxAngle))
		}
	}
	return out
}

func newMargins(s *sim.Stability) marginJSON {
	at := func(x sim.StabilityAt) *number {
		if !x.Happened {
			return nil
		}
		return pointer(x.Margin)
	}
	return marginJSON{at(s.Release), at(s.RailExit), at(s.LiquidOut), at(s.Burnout), pointer(s.Least)}
}

func pointer(v float64) *number {
	n := number(v)
	return &n
}

func degrees(v float64) float64 { return v * 180 / math.Pi }

// stabilityFindings judges margin and angle of attack, where a shape is known.
func stabilityFindings(p printer, fl *sim.Flight) []Finding {
	s := &fl.Stability
	if !s.Known || !fl.RailExit.Happened {
		return nil
	}
	least, most := marginRange(s)
	f := Finding{Key: "margin", Label: "margin", Detail: limitSentence(p, gates.LimitFor(fl.Rocket, gates.LimitMarginLeast)) + " " +
		limitSentence(p, gates.LimitFor(fl.Rocket, gates.LimitMarginMost))}
	f.Value = p.number(least) + " calibres"
	if p.number(most) != p.number(least) {
		f.Value = p.number(least) + " to " + p.number(most) + " calibres"
	}
	if f.Word, f.Level = gates.LimitFor(fl.Rocket, gates.LimitMarginLeast).Judge(least); f.Level == gates.Good {
		f.Word, f.Level = gates.LimitFor(fl.Rocket, gates.LimitMarginMost).Judge(most)
	}
	angle := judged(p, "attack", "angle of attack", p.angle(s.RailExitAngle), s.RailExitAngle, gates.LimitFor(fl.Rocket, gates.LimitAttack))
	return []Finding{f, angle}
}

// marginRange is the least and the greatest of the margins that are judged: at rail
// exit, liquid-out and burnout, and the least on the way up.
func marginRange(s *sim.Stability) (least, most float64) {
	least, most = s.Least, math.Inf(-1)
	for _, x := range []sim.StabilityAt{s.RailExit, s.LiquidOut, s.Burnout} {
		if x.Happened {
			least, most = math.Min(least, x.Margin), math.Max(most, x.Margin)
		}
	}
	return least, most
}

// stability writes margins and angles.
func (s *sheet) stability(p printer, fl *sim.Flight) {
	st := &fl.Stability
	if !st.Known {
		return
	}
	var margins []string
	for _, x := range []struct {
		name string
		at   sim.StabilityAt
	}{{"release", st.Release}, {"rail exit", st.RailExit}, {"liquid out", st.LiquidOut}, {"burnout", st.Burnout}} {
		if x.at.Happened {
			margins = append(margins, x.name+" "+p.number(x.at.Margin))
		}
	}
	note := ""
	for _, f := range stabilityFindings(p, fl) {
		if f.Key == "margin" {
			note = " calibres, " + f.Word
		}
	}
	s.field("margin", strings.Join(margins, ", ")+", least "+p.number(st.Least)+note)
	if !fl.RailExit.Happened {
		return
	}
	text := p.angle(st.RailExitAngle) + " at rail exit"
	if fl.Rocket.Rigid() {
		text += ", at most " + p.angle(st.MaxAngle)
	}
	word, _ := gates.LimitFor(fl.Rocket, gates.LimitAttack).Judge(st.RailExitAngle)
	s.field("angle of attack", text+" "+word)
}
