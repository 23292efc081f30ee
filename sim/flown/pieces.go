package flown

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"ullage/sim/fault"
	"ullage/sim/flown/logfile"
)

// Stretch is a part of a log, s by its clock, both ends with it.
type Stretch struct{ From, To float64 }

// ParseStretch reads two times of a log with a word between them: "12.1 s to 12.6 s".
func ParseStretch(text string) (Stretch, error) {
	bad := fault.Fault{Value: fmt.Sprintf("%q", text), Problem: "is no stretch of a log", Remedy: "write its two times by the log's clock, as in '12.1 s to 12.6 s'"}
	from, to, ok := strings.Cut(text, " to ")
	if !ok {
		return Stretch{}, bad
	}
	a, err := logfile.ParseTime(from)
	b, second := logfile.ParseTime(to)
	if err != nil || second != nil || !(a <= b) {
		return Stretch{}, bad
	}
	return Stretch{a, b}, nil
}

// Has tells whether a time is in the stretch.
func (s Stretch) Has(t float64) bool { return t >= s.From && t <= s.To }

// Left tells whether a time is in one of some stretches.
func Left(out []Stretch, t float64) bool {
	return slices.ContainsFunc(out, func(s Stretch) bool { return s.Has(t) })
}

// Without is the reading without what was recorded in some stretches, so that it has no part in
// anything. Noise and steps stay as they were read. A column of which too little is left goes; the
// error is a fault when none stays.
func (rd *Reading) Without(out []Stretch) (*Reading, error) {
	if len(out) == 0 {
		return rd, nil
	}
	x := *rd
	x.LeftOut = append(slices.Clone(rd.LeftOut), out...)
	x.Channels = nil
	for _, c := range rd.Channels {
		s := series{make([]float64, 0, len(c.T)), make([]float64, 0, len(c.T))}
		for i, t := range c.T {
			if !Left(out, t) {
				s.t, s.y = append(s.t, t), append(s.y, c.Y[i])
			}
		}
		if x.Lost = max(x.Lost, len(c.T)-len(s.t)); len(s.t) < fewest {
			continue
		}
		c.T, c.Y = s.t, s.y
		x.Channels = append(x.Channels, c)
	}
	if len(x.Channels) == 0 {
		return nil, fault.Fault{File: rd.Log.Name, Problem: "has fewer than 10 values left in every column once what is to be left out is gone", Remedy: "leave less out"}
	}
	return &x, nil
}

// Released is the reading with the release at a time of the log's clock, s: a comparison takes it
// as told, a fit begins there and finds its own.
func (rd *Reading) Released(at float64) *Reading {
	x := *rd
	x.LiftOff, x.Pinned = at, true
	return &x
}

// Joined are stretches with one more, those that meet made one.
func Joined(all []Stretch, s Stretch) []Stretch {
	var out []Stretch
	for _, x := range all {
		if x.To < s.From || x.From > s.To {
			out = append(out, x)
			continue
		}
		s = Stretch{min(s.From, x.From), max(s.To, x.To)}
	}
	out = append(out, s)
	slices.SortFunc(out, func(a, b Stretch) int { return cmp.Compare(a.From, b.From) })
	return out
}

// Parted are stretches without what is in another.
func Parted(all []Stretch, s Stretch) []Stretch {
	var out []Stretch
	for _, x := range all {
		if x.To < s.From || x.From > s.To {
			out = append(out, x)
			continue
		}
		if x.From < s.From {
			out = append(out, Stretch{x.From, math.Nextafter(s.From, math.Inf(-1))})
		}
		if x.To > s.To {
			out = append(out, Stretch{math.Nextafter(s.To, math.Inf(1)), x.To})
		}
	}
	return out
}
