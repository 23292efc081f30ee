package results

import (
	"math"

	"ullage/sim"
	"ullage/sim/rocket"
)

// Case is the circumstances in which a rocket flies.
type Case int

// The cases.
const (
	Calm   Case = iota // no wind, no gust
	Day                // as the file has it
	Corner             // every uncertain input one standard deviation off, against what is asked
	Logged             // the day of a log
	Cases              // how many there are
)

// String names the case in a sentence.
func (c Case) String() string {
	return [...]string{"in calm air", "in the day's wind", "in the worst corner", "on the day of the log"}[c]
}

// Question is a result asked of a drive in a case.
type Question struct {
	Row   *Row
	Drive rocket.Power
	Case  Case
}

// Flown is what a flight answers for.
type Flown struct {
	Drive rocket.Power
	Case  Case
}

// Flights are the flights there are, by drive and case.
type Flights map[Flown]*sim.Flight

// Answer is the result asked for: NaN where it has no value. flown is false when there is
// no such flight, which is no answer at all.
func (f Flights) Answer(q Question) (v float64, flown bool) {
	fl := f[Flown{q.Drive, q.Case}]
	if fl == nil {
		return math.NaN(), false
	}
	return q.Row.Of(fl), true
}
