package solve

import (
	"math"
	"slices"
)

// Residuals are functions of several numbers whose squares are to be small together.
type Residuals struct {
	Count int // how many there are; no fewer than numbers
	// At fills dst with the residuals at a place.
	At func(x, dst []float64) error
	// Slopes fills dst, Count×len(x), with their derivatives. nil takes central differences
	// of At, which reach the cube root of the rounding error of each number, or of 1 where that
	// is 0, to each side.
	Slopes func(x []float64, dst *Matrix) error
	// Least and Greatest bound the numbers, both ends included; nil for no bounds.
	Least, Greatest []float64
}

// Stop says when LeastSquares is done.
type Stop struct {
	Gain   float64 // share of the sum: a step that neither gains nor promises more is the last; 1e-10 when 0
	Closer float64 // share of the numbers, each by its scale: a shorter reach is the end; 1e-10 when 0
	Most   int     // steps tried; 200 when 0
	Reach  float64 // the first reach, times the size of the start by its scales, where that is not next to nothing; 100 when 0
}

// Squares is where LeastSquares ended.
type Squares struct {
	X         []float64
	Sum       float64 // of the squares
	Converged bool    // false when it ran out of steps
	Steps     int     // tried
}

// LeastSquares goes down from a place to where the sum of squared residuals is least near
// there: the Levenberg–Marquardt method as Moré gives it, Lecture Notes in Mathematics 630
// (1978) 105: steps within a reach that grows and shrinks by how well the last one did, in
// numbers scaled by their slopes, each from a QR factorisation. What the
// reach starts at, grows and shrinks by is as MINPACK has it, from memory. A number at a bound that would
// leave it stays there for the step.
func LeastSquares(f Residuals, from []float64, stop Stop) (Squares, error) {
	s := newSquares(f, from, stop)
	if len(from) == 0 {
		err := f.At(s.x, s.r)
		return Squares{X: s.x, Sum: dot(s.r, s.r), Converged: true}, err
	}
	if err := s.descend(); err != nil {
		return Squares{}, err
	}
	return Squares{X: s.x, Sum: dot(s.r, s.r), Converged: s.done, Steps: s.tried}, nil
}

// squares is a descent under way.
type squares struct {
	f    Residuals
	stop Stop

	x, r, scale  []float64
	slopes       *Matrix
	reach        float64
	damping      float64
	tried        int
	done         bool
	nextX, nextR []float64
}

func newSquares(f Residuals, from []float64, stop Stop) *squares {
	if stop.Gain == 0 {
		stop.Gain = 1e-10
	}
	if stop.Closer == 0 {
		stop.Closer = 1e-10
	}
	if stop.Most == 0 {
		stop.Most = 200
	}
	if stop.Reach == 0 {
		stop.Reach = 100
	}
	n := len(from)
	s := &squares{f: f, stop: stop, x: slices.Clone(from), nextX: make([]float64, n), scale: make([]float64, n),
		r: make([]float64, f.Count), nextR: make([]float64, f.Count)}
	if n > 0 {
		s.slopes = NewMatrix(f.Count, n)
	}
	s.hold(s.x)
	return s
}

// hold keeps a place inside the bounds.
func (s *squares) hold(x []float64) {
	for j := range x {
		if s.f.Least != nil {
			x[j] = math.Max(x[j], s.f.Least[j])
		}
		if s.f.Greatest != nil {
			x[j] = math.Min(x[j], s.f.Greatest[j])
		}
	}
}

func (s *squares) descend() error {
	if err := s.f.At(s.x, s.r); err != nil {
		return err
	}
	for first := true; ; first = false {
		if err := s.findSlopes(); err != nil {
			return err
		}
		s.rescale(first)
		free := s.free()
		t := factorise(s.slopes, s.r, free, s.scale)
		if s.flat(t, free) {
			s.done = true
			return nil
		}
		if more, err := s.step(t, free); !more {
			return err
		}
	}
}

// rescale takes the lengths of the slopes for scales, and never lets one shrink.
func (s *squares) rescale(first bool) {
	for j := range s.scale {
		size := s.slopes.size(j, 0)
		if first && (size == 0 || math.IsNaN(size)) {
			size = 1
		}
		if first || size > s.scale[j] {
			s.scale[j] = size
		}
	}
	if first {
		s.reach = s.stop.Reach * scaled(s.scale, s.x)
		// A start next to 0 must not hold the first steps back: by these scales a step as long as
		// the residuals could explain all of them.
		if all := math.Sqrt(dot(s.r, s.r)); s.reach < 1e-3*all {
			s.reach = all
		}
		if s.reach == 0 {
			s.reach = s.stop.Reach
		}
	}
}

// free are the numbers that no bound holds.
func (s *squares) free() []int {
	var free []int
	for j := range s.x {
		down := 0.0 // the sum falls against it
		for i, r := range s.r {
			down += s.slopes.At(i, j) * r
		}
		if s.f.Least != nil && s.x[j] <= s.f.Least[j] && down > 0 || s.f.Greatest != nil && s.x[j] >= s.f.Greatest[j] && down < 0 {
			continue
		}
		free = append(free, j)
	}
	return free
}

// flat tells whether the slopes stand square to the residuals.
func (s *squares) flat(t *triangle, free []int) bool {
	size := math.Sqrt(dot(s.r, s.r))
	if size == 0 || len(free) == 0 {
		return true
	}
	steepest := 0.0
	for k := range free {
		if along := s.slopes.size(free[k], 0); along > 0 {
			sum := 0.0
			for i := 0; i <= k; i++ {
				sum += t.r.At(i, k) * t.b[i]
			}
			steepest = math.Max(steepest, math.Abs(sum/along/size))
		}
	}
	return steepest == 0
}

// step tries steps until one goes down or none can. It tells whether to go on.
func (s *squares) step(t *triangle, free []int) (bool, error) {
	now := dot(s.r, s.r)
	size := math.Sqrt(now)
	for s.tried < s.stop.Most {
		s.tried++
		var p []float64
		p, s.damping = t.within(s.reach, s.damping)
		copy(s.nextX, s.x)
		for k, j := range free {
			s.nextX[j] = s.x[j] + p[k]
		}
		s.hold(s.nextX)
		if err := s.f.At(s.nextX, s.nextR); err != nil {
			return false, err
		}
		length := t.length(p)
		if s.tried == 1 {
			s.reach = math.Min(s.reach, length)
		}
		next := dot(s.nextR, s.nextR)
		gain := -1.0
		if 0.1*math.Sqrt(next) < size {
			gain = 1 - next/now
		}
		linear, damped := t.promise(p)/now, s.damping*length*length/now
		promised := linear + 2*damped
		share := 0.0
		if promised != 0 {
			share = gain / promised
		}
		switch {
		case !(share > 0.25):
			shrink := 0.5
			if slope := linear + damped; gain < 0 {
				shrink = 0.5 * slope / (slope - 0.5*gain)
			}
			if 0.1*math.Sqrt(next) >= size || !(shrink >= 0.1) {
				shrink = 0.1
			}
			s.reach = shrink * math.Min(s.reach, length/0.1)
			s.damping /= shrink
		case s.damping == 0 || share >= 0.75:
			s.reach = length / 0.5
			s.damping *= 0.5
		}
		better := share >= 1e-4
		if better {
			copy(s.x, s.nextX)
			copy(s.r, s.nextR)
		}
		if math.Abs(gain) <= s.stop.Gain && promised <= s.stop.Gain && 0.5*share <= 1 ||
			s.reach <= s.stop.Closer*scaled(s.scale, s.x) {
			s.done = true
			return false, nil
		}
		if better {
			return true, nil
		}
	}
	return false, nil
}

// findSlopes works the slopes out where the descent stands.
func (s *squares) findSlopes() error {
	if s.f.Slopes != nil {
		return s.f.Slopes(s.x, s.slopes)
	}
	const cubeRoot = 6.055454452393343e-06
	up, down := make([]float64, s.f.Count), make([]float64, s.f.Count)
	x := slices.Clone(s.x)
	for j := range x {
		h := cubeRoot * math.Abs(x[j])
		if h == 0 {
			h = cubeRoot
		}
		at := x[j]
		x[j] = at + h
		s.hold(x)
		to := x[j]
		if err := s.f.At(x, up); err != nil {
			return err
		}
		x[j] = at - h
		s.hold(x)
		from := x[j]
		if err := s.f.At(x, down); err != nil {
			return err
		}
		x[j] = at
		for i := range up {
			s.slopes.Set(i, j, (up[i]-down[i])/(to-from))
		}
	}
	return nil
}

// scaled is the length of numbers by their scales.
func scaled(scale, x []float64) float64 {
	sum := 0.0
	for j := range x {
		sum += scale[j] * x[j] * scale[j] * x[j]
	}
	return math.Sqrt(sum)
}

func dot(a, b []float64) float64 {
	sum := 0.0
	for i := range a {
		sum += a[i] * b[i]
	}
	return sum
}
