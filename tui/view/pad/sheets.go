package pad

import (
	"slices"

	"ullage/sim/report/checklist"
	"ullage/sim/report/words"
	"ullage/sim/rocket"
	"ullage/tui/draw"
)

// sheets are what stands below the step, in the order in which they have the room; turned tells that another than the
// first was asked for.
func (v *View) sheets() (all [][]string, turned bool) {
	all = [][]string{v.pressures(), v.further(), v.facts(), v.people()}
	if checklist.OnlyOn(v.name) == "" { // pressures are no matter of the launch itself
		all = append([][]string{all[2]}, all[1], all[3], all[0])
	}
	all = slices.DeleteFunc(all, func(s []string) bool { return len(s) == 0 })
	if n := len(all); n > 0 {
		k := v.sheet % n
		all, turned = append(slices.Clone(all[k:]), all[:k]...), k > 0
	}
	return all, turned
}

// further are the steps after the one at hand, and those before it below them.
func (v *View) further() []string {
	l := v.list()
	if len(l.steps) < 2 {
		return nil
	}
	var out []string
	add := func(from, to int) {
		for i := from; i < to; i++ {
			if !l.refused && (i == from || l.steps[i].phase != l.steps[i-1].phase) {
				if l.steps[i].phase != l.steps[v.at()].phase || i < v.at() {
					out = append(out, v.row(draw.SunlitStrong, "  "+l.steps[i].phase))
				}
			}
			out = append(out, v.row(draw.Sunlit, "  "+v.box(l, i)+l.steps[i].does))
		}
	}
	add(v.at()+1, len(l.steps))
	add(0, v.at())
	return out
}

// pressures are what a gauge shows on the closed chamber as it warms or cools: nothing to fill to.
func (v *View) pressures() []string {
	r, say := v.Scene.Now.Flight.Rocket, words.In(v.Scene.Units)
	if verdict := v.judged(); r.Power != rocket.WaterPower || verdict == nil || !verdict.Pass() || r.Water.Pressure <= 0 {
		return nil
	}
	const cell, first = 7, 16
	theme := v.Scene.Theme
	heads, figures, cells := theme.Paint(draw.SunlitStrong, draw.Padded("gas and wall at", first)), theme.Paint(draw.SunlitStrong, draw.Padded("gauge shows", first)), first
	rows, note := say.Closed(r)
	for _, row := range rows {
		if cells+cell > v.Columns {
			break
		}
		role := draw.Sunlit
		switch {
		case row.Vent:
			role = draw.SunlitReverse
		case row.Filled:
			role = draw.SunlitStrong
		}
		heads += theme.Paint(draw.SunlitStrong, draw.Aligned(row.Temperature, cell))
		figures += theme.Paint(draw.Sunlit, draw.Blanks(cell-len(row.Gauge))) + theme.Paint(role, row.Gauge)
		cells += cell
	}
	unit := func(painted, name string) string {
		return painted + theme.Paint(draw.SunlitStrong, draw.Padded(theme.Fit(" "+name, v.Columns-cells), v.Columns-cells))
	}
	return append([]string{unit(heads, v.Scene.Unit("degC").Name), unit(figures, v.Scene.Unit("bar").Name)},
		v.para(draw.Sunlit, "", note)...)
}

// facts are the figures of the list, and those of the card that go with them.
func (v *View) facts() []string {
	r, say := v.Scene.Now.Flight.Rocket, words.In(v.Scene.Units)
	var out []string
	add := func(label, text string) {
		out = append(out, v.para(draw.Sunlit, draw.Padded(label, 18), text)...)
	}
	verdict := v.judged()
	if verdict != nil && verdict.Pass() && v.list().leads {
		switch {
		case v.wind.Ready && v.winds == v.Scene.Now:
			add("wind", say.MostWind(&v.wind.Result))
		case v.wind.Busy:
			add("wind", "how much it may be is being looked for"+v.Scene.Theme.Ellipsis)
		}
		if checklist.OnlyOn(v.name) == rocket.WaterPower {
			add("sealed gauge", say.FillTo(r.SealedGauge())+" by one that was sealed at sea level")
		}
	}
	for _, f := range v.list().Facts {
		add(f[0], f[1])
	}
	for _, note := range v.list().Notes {
		out = append(out, v.para(draw.Sunlit, "", note)...)
	}
	return out
}

// people are who stands where.
func (v *View) people() []string {
	var out []string
	for _, p := range v.list().People {
		out = append(out, v.para(draw.Sunlit, draw.Padded(p[0]+":", 18), p[1])...)
	}
	return out
}
