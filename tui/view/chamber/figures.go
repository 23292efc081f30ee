package chamber

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"ullage/sim/chamber"
	"ullage/sim/gates"
	"ullage/sim/quantity"
	"ullage/sim/report/words"
	"ullage/sim/rocket"
	"ullage/tui/draw"
)

// chamberFigure is one figure of the chamber: what it is, how much, and what is to be
// known of it.
type chamberFigure struct {
	label, value string
	check        string // key of the check that has the verdict on it, or the verdict; empty for none
	note         string
}

// bases say what a burst pressure rests on.
var bases = map[chamber.Basis]string{
	chamber.FromBurst:    "measured on one made alike",
	chamber.FromProof:    "it held its proof; the estimate is lower",
	chamber.FromEstimate: "estimated, unverified",
}

// figureLines are the figures below the drawing, in one column or in two.
func (v *View) figureLines() []string {
	const twoFrom, gap = 110, 3
	all := v.allFigures()
	slices.SortStableFunc(all, func(a, b chamberFigure) int { return v.pressing(b) - v.pressing(a) })
	if v.Columns < twoFrom {
		return v.column(all, v.Columns)
	}
	half := (v.Columns - gap) / 2
	n := (len(all) + 1) / 2
	left, right := v.column(all[:n], half), v.column(all[n:], v.Columns-half-gap)
	return draw.Beside(left, right, half, gap, v.Columns, max(len(left), len(right)))
}

// pressing is above 0 for a figure that has to be in sight where not all are.
func (v *View) pressing(f chamberFigure) int {
	if _, lev := v.word(f.check); lev == gates.Bad {
		return 1
	}
	return 0
}

// column sets figures one below the other.
func (v *View) column(figures []chamberFigure, w int) []string {
	theme := v.Scene.Theme
	label, value := 0, 0
	for _, f := range figures {
		label, value = max(label, draw.Width(f.label)), max(value, draw.Width(theme.Say(f.value)))
	}
	var out []string
	for _, f := range figures {
		line := theme.Paint(draw.Dim, draw.Padded(f.label, label)) + " " + theme.Paint(draw.Strong, draw.Padded(theme.Say(f.value), value))
		used := label + 1 + value
		if word, lev := v.word(f.check); word != "" {
			line += " " + theme.Paint(draw.Level(lev), word)
			used += 1 + draw.Width(word)
		}
		if room := w - used - 1; f.note != "" && room > 3 {
			line += " " + theme.Paint(draw.Dim, theme.Fit(theme.Say(f.note), room))
		}
		out = append(out, draw.PadPainted(line, w))
	}
	return out
}

// word is a verdict: that of a check by its key, or of the first that starts with it, or
// the word itself.
func (v *View) word(key string) (string, gates.Level) {
	switch key {
	case gates.WordGood:
		return key, gates.Good
	case gates.WordLow:
		return key, gates.Bad
	}
	verdict := v.Scene.Now.Verdict
	if key == "" || verdict == nil {
		return "", gates.Plain
	}
	for i := range verdict.Checks {
		if c := &verdict.Checks[i]; c.Key == key || strings.HasPrefix(c.Key, key+".") {
			return c.Word, c.Level
		}
	}
	return "", gates.Plain
}

// allFigures are all there are, in the order to read them.
func (v *View) allFigures() []chamberFigure {
	res, c := &v.result, v.vessel
	most := func(p float64) string { return words.In(v.Scene.Units).AtMost(p) }
	held := fmt.Sprintf("%g of the estimate", chamber.EstimatedShare)
	if res.Basis == chamber.FromBurst {
		held = fmt.Sprintf("%g of the burst measured", chamber.MeasuredShare)
	}
	working := "on the gauge, at release"
	if v.rocket.Power == rocket.MotorPower {
		working = "when it flies on water"
	}
	provable := gates.WordGood
	if !res.ProofEnough {
		provable = gates.WordLow
	}
	basis := bases[res.Basis]
	if !res.Stated && res.Basis == chamber.FromEstimate {
		basis += "; chamber.burst is not stated"
	}
	figures := []chamberFigure{
		{"working", v.given(v.rocket.Service().Working, "bar"), "", working},
		{"burst", most(res.Burst), "", basis},
		{"proof wanted", words.In(v.Scene.Units).AtLeast(res.ProofWanted), "", fmt.Sprintf("%g times working", res.ProofFactor)},
		{"proof limit", most(res.ProofLimit), "", held},
		{"prove at", words.In(v.Scene.Units).ProofFigure(res), provable, v.provingNote()},
		v.record(),
		{"most working", most(res.MostWorking), "", "that it can be proved for"},
		{"energy in gas", v.energy(res.Gas), "", v.inUnit(res.Gas.TNT, "g", 2) + " of TNT"},
		{"stand-off", v.inUnit(res.Gas.StandoffFloor, "m", 2), "", "fragments go farther: it is for the blast alone"},
		{"in its proof", v.energy(res.Hydraulic), "", "with water; with gas " + v.energy(res.Pneumatic)},
		{"dilation", v.inUnit(res.Dilation.Volume, "mL", 3), "", v.crackNote() + "; in its proof"},
		{"wall", v.inUnit(res.Tube.Wall, "mm", 3), "", v.wallNote()},
		{"tube", v.inUnit(res.Tube.Mass, "g", 3), "", v.buyNote()},
		{"strength left", quantity.Format(res.HeatFactor*res.CycleFactor, draw.Unit("%"), 3), "", v.ageNote()},
	}
	if f, ok := v.opening(); ok {
		figures = append(figures, f)
	}
	if h := res.Heated; h != nil && c.Heating != nil {
		figures = append(figures, chamberFigure{"beside motor", v.inUnit(h.Damp, "bar", 3), "sealed",
			"sealed, damp; " + v.inUnit(h.Dry, "bar", 3) + " dry" + v.vent(h)})
	}
	return figures
}

func (v *View) energy(s chamber.Stored) string { return v.inUnit(s.Isentropic, "J", 2) }

// provingNote says whether the limit lets it be proved for its pressure.
func (v *View) provingNote() string {
	if !v.result.ProofEnough {
		return "less than wanted: lower the pressure, or build it stronger"
	}
	return "with water: ullage proof has the steps"
}

// record is the proof on record.
func (v *View) record() chamberFigure {
	f := chamberFigure{"proof held", "-", gates.LimitProof, "never gas before a proof with water"}
	if c := v.vessel; c.Proof > 0 {
		f.value, f.note = v.given(c.Proof, "bar"), "for "+words.In(v.Scene.Units).AtMost(v.result.MostOnRecord)+" at work"
		if c.ProofDate != "" {
			f.note = draw.Clean(c.ProofDate) + ", " + f.note
		}
	}
	return f
}

func (v *View) wallNote() string {
	res, text := &v.result, ""
	if n := len(v.vessel.Plies); n > 0 {
		layers := 0
		for _, p := range v.vessel.Plies {
			layers += p.Count
		}
		text = fmt.Sprintf("%d layers, ", layers)
	}
	text += string(v.vessel.Material)
	if res.Tube.FibreFraction > 0 {
		text += ", " + quantity.Format(res.Tube.FibreFraction, draw.Unit("%"), 2) + " fibre"
	}
	if res.Thick {
		text += "; thick: the inner face has more stress"
	}
	return text
}

// buyNote says what resin and cloth to buy.
func (v *View) buyNote() string {
	if len(v.result.Tube.Cloth) == 0 {
		return "laps in it"
	}
	area := 0.0
	for _, c := range v.result.Tube.Cloth {
		area += c.Area
	}
	return "buy " + v.inUnit(area, "m2", 2) + " of cloth, " + v.inUnit(v.result.Tube.Resin, "g", 2) + " of resin"
}

// ageNote says what heat and pressurisations leave of the strength.
func (v *View) ageNote() string {
	percent := draw.Unit("%")
	return "heat leaves " + quantity.Format(v.result.HeatFactor, percent, 3) +
		fmt.Sprintf(", %d times under pressure ", v.vessel.Cycles) + quantity.Format(v.result.CycleFactor, percent, 3)
}

func (v *View) crackNote() string {
	res := &v.result
	if math.IsNaN(res.Strain) {
		return "strain not known"
	}
	text := "reject it if " + v.inUnit(res.Dilation.Set, "mL", 2) + " stays"
	switch {
	case res.Cracks:
		text += "; resin cracks at working pressure: line it"
	case res.CracksAtProof:
		text += "; resin cracks: line it"
	}
	return text
}

// opening is the greatest opening load against what the recovery mount holds.
func (v *View) opening() (chamberFigure, bool) {
	load := 0.0
	for _, c := range v.Scene.Now.Flight.Results.Canopies {
		load = math.Max(load, c.Load)
	}
	if load == 0 {
		return chamberFigure{}, false
	}
	f := chamberFigure{"opening load", v.inUnit(load, "N", 3), gates.LimitMount, "[recovery] is not described"}
	if mount := v.rocket.Recovery; mount != nil {
		if holds, weakest, typical := mount.Strength(); holds > 0 {
			f.note = "the " + weakest + " holds " + v.inUnit(holds, "N", 3)
			if typical {
				f.note += ", typical"
			}
		}
	}
	return f, true
}

func (v *View) vent(h *chamber.Heated) string {
	hole := h.Wider().Hole
	if !(hole > 0) || math.IsInf(hole, 0) {
		return ""
	}
	return "; vent " + v.inUnit(hole, "mm", 2)
}
