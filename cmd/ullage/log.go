package main

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"ullage/sim/flown"
	"ullage/sim/flown/logfile"
	"ullage/sim/rocketfile"
	"ullage/tui/plot"
)

// logOptions say how logs are to be read.
type logOptions struct {
	Column []string   `placeholder:"WHAT=COLUMN" sep:"none" help:"What a column is, where its head does not tell, as in --column 'time=1 ms' --column 'height=3 ft'; a head in place of the number, or none. Can be given again."`
	Rate   string     `placeholder:"RATE" help:"How often the recorder wrote, as in --rate '20 Hz', where no column has the time."`
	Height string     `enum:"standard,pad,measured" default:"standard" placeholder:"HOW" help:"How the recorder made its heights: standard (by the standard atmosphere), pad (the same, with the pad's pressure for that of sea level) or measured (not from pressure); standard if not given."`
	From   *clockTime `placeholder:"TIME" help:"Look from this time of the log on, as in --from '1200 s'."`
	To     *clockTime `placeholder:"TIME" help:"Look up to this time."`
}

// partOptions say what of logs has a part, and when it begins.
type partOptions struct {
	Release  *clockTime `placeholder:"TIME" help:"The time of release by the log's clock, as in --release '12.4 s'; found if not given; a fit begins there and finds its own."`
	LeaveOut []string   `name:"leave-out" placeholder:"STRETCH" sep:"none" help:"What of the log has no part, by its clock, as in --leave-out '14.2 s to 14.8 s'. Can be given again."`
}

// of are logs with what the options say.
func (o partOptions) of(logs []flown.Logged) ([]flown.Logged, error) {
	out, err := o.stretches(len(logs))
	if err != nil {
		return nil, err
	}
	for i := range logs {
		rd, err := logs[i].Without(out)
		if err != nil {
			return nil, asInput(err)
		}
		if o.Release != nil {
			rd = rd.Released(float64(*o.Release))
		}
		logs[i].Reading = rd
	}
	return logs, nil
}

// stretches are what is to be left out of so many logs.
func (o partOptions) stretches(logs int) ([]flown.Stretch, error) {
	if (o.Release != nil || len(o.LeaveOut) > 0) && logs > 1 {
		return nil, badInput("--release and --leave-out are about one log; give one")
	}
	var out []flown.Stretch
	for _, text := range o.LeaveOut {
		s, err := flown.ParseStretch(text)
		if err != nil {
			return nil, badInput("--leave-out %w", err)
		}
		out = append(out, s)
	}
	return out, nil
}

// clockTime is a time by a log's clock, s.
type clockTime float64

// value is the time; NaN when it is not told.
func (t *clockTime) value() float64 {
	if t == nil {
		return math.NaN()
	}
	return float64(*t)
}

// UnmarshalText reads a time with its unit.
func (t *clockTime) UnmarshalText(text []byte) error {
	v, err := logfile.ParseTime(string(text))
	*t = clockTime(v)
	return err
}

// given tells whether any of them is.
func (o logOptions) given() bool {
	return len(o.Column) > 0 || o.Rate != "" || o.Height != string(flown.StandardHeights) || o.From != nil || o.To != nil
}

// asTold are the options together.
func (o logOptions) asTold() flown.Told {
	return flown.Told{Columns: o.Column, Rate: o.Rate, Options: o.stretch()}
}

// logs reads logs of a rocket file's flights, each with its day, and --set over that.
func (o logOptions) logs(s *streams, paths []string, file *rocketfile.File, set setOptions) ([]flown.Logged, error) {
	days, err := flown.OpenDays(file)
	if err != nil {
		return nil, asInput(err)
	}
	return o.logsBy(s, paths, file, set, days)
}

// logsBy is the same by another logbook.
func (o logOptions) logsBy(s *streams, paths []string, file *rocketfile.File, set setOptions, days flown.Days) ([]flown.Logged, error) {
	var all []flown.Logged
	for _, path := range paths {
		l, err := waitFor(s, path, func() (flown.Logged, error) { return days.Open(path, file, o.asTold(), set.apply) })
		s.inputs = append(s.inputs, path)
		var none flown.NoFlight
		if errors.As(err, &none) {
			return nil, badInput("%w\n%s", none, trace(none))
		}
		if err != nil {
			return nil, asInput(err)
		}
		if len(set.Set) > 0 {
			l.Day += ", with --set"
		}
		all = append(all, l)
	}
	return all, nil
}

// stretch are the options for who looks for a flight in a log.
func (o logOptions) stretch() flown.Options {
	how := flown.Options{Heights: flown.Heights(o.Height)}
	how.From, how.To = flown.Between(o.From.value(), o.To.value())
	return how
}

// trace draws what a column did, for one who wonders where its flight is.
func trace(n flown.NoFlight) string {
	if len(n.T) < 2 {
		return ""
	}
	u := n.Column.Unit
	y := make([]float64, len(n.Y))
	for i, v := range n.Y {
		y[i] = u.FromSI(v)
	}
	p := plot.Stack{Charset: plot.ASCII, X: plot.Axis{Title: "time", Unit: "s"},
		Charts: []plot.Chart{{Y: plot.Axis{Title: string(n.Column.Quantity), Unit: u.Name}, Series: []plot.Series{{X: n.T, Y: y, Ink: plot.TraceA}}}}}
	const wide, high = 70, 12
	return strings.TrimRight(fmt.Sprint(p.Draw(wide, high)), "\n")
}
