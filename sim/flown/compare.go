package flown

import (
	"context"
	"math"
	"sort"

	"ullage/sim"
	"ullage/sim/fault"
	"ullage/sim/flown/logfile"
	"ullage/sim/results"
	"ullage/sim/solve"
	"ullage/sim/study"
)

// Difference is one result, measured and predicted. The prediction is read from the flight in
// the way the measured figure is read from the log, sampled and smoothed like it, so that what
// smoothing takes is taken from both.
type Difference struct {
	Row       results.Row
	Measured  float64
	Predicted float64
	Low, High float64 // between which 90 % of the predicted flights are
	Inside    bool
}

// Stage is a part of the flight with how far the log is off it.
type Stage struct {
	Name      string
	From, To  float64 // s after release
	Mean, RMS float64 // measured less predicted, m
	Count     int
}

// Compared is a log beside its prediction.
type Compared struct {
	*Logged
	Flight      *sim.Flight // predicted, kept
	Release     float64     // s by the log's clock
	Zero        float64     // of the first height, m
	Width       int         // samples that a parabola is fitted through
	Differences []Difference
	Stages      []Stage
	Draws       int // flights behind Low and High
	// Suspicions are what looks like a wrong unit or the log of another flight.
	Suspicions fault.List
}

// Compare holds a log against the flight that is predicted for its rocket. The time of release
// and the zero of heights are fitted to the first part of the flight; the spread of the prediction is that
// of flights with what is uncertain drawn at random, always the same ones.
func Compare(ctx context.Context, l Logged, spreads []study.Spread, draws int, o study.Options) (*Compared, error) {
	c, err := Hold(ctx, l)
	if err != nil {
		return nil, err
	}
	return c, c.Spread(ctx, spreads, draws, o)
}

// UsualDraws is how many flights the spread of a prediction is of, unless another number is asked for.
const UsualDraws = 400

// Hold is Compare without the spread, which takes hundreds of flights.
func Hold(ctx context.Context, l Logged) (*Compared, error) {
	c := &Compared{Logged: &l}
	if err := c.align(ctx); err != nil {
		return nil, err
	}
	c.differences()
	c.suspect()
	if ch := c.Best(); ch != nil {
		c.Stages = c.Off(ch)
	}
	return c, nil
}

// Spread tells how far flights with what is uncertain drawn at random are apart.
func (c *Compared) Spread(ctx context.Context, spreads []study.Spread, draws int, o study.Options) error {
	c.Draws = draws
	if len(c.Differences) == 0 {
		return nil
	}
	rows := make([]results.Row, len(c.Differences))
	for i := range rows {
		rows[i] = c.Differences[i].Row
	}
	d, err := study.Disperse(ctx, c.Rocket, study.Draws{Spreads: spreads, Flights: draws, Seed: 1, Show: rows}, o, nil)
	if err != nil {
		return err
	}
	for i := range c.Differences {
		x := &c.Differences[i]
		own := x.Row.Of(c.Flight)
		for _, s := range d.Shown {
			if s.Row.Name == x.Row.Name {
				x.Low, x.High = x.Predicted+s.Of.Q05-own, x.Predicted+s.Of.Q95-own
			}
		}
		x.Inside = x.Measured >= x.Low && x.Measured <= x.High
	}
	return nil
}

// align finds the time of release and the zeros by what is least like the rest of the rocket:
// the pad, the thrust and a little after.
func (c *Compared) align(ctx context.Context) error {
	f := newFitter(ctx, []Logged{*c.Logged}, nil)
	fl, err := f.kept(f.start(), 0)
	if err != nil {
		return err
	}
	c.Flight = fl
	f.pinned = c.Pinned
	some := c.Best() != nil
	for _, t := range f.tracks {
		const enough = 8 // samples
		until := math.Max(1.2*fl.Burnout.Time+0.3, enough*t.Every)
		if fl.Apogee.Happened {
			until = math.Min(until, 0.8*fl.Apogee.Time)
		}
		if i := sort.SearchFloat64s(t.T, f.release[0]) + enough; len(c.LeftOut) > 0 && i < len(t.T) {
			until = math.Max(until, t.T[i]-f.release[0]) // what is left out may be all of the thrust
		}
		t.use = make([]bool, len(t.T))
		t.last = 0
		for i, at := range t.T {
			if t.use[i] = at <= f.release[0]+until && (t.height() || !some); t.use[i] {
				t.last = i + 1
			}
		}
	}
	from := f.start()
	if !f.pinned {
		if from, err = f.scan(); err != nil {
			return err
		}
	}
	s, err := solve.LeastSquares(f.residuals(), from, solve.Stop{Gain: 1e-8, Closer: 1e-8, Most: 60, Reach: 10})
	if err != nil {
		return err
	}
	c.Release = f.releaseOf(s.X, 0)
	for _, t := range f.tracks {
		if t.zero == 0 {
			c.Zero = f.zeroOf(s.X, t)
		}
	}
	return nil
}

// since are a channel's times after release.
func (c *Compared) since(ch *Channel) []float64 {
	out := make([]float64, len(ch.T))
	for i, t := range ch.T {
		out[i] = t - c.Release
	}
	return out
}

// predicted is what the flight would have a channel tell.
func (c *Compared) predicted(ch *Channel) []float64 {
	times, y := make([]float64, len(ch.T)), make([]float64, len(ch.T))
	ch.predict(c.Flight, c.Release, times, y)
	return y
}

// Course is a channel's course over time after release, predicted and measured, heights less
// their zero.
func (c *Compared) Course(ch *Channel) (times, predicted, measured []float64) {
	zero := c.zeroOf(ch)
	measured = make([]float64, len(ch.Y))
	for i, v := range ch.Y {
		measured[i] = v - zero
	}
	return c.since(ch), c.predicted(ch), measured
}

// zeroOf is where a channel's zero is taken to be, SI.
func (c *Compared) zeroOf(ch *Channel) float64 {
	if ch.height() {
		return c.Zero
	}
	return 0
}

// differences reads what log and flight tell.
func (c *Compared) differences() {
	table := results.For(c.Rocket)
	add := func(name string, measured, predicted float64) {
		if row := table.Find(name); row != nil && !math.IsNaN(measured) && !math.IsNaN(predicted) && !math.IsNaN(row.Of(c.Flight)) {
			c.Differences = append(c.Differences, Difference{Row: *row, Measured: measured, Predicted: predicted, Low: math.NaN(), High: math.NaN()})
		}
	}
	gone := func(t float64) bool { return Left(c.LeftOut, c.Release+t) } // it would be told by what is around it
	speed := c.first(logfile.Speed)
	if ch := c.Best(); ch != nil {
		legs := c.legs()
		c.Width = ch.widthFor(c.Flight.Max.Speed)
		t := c.since(ch)
		y := make([]float64, len(ch.Y))
		for i, v := range ch.Y {
			y[i] = v - c.Zero
		}
		m := readCourse(t, y, c.Width, c.Flight.Burnout.Time, legs)
		p := readCourse(t, c.predicted(ch), c.Width, c.Flight.Burnout.Time, legs)
		add("apogee.height", m.apogee, p.apogee)
		add("apogee.time", m.apogeeTime, p.apogeeTime)
		if speed == nil {
			if !gone(c.Flight.Max.SpeedTime) {
				add("max.speed", m.speed, p.speed)
			}
			if !gone(c.Flight.Burnout.Time) {
				add("burnout.speed", m.burnout, p.burnout)
			}
		}
		for i, o := range c.Flight.Canopies {
			if !o.Opened || i >= len(legs) {
				continue
			}
			if gone(o.Time) {
				m.fall[i] = math.NaN()
			}
			// The canopy opens as long before the fastest fall as it does in the predicted flight.
			add("canopy."+o.Name+".time", o.Time+m.fall[i]-p.fall[i], o.Time)
			add("canopy."+o.Name+".descent", m.descent[i], p.descent[i])
		}
	}
	if speed != nil && !gone(c.Flight.Max.SpeedTime) {
		add("max.speed", greatest(speed.T, speed.Y), greatest(speed.T, c.predicted(speed)))
	}
	if a := c.first(logfile.Acceleration); a != nil && !gone(c.Flight.Max.AccelerationTime) {
		add("max.acceleration", greatest(a.T, a.Y), greatest(a.T, c.predicted(a)))
	}
	if ch := c.first(logfile.Chamber); ch != nil {
		// Thrust ends as long after the chamber is all but empty as it does in the predicted flight.
		t, end := c.since(ch), c.Flight.Burnout.Time
		add("burnout.time", end+emptied(t, ch.Y)-emptied(t, c.predicted(ch)), end)
	}
	if !math.IsNaN(c.Landing) && c.Flight.Landing.Happened {
		add("landing.time", c.Landing-c.Release, c.Flight.Landing.Time)
	}
}

// first is the first channel of a quantity; nil when there is none.
func (rd *Reading) first(q logfile.Quantity) *Channel {
	for i := range rd.Channels {
		if rd.Channels[i].Column.Quantity == q {
			return &rd.Channels[i]
		}
	}
	return nil
}

// greatest is the greatest value of a course, smoothed over the fewest samples.
func greatest(t, y []float64) float64 {
	const width = 5
	most := math.NaN()
	for _, s := range solve.Smooth(t, y, width) {
		if !(s.Value <= most) && !math.IsNaN(s.Value) {
			most = s.Value
		}
	}
	return most
}

// legs are where the predicted flight settles under each canopy, with room to both sides.
func (c *Compared) legs() []leg {
	fl := c.Flight
	end := fl.Landing.Time
	if !math.IsNaN(c.Landing) {
		end = math.Min(end, c.Landing-c.Release)
	}
	end = math.Min(end, c.To-c.Release)
	var legs []leg
	for i, o := range fl.Canopies {
		const settling, room = 2, 0.5 // s
		full := o.Time
		if o.Full {
			full = o.FullTime
		}
		to := end - room
		for k, other := range fl.Canopies {
			if k != i && other.Opened && other.Time > o.Time {
				to = math.Min(to, other.Time-room)
			}
		}
		legs = append(legs, leg{from: math.Max(fl.Apogee.Time, o.Time-2), settled: full + settling, to: to})
	}
	return legs
}

// Off tells where a channel goes away from the flight, stage by stage, as far as it tells of them.
func (c *Compared) Off(ch *Channel) []Stage {
	fl := c.Flight
	var stages []Stage
	zero := c.zeroOf(ch)
	end := fl.Landing.Time
	if !math.IsNaN(c.Landing) {
		end = math.Min(end, c.Landing-c.Release)
	}
	t, y := c.since(ch), c.predicted(ch)
	stage := func(name string, from, to float64) {
		s := Stage{Name: name, From: from, To: to}
		for i := range t {
			if t[i] >= from && t[i] < to && !math.IsNaN(y[i]) {
				d := ch.Y[i] - zero - y[i]
				s.Mean += d
				s.RMS += d * d
				s.Count++
			}
		}
		if s.Count > 0 {
			s.Mean /= float64(s.Count)
			s.RMS = math.Sqrt(s.RMS / float64(s.Count))
			stages = append(stages, s)
		}
	}
	stage("thrust", 0, fl.Burnout.Time)
	if q := ch.Column.Quantity; fl.Apogee.Happened && q != logfile.Chamber {
		stage("coast", fl.Burnout.Time, fl.Apogee.Time)
		if q != logfile.Acceleration { // under a canopy it hangs as it likes
			stage("descent", fl.Apogee.Time, end)
		}
	}
	return stages
}

// suspect looks for a wrong unit and for the log of another flight.
func (c *Compared) suspect() {
	for _, d := range c.Differences {
		if d.Row.Name != "apogee.height" && d.Row.Name != "apogee.time" {
			continue
		}
		ratio := d.Measured / d.Predicted
		time := d.Row.Name == "apogee.time"
		near := func(factor float64) bool { return ratio > factor/1.35 && ratio < factor*1.35 }
		what, quantity := "height", "height"
		if time {
			what, quantity = "time", "time"
		}
		told := func(as, unit string) {
			at := 2
			if k := c.Log.Find(logfile.Quantity(quantity)); k >= 0 {
				at = c.Log.Columns[k].At
			}
			c.Suspicions = append(c.Suspicions, fault.Fault{Key: what, Problem: "the log's is " + as + " times what is predicted, as if the unit were another",
				Remedy: "if it is, say so, as in --column '" + quantity + "=" + itoa(at) + " " + unit + "'"})
		}
		ch := c.Best()
		switch feet := ch != nil && ch.Column.Unit.Name == "ft"; {
		case !time && near(1/0.3048) && !feet:
			told("about 3.28", "ft")
		case !time && near(0.3048) && feet:
			told("about 0.3", "m")
		case near(1000) && time:
			told("about 1000", "ms")
		case near(1000):
			told("about 1000", "mm")
		case near(0.001) && time:
			told("about 0.001", "s")
		case near(0.001):
			told("about 0.001", "m")
		case ratio > 1.6 || ratio < 1/1.6:
			c.Suspicions = append(c.Suspicions, fault.Fault{Key: what, Problem: "the log's is " + figure(ratio) + " times what is predicted",
				Remedy: "look whether it is the log of another flight, or whether the rocket flew with other settings: --set water.pressure=…"})
		}
	}
}
