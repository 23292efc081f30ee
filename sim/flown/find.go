package flown

import (
	"fmt"
	"math"
	"slices"

	"ullage/sim/fault"
	"ullage/sim/flown/logfile"
)

// found is a flight in a log, by the log's clock.
type found struct {
	liftOff float64 // s: the last moment at rest
	top     float64 // s; NaN when nothing tells it
	landing float64 // s; NaN when the log ends before
	rest    float64 // what the column rests at before
}

// What a flight in a log has to be: a choice of this program's, no source.
const (
	leastClimb  = 3.0  // m within a second
	restBefore  = 12.0 // s before lift-off that are looked at
	restMargin  = 0.5  // s right before it that are not: lift-off may lie in them
	restAfter   = 1.5  // s at rest that make a landing
	slowestStep = 1.0  // s: a slower recorder tells nothing of a flight
)

// climbs finds the flights in a course of heights: where it climbs faster than noise, drift and
// people do, up to a top that stands out of the noise, and down to rest.
func climbs(raw series) []found {
	s := raw.smoothed()
	n := len(s.t)
	if n < 5 {
		return nil
	}
	ahead := make([]float64, n) // the climb of the next second
	spread := make([]float64, 0, n)
	least, greatest := math.Inf(1), math.Inf(-1)
	j := 0
	for i := range s.t {
		for j+1 < n && s.t[j+1] <= s.t[i]+1 {
			j++
		}
		ahead[i] = s.y[max(j, i)] - s.y[i]
		spread = append(spread, math.Abs(ahead[i]))
		least, greatest = math.Min(least, s.y[i]), math.Max(greatest, s.y[i])
	}
	// Eight deviations of normal noise, whose median is 1/1.4826 of one; a sixth of all there is at most.
	need := math.Max(leastClimb, math.Min(8*1.4826*median(spread), 0.15*(greatest-least)))
	var flights []found
	for i := 0; i < n; i++ {
		if ahead[i] < need {
			continue
		}
		f, end, ok := climb(raw, s, i)
		if ok {
			flights = append(flights, f)
		}
		i = max(i, end)
	}
	return flights
}

// climb follows one climb that begins about a place. It gives the place behind the flight.
func climb(raw, s series, i int) (found, int, bool) {
	n := len(s.t)
	f := found{top: math.NaN(), landing: math.NaN()}
	pad := raw.between(s.t[i]-restBefore, s.t[i]-restMargin)
	f.rest = s.y[i]
	noise := raw.between(s.t[max(0, i-20)], s.t[min(n-1, i+20)]).roughness()
	if len(pad.t) >= 3 {
		f.rest, noise = pad.middle(), math.Max(pad.scatter(), noise)
	}
	if math.IsNaN(noise) {
		noise = 0
	}
	stands := math.Max(leastClimb, 8*noise)
	top := i
	end := i
	for end = i; end < n; end++ {
		if s.y[end] > s.y[top] {
			top = end
		}
		if s.y[top]-s.y[end] > math.Max(leastClimb, 0.3*(s.y[top]-f.rest)) {
			break
		}
	}
	if s.y[top]-f.rest < stands {
		return f, end, false
	}
	f.top = s.t[top]
	quiet := math.Max(4*noise, 0.3)
	at := top
	for at > 0 && s.y[at] > f.rest+quiet && s.t[at-1] > s.t[i]-restBefore {
		at--
	}
	f.liftOff = s.t[at]
	end = f.land(s, min(end, n-1), noise)
	return f, end, true
}

// land looks where the course comes to rest after its top, and gives the place.
func (f *found) land(s series, from int, noise float64) int {
	still := math.Max(4*noise, 1)
	n := len(s.t)
	for i := from; i < n; i++ {
		j := i
		least, greatest := s.y[i], s.y[i]
		for j+1 < n && s.t[j] < s.t[i]+restAfter && greatest-least <= still {
			j++
			least, greatest = math.Min(least, s.y[j]), math.Max(greatest, s.y[j])
		}
		if greatest-least > still {
			continue
		}
		if s.t[j]-s.t[i] >= 0.9*restAfter {
			// Back to where it first came within the noise of what it rests at.
			level := series{s.t[i : j+1], s.y[i : j+1]}.middle()
			for i > from && math.Abs(s.y[i-1]-level) <= math.Max(2*noise, 0.3) {
				i--
			}
			f.landing = s.t[i]
			return j
		}
		return n - 1
	}
	return n - 1
}

// leaves finds where a column that rests before a flight (a speed, an acceleration) leaves its
// noise for its greatest departure.
func leaves(raw series, least float64) []found {
	s := raw.smoothed()
	if len(s.t) < 5 {
		return nil
	}
	level := s.middle()
	early := s.between(s.t[0], s.t[0]+2)
	if len(early.t) >= 5 {
		level = early.middle()
	}
	most := 0
	for i := range s.y {
		if math.Abs(s.y[i]-level) > math.Abs(s.y[most]-level) {
			most = i
		}
	}
	pad := raw.between(s.t[most]-restBefore, s.t[most]-3)
	noise := pad.scatter()
	f := found{top: math.NaN(), landing: math.NaN(), rest: level}
	if len(pad.t) >= 5 {
		f.rest = pad.middle()
	} else {
		noise = raw.roughness()
	}
	quiet := math.Max(5*noise, least/10)
	if !(math.Abs(s.y[most]-f.rest) > math.Max(least, 10*noise)) {
		return nil
	}
	const calm = 3 // samples at rest in a row
	for i, n := most, 0; i >= 0; i-- {
		if math.Abs(s.y[i]-f.rest) <= quiet {
			if n++; n == calm || i == 0 {
				f.liftOff = s.t[i+n-1]
				return []found{f}
			}
			continue
		}
		n = 0
		if i == 0 {
			f.liftOff = s.t[0]
		}
	}
	return []found{f}
}

// What a release is in a chamber's pressure: so much of what it had is gone within so long. A valve that
// lets it off takes longer. A choice of this program's, no source.
const (
	emptiesBy     = 0.6
	emptiesWithin = 2.0 // s
)

// falls finds the releases in the pressure of a chamber.
func falls(raw series) []found {
	s := raw.smoothed()
	n := len(s.t)
	if n < fewest {
		return nil
	}
	least, greatest := slices.Min(s.y), slices.Max(s.y)
	noise := raw.roughness()
	if !(greatest-least > 10*noise) {
		return nil
	}
	left := 0.3 * (greatest - least)
	var flights []found
	j := 0
	for i := 0; i < n; i++ {
		for j+1 < n && s.t[j+1] <= s.t[i]+emptiesWithin {
			j++
		}
		// Not what is left in it, nor what a pump does between two strokes.
		if over := s.y[i] - least; over < left || s.y[i]-s.y[j] < emptiesBy*over {
			continue
		}
		f := found{top: math.NaN(), landing: math.NaN(), rest: s.between(s.t[i]-1, s.t[i]).middle()}
		quiet := math.Max(5*noise, 0.02*(f.rest-least))
		for i+1 < j && s.y[i+1] >= f.rest-quiet {
			i++
		}
		f.liftOff = s.t[i]
		flights = append(flights, f)
		for i+1 < n && s.y[i+1]-least >= left {
			i++
		}
	}
	return flights
}

// nothingToLookAt says why a log has no values to look for a flight in.
func nothingToLookAt(log *logfile.Log, o Options, in []logfile.Quantity) fault.Fault {
	most := 0
	for _, q := range in {
		if k := log.Find(q); k >= 0 {
			most = max(most, len(without(log.Time, log.Values[k]).t), 1)
		}
	}
	switch {
	case most == 0:
		return fault.Fault{File: log.Name, Problem: "no column is known to be a " + fault.OneOf(in...),
			Remedy: "say which it is, as in --column 'height=2 m'"}
	case o.To > o.From:
		return fault.Fault{File: log.Name, Problem: fmt.Sprintf("--from and --to leave fewer than %d values of it", fewest),
			Remedy: fmt.Sprintf("its clock runs from %.4g s to %.4g s", log.Time[0], log.Time[len(log.Time)-1])}
	}
	return fault.Fault{File: log.Name, Problem: fmt.Sprintf("has fewer than %d values in every column", fewest), Remedy: "a flight takes several a second"}
}
