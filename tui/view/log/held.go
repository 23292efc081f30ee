package log

import (
	"context"
	"errors"
	"math"
	"reflect"
	"slices"
	"strings"

	"ullage/sim/flown"
	"ullage/sim/flown/logfile"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
	"ullage/tui/draw"
)

// held is a log held against the flight that is predicted.
type held struct {
	state
	opened   *flown.Logged   // the log as read, with its day; nil where it could not be
	compared *flown.Compared // nil where the log holds no flight, or the rocket does not fly
	none     *flown.NoFlight // what the log shows instead of a flight; nil mostly
	fault    string          // why there is nothing to compare; empty mostly
	courses  []course
}

// course is one column of a log over time, s after release.
type course struct {
	*flown.Channel
	t, predicted, measured, off []float64 // measured and off are NaN where they are left out
	stages                      []flown.Stage
	outT, outY                  []float64 // what is left out
}

// job is a log to be held against a flight.
type job struct {
	state
	asked  flown.Asked
	opened *flown.Logged
}

// hold opens the log, unless that is done, and holds it against the rocket as it stands.
func (j job) hold(ctx context.Context) (*held, error) {
	h := &held{state: j.state}
	l, base, err := j.logged()
	var none flown.NoFlight
	switch {
	case errors.As(err, &none):
		h.none, h.fault = &none, why(none.Fault)
		return h, nil
	case err != nil:
		h.fault = why(err)
		return h, nil
	}
	h.opened = base
	c, err := flown.Hold(ctx, l)
	if ctx.Err() != nil {
		return nil, ctx.Err()
	}
	if err != nil {
		h.fault = "No flight to hold it against: " + why(err)
		return h, nil
	}
	h.compared = c
	h.courses = coursesOf(c, base.Reading)
	return h, nil
}

// logged is the log with what is asked of it, on the rocket of its day; base is the log as read.
func (j job) logged() (l flown.Logged, base *flown.Logged, err error) {
	base = j.opened
	if base == nil {
		days, err := flown.OpenDays(j.file)
		if err != nil {
			return l, nil, err
		}
		if err := logfile.Plain(j.asked.Path); err != nil {
			return l, nil, err
		}
		opened, err := days.Open(j.asked.Path, j.file, j.asked.Told, func(f *rocketfile.File) (*rocketfile.File, error) { return f, nil })
		if err != nil {
			return l, nil, err
		}
		base = &opened
	}
	flies, err := flown.AsEntered(j.file, base.Entry)
	if err != nil {
		return l, nil, err
	}
	l = *base
	was := base.Rocket
	l.Rocket = flies.Rocket()
	if l.Rocket.Rail.Tilt != was.Rail.Tilt || !reflect.DeepEqual(l.Rocket.Site, was.Site) {
		// Heights hang on the air of the site, and what an accelerometer rests at on the rail.
		told := j.asked.Told.For(base.Entry)
		if l.Reading, err = flown.Read(base.Log, l.Rocket, told.Options); err != nil {
			return l, nil, err
		}
		again := l
		base = &again
	}
	l = l.Dated(base.Day)
	if l.Reading, err = l.Without(j.asked.LeftOut); err != nil {
		return l, nil, err
	}
	if !math.IsNaN(j.asked.Release) {
		l.Reading = l.Released(j.asked.Release)
	}
	return l, base, nil
}

// coursesOf are the columns of a log, heights first. The reading is the log with nothing left out,
// so that the prediction is drawn there too.
func coursesOf(c *flown.Compared, whole *flown.Reading) []course {
	var first, rest []course
	for i := range whole.Channels {
		ch := &whole.Channels[i]
		k := slices.IndexFunc(c.Channels, func(x flown.Channel) bool { return x.Column.At == ch.Column.At })
		if k < 0 {
			continue // too little is left of it
		}
		x := course{Channel: ch, stages: c.Off(&c.Channels[k])}
		x.t, x.predicted, x.measured = c.Course(ch)
		x.off = make([]float64, len(x.t))
		for k, t := range ch.T {
			if len(c.LeftOut) > 0 && flown.Left(c.LeftOut, t) {
				x.outT, x.outY = append(x.outT, x.t[k]), append(x.outY, x.measured[k])
				x.measured[k] = math.NaN()
			}
			x.off[k] = x.measured[k] - x.predicted[k]
		}
		if high(ch) {
			first = append(first, x)
		} else {
			rest = append(rest, x)
		}
	}
	return append(first, rest...)
}

// high tells whether a column is a height.
func high(c *flown.Channel) bool {
	return c.Column.Quantity == logfile.Height || c.Column.Quantity == logfile.Pressure
}

// spread is a comparison with how far flights with what is uncertain are apart.
type spread struct {
	of       *held
	compared flown.Compared
}

// spread flies what is uncertain, so many times.
func (h *held) spread(ctx context.Context, draws int) (*spread, error) {
	s := &spread{of: h, compared: *h.compared}
	s.compared.Differences = append([]flown.Difference(nil), h.compared.Differences...)
	return s, s.compared.Spread(ctx, study.Spreads(h.file), draws, study.Options{})
}

// why is what is wrong in one sentence, the first of several, with the file it is in.
func why(err error) string {
	text, _, more := strings.Cut(err.Error(), "\n")
	if text = draw.Clean(text); more {
		text += "; and more"
	}
	return text
}
