package report

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"math"
	"strings"

	"ullage/sim"
	"ullage/sim/gates"
	"ullage/sim/quantity"
	"ullage/sim/rocket"
	"ullage/sim/study"
)

type (
	airframeJSON struct {
		PressureCentre number     `json:"pressure_centre_m"`
		CNAlpha        number     `json:"cn_alpha_per_rad"`
		Balance        statesJSON `json:"balance_m"`
		Pitch          statesJSON `json:"pitch_inertia_kgm2"`
		Margin         marginJSON `json:"margin_cal"`
		Parts          []partJSON `json:"parts"`
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

// WriteAirframeJSON writes airframes as one JSON object: a key a drive present, SI
// units. Centre of pressure and slope are those at rest; drag is each part's share
// at the greatest speed of the flight.
func WriteAirframeJSON(w io.Writer, frames []study.Airframe) error {
	doc := map[string]airframeJSON{}
	for i := range frames {
		a := &frames[i]
		s := &a.Flight.Stability
		states := func(of func(sim.StabilityAt) float64) statesJSON {
			at := func(x sim.StabilityAt) *number {
				if !x.Happened {
					return nil
				}
				return pointer(of(x))
			}
			return statesJSON{at(s.Dry), at(s.Release), at(s.LiquidOut), at(s.Burnout)}
		}
		j := airframeJSON{
			PressureCentre: number(s.Release.PressureCentre), CNAlpha: number(s.Release.CNAlpha),
			Balance: states(func(x sim.StabilityAt) float64 { return x.Balance }),
			Pitch:   states(func(x sim.StabilityAt) float64 { return x.Pitch }),
			Margin:  newMargins(s), Parts: []partJSON{},
		}
		for _, p := range a.Parts {
			part := partJSON{Name: p.Name, CNAlpha: number(p.CNAlpha), Drag: number(p.Drag)}
			if !math.IsNaN(p.At) {
				part.At = pointer(p.At)
			}
			j.Parts = append(j.Parts, part)
		}
		doc[string(a.Power)] = j
	}
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	if err := e.Encode(doc); err != nil {
		return err
	}
	_, err := w.Write(b.Bytes())
	return err
}

// WriteAirframeText writes airframes as a report: balance and margins of every drive,
// what each part adds, and how straight the thrust must be.
func WriteAirframeText(w io.Writer, r *rocket.Rocket, frames []study.Airframe, sys quantity.System) error {
	p := printer{sys}
	var s sheet
	name := printable(r.Name)
	if name == "" {
		name = "A rocket without a name"
	}
	s.hung("", name+", "+p.size(r.Shape.Length)+" long, "+p.size(r.Body.Diameter)+" across")
	dry := r.DryBody()
	s.hung("  ", "body "+p.mass(dry.Mass)+", balances "+p.size(dry.At)+" from the tip of the nose; "+inertiaBasis(r))
	for i := range frames {
		s.frame(p, &frames[i])
	}
	if len(frames) > 0 {
		s.parts(p, &frames[0])
	}
	s.line("")
	s.hung("  ", "Places count from the tip of the nose. Slender bodies, small angles, subsonic: estimates. "+
		"Balance and weigh the rocket as it flies, and swing it to be sure of its inertia.")
	s.hung("  ", commonCaution)
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
func (s *sheet) frame(p printer, a *study.Airframe) {
	st := &a.Flight.Stability
	s.line("")
	s.line("on " + string(a.Power))
	s.line(fmt.Sprintf("  %-14s%14s%18s%14s  %s", "", "balance", "pitch inertia", "margin", ""))
	row := func(label string, x sim.StabilityAt, judge bool) {
		if !x.Happened {
			return
		}
		word := ""
		if judge {
			word, _ = gates.JudgeMargin(a.Flight.Rocket, x.Margin)
		}
		s.line(fmt.Sprintf("  %-14s%14s%18s%14s  %s", label, p.size(x.Balance), p.number(x.Pitch)+" kg·m²",
			p.number(x.Margin)+" cal", word))
	}
	row("dry", st.Dry, false)
	row("release", st.Release, false)
	row("rail exit", st.RailExit, true)
	row("liquid out", st.LiquidOut, true)
	row("burnout", st.Burnout, true)
	s.field("pressure centre", p.size(st.Release.PressureCentre)+", slope "+p.number(st.Release.CNAlpha)+" per radian")
	if a.Flight.RailExit.Happened {
		word, _ := gates.LimitFor(a.Flight.Rocket, gates.LimitAttack).Judge(st.RailExitAngle)
		s.field("angle of attack", p.angle(st.RailExitAngle)+" from the wind at rail exit "+word)
	}
	for _, m := range a.Alignments {
		s.field("thrust "+p.angle(m.Angle)+" off", fmt.Sprintf("%s lower, tops %s to the side, angle of attack up to %s",
			p.height(m.Lower), p.height(m.Off), p.angle(m.MaxAngle)))
	}
	tolerance := "within " + p.angle(a.Tolerance)
	if a.Tolerance >= study.LargestMisalignment {
		tolerance = "even " + p.angle(a.Tolerance)
	}
	s.field("build it", tolerance+" of the centreline to keep the angle of attack under "+p.angle(a.Attack)+" in calm air")
	s.field("for "+p.number(a.Sizing.Margin)+" calibres", sizing(p, a))
	for _, w := range a.Flight.Warnings {
		if w.Code == sim.Unstable || w.Code == sim.Tumbles {
			s.hung("  ! ", WarningText(w, p.sys))
		}
	}
}

// sizing says what would give the margin wanted.
func sizing(p printer, a *study.Airframe) string {
	z := &a.Sizing
	text := p.mass(z.Weight) + " in the nose, " + p.size(z.NoseAt) + " from its tip"
	switch {
	case z.WeightOut:
		text = "no weight in the nose is enough"
	case z.Weight == 0:
		text = "no weight is needed"
	}
	if !z.SpanOut {
		fins := a.Flight.Rocket.Shape.Fins
		text += "; or a fin span of " + p.size(z.Span) + " instead of " + p.size(fins[len(fins)-1].Span)
	}
	return text
}

// parts writes what each part adds.
func (s *sheet) parts(p printer, a *study.Airframe) {
	s.line("")
	s.line(fmt.Sprintf("%-16s%14s%14s%10s", "part", "slope per rad", "acts at", "drag"))
	for _, x := range a.Parts {
		at, slope := "", ""
		if !math.IsNaN(x.At) {
			at, slope = p.size(x.At), p.number(x.CNAlpha)
		}
		share := ""
		if a.Drag > 0 {
			share = strings.Repeat("=", int(math.Round(20*x.Drag/a.Drag)))
		}
		s.line(fmt.Sprintf("%-16s%14s%14s%10s  %s", printable(x.Name), slope, at, p.number(x.Drag), share))
	}
	note := "drag of the shape at " + p.speed(a.Speed) + ": " + p.number(a.Drag)
	if a.Given {
		note += "; the file gives its own, and that flies"
	}
	s.hung("  ", note)
}
