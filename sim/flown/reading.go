package flown

import (
	"fmt"
	"math"
	"strings"

	"ullage/atmosphere"
	"ullage/sim/fault"
	"ullage/sim/flown/logfile"
	"ullage/sim/rocket"
)

// Options are how a log is to be read against a rocket.
type Options struct {
	Heights  Heights // "" is StandardHeights
	From, To float64 // where in the log to look, s by its clock; both 0 for all of it
}

// Reading is a flight found in a log, its columns turned into what a flight's own numbers can
// be held against.
type Reading struct {
	Log      *logfile.Log
	Heights  Heights
	LiftOff  float64 // s by the log's clock: the last moment at rest; a first guess, which a fit sharpens
	Landing  float64 // s by the log's clock; NaN when the log does not tell it
	From, To float64 // the stretch of the log that is used, s by its clock
	Channels []Channel
	Told     float64 // the log's greatest height as it stands in it, above its pad, m; NaN without heights
	Turned   float64 // the same height in the air of the site, m
	Notes    fault.List
	Pinned   bool      // LiftOff is told: see Released
	LeftOut  []Stretch // see Without
	Lost     int       // samples of the column that lost most by it

	which int // of the stretches of the log
}

// Channel is a column ready to be held against a flight.
type Channel struct {
	Column   logfile.Column
	T        []float64 // s by the log's clock
	Y        []float64 // SI; heights are above the pad, in the air of the site
	Signed   bool      // a speed that is negative on the way down
	Gauge    bool      // a chamber's pressure over that of the air
	Added    float64   // put back to what rests at 0: an accelerometer's gravity, m/s²
	Step     float64   // the recorder's step, SI; 0 when it does not show
	Noise    float64   // standard deviation, SI, from the pad's samples where there are some
	PadCount int       // samples at rest before lift-off
	Every    float64   // usual time between samples, s
	Weighs   float64   // of a thrust: how what has left counts in the reading, −1, 0 or 1 (see Mount)
}

// pressureMade tells whether a pressure of air is behind the channel.
func (c *Channel) pressureMade() bool {
	switch c.Column.Quantity {
	case logfile.Pressure:
		return true
	case logfile.Height, logfile.Speed:
		return !c.Column.Measured
	}
	return false
}

// height tells whether the channel is a height above the pad.
func (c *Channel) height() bool {
	return c.Column.Quantity == logfile.Height || c.Column.Quantity == logfile.Pressure
}

// Best is the channel that tells heights: the first of them; nil without one.
func (r *Reading) Best() *Channel {
	for i := range r.Channels {
		if r.Channels[i].height() {
			return &r.Channels[i]
		}
	}
	return nil
}

// NoFlight is a log in which no flight was found, with what it tells instead.
type NoFlight struct {
	fault.Fault
	T, Y   []float64
	Column logfile.Column
}

// Unwrap is the fault.
func (n NoFlight) Unwrap() error { return n.Fault }

// Read finds the flight in a log. The rocket gives the air of its site. The error is a fault, or
// NoFlight.
func Read(log *logfile.Log, r *rocket.Rocket, o Options) (*Reading, error) {
	own := ours(log)
	if o.Heights == "" {
		o.Heights = StandardHeights
	}
	if own {
		o.Heights = MeasuredHeights
	}
	rd := &Reading{Log: log, Heights: o.Heights, Landing: math.NaN(), Told: math.NaN(), Turned: math.NaN()}
	if own {
		rd.Notes = append(rd.Notes, ownNote())
	}
	f, err := rd.find(r, o)
	if err != nil {
		return nil, err
	}
	const after = 3
	rd.LiftOff, rd.Landing = f.liftOff, f.landing
	rd.From = f.liftOff - restBefore
	rd.To = math.Inf(1)
	if !math.IsNaN(f.landing) {
		rd.To = f.landing + after
	}
	if o.To > o.From {
		rd.From, rd.To = math.Max(rd.From, o.From), math.Min(rd.To, o.To)
	}
	air := newAir(r.Site)
	from, to := rd.stretch()
	for i := range log.Columns {
		if q := log.Columns[i].Quantity; q == logfile.Time || q == logfile.Temperature || q == logfile.Thrust {
			continue
		}
		c := log.Columns[i]
		if own {
			if c.Quantity == logfile.Acceleration {
				continue
			}
			c.Measured, c.Absolute = true, c.Quantity == logfile.Chamber
		}
		s := without(log.Time[from:to], log.Values[i][from:to]).between(rd.From, rd.To)
		if len(s.t) >= fewest {
			rd.channel(c, s, r, air)
		}
	}
	if len(rd.Channels) == 0 {
		if n := len(rd.Notes); n > 0 && !own { // why the last of them was left out
			why := rd.Notes[n-1]
			why.File = log.Name
			return nil, why
		}
		return nil, fault.Fault{File: log.Name, Problem: fmt.Sprintf("has fewer than %d values of the flight in every column", fewest), Remedy: "look at the log; a recorder that writes so seldom tells nothing of a flight"}
	}
	rd.To = math.Min(rd.To, log.Time[to-1])
	rd.From = math.Max(rd.From, log.Time[from])
	return rd, nil
}

// fewest values make a channel, and fewestOnPad tell where a column rests.
const (
	fewest      = logfile.Fewest
	fewestOnPad = 3
)

// stretch is the part of the log in which the clock rises and the flight is.
func (rd *Reading) stretch() (from, to int) {
	starts := append(append([]int(nil), rd.Log.Starts...), len(rd.Log.Time))
	for i := 0; i+1 < len(starts); i++ {
		from, to = starts[i], starts[i+1]
		if rd.which == i {
			break
		}
	}
	return from, to
}

// find looks for flights in the column that tells most, stretch by stretch.
func (rd *Reading) find(r *rocket.Rocket, o Options) (found, error) {
	log := rd.Log
	order := []logfile.Quantity{logfile.Height, logfile.Pressure, logfile.Speed, logfile.Acceleration}
	stood := log.Find(logfile.Thrust) >= 0
	if r.Power == rocket.WaterPower && !stood { // a motor's pressure falls when it has burnt
		order = append(order, logfile.Chamber)
	}
	var shown series
	var of logfile.Column
	for _, q := range order {
		k := log.Find(q)
		if k < 0 {
			continue
		}
		var all []found
		var in []int
		starts := append(append([]int(nil), log.Starts...), len(log.Time))
		for i := 0; i+1 < len(starts); i++ {
			s := without(log.Time[starts[i]:starts[i+1]], log.Values[k][starts[i]:starts[i+1]])
			if o.To > o.From {
				s = s.between(o.From, o.To)
			}
			if len(s.t) < fewest {
				continue
			}
			if step := s.step(); step > slowestStep {
				return found{}, fault.Fault{File: log.Name, Key: log.Columns[k].Name(), Problem: fmt.Sprintf("has a value every %.3g s", step),
					Remedy: "a flight takes several a second; if the times are not in " + timeUnit(log) + ", say so, as in --column 'time=1 ms'"}
			}
			if len(s.t) > len(shown.t) {
				shown, of = s, log.Columns[k]
			}
			flights := flightsIn(q, s)
			all = append(all, flights...)
			for range flights {
				in = append(in, i)
			}
		}
		switch {
		case len(all) == 1:
			rd.which = in[0]
			return all[0], nil
		case len(all) > 1:
			var at []string
			for _, f := range all {
				at = append(at, fmt.Sprintf("%.1f s", f.liftOff))
			}
			return found{}, fault.Fault{File: log.Name, Key: log.Columns[k].Name(), Problem: fmt.Sprintf("holds %d flights, which lift off at %s", len(all), strings.Join(at, ", ")),
				Remedy: fmt.Sprintf("say which is meant, as in --from '%.0f s' --to '%.0f s'", math.Floor(all[0].liftOff-5), math.Ceil(endOf(all[0])+5))}
		}
	}
	if len(shown.t) == 0 && stood {
		return found{}, fault.Fault{File: log.Name, Problem: "has a thrust and nothing that flies: a static test, it seems", Remedy: "ullage stand reads it"}
	}
	if len(shown.t) == 0 {
		return found{}, nothingToLookAt(log, o, order)
	}
	return found{}, NoFlight{fault.Fault{File: log.Name, Key: of.Name(), Problem: "shows no lift-off: " + noLiftOff(of.Quantity),
		Remedy: "look at its course; if the column or its unit is another, say so, as in --column 'height=2 m'"}, shown.t, shown.y, of}
}

// noLiftOff is what a column of a quantity lacks.
func noLiftOff(q logfile.Quantity) string {
	switch q {
	case logfile.Speed, logfile.Acceleration:
		return "nothing that stands out of what it rests at"
	case logfile.Chamber:
		return fmt.Sprintf("no pressure of which %.0f %% is gone within %.0f s", 100*emptiesBy, emptiesWithin)
	}
	return fmt.Sprintf("nothing that rises %.0f m within a second and stands out of the noise", leastClimb)
}

func endOf(f found) float64 {
	switch {
	case !math.IsNaN(f.landing):
		return f.landing
	case !math.IsNaN(f.top):
		return f.top + 10
	}
	return f.liftOff + 10
}

func timeUnit(log *logfile.Log) string {
	if k := log.Find(logfile.Time); k >= 0 {
		return log.Columns[k].Unit.Name
	}
	return "s"
}

// flightsIn finds the flights in a column.
func flightsIn(q logfile.Quantity, s series) []found {
	switch q {
	case logfile.Height:
		return climbs(s)
	case logfile.Pressure:
		h := series{s.t, make([]float64, len(s.y))}
		pad := s.middle()
		for i, p := range s.y {
			h.y[i] = atmosphere.StandardHeight(math.Max(p, 0) / pad)
		}
		return climbs(h)
	case logfile.Speed:
		return leaves(s, 5)
	case logfile.Acceleration:
		return leaves(s, 10)
	case logfile.Chamber:
		return falls(s)
	}
	return nil
}

// channel turns one column and adds it.
func (rd *Reading) channel(c logfile.Column, s series, r *rocket.Rocket, a *air) {
	ch := Channel{Column: c, T: s.t, Y: s.y, Every: s.step()}
	pad := s.between(rd.From, rd.LiftOff-restMargin)
	if c.Quantity == logfile.Chamber { // pumped up until right before
		pad = s.between(rd.LiftOff-1, rd.LiftOff)
	}
	level := s.y[0]
	if len(pad.t) >= fewestOnPad {
		level = pad.middle()
	} else if ch.height() && !ours(rd.Log) {
		rd.Notes = append(rd.Notes, fault.Fault{Key: c.Name(), Problem: "begins at lift-off or after it, so that its height of the pad is not known by itself", Remedy: "let the recorder run a few seconds before"})
	}
	ch.Step = s.quantum()
	turn := func(v float64) float64 { return v }
	switch c.Quantity {
	case logfile.Height:
		turn = func(v float64) float64 { return v - level }
		if !c.Measured && rd.Heights != MeasuredHeights {
			turn = func(v float64) float64 { return a.ofTold(v-level, rd.Heights) }
		}
	case logfile.Pressure:
		turn = func(v float64) float64 { return a.ofRatio(v / level) }
	case logfile.Speed:
		least, greatest := math.Inf(1), math.Inf(-1)
		for _, v := range s.y {
			least, greatest = math.Min(least, v), math.Max(greatest, v)
		}
		ch.Signed = least < -0.05*greatest
	case logfile.Acceleration:
		added, known := rd.gravity(c, level, len(pad.t) >= fewestOnPad, r, a)
		if !known {
			return
		}
		ch.Added = added
		turn = func(v float64) float64 { return v + ch.Added }
	case logfile.Chamber:
		ch.Gauge = rd.gauge(c, level, r, a)
		if over := level; len(pad.t) >= fewestOnPad && r.Power == rocket.WaterPower {
			if !ch.Gauge {
				over -= a.pad
			}
			rd.released(c, over, r)
		}
	}
	if c.Quantity == logfile.Height || c.Quantity == logfile.Pressure || c.Quantity == logfile.Acceleration {
		ch.Y = make([]float64, len(s.y))
		for i, v := range s.y {
			ch.Y[i] = turn(v)
		}
		if c.Quantity == logfile.Pressure {
			ch.Step = math.Abs(turn(level-ch.Step) - turn(level))
		}
	}
	turned := series{ch.T, ch.Y}
	quiet := turned.between(rd.From, rd.LiftOff-restMargin)
	ch.PadCount = len(quiet.t)
	switch {
	case ch.PadCount < fewest:
		ch.Noise = turned.roughness()
	case c.Quantity == logfile.Chamber:
		ch.Noise = quiet.roughness()
	default:
		ch.Noise = quiet.scatter()
	}
	ch.Noise = math.Max(ch.Noise, ch.Step/math.Sqrt(12))
	if !(ch.Noise > 0) {
		ch.Noise = math.Max(1e-6, 1e-6*math.Abs(turned.between(rd.LiftOff, rd.To).scatter()))
	}
	if rd.Best() == nil && ch.height() {
		rd.top(c, s, level, turn)
	}
	rd.Channels = append(rd.Channels, ch)
}

// top notes the greatest height as the log tells it and as it is in the air of the site.
func (rd *Reading) top(c logfile.Column, s series, level float64, turn func(float64) float64) {
	told := s.smoothed()
	at := 0
	for i := range told.y {
		if turn(told.y[i]) > turn(told.y[at]) {
			at = i
		}
	}
	rd.Turned = turn(told.y[at])
	rd.Told = told.y[at] - level
	if c.Quantity == logfile.Pressure {
		rd.Told = atmosphere.StandardHeight(told.y[at]/atmosphere.SeaLevelPressure) - atmosphere.StandardHeight(level/atmosphere.SeaLevelPressure)
	}
}
