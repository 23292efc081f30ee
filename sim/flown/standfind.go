package flown

import (
	"fmt"
	"math"

	"ullage/sim/fault"
	"ullage/sim/flown/logfile"
)

// fewestAtRest are the samples that tell where a cell rests.
const fewestAtRest = 5

// find looks for the burn: the greatest departure from where the cell rests. What leaves weighs
// lost by the cell's reading afterwards.
func (x *Stand) find(s series, log *logfile.Log, k int, lost float64) error {
	column := log.Columns[k]
	if len(s.t) < fewest {
		return fault.Fault{File: log.Name, Key: column.Name(), Problem: fmt.Sprintf("has %d values", len(s.t)), Remedy: "a static test takes a hundred a second"}
	}
	smooth := s.smoothed()
	level, begun := x.level(s, smooth, lost)
	most, from, peak := x.rise(smooth, level)
	rest := series{s.t[:max(from-1, 0)], s.y[:max(from-1, 0)]}
	x.Noise = s.roughness()
	if len(rest.t) >= fewestAtRest {
		level, begun = rest.middle(), false
		x.Noise = rest.scatter()
	} else if !x.Own {
		begun = true
		level = x.afterwards(s, lost, column)
		most, _, peak = x.rise(smooth, level)
	}
	if !(peak > math.Max(10*x.Noise, 1e-3)) {
		return NoFlight{fault.Fault{File: log.Name, Key: column.Name(), Problem: "shows no burn that stands out of the noise",
			Remedy: "look at its course; if the column or its unit is another, say so, as in --column 'thrust=2 N'"}, s.t, s.y, column}
	}
	// The end: the last moment beyond 5 % of the peak off where it rests afterwards.
	to, after := most, s.late(s.t[most]).middle()
	for i := most; i < len(smooth.y); i++ {
		if math.Abs(smooth.y[i]-after) > burnShare*peak && (smooth.y[i]-after > 0) == !x.Flipped {
			to = i
		}
	}
	x.Begun = begun
	x.Tare, x.Onset, x.End = level, s.t[max(from-1, 0)], s.t[min(to+1, len(s.t)-1)]
	if begun {
		x.Onset = s.t[0]
	}
	return nil
}

// level is where the cell seems to rest before the burn, and whether the log seems to begin in it: it
// is not at rest then, and elsewhere than afterwards.
func (x *Stand) level(s, smooth series, lost float64) (at float64, begun bool) {
	if x.Own {
		return 0, s.t[0] > 0
	}
	early, late := s.between(s.t[0], s.t[0]+0.05*(s.t[len(s.t)-1]-s.t[0])), s.late(s.t[0])
	least, greatest := math.Inf(1), math.Inf(-1)
	for _, v := range smooth.y {
		least, greatest = math.Min(least, v), math.Max(greatest, v)
	}
	apart := math.Abs(early.middle()-late.middle()) > 0.1*(greatest-least)+math.Abs(lost)
	if apart && early.scatter() > 3*early.roughness() && late.scatter() < early.scatter() {
		return late.middle(), true
	}
	return early.middle(), false
}

// rise is the sample that departs most from a level, the first one on the way there, and how far it
// departs; it tells which way the cell counts.
func (x *Stand) rise(smooth series, level float64) (most, from int, peak float64) {
	for i := range smooth.y {
		if math.Abs(smooth.y[i]-level) > math.Abs(smooth.y[most]-level) {
			most = i
		}
	}
	x.Flipped = smooth.y[most] < level
	peak = math.Abs(smooth.y[most] - level)
	for from = most; from > 0 && math.Abs(smooth.y[from-1]-level) > burnShare*peak; {
		from--
	}
	return most, from, peak
}

// afterwards is the tare of a log that begins in the burn: by where it rests after it, less what the
// weight that has left counts there; 0 where it does not come to rest.
func (x *Stand) afterwards(s series, lost float64, column logfile.Column) float64 {
	note := func(problem, remedy string) {
		x.notes = append(x.notes, fault.Fault{Key: column.Name(), Problem: problem, Remedy: remedy})
	}
	const remedy = "let the recorder run a few seconds before"
	smooth := s.smoothed()
	late := s.late(s.t[0])
	_, _, peak := x.rise(smooth, late.middle())
	half := (late.t[0] + late.t[len(late.t)-1]) / 2
	falls := math.Abs(late.between(math.Inf(-1), half).middle() - late.between(half, math.Inf(1)).middle())
	if len(late.t) < fewestAtRest || !(falls < 0.01*peak+s.roughness()) {
		note("rests neither before the burn nor after it, so that its zero is not known: taken as 0", remedy+" and after")
		return 0
	}
	note("begins in the burn: its zero is taken from the rest after it, and what was before is in none of the figures", remedy)
	if x.Flipped {
		return late.middle() + lost
	}
	return late.middle() - lost
}

// late is the last tenth from a time on.
func (s series) late(from float64) series {
	end := s.t[len(s.t)-1]
	return s.between(end-0.1*(end-from), end)
}
