package flown

import (
	"context"
	"errors"
	"math"

	"ullage/sim"
	"ullage/sim/fault"
	"ullage/sim/quantity"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
	"ullage/sim/solve"
	"ullage/sim/study"
)

// ErrNothingLearned is a fit whose logs say nothing of any input.
var ErrNothingLearned = errors.New("the logs say nothing of these inputs beyond what was known")

// ErrNotSettled is a fit that did not come to rest.
var ErrNotSettled = errors.New("the fit did not come to rest")

// Choices of this program's, no source.
const (
	leastLearned = 0.1  // below it a log says nothing of an input
	alikeBeyond  = 0.95 // of what two inputs do
)

// Fitted is what the logs tell of a rocket's inputs.
type Fitted struct {
	Inputs  []FittedInput
	Alike   [][2]string // inputs that the logs tell alike, by their names
	Logs    []FittedLog
	Flights int // flown for it
}

// FittedInput is an input before and after.
type FittedInput struct {
	Input            rocketfile.Input
	Before, BeforeSD float64
	Value, SD        float64
	Learned          float64 // 1 − (SD/BeforeSD)²
	Kept             bool    // the logs say too little of it: it keeps its value
	AtBound          bool    // the value is an end of its range
}

// FittedLog is a log before and after.
type FittedLog struct {
	*Logged
	Release  float64 // s by the log's clock
	Samples  int     // that have a part
	Channels []FittedChannel
	Apogee   Three       // m; NaN where the log has no heights
	RMS      Three       // of the first height's residuals, m; Measured is the noise; NaN without
	Flight   *sim.Flight // with what was fitted, kept
	Was      *sim.Flight // with what was known before, kept
}

// Three is a number measured, predicted before, and fitted.
type Three struct{ Measured, Before, Fitted float64 }

// FittedChannel is how a channel was weighed.
type FittedChannel struct {
	*Channel
	Used        int
	Kappa, Rho  float64
	Zero        float64 // m
	Before, RMS float64 // of its residuals, SI
}

// Fit finds the values of inputs with which the rocket flies as the logs say: the least sum of
// squared residuals and of squared departures from the values before, each over its own deviation
// (Levenberg–Marquardt, residuals by Huber's rule, each column's weight divided by κ for what is
// not white in its residuals). Inputs that the logs say nothing of keep their values, and the rest
// is fitted again. The logs share the inputs; times of release and zeros of height are their own.
// With ErrNothingLearned and ErrNotSettled comes what was found.
func Fit(ctx context.Context, logs []Logged, inputs []study.Spread) (Fitted, error) {
	if err := fittable(logs, inputs); err != nil {
		return Fitted{}, err
	}
	canopies := turnsCanopies(inputs)
	was := newFitter(ctx, logs, nil)
	if err := was.choose(was.start(), canopies); err != nil {
		return Fitted{}, err
	}
	first, err := was.scan()
	if err != nil {
		return Fitted{}, err
	}
	settledBefore, _, err := was.settle(first, canopies)
	if err != nil {
		return Fitted{}, err
	}
	f := newFitter(ctx, logs, inputs)
	for i := range logs {
		f.release[i] = was.releaseOf(settledBefore, i)
	}
	x, rest, err := f.settle(f.start(), canopies)
	if err != nil {
		return Fitted{}, err
	}
	info, err := f.information(x)
	if err != nil {
		return Fitted{}, err
	}
	kept := make([]bool, len(inputs))
	sd := f.deviations(info, kept)
	some := false
	for j := range sd {
		kept[j] = 1-sd[j]*sd[j] < leastLearned
		some = some || kept[j]
	}
	pairs := f.alike(info, alikeBeyond)
	if some {
		if x, rest, info, err = f.again(x, kept, canopies); err != nil {
			return Fitted{}, err
		}
		sd = f.deviations(info, kept)
	}
	out, err := f.fitted(x, sd, kept, was, settledBefore)
	if err != nil {
		return Fitted{}, err
	}
	for _, p := range pairs {
		out.Alike = append(out.Alike, [2]string{inputs[p[0]].Input.Name, inputs[p[1]].Input.Name})
	}
	out.Flights += int(was.flights.Load())
	learned := false
	for _, in := range out.Inputs {
		learned = learned || !in.Kept
	}
	switch {
	case !learned:
		return out, ErrNothingLearned
	case !rest:
		return out, ErrNotSettled
	}
	return out, nil
}

// again fits what the logs tell of, the rest being kept.
func (f *fitter) again(x []float64, kept []bool, canopies bool) ([]float64, bool, *solve.Matrix, error) {
	var turned []study.Spread
	var place []int
	for j, s := range f.inputs {
		if !kept[j] {
			turned, place = append(turned, s), append(place, j)
		}
	}
	g := newFitter(f.ctx, f.logs, turned)
	copy(g.release, f.release)
	from := g.start()
	for k, j := range place {
		from[k] = x[j]
	}
	copy(from[len(turned):], x[len(f.inputs):])
	to, rest, err := g.settle(from, canopies)
	if err != nil {
		return nil, false, nil, err
	}
	whole := f.start()
	for k, j := range place {
		whole[j] = to[k]
	}
	copy(whole[len(f.inputs):], to[len(turned):])
	for i, t := range g.tracks { // weighed as it was fitted
		*f.tracks[i] = *t
	}
	f.flights.Add(g.flights.Load())
	info, err := f.information(whole)
	return whole, rest, info, err
}

// fittable refuses what cannot be fitted.
func fittable(logs []Logged, inputs []study.Spread) error {
	if len(logs) == 0 {
		return fault.Fault{Problem: "no log is given", Remedy: "name one"}
	}
	if len(inputs) == 0 {
		return fault.Fault{Problem: "no input is given that could be turned", Remedy: "name one, as in --vary body.drag_factor"}
	}
	for i := range logs {
		for k := range logs[:i] {
			if logs[i].Log.Digest == logs[k].Log.Digest {
				return fault.Fault{File: logs[i].Log.Name, Problem: "is the same log as " + logs[k].Log.Name, Remedy: "a flight counts once; leave one of the two out"}
			}
		}
	}
	return fittableInputs(logs[0].Rocket, inputs)
}

// fittableInputs refuses inputs that a fit cannot turn.
func fittableInputs(r *rocket.Rocket, inputs []study.Spread) error {
	for _, s := range inputs {
		if s.Input.Kind != rocketfile.NumberKind && s.Input.Kind != rocketfile.RuleKind || s.Input.Apart {
			return fault.Fault{Key: s.Input.Name, Problem: "is nothing that a fit can turn", Remedy: "turn a number that a flight depends on, such as body.drag_factor"}
		}
		if !(s.SD > 0) {
			return fault.Fault{Key: s.Input.Name, Problem: "has no spread, so that nobody knows how far it may be turned",
				Remedy: "add a line to [spread], as in " + s.Input.Name + " = " + example(s.Input, r)}
		}
	}
	return nil
}

// example is a spread of an input as a file has it: a twentieth of its value.
func example(in rocketfile.Input, r *rocket.Rocket) string {
	v, _ := in.Get(r)
	sd := math.Abs(v) / 20
	if sd == 0 {
		sd = in.Step
	}
	u := in.Unit
	u.Offset = 0
	return rocketfile.SpreadText(u.ToSI(quantity.Rounded(u.FromSI(sd), 1)), u, in)
}

// fitted gathers the outcome.
func (f *fitter) fitted(x, sd []float64, kept []bool, was *fitter, before []float64) (Fitted, error) {
	out := Fitted{}
	for j, s := range f.inputs {
		in := FittedInput{Input: s.Input, Before: f.before[j], BeforeSD: s.SD, Value: f.before[j] + s.SD*x[j], SD: sd[j] * s.SD,
			Learned: math.Max(0, 1-sd[j]*sd[j]), Kept: kept[j]}
		in.AtBound = !in.Kept && (in.Value <= s.Input.Min || in.Value >= s.Input.Max)
		if in.Kept {
			in.Value, in.SD, in.Learned = in.Before, in.BeforeSD, math.Max(0, math.Min(in.Learned, leastLearned))
		}
		out.Inputs = append(out.Inputs, in)
	}
	then, now := make([]float64, f.rows), make([]float64, f.rows)
	if err := was.predict(was.workers[0], before, then, nil); err != nil {
		return out, err
	}
	if err := f.predict(f.workers[0], x, now, nil); err != nil {
		return out, err
	}
	for i := range f.logs {
		nan := math.NaN()
		l := FittedLog{Logged: &f.logs[i], Release: f.releaseOf(x, i), Apogee: Three{nan, nan, nan}, RMS: Three{nan, nan, nan}}
		var err error
		if l.Flight, err = f.kept(x, i); err != nil {
			return out, err
		}
		if l.Was, err = was.kept(before, i); err != nil {
			return out, err
		}
		first := true
		for k, t := range f.tracks {
			if t.log != i {
				continue
			}
			zero, zeroThen := f.zeroOf(x, t), was.zeroOf(before, was.tracks[k])
			c := FittedChannel{Channel: t.Channel, Used: t.used, Kappa: t.kappa, Rho: t.rho, Zero: zero,
				Before: t.rms(then[t.from:], zeroThen), RMS: t.rms(now[t.from:], zero)}
			l.Channels = append(l.Channels, c)
			l.Samples += t.used
			if t.height() && first {
				first = false
				l.RMS = Three{t.Noise, c.Before, c.RMS}
				l.Apogee = l.tops(t, zero)
			}
		}
		out.Logs = append(out.Logs, l)
	}
	out.Flights = int(f.flights.Load())
	return out, nil
}

// kept flies the rocket of a log as it is at a place.
func (f *fitter) kept(x []float64, log int) (*sim.Flight, error) {
	r, err := f.rocket(x, log)
	if err != nil {
		return nil, err
	}
	f.flights.Add(1)
	return sim.Fly(f.ctx, r, sim.Options{Keep: true, Held: f.logs[log].Held})
}

// rms is the root of the mean square of what a track's samples are off, SI.
func (t *track) rms(predicted []float64, zero float64) float64 {
	sum, n := 0.0, 0
	for i := range t.T {
		if u, in := t.residual(i, predicted[i], zero); in {
			sum += u * t.scale * u * t.scale
			n++
		}
	}
	return math.Sqrt(sum / float64(n))
}

// tops are the apogees, read alike from the log and from flights that were sampled like it.
func (l *FittedLog) tops(t *track, zero float64) Three {
	width := t.widthFor(l.Was.Max.Speed)
	times, y := make([]float64, len(t.T)), make([]float64, len(t.T))
	top := func(fl *sim.Flight) float64 {
		t.predict(fl, l.Release, times, y)
		return readCourse(times, y, width, math.Inf(1), nil).apogee
	}
	out := Three{Before: top(l.Was), Fitted: top(l.Flight)}
	for i := range y {
		y[i] = t.Y[i] - zero
	}
	out.Measured = readCourse(times, y, width, math.Inf(1), nil).apogee
	return out
}
