package motors

import (
	"context"
	"math"
	"path/filepath"
	"reflect"
	"slices"
	"strings"

	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
	"ullage/tui/draw"
	"ullage/tui/view"
)

// motorSet is motors set side by side in one rocket: its own first, unless a
// file on the list holds the same, then those of motor files.
type motorSet struct {
	of     *rocketfile.File
	found  []string // motor files beside the rocket file
	motors []motorEntry
}

// motorEntry is one motor and what the rocket does on it.
type motorEntry struct {
	path  string // of its file; empty for the motor in the rocket file itself
	name  string
	own   bool   // the rocket's motor as it stands
	fault string // why there is no flight; empty mostly
	study.Compared
	trace view.Trace
}

// ownMotor is what the motor in the rocket file itself is called.
const ownMotor = "own motor"

// newMotorSet flies the rocket of a file on its own motor, on those of the motor
// files found beside it and on those that the user named.
func newMotorSet(ctx context.Context, of *rocketfile.File, found, named []string) (motorSet, error) {
	set := motorSet{of: of, found: found}
	r := of.Rocket()
	if r.Motor != nil {
		set.motors = append(set.motors, motorEntry{name: ownMotor, own: true, Compared: study.Compared{Variant: study.Variant{Rocket: r}}})
	}
	paths := eachOnce(append(slices.Clone(found), named...))
	for i, name := range motorNames(paths) {
		e := motorEntry{path: paths[i], name: name}
		with, err := of.WithMotor(e.path)
		switch {
		case err != nil:
			e.fault = motorFault(e.path, err)
		default:
			e.Rocket = with.Rocket()
			e.own = r.Motor != nil && sameMotor(r.Motor, e.Rocket.Motor)
		}
		set.motors = append(set.motors, e)
	}
	if slices.ContainsFunc(set.motors[min(1, len(set.motors)):], func(e motorEntry) bool { return e.own }) {
		set.motors = set.motors[1:] // it has a name on the list
	}
	return set, set.fly(ctx)
}

// fly flies the motors that can be flown.
func (s *motorSet) fly(ctx context.Context) error {
	var motors []study.Variant
	var at []int // the place of each on the list
	for i := range s.motors {
		if e := &s.motors[i]; e.Rocket != nil {
			motors, at = append(motors, study.Variant{Name: e.name, Rocket: e.Rocket}), append(at, i)
		}
	}
	if len(motors) == 0 {
		return nil
	}
	compared, err := study.Compare(ctx, study.Motors(motors, s.of.Rocket().Limits.InForce().Impulse), study.CompareOptions{Options: study.Options{Keep: true}, Delays: true})
	if err != nil {
		return err
	}
	for i, c := range compared {
		e := &s.motors[at[i]]
		e.Compared = c
		if c.Invalid != nil {
			e.fault = view.FaultText(c.Invalid, "")
		}
		if c.Flight != nil {
			e.trace = view.NewTrace(c.Flight)
		}
	}
	return nil
}

// sameMotor tells that two motors are one, whatever files they come from.
func sameMotor(a, b *rocket.Motor) bool {
	x, y := *a, *b
	if math.IsNaN(x.Delay) && math.IsNaN(y.Delay) {
		x.Delay, y.Delay = 0, 0
	}
	return reflect.DeepEqual(x, y)
}

// eachOnce drops paths of files that were named before.
func eachOnce(paths []string) []string {
	seen := map[string]bool{}
	return slices.DeleteFunc(paths, func(p string) bool {
		full, err := filepath.Abs(p)
		if err != nil {
			full = p
		}
		again := seen[full]
		seen[full] = true
		return again
	})
}

// motorNames call motor files by their names without the ending, or by their
// paths where two would be called the same.
func motorNames(paths []string) []string {
	short := func(path string) string { return strings.TrimSuffix(filepath.Base(path), filepath.Ext(path)) }
	count := map[string]int{}
	for _, p := range paths {
		count[short(p)]++
	}
	names := make([]string, len(paths))
	for i, p := range paths {
		if names[i] = draw.Clean(short(p)); count[short(p)] > 1 {
			names[i] = draw.Clean(draw.ShortPath(p))
		}
	}
	return names
}

// best is the motor with the highest flight of those that nothing speaks
// against; −1 for none.
func (s *motorSet) best() int {
	at, most := -1, math.Inf(-1)
	for i := range s.motors {
		if e := &s.motors[i]; e.Flight != nil && e.Problem == "" && e.Flight.Results.RailExit.Happened &&
			e.Flight.Results.Apogee.Height > most {
			at, most = i, e.Flight.Results.Apogee.Height
		}
	}
	return at
}
