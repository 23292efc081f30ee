package report

import (
	"fmt"
	"io"
	"math"
	"strings"

	"ullage/sim"
	"ullage/sim/gates"
	"ullage/sim/quantity"
	"ullage/sim/report/machine"
	"ullage/sim/report/page"
	"ullage/sim/report/words"
	"ullage/sim/results"
	"ullage/sim/rocket"
	"ullage/sim/study"
)

type (
	airframeJSON struct {
		PressureCentre number          `json:"pressure_centre_m"`
		CNAlpha        number          `json:"cn_alpha_per_rad"`
		Balance        statesJSON      `json:"balance_m"`
		Pitch          statesJSON      `json:"pitch_inertia_kgm2"`
		Margin         *machine.Object `json:"margin_cal"`
		Parts          []partJSON      `json:"parts"`
		Pressure       *machine.Object `json:"pressure"`
	}
	statesJSON struct {
		Dry       *number `json:"dry"`
		Release   *number `json:"release"`
		LiquidOut *number `json:"liquid_out"`
		Burnout   *number `json:"burnout"`
	}
	partJSON struct {
		Name    string  `json:"name"`
		CNAlpha number  `json:"cn_alpha_per_rad"`
		At      *number `json:"at_m"`
		Drag    number  `json:"drag"`
	}
)

// WriteAirframeJSON writes airframes as one JSON object: a key a drive present, and with more than one of
// them "all", what serves them at once; SI units. Centre of pressure and slope are those at rest; drag is each part's share
// at the greatest speed of the flight.
func WriteAirframeJSON(w io.Writer, frames []study.Airframe, shared *study.Shared) error {
	doc := map[string]any{}
	if shared != nil {
		doc["all"] = sharedObject(shared)
	}
	for i := range frames {
		a := &frames[i]
		s := &a.Flight.Stability
		states := func(of func(sim.StabilityAt) float64) statesJSON {
			at := func(x sim.StabilityAt) *number {
				if !x.Happened {
					return nil
				}
				return machine.Pointer(of(x))
			}
			return statesJSON{at(s.Dry), at(s.Release), at(s.LiquidOut), at(s.Burnout)}
		}
		j := airframeJSON{
			PressureCentre: number(s.Release.PressureCentre), CNAlpha: number(s.Release.CNAlpha),
			Balance: states(func(x sim.StabilityAt) float64 { return x.Balance }),
			Pitch:   states(func(x sim.StabilityAt) float64 { return x.Pitch }),
			Margin:  margins(a.Flight), Parts: []partJSON{}, Pressure: words.PressureObject(a.Flight.Rocket),
		}
		for _, p := range a.Parts {
			part := partJSON{Name: p.Name, CNAlpha: number(p.CNAlpha), Drag: number(p.Drag)}
			if !math.IsNaN(p.At) {
				part.At = machine.Pointer(p.At)
			}
			j.Parts = append(j.Parts, part)
		}
		doc[string(a.Power)] = j
	}
	return machine.WriteDocument(w, doc)
}

// margins are those of `fly --json`.
func margins(fl *sim.Flight) *machine.Object {
	var out machine.Object
	addResults(&out, results.For(fl.Rocket).Group("margin"), fl)
	return out.In("stability").In("margin_cal")
}

// WriteAirframeText writes airframes as a report: balance and margins of every drive, what serves all of them,
// what each part adds, and how straight the thrust must be.
func WriteAirframeText(w io.Writer, r *rocket.Rocket, frames []study.Airframe, shared *study.Shared, sys quantity.System) error {
	p := words.In(sys)
	var s sheet
	s.Hung("", words.Name(r)+", "+p.Size(r.Shape.Length)+" long, "+p.Size(r.Body.Diameter)+" across")
	dry := r.DryBody()
	s.Hung("  ", "body "+p.Mass(dry.Mass)+", balances "+p.Size(dry.At)+" from the tip of the nose; "+inertiaBasis(r))
	for i := range frames {
		s.frame(p, &frames[i])
	}
	s.shared(p, shared)
	if len(frames) > 0 {
		s.parts(p, &frames[0])
	}
	s.Line("")
	s.Hung("  ", "Places count from the tip of the nose. Slender bodies, small angles, subsonic: estimates. "+
		"Balance and weigh the rocket as it flies, and swing it to be sure of its inertia.")
	s.Hung("  ", words.CommonCaution)
	_, err := io.WriteString(w, s.String())
	return err
}

// inertiaBasis says where the body's inertia comes from.
func inertiaBasis(r *rocket.Rocket) string {
	switch {
	case r.Body.Inertia > 0:
		return "pitch inertia as measured"
	case len(r.Parts) > 0:
		return "pitch inertia from the mass list"
	}
	return "pitch inertia estimated from the shape"
}

// frame writes one drive.
func (s *sheet) frame(p words.Printer, a *study.Airframe) {
	st := &a.Flight.Stability
	s.Line("")
	s.Line("on " + string(a.Power))
	s.Line(fmt.Sprintf("  %-14s%14s%18s%14s  %s", "", "balance (CG)", "pitch inertia", "margin", ""))
	row := func(label string, x sim.StabilityAt, word string) {
		if x.Happened {
			s.Line(fmt.Sprintf("  %-14s%14s%18s%14s  %s", label, p.Size(x.Balance), p.Number(x.Pitch)+" kg·m²",
				p.Number(x.Margin)+" cal", word))
		}
	}
	row("dry", st.Dry, "")
	table := results.For(a.Flight.Rocket)
	margin, attack := table.Group("margin"), table.Group("attack")
	for _, x := range []struct {
		name string
		at   sim.StabilityAt
	}{{"release", st.Release}, {"rail_exit", st.RailExit}, {"liquid_out", st.LiquidOut}, {"burnout", st.Burnout}} {
		r := margin.Row(x.name)
		word, _ := gates.JudgeResult(a.Flight.Rocket, r.Name, x.at.Margin)
		row(r.Short, x.at, word)
	}
	s.Field("centre of pressure (CP)", p.Size(st.Release.PressureCentre)+", slope "+p.Number(st.Release.CNAlpha)+" per radian")
	if at := margin.Row("at_angle"); a.Flight.RailExit.Happened {
		s.Field(at.Label, p.Row(at, at.Of(a.Flight))+", body cross-flow in it "+verdict(at, a.Flight))
	}
	if at := attack.Row("rail_exit"); a.Flight.RailExit.Happened {
		s.Field(attack.Label, p.Row(at, at.Of(a.Flight))+" from the wind at "+at.Short+" "+verdict(at, a.Flight))
	}
	for _, m := range a.Alignments {
		s.Field("thrust "+p.Angle(m.Angle)+" off", fmt.Sprintf("%s lower, apogee %s to the side, angle of attack up to %s",
			p.Height(m.Lower), p.Height(m.Off), p.Angle(m.MaxAngle)))
	}
	tolerance := "within " + p.Angle(a.Tolerance) + " of the centreline to keep"
	switch {
	case a.Crooked:
		tolerance = "no alignment keeps"
	case a.Tolerance >= study.LargestMisalignment:
		tolerance = "even " + p.Angle(a.Tolerance) + " off the centreline keeps"
	}
	s.Field("build it", tolerance+" the angle of attack under "+p.Angle(a.Attack)+" in calm air")
	s.Field("for "+p.Number(a.Sizing.Margin)+" calibres", sizing(p, a))
	for _, w := range a.Flight.Warnings {
		if w.Code == sim.Unstable || w.Code == sim.Tumbles {
			s.Hung("  ! ", WarningText(w, p.System))
		}
	}
	if text := p.Beyond(a.Flight.Rocket); text != "" {
		s.Hung("  ! ", text)
	}
}

// sizing says what would give the margin wanted.
func sizing(p words.Printer, a *study.Airframe) string {
	z := &a.Sizing
	text := p.Mass(z.Weight) + " in the nose, " + p.Size(z.NoseAt) + " from its tip"
	switch {
	case z.WeightOut:
		text = "no weight in the nose is enough"
	case z.Weight == 0:
		text = "no weight is needed"
	}
	if !z.SpanOut {
		fins := a.Flight.Rocket.Shape.Fins
		text += "; or a fin span of " + p.Size(z.Span) + " instead of " + p.Size(fins[len(fins)-1].Span)
	}
	return text
}

// parts writes what each part adds.
func (s *sheet) parts(p words.Printer, a *study.Airframe) {
	s.Line("")
	s.Line(fmt.Sprintf("%-16s%14s%14s%10s", "part", "slope per rad", "acts at", "drag"))
	for _, x := range a.Parts {
		at, slope := "", ""
		if !math.IsNaN(x.At) {
			at, slope = p.Size(x.At), p.Number(x.CNAlpha)
		}
		share := ""
		if a.Drag > 0 {
			share = strings.Repeat("=", int(math.Round(20*x.Drag/a.Drag)))
		}
		s.Line(fmt.Sprintf("%-16s%14s%14s%10s  %s", page.Printable(x.Name), slope, at, p.Number(x.Drag), share))
	}
	note := "drag of the shape at " + p.Speed(a.Speed) + ": " + p.Number(a.Drag)
	if a.Given {
		note += "; the file gives its own, and that flies"
	}
	s.Hung("  ", note)
}
