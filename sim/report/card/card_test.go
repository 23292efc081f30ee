package card

import (
	"context"
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/atmosphere"
	"ullage/sim/gates"
	"ullage/sim/plan"
	"ullage/sim/quantity"
	"ullage/sim/report/card/form"
	"ullage/sim/report/words"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
)

// dayOf is the day of the demo airframe with changes made.
func dayOf(t *testing.T, changes ...rocketfile.Change) plan.Day {
	t.Helper()
	f, err := rocketfile.Open("../../../testdata/heron.toml")
	require.NoError(t, err)
	if len(changes) > 0 {
		f, err = f.SetAll(changes...)
		require.NoError(t, err)
	}
	day, err := plan.DayOf(context.Background(), f.Rocket(), plan.Options{
		Spreads: study.Spreads(f), Flights: 100, Seed: 3, Today: time.Date(2026, 10, 1, 0, 0, 0, 0, time.UTC)})
	require.NoError(t, err)
	return day
}

// set is a change to make.
func set(input, value string) rocketfile.Change {
	return rocketfile.Change{Input: input, Value: value}
}

// blockOf finds a block of a page by its title.
func blockOf(t *testing.T, p form.Page, title string) form.Block {
	t.Helper()
	for _, blocks := range [][]form.Block{p.Beside, p.Below} {
		for _, b := range blocks {
			if b.Title == title {
				return b
			}
		}
	}
	require.Fail(t, "no block "+title)
	return form.Block{}
}

// cardRow finds a row of a block by its first cell.
func cardRow(t *testing.T, p form.Page, title, first string) form.Row {
	t.Helper()
	for _, r := range blockOf(t, p, title).Table.Rows {
		if r.Cells[0] == first {
			return r
		}
	}
	require.Fail(t, "no row "+first)
	return form.Row{}
}

func cells(t *testing.T, p form.Page, title, first string) []string {
	return cardRow(t, p, title, first).Cells[1:]
}

func TestCardOnWater(t *testing.T) {
	f := dayOf(t)
	p := fill([]plan.Day{f}, quantity.Metric)[0]
	assert.Equal(t, "Twin Heron on water power", p.Title)
	assert.Empty(t, p.Alarm)
	assert.Equal(t, words.Verdict(&f.Verdict), p.Verdict)
	assert.Contains(t, p.Facts, form.Blank{Label: "date"})
	assert.Contains(t, p.Facts, form.Blank{Label: "site", Text: "320 m above sea level, 16 °C, 977 hPa"})
	assert.Contains(t, p.Facts, form.Blank{Label: "wind of the file", Text: "3 m/s from 250°, 10 m up"})

	// 30 % of 4.2 L at 998.9 kg/m³; the gas by its law, at 16 °C and 10 bar over 977 hPa.
	assert.Equal(t, []string{"620 g"}, cells(t, p, "weigh in", "empty"))
	assert.Equal(t, []string{"1259 g, 1260 mL"}, cells(t, p, "weigh in", "water, 30 % of 4.2 L"))
	grown := f.Rocket.Growth() * 4.2e-3
	assert.InDelta(t, 0.006*4.2e-3, grown, 0.001*4.2e-3, "glass under 48.5 MPa around and half that along, at some 20 GPa")
	gas := (10e5 + 97700) * (0.7*4.2e-3 + grown) / (287.05287 * 289.15)
	assert.Equal(t, []string{fmt.Sprintf("%.1f g", 1e3*gas)}, cells(t, p, "weigh in", "gas, not weighed"))
	assert.Equal(t, []string{fmt.Sprintf("%.0f g", 1e3*(0.62+0.095+0.3*4.2e-3*998.9+gas))}, cells(t, p, "weigh in", "lift-off"))
	assert.Equal(t, []string{fmt.Sprintf("%.0f mm", 1e3*(0.62*1+0.095*1.44)/(0.62+0.095))}, cells(t, p, "weigh in", "balance, water out"))

	assert.Equal(t, []string{"10 bar"}, cells(t, p, "set", "gauge open to the air"))
	assert.Equal(t, []string{"9.96 bar"}, cells(t, p, "set", "gauge sealed at sea level"), "10 bar + 977 hPa − 1013.25 hPa")
	assert.Equal(t, []string{"13 mm"}, cells(t, p, "set", "throat"))
	assert.Equal(t, []string{"2.0° towards 250°"}, cells(t, p, "set", "tilt of the file"))
	assert.Regexp(t, `^apogee \+ 1 s \([0-9.]+ s\)$`, cells(t, p, "set", "main opens")[0])

	m := words.In(quantity.Metric)
	s := f.Scatter.Apogee
	assert.Equal(t, []string{m.Height(f.Verdict.Day.Apogee.Height), m.Bare(s.Q05, "m") + " to " + m.Bare(s.Q95, "m")}, cells(t, p, "predicted", "apogee"))
	for _, figure := range []string{"airspeed as main opens", "opening load of main", "vertical landing speed", "landing energy", "drift",
		"margin at rail exit", "least margin on the way up"} {
		assert.Regexp(t, `^± [0-9.]+$`, cells(t, p, "predicted", figure)[1], figure)
	}
	assert.Equal(t, []string{"16 bar on 2026-09-12"}, cells(t, p, "chamber", "proof on record"))
	assert.Regexp(t, `^[0-9.]+ bar$`, cells(t, p, "chamber", "burst, estimated")[0])
	assert.Contains(t, cells(t, p, "chamber", "stand-off")[0], "30 m for the blast")

	checks := blockOf(t, p, "checks").Table.Rows
	require.Len(t, checks, len(f.Verdict.Checks))
	for i, r := range checks {
		assert.Equal(t, form.None, r.Mark)
		assert.Equal(t, f.Verdict.Checks[i].Word, r.Cells[3])
		assert.Contains(t, gates.Words(), r.Cells[3])
	}
	assert.Contains(t, blockOf(t, p, "order of the day").Ticks, "water weighed in: 1259 g")
	sign := blockOf(t, p, "local law and the range officer decide").Blanks
	assert.Equal(t, form.Blank{Label: "decision", Choices: []string{"go", "no-go"}}, sign[len(sign)-1])
}

func TestCardWinds(t *testing.T) {
	f := dayOf(t)
	p := fill([]plan.Day{f}, quantity.Metric)[0]
	rows := blockOf(t, p, "rail and wind").Table.Rows
	require.Len(t, rows, 6)
	for i, first := range []string{"0", "2", "4", "6", "8", "10 strong"} {
		assert.Equal(t, first, rows[i].Cells[0])
		assert.Equal(t, tenths(f.Tilts[i].Tilt), rows[i].Cells[1])
		assert.LessOrEqual(t, f.Tilts[i].Tilt, 10*math.Pi/180+1e-12, "half of the tilt limit")
	}
	assert.Equal(t, "0.0°", rows[0].Cells[1])
	assert.Equal(t, form.None, rows[1].Mark)
	require.InDelta(t, 3.5, f.Wind.Most, 0.3)
	assert.Equal(t, form.Failed, rows[2].Mark, "4 m/s: every column is good, and a check fails in the corner")
	assert.Contains(t, rows[3].Cells[2], " low", "less than 4 times the wind")
	assert.Equal(t, form.Failed, rows[3].Mark)
	assert.Contains(t, rows[5].Cells[3], " high")
	assert.Contains(t, rows[5].Cells[5], " E", "blown with the wind")

	// A field that is too small is told of, and a rocket that does not fly.
	small := dayOf(t, set("field.radius", "20 m"), set("field.ceiling", "50 m"))
	rows = blockOf(t, fill([]plan.Day{small}, quantity.Metric)[0], "rail and wind").Table.Rows
	for _, r := range rows {
		assert.Equal(t, form.Failed, r.Mark, "none passes in any wind")
	}
	row := rows[2]
	assert.Contains(t, row.Cells[4], " high")
	assert.Contains(t, row.Cells[5], " far")
	stuck := dayOf(t, set("water.pressure", "0.2 bar"))
	row = blockOf(t, fill([]plan.Day{stuck}, quantity.Metric)[0], "rail and wind").Table.Rows[0]
	assert.Equal(t, []string{"0", "0.0°", "never", "-", "-", "-"}, row.Cells)
	assert.Equal(t, form.Failed, row.Mark)
}

func TestCardOnAMotor(t *testing.T) {
	f := dayOf(t, set("power", "motor"))
	p := fill([]plan.Day{f}, quantity.Metric)[0]
	assert.Equal(t, []string{"116 g"}, cells(t, p, "weigh in", "propellant"))
	assert.Equal(t, []string{"973 g"}, cells(t, p, "weigh in", "lift-off"), "620, 45, 192 and 116 g")
	assert.Equal(t, []string{"11 s: nothing to drill; listed 7, 9, 11 s"}, cells(t, p, "set", "delay"))
	assert.Regexp(t, `^name not given \(motor.name\), class H, [0-9]+ N·s, 29 mm across$`, cells(t, p, "set", "motor")[0])
	assert.Regexp(t, `^ejection \([0-9.]+ s\)$`, cells(t, p, "set", "main opens")[0])
	ticks := strings.Join(blockOf(t, p, "order of the day").Ticks, "\n")
	assert.Contains(t, ticks, "misfire: disconnect")
	assert.Contains(t, ticks, "chamber empty, dry and open")
	assert.NotContains(t, ticks, "water")
	for _, b := range p.Beside {
		assert.NotEqual(t, "chamber", b.Title)
	}
}

func TestCardOfANoGo(t *testing.T) {
	one := dayOf(t, set("rail.length", "0.7 m"))
	p := fill([]plan.Day{one}, quantity.Metric)[0]
	assert.Equal(t, "NO-GO", p.Alarm)
	assert.Len(t, blockOf(t, p, "checks").Table.Rows, len(one.Verdict.Checks))
	row := cardRow(t, p, "checks", "rail exit speed")
	assert.Equal(t, form.Failed, row.Mark)
	require.NotEmpty(t, row.Below)
	assert.Regexp(t, `^mend: rail\.length [0-9.]+ m or more`, row.Below[0])

	many := dayOf(t, set("rail.length", "0.3 m"), set("wind.speed", "12 m/s"), set("rail.tilt", "30 deg"),
		set("canopy.main.diameter", "0.3 m"), set("recovery.line", "10 N"))
	require.GreaterOrEqual(t, many.Verdict.Failed(), manyFailed)
	for _, r := range blockOf(t, fill([]plan.Day{many}, quantity.Metric)[0], "checks").Table.Rows {
		assert.LessOrEqual(t, len(r.Below), 1, r.Cells[0])
	}
}

// Every row of the verdict stands on the card in its own words, those that are not judged with what is to be stated.
func TestCardOfWhatIsNotJudged(t *testing.T) {
	day := dayOf(t)
	day.Rocket = day.Rocket.Clone()
	day.Rocket.Field.Ceiling, day.Rocket.Recovery, day.Rocket.Wind = 0, nil, atmosphere.Wind{}
	var err error
	day.Verdict, err = gates.Judge(context.Background(), day.Rocket, gates.Options{})
	require.NoError(t, err)
	require.Equal(t, gates.WordOpen, day.Verdict.Word())
	p := fill([]plan.Day{day}, quantity.Metric)[0]
	assert.Equal(t, "NOT JUDGED", p.Alarm)
	open := 0
	rows := blockOf(t, p, "checks").Table.Rows
	require.Len(t, rows, len(day.Verdict.Checks))
	for i, r := range rows {
		c := &day.Verdict.Checks[i]
		assert.Equal(t, c.Name, r.Cells[0])
		assert.Equal(t, c.Word, r.Cells[3])
		if c.Open() {
			open++
			assert.Equal(t, form.Doubt, r.Mark)
			require.NotEmpty(t, r.Below, c.Name)
			assert.Contains(t, r.Below[0], "give ", c.Name)
		}
	}
	assert.GreaterOrEqual(t, open, 9)
}

func TestCardPages(t *testing.T) {
	days := []plan.Day{dayOf(t), dayOf(t, set("power", "motor"))}
	for _, sys := range []quantity.System{quantity.Metric, quantity.US} {
		require.Len(t, fill(days, sys), 2)
		for name, write := range map[string]func(*strings.Builder) error{
			"text":     func(b *strings.Builder) error { return WriteText(b, days, sys) },
			"markdown": func(b *strings.Builder) error { return WriteMarkdown(b, days, sys) },
			"html":     func(b *strings.Builder) error { return WriteHTML(b, days, sys) },
		} {
			var first, again strings.Builder
			require.NoError(t, write(&first))
			require.NoError(t, write(&again))
			assert.Equal(t, first.String(), again.String())
			assert.NotRegexp(t, `(?i)\bsafe`, first.String(), name)
			assert.NotContains(t, first.String(), "NaN", name)
			assert.Contains(t, first.String(), "range officer", name)
		}
	}
	us := fill(days, quantity.US)[0]
	assert.Equal(t, []string{"1259 g, 2.77 lb, 42.6 fl oz"}, cells(t, us, "weigh in", "water, 30 % of 142 fl oz"))
	assert.Equal(t, []string{"145 psi"}, cells(t, us, "set", "gauge open to the air"))
}
