package report

import (
	"math"
	"strings"

	"ullage/sim"
	"ullage/sim/gates"
	"ullage/sim/report/machine"
	"ullage/sim/report/words"
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
		out.RailExitAngle = machine.Pointer(machine.Degrees(s.RailExitAngle))
		if fl.Rocket.Rigid() {
			out.MaxAngle = machine.Pointer(machine.Degrees(s.MaxAngle))
		}
	}
	return out
}

func newMargins(s *sim.Stability) marginJSON {
	at := func(x sim.StabilityAt) *number {
		if !x.Happened {
			return nil
		}
		return machine.Pointer(x.Margin)
	}
	return marginJSON{at(s.Release), at(s.RailExit), at(s.LiquidOut), at(s.Burnout), machine.Pointer(s.Least)}
}

// stabilityFindings judges margin and angle of attack, where a shape is known.
func stabilityFindings(p words.Printer, fl *sim.Flight) []Finding {
	s := &fl.Stability
	if !s.Known || !fl.RailExit.Happened {
		return nil
	}
	least, most := marginRange(s)
	f := Finding{Key: "margin", Label: "margin", Detail: p.LimitSentence(gates.LimitFor(fl.Rocket, gates.LimitMarginLeast)) + " " +
		p.LimitSentence(gates.LimitFor(fl.Rocket, gates.LimitMarginMost))}
	f.Value = p.Number(least) + " calibres"
	if p.Number(most) != p.Number(least) {
		f.Value = p.Number(least) + " to " + p.Number(most) + " calibres"
	}
	if f.Word, f.Level = gates.LimitFor(fl.Rocket, gates.LimitMarginLeast).Judge(least); f.Level == gates.Good {
		f.Word, f.Level = gates.LimitFor(fl.Rocket, gates.LimitMarginMost).Judge(most)
	}
	angle := judged(p, "attack", "angle of attack", p.Angle(s.RailExitAngle), s.RailExitAngle, gates.LimitFor(fl.Rocket, gates.LimitAttack))
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
func (s *sheet) stability(p words.Printer, fl *sim.Flight) {
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
			margins = append(margins, x.name+" "+p.Number(x.at.Margin))
		}
	}
	note := ""
	for _, f := range stabilityFindings(p, fl) {
		if f.Key == "margin" {
			note = " calibres, " + f.Word
		}
	}
	s.Field("margin", strings.Join(margins, ", ")+", least "+p.Number(st.Least)+note)
	if !fl.RailExit.Happened {
		return
	}
	text := p.Angle(st.RailExitAngle) + " at rail exit"
	if fl.Rocket.Rigid() {
		text += ", at most " + p.Angle(st.MaxAngle)
	}
	word, _ := gates.LimitFor(fl.Rocket, gates.LimitAttack).Judge(st.RailExitAngle)
	s.Field("angle of attack", text+" "+word)
}
