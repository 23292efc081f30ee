package plan

import (
	"context"
	"errors"
	"strings"

	"ullage/sim/fault"
	"ullage/sim/gates"
	"ullage/sim/rocket"
	"ullage/sim/study"
	"ullage/thrust"
)

// CertifyingFlight is a flight by which a person is certified for motors of some classes.
type CertifyingFlight struct {
	Name    string  // "first"
	Classes string  // letters of the motors that it may be flown on
	Above   float64 // total impulse of which they are more, N·s
	Most    float64 // and at most that
}

// CertifyingFlights are the first and the second flight for high power in US practice: on class H or I, and on J, K or L (from memory; what
// the body that certifies has in its rules counts). The bounds of the classes are those of NFPA 1125, which doubles
// them from 160 N·s on.
func CertifyingFlights() []CertifyingFlight {
	return []CertifyingFlight{{"first", "HI", 160, 640}, {"second", "JKL", 640, 5120}}
}

// CertifyingFlightOn is the flight that a motor of a total impulse, N·s, may be flown for; ok is false where there is none.
func CertifyingFlightOn(impulse float64) (f CertifyingFlight, ok bool) {
	class := thrust.Class(impulse)
	for _, f := range CertifyingFlights() {
		if len(class) == 1 && strings.Contains(f.Classes, class) {
			return f, true
		}
	}
	return CertifyingFlight{}, false
}

// Candidate is a motor in a rocket that has it.
type Candidate struct {
	Name     string
	Rocket   *rocket.Rocket
	Spreads  []study.Spread                      // what is uncertain with it
	Respread func(*rocket.Rocket) []study.Spread // as in Options
}

// Certification is what came of a candidate.
type Certification struct {
	Candidate
	Flight  CertifyingFlight // that its impulse is for; of no name where it is for neither
	Fit     rocket.MotorFit
	Verdict gates.Verdict // on the motor, whatever drive the rocket's file flies; without checks where Invalid
	Invalid error         // why it makes no rocket, a fault.List; nil mostly
}

// Certify judges a rocket on each of some motors by its own checks, with the worst corners. A motor that makes no rocket is told in its place.
func Certify(ctx context.Context, all []Candidate, o Options) ([]Certification, error) {
	out := make([]Certification, len(all))
	for i, c := range all {
		r := *c.Rocket
		r.Power = rocket.MotorPower
		c.Rocket = &r
		out[i] = Certification{Candidate: c, Fit: r.MotorFit()}
		if r.Motor != nil {
			out[i].Flight, _ = CertifyingFlightOn(r.Motor.Impulse())
		}
		v, err := gates.Judge(ctx, &r, gates.Options{Today: o.Today, Spreads: c.Spreads, Respread: c.Respread, Workers: o.Workers})
		switch {
		case errors.As(err, new(fault.List)):
			out[i].Invalid = err
		case err != nil:
			return nil, err
		}
		out[i].Verdict = v
	}
	return out, nil
}

// Qualifies tells that its impulse is for a flight, that it is known to go into its mount, and that the rocket on it is go.
func (c *Certification) Qualifies() bool {
	return c.Flight.Name != "" && c.Invalid == nil && c.Fit.Goes() && c.Verdict.Pass()
}
