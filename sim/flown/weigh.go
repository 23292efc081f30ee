package flown

import (
	"math"

	"ullage/sim/solve"
)

// choose settles which samples have a part, by the flights at a place.
func (f *fitter) choose(x []float64, canopies bool) error {
	for l := range f.logs {
		fl, err := f.fly(f.workers[0], x, l)
		if err != nil {
			return err
		}
		for _, t := range f.tracks {
			if t.log != l {
				continue
			}
			t.use = f.logs[l].usable(t.Channel, fl, f.releaseOf(x, l), canopies)
			t.used, t.last = 0, 0
			for i, in := range t.use {
				if in {
					t.used++
					t.last = i + 1
				}
			}
		}
	}
	return nil
}

// weigh settles how much each track counts, by the residuals at a place: model error is not
// white, so that its weight is divided by κ = max(1, χ²/ν)·(1 + ρ)/(1 − ρ), ρ being the
// residuals' correlation from one sample to the next, held within 0 and 1 − 2/N: the variance of the mean of
// an autoregression of first order (textbooks, from memory). It tells the
// greatest ratio between a κ now and before.
func (f *fitter) weigh(x []float64) (float64, error) {
	predicted := make([]float64, f.rows)
	if err := f.predict(f.workers[0], x, predicted, nil); err != nil {
		return 0, err
	}
	change := 1.0
	for _, t := range f.tracks {
		zero := f.zeroOf(x, t)
		sum, pairs, n := 0.0, 0.0, 0
		last, lastWeight := math.NaN(), 0.0
		for i := range t.T {
			u, in := t.residual(i, predicted[t.from+i], zero)
			if !in {
				last = math.NaN()
				continue
			}
			e, w := u*t.scale/t.Noise, solve.Huber(u, solve.HuberK)
			sum += w * e * e
			n++
			if !math.IsNaN(last) {
				pairs += math.Sqrt(w*lastWeight) * e * last
			}
			last, lastWeight = e, w
		}
		if n < 3 || sum == 0 {
			continue
		}
		chi := math.Max(1, sum/float64(n))
		rho := math.Min(math.Max(pairs/sum, 0), 1-2/float64(n))
		kappa := chi * (1 + rho) / (1 - rho)
		change = math.Max(change, math.Max(kappa/t.kappa, t.kappa/kappa))
		t.scale, t.rho, t.kappa = t.Noise*math.Sqrt(chi), rho, kappa
	}
	return change, nil
}

// scan looks around the first guesses for the release of each log with the least sum of
// residuals: from a guess too far off a descent ends elsewhere. It gives the place.
func (f *fitter) scan() ([]float64, error) {
	const reach, step = 0.8, 0.04 // s
	x := f.start()
	predicted := make([]float64, f.rows)
	w := f.workers[0]
	for log := range f.logs {
		fl, err := f.fly(w, x, log)
		if err != nil {
			return nil, err
		}
		best, least := 0.0, math.Inf(1)
		for at := -reach; at <= reach; at += step {
			f.tell(w, fl, f.release[log]+at, log, predicted)
			sum := 0.0
			for _, t := range f.tracks {
				if t.log != log {
					continue
				}
				for i := range t.T {
					u, _ := t.residual(i, predicted[t.from+i], 0)
					sum += solve.Bounded(u) * solve.Bounded(u)
				}
			}
			if sum < least {
				best, least = at, sum
			}
		}
		x[len(f.inputs)+log] = best
	}
	return x, nil
}

// settle alternates least squares and weights until the weights stay. It gives the place, and
// whether both came to rest.
func (f *fitter) settle(from []float64, canopies bool) (x []float64, rest bool, err error) {
	const (
		most, still = 10, 1.05
		near        = 0.02 // deviations: a place that moves less from one round to the next is at rest
	)
	x = from
	if err := f.choose(x, canopies); err != nil {
		return nil, false, err
	}
	for range most {
		s, err := solve.LeastSquares(f.residuals(), x, solve.Stop{Gain: 1e-6, Closer: 1e-6, Most: 25, Reach: 10})
		if err != nil {
			return nil, false, err
		}
		moved := 0.0
		for j := range f.inputs {
			moved = math.Max(moved, math.Abs(s.X[j]-x[j]))
		}
		x, rest = s.X, s.Converged || moved < near
		if err := f.choose(x, canopies); err != nil {
			return nil, false, err
		}
		change, err := f.weigh(x)
		if err != nil {
			return nil, false, err
		}
		if change < still {
			return x, rest, nil
		}
	}
	return x, rest, nil
}
