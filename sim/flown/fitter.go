package flown

import (
	"context"
	"math"
	"runtime"
	"slices"
	"sync"
	"sync/atomic"

	"ullage/sim"
	"ullage/sim/rocket"
	"ullage/sim/solve"
	"ullage/sim/study"
)

// fitter holds flights against logs while some inputs are turned. What it turns are, in this
// order: the inputs, each in deviations from its value before; each log's time of release, s
// from the first guess; each height's zero, m.
type fitter struct {
	ctx     context.Context
	inputs  []study.Spread
	before  []float64 // values, SI
	logs    []Logged
	tracks  []*track
	release []float64 // first guesses, s by each log's clock
	zeros   int
	rows    int           // samples of all tracks
	same    []*sim.Flight // of each log, where no input is turned: one flight does
	pinned  bool          // the releases stay at the first guesses
	flights atomic.Int64
	workers []*worker
}

// track is a channel of a log with its place among the residuals.
type track struct {
	*Channel
	log   int
	from  int // its first row
	zero  int // which zero it has; -1 for none
	use   []bool
	used  int
	last  int     // behind the last sample that has a part
	scale float64 // standard deviation that residuals are held against: noise and model error
	rho   float64 // correlation of residuals with those one sample on
	kappa float64 // what its weight is divided by
}

// worker flies in memory of its own.
type worker struct {
	flyer      sim.Flyer
	times, dst []float64
}

func newFitter(ctx context.Context, logs []Logged, inputs []study.Spread) *fitter {
	f := &fitter{ctx: ctx, inputs: inputs, logs: logs, same: make([]*sim.Flight, len(logs))}
	longest := 0
	for i, l := range logs {
		f.release = append(f.release, l.LiftOff)
		for k := range l.Channels {
			c := &l.Channels[k]
			t := &track{Channel: c, log: i, from: f.rows, zero: -1, last: len(c.T), scale: c.Noise, kappa: 1}
			if c.height() {
				t.zero = f.zeros
				f.zeros++
			}
			f.rows += len(c.T)
			longest = max(longest, len(c.T))
			f.tracks = append(f.tracks, t)
		}
	}
	for _, s := range inputs {
		v, _ := s.Input.Get(logs[0].Rocket)
		f.before = append(f.before, v)
	}
	for range max(1, min(runtime.GOMAXPROCS(0), 1+2*len(inputs))) {
		f.workers = append(f.workers, &worker{times: make([]float64, longest), dst: make([]float64, longest)})
	}
	return f
}

// start is the place where nothing is turned.
func (f *fitter) start() []float64 { return make([]float64, len(f.inputs)+len(f.logs)+f.zeros) }

// releaseOf is the time of release of a log, s by its clock.
func (f *fitter) releaseOf(x []float64, log int) float64 {
	return f.release[log] + x[len(f.inputs)+log]
}

func (f *fitter) zeroOf(x []float64, t *track) float64 {
	if t.zero < 0 {
		return 0
	}
	return x[len(f.inputs)+len(f.logs)+t.zero]
}

// rocket is that of a log with the inputs turned.
func (f *fitter) rocket(x []float64, log int) (*rocket.Rocket, error) {
	r := f.logs[log].Rocket.Clone()
	for j, s := range f.inputs {
		v := f.before[j] + s.SD*x[j]
		if err := s.Input.Set(r, math.Min(math.Max(v, s.Input.Min), s.Input.Max)); err != nil {
			return nil, err
		}
	}
	return r, nil
}

// predict fills dst with what all tracks would tell, by one worker; and rates, unless it is nil, with
// how fast that changes as the release is later.
func (f *fitter) predict(w *worker, x []float64, dst, rates []float64) error {
	for i := range f.logs {
		fl, err := f.fly(w, x, i)
		if err != nil {
			return err
		}
		f.tell(w, fl, f.releaseOf(x, i), i, dst)
		if rates != nil {
			f.tellRates(w, fl, f.releaseOf(x, i), i, rates)
		}
	}
	return nil
}

// fly flies the rocket of a log, in the memory of a worker; where no input is turned it is always
// the same flight, flown once.
func (f *fitter) fly(w *worker, x []float64, log int) (*sim.Flight, error) {
	if len(f.inputs) == 0 && f.same[log] != nil {
		return f.same[log], nil
	}
	if len(f.inputs) == 0 {
		fl, err := f.kept(x, log)
		f.same[log] = fl
		return fl, err
	}
	r, err := f.rocket(x, log)
	if err != nil {
		return nil, err
	}
	f.flights.Add(1)
	return w.flyer.Fly(f.ctx, r, sim.Options{Keep: true, Held: f.logs[log].Held})
}

// tell fills the rows of one log.
func (f *fitter) tell(w *worker, fl *sim.Flight, release float64, log int, dst []float64) {
	for _, t := range f.tracks {
		if t.log == log {
			t.predict(fl, release, w.times, dst[t.from:t.from+t.last])
			for i := t.from + t.last; i < t.from+len(t.T); i++ {
				dst[i] = math.NaN()
			}
		}
	}
}

// tellRates fills the rows of one log with how they change as the release is later: of heights that is
// the climb, of all else a central difference.
func (f *fitter) tellRates(w *worker, fl *sim.Flight, release float64, log int, dst []float64) {
	const moment = 0.005 // s
	for _, t := range f.tracks {
		if t.log != log {
			continue
		}
		rows := dst[t.from : t.from+t.last]
		if t.height() {
			t.climb(fl, release, w.times, rows)
			continue
		}
		later := w.dst[:t.last]
		t.predict(fl, release-moment, w.times, rows)
		t.predict(fl, release+moment, w.times, later)
		for i := range rows {
			rows[i] = (later[i] - rows[i]) / (2 * moment)
		}
	}
}

// slopes are the predictions at a place and their derivatives by the inputs and by the releases.
type slopes struct {
	at     []float64
	inputs [][]float64
	time   []float64 // by the release of the row's own log
}

// reachOf is how far central differences of an input go to each side, in deviations: far
// enough for the steps of the engine not to show.
const reachOf = 0.25

// slopesAt flies both sides of every input at once on all workers.
func (f *fitter) slopesAt(x []float64) (*slopes, error) {
	n := len(f.inputs)
	s := &slopes{at: make([]float64, f.rows), inputs: make([][]float64, n), time: make([]float64, f.rows)}
	sides := make([][]float64, 2*n)
	width := make([]float64, 2*n)
	var next atomic.Int64
	var running sync.WaitGroup
	errs := make([]error, len(f.workers))
	for k, w := range f.workers {
		running.Go(func() {
			for {
				i := int(next.Add(1) - 1)
				switch {
				case i > 2*n || errs[k] != nil:
					return
				case i == 2*n:
					errs[k] = f.predict(w, x, s.at, s.time)
				default:
					j, side := i/2, float64(1-2*(i%2))
					there := slices.Clone(x)
					there[j] += side * reachOf
					in := f.inputs[j]
					held := math.Min(math.Max(f.before[j]+in.SD*there[j], in.Input.Min), in.Input.Max)
					width[i] = (held - f.before[j]) / in.SD
					sides[i] = make([]float64, f.rows)
					errs[k] = f.predict(w, there, sides[i], nil)
				}
			}
		})
	}
	running.Wait()
	for _, err := range errs {
		if err != nil {
			return nil, err
		}
	}
	for j := range f.inputs {
		s.inputs[j] = sides[2*j]
		for i := range s.inputs[j] {
			s.inputs[j][i] = (sides[2*j][i] - sides[2*j+1][i]) / (width[2*j] - width[2*j+1])
		}
	}
	return s, nil
}

// residual is a sample less what is predicted, in the track's deviations; false where the
// sample has no part.
func (t *track) residual(i int, predicted, zero float64) (float64, bool) {
	if !t.use[i] || math.IsNaN(predicted) {
		return 0, false
	}
	return (t.Y[i] - predicted - zero) / t.scale, true
}

// weight is what rows of the track are multiplied with for what their neighbours repeat.
func (t *track) weight() float64 { return math.Sqrt((1 - t.rho) / (1 + t.rho)) }

// residuals is the problem for least squares: every sample by Huber's rule, then how far each
// input is from its value before.
func (f *fitter) residuals() solve.Residuals {
	n := len(f.inputs)
	predicted := make([]float64, f.rows)
	r := solve.Residuals{Count: f.rows + n}
	r.At = func(x, dst []float64) error {
		if err := f.predict(f.workers[0], x, predicted, nil); err != nil {
			return err
		}
		for _, t := range f.tracks {
			zero, w := f.zeroOf(x, t), t.weight()
			for i := range t.T {
				u, _ := t.residual(i, predicted[t.from+i], zero)
				dst[t.from+i] = w * solve.Bounded(u)
			}
		}
		copy(dst[f.rows:], x[:n])
		return nil
	}
	r.Slopes = func(x []float64, dst *solve.Matrix) error {
		s, err := f.slopesAt(x)
		if err != nil {
			return err
		}
		clear(dst.V)
		for _, t := range f.tracks {
			zero := f.zeroOf(x, t)
			for i := range t.T {
				row := t.from + i
				u, in := t.residual(i, s.at[row], zero)
				if !in {
					continue
				}
				d := -t.weight() * solve.BoundedSlope(u) / t.scale
				f.row(s, t, row, func(k int, v float64) { dst.Set(row, k, noNaN(d*v)) })
			}
		}
		for j := range n {
			dst.Set(f.rows+j, j, 1)
		}
		return nil
	}
	size := n + len(f.logs) + f.zeros
	r.Least, r.Greatest = make([]float64, size), make([]float64, size)
	for k := range size {
		r.Least[k], r.Greatest[k] = math.Inf(-1), math.Inf(1)
		if k < n {
			in := f.inputs[k]
			r.Least[k], r.Greatest[k] = (in.Input.Min-f.before[k])/in.SD, (in.Input.Max-f.before[k])/in.SD
		} else if f.pinned && k < n+len(f.logs) {
			r.Least[k], r.Greatest[k] = 0, 0
		}
	}
	return r
}

func noNaN(v float64) float64 {
	if math.IsNaN(v) {
		return 0
	}
	return v
}

// row hands over the derivatives of one row's prediction by all that is turned.
func (f *fitter) row(s *slopes, t *track, row int, put func(k int, v float64)) {
	n := len(f.inputs)
	for j := range n {
		put(j, s.inputs[j][row])
	}
	put(n+t.log, s.time[row])
	if t.zero >= 0 {
		put(n+len(f.logs)+t.zero, 1)
	}
}
