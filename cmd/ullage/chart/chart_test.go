package chart

import (
	"context"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/cmd/ullage/chart/page"
	"ullage/sim"
	"ullage/sim/quantity"
	"ullage/sim/report"
	"ullage/sim/report/words"
	"ullage/sim/results"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
)

var metric = Look{quantity.Metric, page.A4}

// heronText is an invented rocket without a shape.
const heronText = `name = "Grey Heron"
power = "water"
body = { diameter = "86 mm", mass = "0.85 kg", drag = 0.42 }
water = { volume = "7.0 L", bore = "84 mm", throat = "15 mm", fill = 0.30, pressure = "12 bar", exponent = 1.3 }
motor = { curve = "h-trainer.csv", case = "210 g", propellant = "140 g", delay = "8 s" }
site = { elevation = "120 m", temperature = "16 degC" }
rail = { length = "1.8 m", tilt = "2 deg", heading = "270 deg" }
wind = { speed = "3 m/s", from = "270 deg" }
[[canopy]]
name = "main"
diameter = "1.00 m"
deploy = { water = "apogee + 0.5 s", motor = "ejection" }
`

// heron is that rocket with some inputs set.
func heron(t *testing.T, set ...rocketfile.Change) *rocket.Rocket {
	t.Helper()
	f, err := rocketfile.Read("heron.toml", "../../../testdata", []byte(heronText))
	require.NoError(t, err)
	if len(set) > 0 {
		f, err = f.SetAll(set...)
		require.NoError(t, err)
	}
	return f.Rocket()
}

func fly(t *testing.T, r *rocket.Rocket) *sim.Flight {
	t.Helper()
	fl, err := sim.Fly(context.Background(), r, sim.Options{Keep: true})
	require.NoError(t, err)
	return fl
}

func TestFlightShowsTheFlight(t *testing.T) {
	fl := fly(t, heron(t))
	p, err := Flight(fl, nil, NoSpan, metric)
	require.NoError(t, err)
	require.Len(t, p.Rows, 3)
	assert.Contains(t, p.Title, fl.Rocket.Name)

	height := p.Rows[0].Panels[0]
	most, at := 0.0, 0.0
	line := height.Lines[0]
	for i, y := range line.Y {
		require.False(t, math.IsNaN(y))
		if y > most {
			most, at = y, line.X[i]
		}
		if i > 0 {
			require.GreaterOrEqual(t, line.X[i], line.X[i-1], "time falls")
		}
	}
	assert.InEpsilon(t, fl.Apogee.Height, most, 1e-6)
	assert.InDelta(t, fl.Apogee.Time, at, 1e-3)
	assert.Equal(t, fl.Duration(), height.X.Max)
	assert.True(t, height.X.Bare, "speed, below it, has the time axis")
	labels := ""
	for _, m := range height.Marks {
		labels += m.Label + "\n"
	}
	for _, want := range []string{"end of thrust, ", "apogee " + metric.text(fl.Apogee.Height, "m"), " opens at ", "landing "} {
		assert.Contains(t, labels, want)
	}
	assert.NotContains(t, labels, "rail exit", "the panel of the thrust's time has it")

	speed := p.Rows[1].Panels[0]
	require.Len(t, speed.Points, 1)
	assert.Equal(t, page.Point{X: fl.Max.SpeedTime, Y: fl.Max.Speed, Sign: page.Ringlet, Label: "fastest " + metric.text(fl.Max.Speed, "m/s")}, speed.Points[0])
	for _, m := range speed.Marks {
		assert.Empty(t, m.Label, "the panel above has the labels")
	}

	pressure := p.Rows[2].Panels[0]
	assert.InEpsilon(t, fl.Burnout.Time*1.08, pressure.X.Max, 1e-12)
	assert.InEpsilon(t, fl.Rocket.Water.Pressure/1e5, pressure.Lines[0].Y[0], 1e-9)
	assert.Equal(t, pressure.X.Max, pressure.Lines[0].X[len(pressure.Lines[0].X)-1])
	assert.Equal(t, metric.closing(fl.Rocket), p.Notes[len(p.Notes)-1])
}

func TestFlightInOtherUnits(t *testing.T) {
	fl := fly(t, heron(t))
	p, err := Flight(fl, nil, NoSpan, Look{quantity.US, page.Letter})
	require.NoError(t, err)
	assert.Equal(t, "ft", p.Rows[0].Panels[0].Y.Unit)
	assert.Equal(t, "ft/s", p.Rows[1].Panels[0].Y.Unit)
	assert.Equal(t, "psi", p.Rows[2].Panels[0].Y.Unit)
	last := p.Rows[1].Panels[0].Lines[0].Y
	assert.InEpsilon(t, fl.Landing.Speed/0.3048, last[len(last)-1], 1e-6)
	q, err := ParseQuantities([]string{"acceleration"})
	require.NoError(t, err)
	p, err = Flight(fl, q, WholeSpan, Look{quantity.US, page.Letter})
	require.NoError(t, err)
	assert.Equal(t, "ft/s²", p.Rows[0].Panels[0].Y.Unit)
}

func TestSurgeIsCutAndSaid(t *testing.T) {
	fl := fly(t, heron(t))
	require.Greater(t, fl.Startup.Thrust, fl.Max.Thrust*1.12)
	q, err := ParseQuantities([]string{"thrust"})
	require.NoError(t, err)
	p, err := Flight(fl, q, NoSpan, metric)
	require.NoError(t, err)
	assert.Less(t, p.Rows[0].Panels[0].Y.Max, fl.Max.Thrust*1.2)
	assert.Contains(t, p.Notes[0], metric.text(fl.Startup.Thrust, "N"))
}

func TestEveryQuantityIsDrawnOrSaysWhyNot(t *testing.T) {
	for _, power := range []string{"water", "motor"} {
		for _, f := range []*rocket.Rocket{heron(t, rocketfile.Change{Input: "power", Value: power}), rocketfile.Starter().Rocket()} {
			fl := fly(t, f)
			for _, q := range quantities() {
				p, err := Flight(fl, []Quantity{q}, NoSpan, metric)
				if !q.Known(fl) {
					assert.ErrorContains(t, err, q.Name+" cannot be drawn: ")
					assert.NotEmpty(t, missing[q.Name])
					continue
				}
				require.NoError(t, err)
				s := newRange(p.Rows[0].Panels[0].Lines[0].Y)
				assert.Less(t, s.least, s.most, "%s of %s is flat", q.Name, f.Name)
			}
		}
	}
	_, err := ParseQuantities([]string{"height", "altitude"})
	assert.ErrorContains(t, err, `"altitude" is nothing that can be drawn; there are east, north, height, speed`)
}

type valueRange struct{ least, most float64 }

func newRange(v []float64) valueRange {
	s := valueRange{math.Inf(1), math.Inf(-1)}
	for _, x := range v {
		if math.IsNaN(x) {
			continue
		}
		s.least, s.most = math.Min(s.least, x), math.Max(s.most, x)
	}
	return s
}

func TestGroundedFlightIsDrawn(t *testing.T) {
	fl := fly(t, heron(t, rocketfile.Change{Input: "water.pressure", Value: "0.2 bar"}))
	require.False(t, fl.RailExit.Happened)
	for _, s := range []Span{NoSpan, ThrustSpan, AscentSpan, WholeSpan} {
		p, err := Flight(fl, nil, s, metric)
		require.NoError(t, err)
		assert.Contains(t, strings.Join(p.Lines, "\n"), "Rail exit never")
		assert.Contains(t, strings.Join(p.Notes, "\n"), "! ")
		assert.Contains(t, string(p.SVG()), "</svg>")
	}
}

func TestEventsOfOneMomentShareAMark(t *testing.T) {
	fl := &sim.Flight{Rocket: &rocket.Rocket{Power: rocket.WaterPower}, Events: []sim.Event{
		{Kind: sim.LiftOffEvent}, {Kind: sim.RailExitEvent, Time: 0.1}, {Kind: sim.LiquidOutEvent, Time: 0.4}, {Kind: sim.BurnoutEvent, Time: 0.4},
		{Kind: sim.CanopyEvent, Canopy: 3, Time: 1},
	}}
	fl.RailExit.Speed = 18
	fl.Burnout = sim.Moment{Happened: true, Time: 0.4}
	assert.Equal(t, []event{
		{0.1, "rail exit 18.0 m/s, 0.100 s", true},
		{0.4, "liquid out and end of thrust, 0.400 s", false},
	}, joined(fl, metric))
}

// sweepOf flies a sweep whole, or until so many flights.
func sweepOf(t *testing.T, r *rocket.Rocket, most int, axes ...string) (report.Sweep, *Cells) {
	t.Helper()
	return sweepShowing(t, r, nil, most, axes...)
}

func sweepShowing(t *testing.T, r *rocket.Rocket, show []string, most int, axes ...string) (report.Sweep, *Cells) {
	t.Helper()
	parsed, err := study.ParseAxes(r, axes)
	require.NoError(t, err)
	var rows []results.Row
	for _, name := range show {
		rows = append(rows, *results.For(r).Must(name))
	}
	cells := NewCells(r, rows)
	ctx, stop := context.WithCancel(context.Background())
	defer stop()
	err = study.Sweep(ctx, r, parsed, study.Options{}, func(row study.Row) error {
		if cells.Len() < most {
			cells.Add(row)
		}
		return nil
	})
	require.NoError(t, err)
	return report.Sweep{Rocket: r, Axes: parsed}, cells
}

func TestSweepFollowsTheFlights(t *testing.T) {
	r := heron(t)
	s, cells := sweepOf(t, r, 100, "water.fill=0.4,0.2,0.3")
	p := Sweep(s, cells, metric)
	line := p.Rows[0].Panels[0].Lines[0]
	assert.Equal(t, []float64{20, 30, 40}, roundAll(line.X), "in the order of the axis")
	for i, fill := range []string{"0.2", "0.3", "0.4"} {
		fl := fly(t, heron(t, rocketfile.Change{Input: "water.fill", Value: fill}))
		assert.InEpsilon(t, fl.Apogee.Height, line.Y[i], 1e-9)
		assert.InEpsilon(t, fl.RailExit.Speed, p.Rows[1].Panels[0].Lines[0].Y[i], 1e-9)
	}
	best := p.Rows[0].Panels[0].Points[0]
	assert.Equal(t, newRange(line.Y).most, best.Y)
	assert.Contains(t, best.Label, "highest ")
	assert.NotContains(t, p.Title, "partial")
}

func roundAll(v []float64) []float64 {
	out := make([]float64, len(v))
	for i := range v {
		out[i] = math.Round(v[i]*1e9) / 1e9
	}
	return out
}

func TestSweepOfTwoInputs(t *testing.T) {
	r := heron(t)
	// First as the axis, second as the family, and the other way round: the same curves.
	s, cells := sweepOf(t, r, 100, "water.fill=0.2..0.4/7", "water.throat=11mm,13mm")
	a := Sweep(s, cells, metric).Rows[0].Panels[0]
	s, cells = sweepOf(t, r, 100, "water.throat=11mm,13mm", "water.fill=0.2..0.4/7")
	b := Sweep(s, cells, metric).Rows[0].Panels[0]
	require.Len(t, a.Lines, 2)
	assert.Equal(t, a.Lines, b.Lines)
	assert.Equal(t, "13 mm", a.Lines[1].Label)
	assert.NotEqual(t, a.Lines[0].Pen, a.Lines[1].Pen)

	s, cells = sweepOf(t, r, 100, "water.fill=0.2..0.4/7", "water.pressure=10..6bar/8")
	maps := Sweep(s, cells, metric).Rows[0].Panels
	require.Len(t, maps, 2)
	l := maps[0].Levels
	assert.Equal(t, []float64{6, 6.571428571, 7.142857143, 7.714285714, 8.285714286, 8.857142857, 9.428571429, 10}, roundAll(l.Y), "rising")
	fl := fly(t, heron(t, rocketfile.Change{Input: "water.fill", Value: "0.2"}, rocketfile.Change{Input: "water.pressure", Value: "10 bar"}))
	assert.InEpsilon(t, fl.Apogee.Height, l.Z[0][7], 1e-9)
	assert.Equal(t, 15.0, math.Round(maps[1].Levels.Limit*1e9)/1e9)
}

// Results that are asked for take the place of the usual ones, on curves and maps alike.
func TestSweepShowsWhatIsAskedFor(t *testing.T) {
	r := heron(t)
	show := []string{"landing.drift", "margin.least", "landing.energy"}
	s, cells := sweepShowing(t, r, show, 100, "water.fill=0.2..0.4/3")
	p := Sweep(s, cells, metric)
	require.Len(t, p.Rows, 3)
	drift := p.Rows[0].Panels[0]
	assert.Equal(t, "drift", drift.Y.Title)
	assert.Equal(t, "m", drift.Y.Unit)
	assert.False(t, math.IsNaN(drift.Lines[0].Y[0]))
	assert.Equal(t, "calibres", p.Rows[1].Panels[0].Y.Unit)
	assert.Equal(t, "J", p.Rows[2].Panels[0].Y.Unit)
	assert.True(t, p.Rows[0].Panels[0].X.Bare)
	assert.False(t, p.Rows[2].Panels[0].X.Bare)
	assert.Contains(t, string(p.SVG()), "</svg>")

	s, cells = sweepShowing(t, r, show, 100, "water.fill=0.2..0.4/7", "water.pressure=10..6bar/8")
	p = Sweep(s, cells, metric)
	require.Len(t, p.Rows, 2)
	require.Len(t, p.Rows[0].Panels, 2)
	assert.Equal(t, "drift, m", p.Rows[0].Panels[0].Title)
	assert.Equal(t, "landing energy, J", p.Rows[1].Panels[0].Title)
	assert.Contains(t, string(p.SVG()), "</svg>")
}

func TestPartialSweepSaysSo(t *testing.T) {
	r := heron(t)
	s, cells := sweepOf(t, r, 3, "water.fill=0.2..0.4/7")
	p := Sweep(s, cells, metric)
	assert.Contains(t, p.Title, "(partial: 3 of 7 flights)")
	assert.True(t, math.IsNaN(p.Rows[0].Panels[0].Lines[0].Y[3]))
	s, cells = sweepOf(t, r, 10, "water.fill=0.2..0.4/7", "water.pressure=6..10bar/7")
	p = Sweep(s, cells, metric)
	assert.Contains(t, p.Title, "(partial: 10 of 49 flights)")
	assert.Contains(t, string(p.SVG()), "</svg>")
	p = Sweep(s, NewCells(r, nil), metric)
	assert.Contains(t, string(p.SVG()), "No flight left the rail")
}

func TestSweepLeavesOutAndSaysSo(t *testing.T) {
	r := heron(t, rocketfile.Change{Input: "water.pressure", Value: "2 bar"})
	s, cells := sweepOf(t, r, 100, "water.fill=0.05..0.95/19")
	p := Sweep(s, cells, metric)
	grounded := 0
	for _, c := range cells.cells {
		if math.IsNaN(c.values[exitRow]) {
			grounded++
		}
	}
	require.Positive(t, grounded)
	assert.Contains(t, strings.Join(p.Notes, "\n"), "flights do not leave the rail and are left out")
	best := p.Rows[0].Panels[0].Points[0]
	assert.Less(t, best.X, 50.0)
}

func TestScatterIsAMap(t *testing.T) {
	r := heron(t)
	// An ellipse of 100 m by 40 m (semi-axes), its long axis towards the north-east.
	e := study.Ellipse{East: 10, North: -20, Major: 100, Minor: 40, Heading: math.Pi / 4}
	var landings Landings
	for i := range MostLandings + 10 {
		require.NoError(t, landings.Add(study.LandingPoint{East: float64(i % 7), North: 30}))
	}
	s := report.Dispersion{Rocket: r, Seed: 5, Result: study.Dispersion{
		Asked: 9000, Drawn: 5000, Landed: MostLandings + 10, Invalid: 3, Landing: e, Partial: true,
	}}
	p := Dispersion(s, &landings, metric)
	panel := p.Rows[0].Panels[0]
	assert.True(t, panel.Equal)
	assert.Len(t, panel.Dots[0].X, MostLandings)
	assert.Contains(t, p.Title, "(partial: 5000 of 9000 drawn)")
	assert.Contains(t, strings.Join(p.Notes, "\n"), "3 of 5000 draws made no rocket")
	assert.Contains(t, strings.Join(panel.Beside, "\n"), "4000 of 4010 landings are drawn")
	assert.Contains(t, strings.Join(panel.Beside, "\n"), "22.4 m from the pad, towards 153°")
	assert.Contains(t, strings.Join(panel.Beside, "\n"), "90 % "+words.In(metric.System).Ellipse(e))
	assert.Contains(t, strings.Join(panel.Beside, "\n"), "semi-axes 100 m and 40.0 m, the longer towards 45 deg")

	line := panel.Lines[0]
	d := math.Sqrt(0.5)
	for i := range line.X {
		x, y := line.X[i]-e.East, line.Y[i]-e.North
		along, across := (x+y)*d, (x-y)*d
		assert.InDelta(t, 1, along*along/1e4+across*across/1600, 1e-9)
	}
	assert.InDelta(t, e.East+100*d, newRange(line.X).most, 8, "the tip is to the north-east")
	assert.Equal(t, "pad", panel.Points[0].Label)
	assert.Equal(t, page.Point{X: 10, Y: -20, Sign: page.Target, Label: "mean"}, panel.Points[1])
}

func TestRings(t *testing.T) {
	for far, want := range map[float64]string{0: "", 9: "2 m 4 m 6 m 8 m", 80: "20 m 40 m 60 m 80 m", 163: "50 m 100 m 150 m", 1000: "200 m 400 m 600 m 800 m 1000 m"} {
		var got []string
		for _, r := range rings(far, metric.unit("m")) {
			got = append(got, r.Label)
		}
		assert.Equal(t, want, strings.Join(got, " "), "%v m", far)
	}
	assert.Empty(t, rings(math.NaN(), metric.unit("m")))
}

func TestWords(t *testing.T) {
	r := heron(t)
	assert.Equal(t, "0°", bearing(-1e-9, 1))
	assert.Equal(t, "90°", bearing(1, 0))
	assert.Equal(t, "225°", bearing(-1, -1))
	assert.Equal(t, "0 m/s", strings.Replace(metric.text(1e-12, "m/s"), "0.00", "0", 1))
	assert.Equal(t, "A rocket without a name on water power: one flight", title(&rocket.Rocket{Power: rocket.WaterPower}, "one flight"))
	r.Rail.Length, r.Rail.Tilt, r.Wind.Speed = 0, 0, 0
	assert.Contains(t, metric.day(r), "; no rail, 0° from vertical; calm")
	for _, power := range []rocket.Power{rocket.WaterPower, rocket.MotorPower} {
		r.Power = power
		assert.NotContains(t, strings.ToLower(metric.drive(r)+metric.closing(r)), "safe")
	}
	assert.Empty(t, metric.drive(&rocket.Rocket{}))
}
