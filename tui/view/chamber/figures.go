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
	short        string // in its place where there is no room for it
}

// bases say what a burst pressure rests on.
var bases = map[chamber.Basis]string{
	chamber.FromBurst:    "measured on one made alike",
	chamber.FromProof:    "it held its proof; the estimate is lower",
	chamber.FromEstimate: "estimated, unverified",
}

// basesShort are the same where there is little room.
var basesShort = map[chamber.Basis]string{
	chamber.FromBurst: "measured on one alike",
	chamber.FromProof: "from its proof",
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
			note := theme.Say(f.note)
			if draw.Width(note) > room && f.short != "" {
				note = theme.Say(f.short)
			}
			line += " " + theme.Paint(draw.Dim, theme.Fit(note, room))
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
	held, heldShort := fmt.Sprintf("%g of the estimate", chamber.EstimatedShare), ""
	if res.Basis == chamber.FromBurst {
		held, heldShort = fmt.Sprintf("%g of the burst measured", chamber.MeasuredShare), fmt.Sprintf("%g of that measured", chamber.MeasuredShare)
	}
	working, gauge := "on the gauge, at release", "gauge, at release"
	if v.rocket.Power == rocket.MotorPower {
		working, gauge = "when it flies on water", ""
	}
	provable := gates.WordGood
	if !res.ProofEnough {
		provable = gates.WordLow
	}
	basis, basisShort := bases[res.Basis], basesShort[res.Basis]
	if !res.Stated && res.Basis == chamber.FromEstimate {
		basis, basisShort = basis+"; chamber.burst is not stated", "estimated, not stated"
	}
	figures := []chamberFigure{
		{"working", v.given(v.rocket.Service().Working, "bar"), "", working, gauge},
		{"burst", most(res.Burst), "", basis, basisShort},
		{"proof wanted", words.In(v.Scene.Units).AtLeast(res.ProofWanted), "", fmt.Sprintf("%g times working", res.ProofFactor), ""},
		{"proof limit", most(res.ProofLimit), "", held, heldShort},
		v.proving(provable),
		v.record(),
		{"most working", most(res.MostWorking), "", "that it can be proved for", "it can be proved for"},
		{"energy in gas", v.energy(res.Gas), "", v.inUnit(res.Gas.TNT, "g", 2) + " of TNT", ""},
		{"stand-off", words.In(v.Scene.Units).Farther(res.Gas.StandoffFloor), "", "fragments go farther: it is for the blast alone", "fragments go farther"},
		{"in its proof", v.energy(res.Hydraulic), "", "with water; with gas " + v.energy(res.Pneumatic), "gas: " + v.energy(res.Pneumatic)},
		v.dilation(),
		v.wall(),
		v.buying(),
		v.ageing(),
	}
	if f, ok := v.opening(); ok {
		figures = append(figures, f)
	}
	if h := res.Heated; h != nil && c.Heating != nil {
		figures = append(figures, chamberFigure{"beside motor", v.inUnit(h.Damp, "bar", 3), "sealed",
			"sealed, damp; " + v.inUnit(h.Dry, "bar", 3) + " dry" + v.vent(h), "sealed" + v.vent(h)})
	}
	return figures
}

func (v *View) energy(s chamber.Stored) string {
	return words.In(v.Scene.Units).Rough(s.Isentropic, "J")
}

// proving is whether the limit lets it be proved for its pressure.
func (v *View) proving(word string) chamberFigure {
	f := chamberFigure{"prove at", words.In(v.Scene.Units).ProofFigure(&v.result), word, "with water: ullage proof has the steps", "with water"}
	if !v.result.ProofEnough {
		f.note, f.short = "less than wanted: lower the pressure, or build it stronger", "less than wanted"
	}
	return f
}

// record is the proof on record.
func (v *View) record() chamberFigure {
	f := chamberFigure{"proof held", "-", gates.LimitProof, "never gas before a proof with water", "water first, no gas"}
	if c := v.vessel; c.Proof > 0 {
		f.short = "for " + words.In(v.Scene.Units).AtMost(v.result.MostOnRecord)
		f.value, f.note = v.given(c.Proof, "bar"), f.short+" at work"
		if c.ProofDate != "" {
			f.note = draw.Clean(c.ProofDate) + ", " + f.note
		}
	}
	return f
}

// wall is the tube's wall and what it is made of.
func (v *View) wall() chamberFigure {
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
	short := string(v.vessel.Material)
	if res.Thick {
		text += "; thick: the inner face has more stress"
		short = "thick: more stress inside"
	}
	return chamberFigure{"wall", v.inUnit(res.Tube.Wall, "mm", 3), "", text, short}
}

// buying is the tube's mass, and what resin and cloth to buy for it.
func (v *View) buying() chamberFigure {
	f := chamberFigure{label: "tube", value: v.inUnit(v.result.Tube.Mass, "g", 3), note: "laps in it"}
	if len(v.result.Tube.Cloth) == 0 {
		return f
	}
	area := 0.0
	for _, c := range v.result.Tube.Cloth {
		area += c.Area
	}
	cloth, resin := words.In(v.Scene.Units).ClothArea(area), v.inUnit(v.result.Tube.Resin, "g", 2)
	f.note, f.short = "buy "+cloth+" of cloth, "+resin+" of resin", cloth+", "+resin+" resin"
	return f
}

// ageing is the share of the strength that heat and pressurisations leave.
func (v *View) ageing() chamberFigure {
	percent, res := draw.Unit("%"), &v.result
	heat, cycles := quantity.Format(res.HeatFactor, percent, 3), quantity.Format(res.CycleFactor, percent, 3)
	return chamberFigure{"strength left", quantity.Format(res.HeatFactor*res.CycleFactor, percent, 3), "",
		fmt.Sprintf("heat leaves %s, %d times under pressure %s", heat, v.vessel.Cycles, cycles), "of heat and " + words.Plural(v.vessel.Cycles, "cycle")}
}

// dilation is what the volume grows by in a proof, and when it grew for good.
func (v *View) dilation() chamberFigure {
	res := &v.result
	f := chamberFigure{label: "dilation", value: v.inUnit(res.Dilation.Volume, "mL", 3), note: "strain not known; in its proof", short: "strain not known"}
	if math.IsNaN(res.Strain) {
		return f
	}
	set := v.inUnit(res.Dilation.Set, "mL", 2)
	f.note, f.short = "reject it if more than "+set+" stays", set+" may stay"
	switch {
	case res.Cracks:
		f.note += "; resin cracks at working pressure: line it"
		f.short = "resin cracks: line it"
	case res.CracksAtProof:
		f.note += "; resin cracks: line it"
		f.short = "resin cracks: line it"
	}
	f.note += "; in its proof"
	return f
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
	f := chamberFigure{"opening load", v.inUnit(load, "N", 3), gates.LimitMount, "[recovery] is not described", "no mount"}
	if mount := v.rocket.Recovery; mount != nil {
		if holds, weakest, typical := mount.Strength(); holds > 0 {
			f.short = weakest + " " + v.inUnit(holds, "N", 3)
			f.note = "the " + weakest + " holds " + v.inUnit(holds, "N", 3)
			if typical {
				f.note += ", typical"
				f.short = "typical " + v.inUnit(holds, "N", 3)
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
