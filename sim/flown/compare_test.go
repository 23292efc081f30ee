package flown

import (
	"bytes"
	"context"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/atmosphere"
	"ullage/sim/flown/logfile"
	"ullage/sim/long"
	"ullage/sim/report"
	"ullage/sim/results"
	"ullage/sim/rocket"
	"ullage/sim/study"
)

// A standard height of 580 m, zeroed at a sea-level pad of 101 325 Pa, on a day of 32 °C is
// 614.218 m (computed by plain arithmetic from ISO 2533's equations).
func TestStandardHeightsInOtherAir(t *testing.T) {
	a := newAir(atmosphere.Site{Temperature: 305.15, Pressure: 101325})
	// That is geopotential; the flight's heights are geometric, 0.06 m more.
	assert.InDelta(t, 614.218, atmosphere.Geopotential(a.ofTold(580, StandardHeights)), 5e-4)
	assert.InDelta(t, 614.218, atmosphere.Geopotential(a.ofTold(580, PadHeights)), 5e-4)
	assert.InDelta(t, 580, a.ofTold(580, MeasuredHeights), 0)
	assert.InDelta(t, -0.5*614.218/580, a.ofTold(-0.5, StandardHeights), 5e-3)
	// In standard air a standard height is geopotential, which the table of the standard has: at
	// 1000 m the pressure is 89 876.29 Pa (U.S. Standard Atmosphere 1976, python3-fluids).
	s := newAir(atmosphere.Site{})
	assert.InDelta(t, 1000, s.ofRatio(89876.29/101325), 0.05)
	assert.InDelta(t, 3000, s.ofRatio(70121.16/101325), 0.1)
	assert.InDelta(t, atmosphere.Geopotential(1000), atmosphere.StandardHeight(89876.29/101325), 0.05)
	// High up a recorder's zero matters: the pad's pressure is not that of sea level.
	high := newAir(atmosphere.Site{Elevation: 1500})
	assert.InDelta(t, 300, high.ofTold(atmosphere.StandardHeight(high.ratioAt(300))-high.zero, StandardHeights), 1e-6)
	assert.Less(t, high.ofTold(300, PadHeights), 297.0)
	assert.True(t, math.IsNaN(s.ofRatio(-1)) && math.IsNaN(s.ofRatio(math.NaN())))
}

// ratioAt is the pressure at a height over sea level's.
func (a *air) ratioAt(h float64) float64 {
	p, _ := a.column.At(h)
	return p / atmosphere.SeaLevelPressure
}

// What is told of a made-up log without noise is the flight it was made from.
func TestCompareWithItself(t *testing.T) {
	for _, name := range []string{"bottle", "heron", "drogue-main"} {
		t.Run(name, func(t *testing.T) {
			f := open(t, name)
			r := f.Rocket()
			fl := flyWith(t, r, nil)
			m := usual()
			m.noise, m.release = 0.02, 12.345
			at, h := m.heights(fl)
			l := logged(t, "log.csv", csv("time_s,height_m", at, h), r, Options{Heights: MeasuredHeights})
			c, err := Compare(context.Background(), l, study.Spreads(f), 100, study.Options{})
			require.NoError(t, err)
			assert.InDelta(t, 12.345, c.Release, 0.01)
			told := map[string]Difference{}
			for _, d := range c.Differences {
				told[d.Row.Name] = d
				assert.True(t, d.Inside, "%s %v not in %v to %v", d.Row.Name, d.Measured, d.Low, d.High)
				assert.Less(t, d.Low, d.High)
			}
			assert.InDelta(t, fl.Apogee.Height, told["apogee.height"].Measured, 0.1)
			assert.InDelta(t, fl.Apogee.Time, told["apogee.time"].Measured, 0.05)
			assert.InDelta(t, fl.Landing.Time, told["landing.time"].Measured, 0.3)
			assert.Contains(t, told, "max.speed")
			last := fl.Canopies[len(fl.Canopies)-1]
			assert.InEpsilon(t, last.Descent, told["canopy."+last.Name+".descent"].Measured, 0.05)
			assert.Empty(t, c.Suspicions)
			for _, s := range c.Stages {
				assert.Less(t, s.RMS, 0.06, s.Name)
			}
		})
	}
}

// Columns of every kind tell of the same flight.
func TestChannels(t *testing.T) {
	long.Unraced(t)
	f := open(t, "bottle")
	r := f.Rocket()
	fl := flyWith(t, r, map[string]float64{"body.drag_factor": 1.1})
	m := usual()
	m.noise, m.hertz = 0, 50
	at, h := m.heights(fl)
	pressure, speed, accel := make([]float64, len(at)), make([]float64, len(at)), make([]float64, len(at))
	air := newAir(r.Site)
	for i := range at {
		p, _ := air.column.At(h[i])
		pressure[i] = p + 0.5*float64(i%3-1)
		since := at[i] - m.release
		if since >= 0 && since < fl.Duration() {
			s := fl.At(since)
			speed[i] = s.Vertical
			accel[i] = (s.Thrust - s.Drag) / s.Mass
		} else {
			accel[i] = 9.8
		}
		speed[i] += 0.01 * float64(i%2)
		accel[i] += 0.05*float64(i%2) - 9.8 // rests at 0
	}
	for _, x := range []struct {
		name, head string
		columns    [][]float64
	}{
		{"pressure", "time_s,pressure_pa", [][]float64{at, pressure}},
		{"speed", "time_s,speed_m/s", [][]float64{at, speed}},
		{"acceleration", "time_s,acceleration_m/s2", [][]float64{at, accel}},
		{"all", "time_s,pressure_pa,speed_m/s,acceleration_m/s2", [][]float64{at, pressure, speed, accel}},
	} {
		t.Run(x.name, func(t *testing.T) {
			l := logged(t, "log.csv", csv(x.head, x.columns...), r, Options{})
			assert.InDelta(t, m.release, l.LiftOff, 0.2)
			got, err := Fit(context.Background(), []Logged{l}, spreadsOf(t, f, "body.drag_factor"))
			require.NoError(t, err)
			assert.InDelta(t, 1.1, got.Inputs[0].Value, 0.01)
			c, err := Compare(context.Background(), l, study.Spreads(f), 50, study.Options{})
			require.NoError(t, err)
			assert.NotEmpty(t, c.Differences)
			if x.name == "acceleration" {
				assert.InDelta(t, 9.8, l.Channels[0].Added, 0.1)
			}
		})
	}
}

func TestWrongUnitsAreSuspected(t *testing.T) {
	long.Unraced(t)
	f := open(t, "bottle")
	r := f.Rocket()
	at, h := usual().heights(flyWith(t, r, nil))
	feet := make([]float64, len(h))
	for i := range h {
		feet[i] = h[i] / 0.3048
	}
	compare := func(head string, columns ...[]float64) string {
		l := logged(t, "log.csv", csv(head, columns...), r, Options{Heights: MeasuredHeights})
		c, err := Compare(context.Background(), l, study.Spreads(f), 50, study.Options{})
		require.NoError(t, err)
		return c.Suspicions.Error()
	}
	assert.Contains(t, compare("time_s,height_m", at, feet), "--column 'height=2 ft'")
	assert.Contains(t, compare("time_s,height_ft", at, h), "--column 'height=2 m'")
	other := make([]float64, len(h))
	for i := range h {
		other[i] = 1.8 * h[i]
	}
	assert.Contains(t, compare("time_s,height_m", at, other), "another flight")
}

// A log of an afternoon, with drift, handling and one flight in it; of two flights one has to be chosen.
func TestFlightsAreFound(t *testing.T) {
	long.Unraced(t)
	f := open(t, "bottle")
	r := f.Rocket()
	m := usual()
	m.before, m.after, m.release = 1800, 900, 1805.5
	at, h := m.heights(flyWith(t, r, nil))
	for i := range h {
		h[i] += 8 * math.Sin(at[i]/600) // the weather
		if at[i] > 300 && at[i] < 330 {
			h[i] += 1.5 * math.Sin(at[i]) // carried about
		}
	}
	l := logged(t, "log.csv", csv("time_s,height_m", at, h), r, Options{Heights: MeasuredHeights})
	assert.InDelta(t, m.release, l.LiftOff, 0.3)
	assert.InDelta(t, m.release+flyWith(t, r, nil).Duration(), l.Landing, 1)
	assert.Less(t, len(l.Channels[0].T), 1500)

	two := append(append([]float64(nil), h...), h...)
	times := append([]float64(nil), at...)
	for _, x := range at {
		times = append(times, x+at[len(at)-1]+0.05)
	}
	log, err := logfile.Read("two.csv", csv("time_s,height_m", times, two), logfile.Options{})
	require.NoError(t, err)
	_, err = Read(log, r, Options{})
	assert.ErrorContains(t, err, "holds 2 flights, which lift off at 1805")
	assert.ErrorContains(t, err, "--from '1800 s'")
	rd, err := Read(log, r, Options{From: 1700, To: 2000})
	require.NoError(t, err)
	assert.InDelta(t, m.release, rd.LiftOff, 0.3)
	// Without --from, a clock that begins anew keeps the flights apart as well.
	log, err = logfile.Read("two.csv", csv("time_s,height_m", append(append([]float64(nil), at[:2000]...), at...), append(append([]float64(nil), h[:2000]...), h...)), logfile.Options{})
	require.NoError(t, err)
	rd, err = Read(log, r, Options{})
	require.NoError(t, err)
	assert.InDelta(t, m.release, rd.LiftOff, 0.3)
}

func TestNoFlight(t *testing.T) {
	r := open(t, "bottle").Rocket()
	var at, h []float64
	for i := range 500 {
		at, h = append(at, float64(i)/20), append(h, 0.4*math.Sin(float64(i*i)))
	}
	log, err := logfile.Read("pad.csv", csv("time_s,height_m", at, h), logfile.Options{})
	require.NoError(t, err)
	_, err = Read(log, r, Options{})
	var none NoFlight
	require.ErrorAs(t, err, &none)
	assert.Len(t, none.T, 500)
	assert.ErrorContains(t, err, "pad.csv: column 2 (height_m): shows no lift-off")
	log, err = logfile.Read("slow.csv", csv("time_s,height_m", []float64{0, 5, 10, 15, 20, 25, 30, 35, 40, 45, 50}, []float64{0, 0, 0, 50, 40, 30, 20, 10, 0, 0, 0}), logfile.Options{})
	require.NoError(t, err)
	_, err = Read(log, r, Options{})
	assert.ErrorContains(t, err, "a value every 5 s")
}

// A chamber's pressure alone tells when the rocket is let go, among filling, a leak and what is let off by
// a valve; and it tells the discharge.
func TestChamberAlone(t *testing.T) {
	long.Unraced(t)
	f := open(t, "wagtail")
	r := f.Rocket()
	fl := flyWith(t, r, map[string]float64{"water.discharge": 0.95, "water.exponent": 1.33})
	const hertz, release = 200.0, 32.0311
	full := fl.At(0).Chamber - fl.At(0).Air
	at, p := []float64{}, []float64{}
	for i := range int(33.5 * hertz) {
		s := float64(i) / hertz
		v := 0.0
		switch since := s - release; {
		case s < 2:
		case s < 6: // a trial, let off by a valve
			v = 0.8 * full * min(1, (s-2)/2)
		case s < 16:
			v = 0.8 * full * math.Exp(-(s-6)/4)
		case s < 26: // pumped in strokes
			v = full * min(1, math.Ceil((s-16)*2)/2/9)
		case since < 0:
			v = full * (1 + 0.002*(26-s)/6)
		default:
			v = fl.At(since).Chamber - fl.At(since).Air
		}
		at, p = append(at, s), append(p, v/1e5+0.01*float64(i%3-1))
	}
	l := logged(t, "log.csv", csv("time_s,chamber_bar_gauge", at, p), r, Options{})
	assert.InDelta(t, release, l.LiftOff, 0.01)
	c, err := Compare(context.Background(), l, study.Spreads(f), 20, study.Options{})
	require.NoError(t, err)
	assert.InDelta(t, release, c.Release, 0.006)
	require.Len(t, c.Differences, 1)
	assert.Equal(t, "burnout.time", c.Differences[0].Row.Name)
	assert.InDelta(t, fl.Burnout.Time-c.Flight.Burnout.Time, c.Differences[0].Measured-c.Differences[0].Predicted, 0.1*c.Flight.Burnout.Time)
	got, err := Fit(context.Background(), []Logged{l}, spreadsOf(t, f, "water.discharge", "water.exponent"))
	require.NoError(t, err)
	assert.InDelta(t, 0.95, got.Inputs[0].Value, 0.003)
	assert.InDelta(t, 1.33, got.Inputs[1].Value, 0.01)
	assert.True(t, math.IsNaN(got.Logs[0].Apogee.Measured), "no height, no apogee")

	assert.Empty(t, l.Notes)
	r.Water.Pressure *= 0.95
	other := logged(t, "log.csv", csv("time_s,chamber_bar_gauge", at, p), r, Options{})
	require.Len(t, other.Notes, 1)
	assert.Contains(t, other.Notes[0].Error(), "rests at 8.98 bar before release, where the flight is predicted with 8.55 bar; if the column is right, tell it: --set 'water.pressure=8.98 bar'")

	// On a motor nothing is released.
	r.Power = rocket.MotorPower
	log, err := logfile.Read("log.csv", csv("time_s,chamber_bar_gauge", at, p), logfile.Options{})
	require.NoError(t, err)
	_, err = Read(log, r, Options{})
	assert.ErrorContains(t, err, "no column is known to be a height, pressure, speed or acceleration; say which")
}

// What fly --csv writes reads back as what it was made from; what is called wrong is not judged.
func TestOwnSamplesAndWrongUnits(t *testing.T) {
	long.Unraced(t)
	f := open(t, "bottle")
	r := f.Rocket()
	fl := flyWith(t, r, nil)
	var b bytes.Buffer
	require.NoError(t, report.WriteCSV(&b, fl, results.Over(), 0.01))
	l := logged(t, "own.csv", b.Bytes(), r, Options{})
	require.Len(t, l.Notes, 1)
	assert.Contains(t, l.Notes[0].Error(), "samples of a flight of this program")
	c, err := Compare(context.Background(), l, study.Spreads(f), 20, study.Options{})
	require.NoError(t, err)
	assert.InDelta(t, 0, c.Release, 1e-3)
	for _, d := range c.Differences {
		assert.InEpsilon(t, d.Predicted, d.Measured, 1e-3, d.Row.Name)
	}

	m := usual()
	m.noise = 0.05
	at, h := m.heights(fl)
	a := make([]float64, len(at))
	for i := range a {
		a[i] = 1448 + 40*math.Sin(float64(i)) // counts of a converter
	}
	l = logged(t, "log.csv", csv("time_s,height_m,acceleration_m/s2", at, h, a), r, Options{Heights: MeasuredHeights})
	assert.Nil(t, l.first(logfile.Acceleration))
	assert.Contains(t, l.Notes.Error(), "rests at 144")
	assert.Contains(t, l.Notes.Error(), "left out; look at its unit")
	log, err := logfile.Read("log.csv", csv("time_s,height_m", at, h), logfile.Options{})
	require.NoError(t, err)
	_, err = Read(log, r, Options{From: 500, To: 600})
	assert.ErrorContains(t, err, "log.csv: --from and --to leave fewer than 10 values of it; its clock runs from 0.05 s to 32")
}
