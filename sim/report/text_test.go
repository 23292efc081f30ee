package report

import (
	"bytes"
	"errors"
	"math"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ullage/sim"
	"ullage/sim/golden"
	"ullage/sim/quantity"
	"ullage/sim/report/page"
	"ullage/sim/results"
)

func textOf(t require.TestingT, fl *sim.Flight, sys quantity.System) string {
	var b bytes.Buffer
	require.NoError(t, WriteText(&b, fl, results.For(fl.Rocket), sys))
	return b.String()
}

func TestTextGolden(t *testing.T) {
	for _, test := range []struct {
		name   string
		flight *sim.Flight
		sys    quantity.System
	}{
		{"water-metric", waterFlight(), quantity.Metric},
		{"motor-us", motorFlight(), quantity.US},
		{"grounded-metric", groundedFlight(), quantity.Metric},
	} {
		t.Run(test.name, func(t *testing.T) {
			golden.Equal(t, test.name+".txt", textOf(t, test.flight, test.sys))
		})
	}
}

// anyFlight draws a flight of any numbers, NaN and infinities among them.
func anyFlight(t *rapid.T) *sim.Flight {
	return flightOf(t, func(label string) float64 {
		if rapid.IntRange(0, 9).Draw(t, label+" odd") == 0 {
			return rapid.SampledFrom([]float64{math.NaN(), math.Inf(1), math.Inf(-1), 0, math.Copysign(0, -1), 1e300, 5e-324}).Draw(t, label)
		}
		return rapid.Float64Range(-1e6, 1e6).Draw(t, label)
	}, rapid.String())
}

// flightOf draws a flight of such numbers and names.
func flightOf(t *rapid.T, number func(label string) float64, names *rapid.Generator[string]) *sim.Flight {
	moment := func(label string) sim.Moment {
		return sim.Moment{Happened: rapid.Bool().Draw(t, label), Time: number(label + " time"),
			Height: number(label + " height"), Speed: number(label + " speed")}
	}
	fl := rapid.SampledFrom([]func() *sim.Flight{waterFlight, motorFlight, groundedFlight}).Draw(t, "base")()
	fl.Rocket.Name = names.Draw(t, "name")
	fl.Rocket.Wind.Speed = number("wind")
	fl.Rocket.Rail.Tilt = number("tilt")
	r := &fl.Results
	r.LiftOffMass, r.LiftOffThrustToWeight = number("mass"), number("ratio")
	r.RailExit = sim.GuideEnd{Moment: moment("rail exit"), ThrustToWeight: number("rail ratio")}
	r.TubeExit = sim.GuideEnd{Moment: moment("tube exit")}
	r.LiquidOut, r.Burnout, r.Apogee = moment("liquid out"), moment("burnout"), moment("apogee")
	r.LiquidLeft = number("left")
	r.Max.Speed, r.Max.Acceleration = number("speed"), number("acceleration")
	r.Startup.Thrust = number("surge")
	r.Landing = sim.Landing{Moment: moment("landing"), Vertical: number("vertical"), Energy: number("energy"),
		East: number("east"), North: number("north")}
	for i := range r.Canopies {
		r.Canopies[i].Opened = rapid.Bool().Draw(t, "opened")
		r.Canopies[i].Airspeed = number("airspeed")
		r.Canopies[i].Descent = number("descent")
	}
	fl.Warnings = nil
	for _, code := range sim.WarningCodes() {
		if rapid.Bool().Draw(t, string(code)) {
			fl.Warnings = append(fl.Warnings, sim.Warning{
				Code: code, Canopy: names.Draw(t, "canopy"), Value: number("value"), Limit: number("limit")})
		}
	}
	return fl
}

func TestTextFitsEightyColumns(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		fl := flightOf(t, func(label string) float64 {
			return rapid.Float64Range(-99_999, 99_999).Draw(t, label)
		}, rapid.StringMatching(`[a-z]{0,20}( [a-z]{0,20}){0,6}`))
		for _, sys := range []quantity.System{quantity.Metric, quantity.US} {
			for _, line := range strings.Split(textOf(t, fl, sys), "\n") {
				require.LessOrEqual(t, utf8.RuneCountInString(line), page.Width, "%q", line)
				require.Equal(t, strings.TrimRight(line, " "), line)
			}
		}
	})
}

func TestTextCannotSteerTheTerminal(t *testing.T) {
	fl := waterFlight()
	fl.Rocket.Name = "a\x1b]0;owned\x07b\x9bc\u202ed\xff"
	fl.Warnings = []sim.Warning{{Code: sim.CanopyNever, Canopy: "x\x1b[2Jy"}}
	got := textOf(t, fl, quantity.Metric)
	assert.Contains(t, got, "a]0;ownedbcd on water power")
	for _, r := range got {
		assert.True(t, r == '\n' || r >= ' ' && r != 0x7f && (r < 0x80 || r > 0x9f), "%q", r)
	}
}

// No report may promise what it cannot: the word is banned everywhere.
func TestNeverPromisesSafety(t *testing.T) {
	var all strings.Builder
	for _, fl := range []*sim.Flight{waterFlight(), motorFlight(), groundedFlight()} {
		all.WriteString(textOf(t, fl, quantity.Metric))
		for _, f := range findingsOf(fl, quantity.Metric) {
			all.WriteString(f.Label + f.Word + f.Detail)
		}
	}
	for _, code := range sim.WarningCodes() {
		all.WriteString(WarningText(sim.Warning{Code: code, Canopy: "main"}, quantity.US))
	}
	require.Contains(t, all.String(), "estimates")
	assert.NotContains(t, strings.ToLower(all.String()), "safe")
}

type failing struct{ err error }

func (f failing) Write([]byte) (int, error) { return 0, f.err }

func TestWriteErrorsComeBack(t *testing.T) {
	full := errors.New("no room")
	fl := waterFlight()
	assert.ErrorIs(t, WriteText(failing{full}, fl, results.For(fl.Rocket), quantity.Metric), full)
	assert.ErrorIs(t, WriteJSON(failing{full}, fl, results.For(fl.Rocket)), full)
}
