package flown

import (
	"math"

	"ullage/sim"
	"ullage/sim/flown/logbook"
	"ullage/sim/flown/logfile"
	"ullage/sim/rocket"
)

// What is left out of a fit, by the model's rule: a pressure tells no height near an opening,
// whose charge and canopy shake the air inside, nor near the speed of sound
// (common practice, no source).
const (
	nearOpening = 0.3 // s to each side
	nearSonic   = 0.8 // Mach
	// Earlier a chamber's pressure tells of the pump and of leaks.
	beforeRelease = 0.1 // s
)

// predict fills dst with what a flight would have the channel tell, the flight's release
// being at a time of the log's clock. Before release the rocket rests; where the flight tells
// nothing it is NaN. It does so for the first samples only, as many as dst has room for.
func (c *Channel) predict(fl *sim.Flight, release float64, times, dst []float64) {
	end := fl.Duration()
	times = times[:len(dst)]
	for i := range times {
		times[i] = c.T[i] - release
	}
	switch c.Column.Quantity {
	case logfile.Height, logfile.Pressure:
		fl.Places(times, func(i int, p sim.Place) { dst[i] = p.Height })
	case logfile.Speed:
		fl.Places(times, func(i int, p sim.Place) {
			switch {
			case times[i] < 0 || times[i] > end:
				dst[i] = 0
			case c.Signed:
				dst[i] = p.Vertical
			default:
				dst[i] = p.Speed
			}
		})
	case logfile.Acceleration:
		rest := newAir(fl.Rocket.Site).column.Gravity(0) * math.Cos(fl.Rocket.Rail.Tilt)
		fl.Read(times, func(i int, s sim.Sample) {
			dst[i] = (s.Thrust - s.Drag) / s.Mass
			if times[i] < 0 {
				dst[i] = rest
			}
			if onPad := s.Height <= 0 && s.Speed == 0; onPad {
				dst[i] = rest
			}
		})
	case logfile.Thrust:
		full := fl.At(0).Mass
		gravity := newAir(fl.Rocket.Site).column.Gravity(0)
		fl.Read(times, func(i int, s sim.Sample) {
			dst[i] = s.Thrust + c.Weighs*(s.Mass-full)*gravity
			if times[i] < 0 {
				dst[i] = 0
			} else if times[i] > end {
				dst[i] -= s.Thrust
			}
		})
	case logfile.Chamber:
		fl.Read(times, func(i int, s sim.Sample) {
			dst[i] = s.Chamber
			if c.Gauge {
				dst[i] -= s.Air
			}
		})
	default:
		for i := range dst {
			dst[i] = math.NaN()
		}
	}
}

// climb fills dst with how a height that predict tells changes as the release is later, m/s.
func (c *Channel) climb(fl *sim.Flight, release float64, times, dst []float64) {
	end := fl.Duration()
	times = times[:len(dst)]
	for i := range times {
		times[i] = c.T[i] - release
	}
	fl.Places(times, func(i int, p sim.Place) {
		dst[i] = 0
		if times[i] > 0 && times[i] < end {
			dst[i] = -p.Vertical
		}
	})
}

// usable marks the samples that a fit may use, as a flight has it: none after the log's landing,
// of what a pressure made none near an opening or the speed of sound, of an accelerometer and a
// chamber none beyond what they tell. Without canopies, none from the first opening on.
func (rd *Reading) usable(c *Channel, fl *sim.Flight, release float64, canopies bool) []bool {
	use := make([]bool, len(c.T))
	times := make([]float64, len(c.T))
	for i, t := range c.T {
		times[i] = t - release
	}
	last := math.Inf(1)
	if !math.IsNaN(rd.Landing) {
		last = rd.Landing - nearOpening - release
	}
	var openings []float64
	for _, o := range fl.Canopies {
		if o.Opened {
			openings = append(openings, o.Time)
		}
	}
	first := math.Inf(1)
	for _, t := range openings {
		first = math.Min(first, t)
	}
	if !canopies {
		last = math.Min(last, first-nearOpening)
	}
	switch c.Column.Quantity {
	case logfile.Acceleration:
		if fl.Apogee.Happened {
			last = math.Min(last, math.Min(0.9*fl.Apogee.Time, first-nearOpening))
		}
	case logfile.Chamber:
		last = math.Min(last, fl.Burnout.Time)
	case logfile.Thrust:
		last = 1.2 * fl.Burnout.Time
	}
	earliest := math.Inf(-1)
	if c.Column.Quantity == logfile.Chamber {
		earliest = -beforeRelease
	}
	for i, t := range times {
		use[i] = t >= earliest && t <= last
	}
	if !c.pressureMade() {
		for i, t := range times {
			use[i] = use[i] && !c.jumps(fl, t)
		}
		return use
	}
	for i, t := range times {
		for _, at := range openings {
			if math.Abs(t-at) <= nearOpening {
				use[i] = false
			}
		}
	}
	if fl.Max.Mach > nearSonic {
		fl.Read(times, func(i int, s sim.Sample) {
			if times[i] >= 0 && s.Mach > nearSonic {
				use[i] = false
			}
		})
	}
	return use
}

// jumps tells whether what pushes jumps near a time: a recorder's sample there is a mean over
// some of both sides.
func (c *Channel) jumps(fl *sim.Flight, t float64) bool {
	if c.Column.Quantity != logfile.Acceleration && c.Column.Quantity != logfile.Chamber && c.Column.Quantity != logfile.Thrust {
		return false
	}
	const least = 0.01 // s to each side
	near := math.Max(least, c.Every)
	at := func(m sim.Moment) bool { return m.Happened && math.Abs(t-m.Time) <= near }
	surges := fl.WaterFlew && t >= 0 && t < fl.Max.ThrustTime // the first milliseconds of the jet are an idea of a valve
	return surges || math.Abs(t) <= near || at(fl.TubeExit.Moment) || at(fl.LiquidOut) || at(fl.Burnout)
}

// tellsDescent tells whether a log goes on long enough under a canopy for the canopy to be told.
func (rd *Reading) tellsDescent(fl *sim.Flight, i int, release float64) bool {
	const long = 3 // s settled
	if rd.Best() == nil || i >= len(fl.Canopies) || !fl.Canopies[i].Opened {
		return false
	}
	end := rd.To
	if !math.IsNaN(rd.Landing) {
		end = math.Min(end, rd.Landing)
	}
	full := fl.Canopies[i].Time
	if fl.Canopies[i].Full {
		full = fl.Canopies[i].FullTime
	}
	next := fl.Landing.Time
	for k, c := range fl.Canopies {
		if k != i && c.Opened && c.Time > fl.Canopies[i].Time {
			next = math.Min(next, c.Time)
		}
	}
	return math.Min(end-release, next)-full >= long
}

// Logged is a flight found in a log with the rocket of that day.
type Logged struct {
	*Reading
	Rocket   *rocket.Rocket
	Day      string         // where the day's settings are from, for people
	Entry    *logbook.Entry // of the logbook, that names the log; nil when none does
	Settings []Setting      // what the day set
	Held     bool           // on a stand: the rocket does not move
}
