package solve

import (
	"cmp"
	"errors"
	"math"
	"slices"
)

// Descent says how Simplex goes down and when it is done.
type Descent struct {
	Size float64 // of the first simplex: how far its corners are from the start, each along one axis
	Gain float64 // share of the value: less is no gain, and 3 rounds for each corner without one are the end
	Most int     // places looked at
}

// Simplex goes down from a place to where a function of several numbers is least near
// there, and gives the least seen: Nelder and Mead, Computer Journal 7 (1965) 308, by the
// rules of Lagarias et al., SIAM Journal on Optimization 9 (1998) 112, with the lengths of
// Gao and Han, Computational Optimization and Applications 51 (2012) 259. Where the
// function is not defined it may be +Inf or NaN; it may keep the places that it is given.
func Simplex(f func(x []float64) (float64, error), from []float64, d Descent) (x []float64, y float64, err error) {
	s := &simplex{f: f, left: d.Most, best: corner{from, math.Inf(1)}}
	if err = s.descend(from, d); errors.Is(err, errSpent) {
		err = nil
	}
	return s.best.x, s.best.y, err
}

// errSpent ends a descent after its most looks.
var errSpent = errors.New("no looks left")

// corner is a place and the value there.
type corner struct {
	x []float64
	y float64
}

// simplex has one corner more than there are numbers, the lowest first.
type simplex struct {
	f       func(x []float64) (float64, error)
	left    int // looks
	best    corner
	corners []corner
}

func (s *simplex) look(x []float64) (corner, error) {
	if s.left <= 0 {
		return corner{}, errSpent
	}
	s.left--
	y, err := s.f(x)
	if math.IsNaN(y) {
		y = math.Inf(1)
	}
	if err == nil && y < s.best.y {
		s.best = corner{x, y}
	}
	return corner{x, y}, err
}

func (s *simplex) descend(from []float64, d Descent) error {
	if err := s.begin(from, d.Size); err != nil || len(from) == 0 {
		return err
	}
	reached := s.corners[0].y
	s.sort()
	for idle := 0; ; {
		y := s.corners[0].y
		if y < reached && (math.IsInf(reached, 1) || reached-y > d.Gain*math.Max(math.Abs(y), math.Abs(reached))) {
			reached, idle = y, 0
		} else if idle++; idle == 3*len(s.corners) {
			return nil
		}
		if err := s.round(); err != nil {
			return err
		}
	}
}

// begin puts the corners around a place, which is the first.
func (s *simplex) begin(from []float64, size float64) error {
	for k := -1; k < len(from); k++ {
		x := slices.Clone(from)
		if k >= 0 {
			x[k] += size
		}
		c, err := s.look(x)
		if err != nil {
			return err
		}
		s.corners = append(s.corners, c)
	}
	return nil
}

// sort puts the lowest first.
func (s *simplex) sort() {
	slices.SortStableFunc(s.corners, func(a, b corner) int { return cmp.Compare(a.y, b.y) })
}

// round replaces the highest corner by a lower place on the line through the middle of
// the others, or, where it finds none, draws all corners in to the lowest.
func (s *simplex) round() error {
	last := len(s.corners) - 1
	n := float64(max(last, 2))
	further, nearer := 1+2/n, 0.75-1/(2*n)
	lowest, next, highest := s.corners[0].y, s.corners[last-1].y, s.corners[last].y

	across, err := s.along(1)
	if err != nil {
		return err
	}
	if across.y < lowest {
		c, err := s.along(further)
		if err != nil {
			return err
		}
		if c.y < across.y {
			across = c
		}
	}
	if across.y < next {
		s.replace(across)
		return nil
	}
	if !(across.y < highest) {
		nearer = -nearer // on this side of the middle
	}
	c, err := s.along(nearer)
	if err != nil {
		return err
	}
	if c.y < highest && c.y <= across.y {
		s.replace(c)
		return nil
	}
	return s.drawIn(1 - 1/n)
}

// along looks on the line from the highest corner through the middle of the others, so
// many times as far beyond the middle as the corner is before it.
func (s *simplex) along(share float64) (corner, error) {
	others, highest := s.corners[:len(s.corners)-1], s.corners[len(s.corners)-1].x
	x := make([]float64, len(highest))
	for k := range x {
		middle := 0.0
		for _, c := range others {
			middle += c.x[k]
		}
		middle /= float64(len(others))
		x[k] = middle + share*(middle-highest[k])
	}
	return s.look(x)
}

// replace puts a corner in the highest one's place.
func (s *simplex) replace(c corner) {
	last := len(s.corners) - 1
	at, _ := slices.BinarySearchFunc(s.corners[:last], c, func(a, b corner) int { return cmp.Compare(a.y, b.y) })
	s.corners = slices.Insert(s.corners[:last], at, c)
}

// drawIn moves every corner towards the lowest, to a share of the way.
func (s *simplex) drawIn(share float64) error {
	lowest := s.corners[0].x
	for i := range s.corners[1:] {
		x := slices.Clone(lowest)
		for k := range x {
			x[k] += share * (s.corners[1+i].x[k] - lowest[k])
		}
		c, err := s.look(x)
		if err != nil {
			return err
		}
		s.corners[1+i] = c
	}
	s.sort()
	return nil
}
